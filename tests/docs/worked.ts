import {
  addDays,
  inForceDuring,
  measureEnergy,
  readReadings,
  readTariff,
  settlePeriod,
  type Figure,
  type Tariff,
  type TariffDocument,
} from '@unitbook/engine';
import { accountOf } from '../support/demo.ts';
import { billOf, energyOf, figureOf, valueOf } from '../support/make.ts';
import { unitNetting } from '../support/passbook.ts';
import { calculated, plain, shownAs } from './arithmetic.ts';
import { blocksOf, type Block, type Page } from './pages.ts';
import { readHead, type Worked } from './worked-head.ts';
import { workedPeriods } from './worked-periods.ts';

/** A block with its page and line. */
interface PlacedBlock extends Block {
  readonly at: string;
}

/** A snippet of a tariff document that was read in its place. */
interface Snippet {
  readonly at: string;
  readonly problems: readonly string[];
}

type Parts = Readonly<Record<string, unknown>>;

/** The document of a page so far, with one more snippet in its place. */
function withSnippet(document: Parts, { words, text }: Block): Parts {
  const part: unknown = JSON.parse(text);
  if (words !== 'json tariff charges') return { ...document, ...(part as Parts) };
  const versions = document['versions'] as readonly Parts[];
  return { ...document, versions: [...versions.slice(0, -1), { ...versions.at(-1), charges: part }] };
}

/** "energy  760.00 = 50 × 3.00 + …" with the calculation carried out; what is not calculated stays. */
function amountLine(line: string): { said: string; calculation: string | null } {
  const [, name = '', amount = '', formula] = /^(.*?) {2,}(−?[\d,.]+)(?: += (.*))?$/.exec(line) ?? [];
  const calculation = formula === undefined ? null : `${name} ${shownAs(calculated(formula), amount)}`;
  return { said: `${name} ${plain(amount)}`, calculation };
}

/** A figure with as many decimals as money has, or as it needs. */
function moneyText(figure: Pick<Figure, 'numerator' | 'denominator'>): string {
  const text = valueOf(figure);
  const [whole = '', decimals = ''] = text.split('.');
  return text.includes('/') ? text : `${whole}.${decimals.padEnd(2, '0')}`;
}

const END_NAMES = ['sum', 'rounding', 'payable'];

function workedBill(at: string, group: string, tariff: Tariff): Worked {
  const [head = '', ...rows] = group.split('\n');
  const { period, quantities } = readHead(head);
  const bill = billOf(tariff, { period, ...quantities });
  const lines = bill.lines.map(
    ({ figure, counts }) => `${figure.id}${counts ? '' : ' (not added)'} ${moneyText(figure)}`,
  );
  const ends = [bill.sum, bill.roundingDifference, bill.payable].map(
    (figure, index) => `${END_NAMES[index] ?? ''} ${figure === null ? 'none' : moneyText(figure)}`,
  );
  const read = rows.map(amountLine);
  const wanted = ends.filter((end) => read.some(({ said }) => said.split(' ')[0] === end.split(' ')[0]));
  const found = [...lines, ...wanted];
  return {
    at,
    what: head,
    said: read.flatMap(({ said, calculation }) => [said, calculation ?? said]),
    found: found.flatMap((one) => [one, one]),
  };
}

function workedPassbook(at: string, group: string, tariff: Tariff): Worked {
  const [head = '', said = ''] = group.split('\n');
  const { period, quantities } = readHead(head);
  const last = { from: addDays(period.to, -1), to: period.to };
  const [rule] = inForceDuring(tariff.settlements, last);
  if (rule === undefined) throw new Error(`no settlement rule on the last day of ${head}`);
  const { import: taken = '0', export: given = '0', generation, opening = '0' } = quantities;
  const energy = energyOf({ import: taken, export: given, ...(generation ? { generation } : {}) }, period);
  const unitsRule = tariff.document.units;
  const { value, findings } = settlePeriod(energy, {
    rule: unitNetting(rule.item),
    opening: figureOf('opening', opening),
    unitsRule,
    path: [],
  });
  if (value === null) throw new Error(JSON.stringify(findings));
  const { setOff, billed, paid, lapsed, closing } = value;
  const words = { 'set off': setOff, billed, paid, lapsed, carried: closing };
  const found = Object.entries(words).map(([name, figure]) => `${name} ${valueOf(figure)}`);
  return { at, what: head, said: said.split(', '), found };
}

/** "4120.6 to 4342.1, times 20: 222" */
function workedUnits(at: string, text: string, { units }: TariffDocument): Worked {
  const [, before = '', after = '', factor = '1', said = ''] =
    /^import ([\d.]+) to ([\d.]+)(?:, times (\d+))?: ([\d.]+) units$/.exec(text) ?? [];
  const decimals = (before.split('.')[1] ?? '').length.toString();
  const account = accountOf({ decimals, multiplyingFactor: factor, generationMeter: false });
  const rows = [before, after].map((reading, index) => ({
    date: `2025-0${String(4 + index)}-01`,
    import: reading,
    export: '0',
  }));
  const [pair] = readReadings(rows, account).value;
  if (pair === undefined) throw new Error(`${text}: no such readings`);
  return { at, what: text, said: [said], found: [valueOf(measureEnergy(pair, account, units).value.import)] };
}

const groupsOf = (text: string): readonly string[] => text.trim().split(/\n\n+/);

function workedIn(block: PlacedBlock, tariff: Tariff): readonly Worked[] {
  const groups = groupsOf(block.text);
  if (block.words === 'text bill') return groups.map((group) => workedBill(block.at, group, tariff));
  if (block.words === 'text periods') return workedPeriods(block.at, groups, tariff);
  if (block.words === 'text passbook') return groups.map((group) => workedPassbook(block.at, group, tariff));
  return block.text
    .trim()
    .split('\n')
    .map((line) => workedUnits(block.at, line, tariff.document));
}

/** The blocks of a page, each with its page and line. */
const placedBlocks = ({ name, text }: Page): readonly PlacedBlock[] =>
  blocksOf(text).map((block) => ({ ...block, at: `${name}:${String(block.line)}` }));

/** What the snippets and calculations of some pages come to. */
interface Followed {
  readonly snippets: readonly Snippet[];
  readonly worked: readonly Worked[];
}

/**
 * Follow pages that write a tariff step by step: each `json tariff` block takes the place of a part of
 * the document so far, each `json tariff charges` that of the charges, and what is worked out between
 * them (`text bill`, `text passbook`, `text periods`, `text units`) is worked out under the document as it then stands.
 */
export function followPages(pages: readonly Page[]): Followed {
  const snippets: Snippet[] = [];
  const worked: Worked[] = [];
  let document: Parts = {};
  let tariff: Tariff | null = null;
  for (const block of pages.flatMap(placedBlocks)) {
    if (block.words.startsWith('json tariff')) {
      document = withSnippet(document, block);
      const read = readTariff(JSON.stringify(document));
      tariff = read.value ?? tariff;
      const problems = read.findings.map(({ code, path }) => `${code} at ${path.join('.')}`);
      snippets.push({ at: block.at, problems });
    } else if (/^text (?:bill|passbook|periods|units)$/.test(block.words) && tariff !== null) {
      worked.push(...workedIn(block, tariff));
    }
  }
  return { snippets, worked };
}
