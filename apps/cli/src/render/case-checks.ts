import type { CheckedCase, Figure, FigureCheck, UnitsMonth } from '@unitbook/engine';
import { periodWords } from './day-words.ts';
import type { PageNotation } from './notation.ts';
import { atLeft, atRight, plainText, wrap } from './text.ts';

const INDENT = '  ';
const LABEL_WIDTH = 38;
const AMOUNT_WIDTH = 14;

/** What an expected figure is called, and whether it is money. */
interface Naming {
  readonly label: string;
  readonly isMoney: boolean;
}

const COLUMN_WORDS: Readonly<Record<string, string>> = {
  opening: 'brought forward',
  added: 'added',
  used: 'used',
  paid: 'paid',
  lapsed: 'lapsed',
  closing: 'carried forward',
};

/** The figures of a passbook under the names that cases use. */
const PASSBOOK_WORDS: Readonly<Record<string, string>> = {
  billed: 'Units billed',
  import: 'Units taken from the grid',
  export: 'Units given to the grid',
  'set-off': 'Units set off',
};

function ledgerNaming([id = '', column = '']: readonly string[], month: UnitsMonth | undefined): Naming {
  const ledger = month?.ledgers.find((one) => one.id === id);
  const label = ledger?.label ?? (id === 'credit' ? 'Credit' : `Ledger "${id}"`);
  return { label: `${label}, ${COLUMN_WORDS[column] ?? column}`, isMoney: ledger?.unit === 'money' };
}

/** What a figure that a case names is called on the page. */
function namingOf({ what }: FigureCheck, month: UnitsMonth | undefined): Naming {
  const [kind = '', ...rest] = what.split(' ');
  const name = rest.join(' ');
  if (kind === 'payable') return { label: 'Payable', isMoney: true };
  if (kind === 'sum') return { label: 'Sum of the lines', isMoney: true };
  if (kind === 'ledger') return ledgerNaming(rest, month);
  if (kind === 'quantity') {
    const figure: Figure | undefined = month?.quantities[name];
    return { label: figure?.label ?? PASSBOOK_WORDS[name] ?? `Quantity "${name}"`, isMoney: false };
  }
  const line = month?.bill.lines.find(({ figure }) => figure.id === name);
  return { label: line?.figure.label ?? `Line "${name}"`, isMoney: true };
}

/** A number of a case as a column has it: money to the coin at least, fractions as they are. */
function numberText(text: string, isMoney: boolean, notation: PageNotation): string {
  if (text.includes('/')) return text;
  const [whole = '', decimals = ''] = text.split('.');
  const least = isMoney ? notation.moneyPlaces : 0;
  const places = decimals.replace(/0+$/, '').padEnd(least, '0');
  return notation.number(places === '' ? whole : `${whole}.${places}`);
}

interface Row {
  readonly label: string;
  readonly cells: readonly string[];
  readonly word: string;
}

function rowLines({ label, cells, word }: Row): readonly string[] {
  const parts = wrap(plainText(label), LABEL_WIDTH - 2);
  const amounts = cells.map((cell) => atRight(cell, AMOUNT_WIDTH)).join('');
  return parts.map((part, index) =>
    index < parts.length - 1
      ? `${INDENT}${part}`
      : `${INDENT}${atLeft(part, LABEL_WIDTH)}${amounts}${word === '' ? '' : `  ${word}`}`.trimEnd(),
  );
}

/**
 * The expected figures of a case, period by period, each beside what came out; a figure that differs is
 * marked with a word.
 */
export function caseChecks(
  { case: one, checks, months }: CheckedCase,
  notation: PageNotation,
): readonly string[] {
  return one.periods.flatMap(({ from, to }, index) => {
    const own = checks.filter(({ period }) => period === index);
    if (own.length === 0) return [];
    const month = months[index];
    const label = month === undefined ? `${from} – ${to}` : periodWords(month.period);
    return [
      ...rowLines({ label, cells: ['Expected', 'Came out'], word: '' }),
      ...own.flatMap((check) => {
        const { label: name, isMoney } = namingOf(check, month);
        const got = check.got === null ? 'nothing' : numberText(check.got, isMoney, notation);
        const cells = [numberText(check.expected, isMoney, notation), got];
        return rowLines({ label: name, cells, word: check.isSame ? '' : 'DIFFERS' });
      }),
    ];
  });
}
