import {
  decimalPlaces,
  decimalToWhole,
  givenFigure,
  isDecimalText,
  unfoldingFigure,
  type Figure,
  type FigureKind,
  type FigureUnit,
  type Finding,
  type Path,
} from './quantity/index.ts';
import type { NamedQuantity } from './tariff/index.ts';
import { periodFinding } from './period-findings.ts';

/** Quantities by name. */
export type Given = Record<string, Figure>;

/** The most decimals a quantity can have: thousandths. */
const PLACES = 3;
const MOST_DIGITS = 9;

/** What the names of quantities mean. */
export interface NameReading {
  readonly known: ReadonlyMap<string, NamedQuantity>;
  readonly registers: Readonly<Record<string, string>>;
}

function quantityFigure(name: string, text: string, { unit, label }: NamedQuantity): Figure {
  const figureUnit: FigureUnit = unit;
  const numerator = decimalToWhole(text, PLACES);
  return givenFigure({ id: name, label, unit: figureUnit, numerator, denominator: 1000, clause: 'given' });
}

/** Units by name, as figures; registers under the name of what they count. */
export function readQuantities(
  texts: Readonly<Record<string, string>>,
  { known, registers }: NameReading,
  path: Path,
): { readonly given: Given; readonly findings: readonly Finding[] } {
  const given: Given = {};
  const findings = Object.entries(texts).flatMap(([key, text]): Finding[] => {
    const at = [...path, key];
    const name = registers[key] ?? key;
    const quantity = known.get(name);
    if (quantity === undefined) {
      const names = [...known.keys(), ...Object.keys(registers)].map((one) => `"${one}"`).join(', ');
      return [periodFinding('period/unknown-quantity', { path: at }, { name, known: names })];
    }
    const isFine = isDecimalText(text) && decimalPlaces(text) <= PLACES;
    if (!isFine || text.startsWith('-') || (text.split('.')[0] ?? '').length > MOST_DIGITS) {
      return [periodFinding('period/not-a-quantity', { path: at }, { name, value: text })];
    }
    if (given[name] !== undefined) return [periodFinding('period/quantity-twice', { path: at }, { name })];
    given[name] = quantityFigure(name, text, quantity);
    return [];
  });
  return { given, findings };
}

const size = (figure: Figure): number => figure.numerator as number;

const between = (
  operation: 'sum' | 'difference',
  id: string,
  label: string,
): FigureKind<readonly Figure[]> => ({
  id,
  label,
  unit: 'kWh',
  denominator: 1000,
  operation,
  clause: '',
  inputs: (figures) => figures,
});

/** The sum of the blocks of a channel, where the channel itself is not given. */
function sumBlocks(given: Given, channel: string, label: string, blocks: readonly string[]): void {
  if (given[channel] !== undefined) return;
  const inputs = blocks.flatMap((block) => given[`${channel}@${block}`] ?? []);
  if (inputs.length === 0) return;
  const numerator = inputs.reduce((sum, figure) => sum + size(figure), 0);
  given[channel] = unfoldingFigure(between('sum', channel, label), numerator, inputs);
}

/** Own use and total use, in all or in one block, where they follow from what is given. */
function workOutAt(given: Given, suffix: string): void {
  const [taken, made, fed] = [
    given[`import${suffix}`],
    given[`generation${suffix}`],
    given[`export${suffix}`],
  ];
  const selfUse = `self-consumption${suffix}`;
  if (given[selfUse] === undefined && made !== undefined && fed !== undefined && size(made) >= size(fed)) {
    const kind = between('difference', selfUse, 'Units used straight from the roof');
    given[selfUse] = unfoldingFigure(kind, size(made) - size(fed), [made, fed]);
  }
  const own = given[selfUse];
  const use = `total-use${suffix}`;
  if (given[use] === undefined && taken !== undefined && own !== undefined) {
    const kind = between('sum', use, 'Units the house used');
    given[use] = unfoldingFigure(kind, size(taken) + size(own), [taken, own]);
  }
}

/**
 * What follows from the channels given: own use and total use, in all and in every block.
 *
 * @param blocks  of the tariff
 */
export function workOut(given: Given, blocks: readonly string[]): void {
  sumBlocks(given, 'import', 'Units taken from the grid', blocks);
  sumBlocks(given, 'export', 'Units given to the grid', blocks);
  sumBlocks(given, 'generation', 'Units the plant made', blocks);
  for (const block of blocks) workOutAt(given, `@${block}`);
  workOutAt(given, '');
}
