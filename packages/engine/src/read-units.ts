import {
  decimalPlaces,
  decimalToWhole,
  exactText,
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

/** A quantity that is given and also follows from others, otherwise. */
export interface Differing {
  readonly name: string;
  readonly given: string;
  readonly follows: string;
}

const NONE: readonly never[] = [];

function differing(name: string, given: Figure, follows: number): readonly Differing[] {
  if (size(given) === follows) return NONE;
  return [{ name, given: exactText(size(given), 1000), follows: exactText(follows, 1000) }];
}

/** The sum of the blocks of a channel, where the channel itself is not given. */
function sumBlocks(
  given: Given,
  channel: string,
  label: string,
  blocks: readonly string[],
): readonly Differing[] {
  const inputs = blocks.flatMap((block) => given[`${channel}@${block}`] ?? []);
  if (inputs.length === 0 || inputs.length < blocks.length) return NONE;
  const numerator = inputs.reduce((sum, figure) => sum + size(figure), 0);
  const total = given[channel];
  if (total !== undefined) {
    return differing(channel, total, numerator);
  }
  given[channel] = unfoldingFigure(between('sum', channel, label), numerator, inputs);
  return NONE;
}

/** Own use and total use, in all or in one block, where they follow from what is given. */
function workOutAt(given: Given, suffix: string): readonly Differing[] {
  const [taken, made, fed] = [
    given[`import${suffix}`],
    given[`generation${suffix}`],
    given[`export${suffix}`],
  ];
  const selfUse = `self-consumption${suffix}`;
  const found: Differing[] = [];
  if (made !== undefined && fed !== undefined && size(made) >= size(fed)) {
    const kind = between('difference', selfUse, 'Units used straight from the roof');
    const units = size(made) - size(fed);
    if (given[selfUse] === undefined) given[selfUse] = unfoldingFigure(kind, units, [made, fed]);
    else found.push(...differing(selfUse, given[selfUse], units));
  }
  const own = given[selfUse];
  const use = `total-use${suffix}`;
  if (taken !== undefined && own !== undefined) {
    const kind = between('sum', use, 'Units the house used');
    const units = size(taken) + size(own);
    if (given[use] === undefined) given[use] = unfoldingFigure(kind, units, [taken, own]);
    else found.push(...differing(use, given[use], units));
  }
  return found.length === 0 ? NONE : found;
}

/**
 * What follows from the channels given: own use and total use, in all and in every block.
 *
 * @param blocks  of the tariff
 * @returns       quantities that were given and follow otherwise from the others
 */
export function workOut(given: Given, blocks: readonly string[]): readonly Differing[] {
  const found = [
    sumBlocks(given, 'import', 'Units taken from the grid', blocks),
    sumBlocks(given, 'export', 'Units given to the grid', blocks),
    sumBlocks(given, 'generation', 'Units the plant made', blocks),
    ...blocks.map((block) => workOutAt(given, `@${block}`)),
    workOutAt(given, ''),
  ];
  return found.every((one) => one.length === 0) ? NONE : found.flat();
}
