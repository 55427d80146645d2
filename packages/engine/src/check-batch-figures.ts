import { LARGEST_WHOLE, periodDays, type Period } from './quantity/index.ts';
import { FIGURE } from './audit/index.ts';
import type { AmountsPlan, NettingPlan } from './amounts-types.ts';
import { TENS, type BatchNames, type PrintedColumn } from './check-batch-columns.ts';

/** What a row of a table comes to by the quick way, in place: money in 1/grid of its plan, units in thousandths. */
export interface QuickAmounts {
  opening: number;
  closing: number;
  billed: number;
  due: number;
  sum: number;
  payable: number;
}

/** A line of a bill that a printed figure is set beside: its place, and what puts it on the grid of the plan. */
interface LinePlace {
  readonly amounts: Float64Array;
  readonly at: number;
  readonly times: number;
}

/** Where the numerator of a computed figure is found. */
type Source =
  | { readonly kind: 'constant'; readonly value: number }
  | { readonly kind: 'known'; readonly column: number }
  | { readonly kind: 'derived'; readonly columns: readonly [number, number, number]; readonly isOwn: boolean }
  | { readonly kind: 'amount'; readonly of: keyof QuickAmounts }
  | { readonly kind: 'rounding'; readonly times: number }
  | { readonly kind: 'lines'; readonly lines: readonly LinePlace[]; readonly isSurplus: boolean }
  | { readonly kind: 'unknown' };

/** A printed column, and the figure it is set beside. */
export interface QuickFigure {
  readonly column: number;
  readonly source: Source;
  readonly denominator: number;
}

const UNKNOWN: Source = { kind: 'unknown' };
const ACCOUNT_LINES: readonly string[] = ['arrears', 'late-fee', 'adjustment'];

/** What the figures of a plan are found with. */
interface FigureTerms {
  readonly plan: AmountsPlan;
  readonly bill: NettingPlan;
  readonly period: Period;
  readonly names: BatchNames;
  /** Known columns that the rows of the plan fill. */
  readonly filled: readonly number[];
}

function linesOf({ bill, plan }: FigureTerms, id: string): Omit<QuickFigure, 'column'> {
  const lines = bill.parts.flatMap(({ part: { constants, amounts }, times }) =>
    constants.shape.lines.flatMap((line, at) =>
      line.id === id && line.adds ? [{ amounts, at, times }] : [],
    ),
  );
  return { source: { kind: 'lines', lines, isSurplus: id === 'surplus' }, denominator: plan.grid };
}

function knownUnits({ names, filled }: FigureTerms, name: string): Source {
  const columnOf = (own: string): number => filled.find((column) => names.known[column] === own) ?? -1;
  const [taken, given, made] = [columnOf('import'), columnOf('export'), columnOf('generation')];
  const isDerived = name === 'self-consumption' || name === 'total-use';
  if (isDerived && taken >= 0 && given >= 0 && made >= 0)
    return { kind: 'derived', columns: [taken, given, made], isOwn: name === 'self-consumption' };
  const column = columnOf(name);
  return column < 0 || isDerived ? UNKNOWN : { kind: 'known', column };
}

function figureOf(terms: FigureTerms, name: string): Omit<QuickFigure, 'column'> {
  const { plan, period } = terms;
  const amount = (of: keyof QuickAmounts, denominator: number) =>
    ({ source: { kind: 'amount', of }, denominator }) as const;
  if (name === 'days') return { source: { kind: 'constant', value: periodDays(period) }, denominator: 1 };
  if (name === 'load') return { source: knownUnits(terms, 'sanctioned-load'), denominator: 1000 };
  if (name === FIGURE.units('billed')) return amount('billed', 1000);
  if (name === FIGURE.opening('credit')) return amount('opening', 1000);
  if (name === FIGURE.closing('credit')) return amount('closing', 1000);
  if (name === 'sum') return amount('sum', plan.grid);
  if (name === 'payable') return amount('payable', plan.payableGrid);
  if (name === 'rounding')
    return { source: { kind: 'rounding', times: plan.grid / plan.payableGrid }, denominator: plan.grid };
  if (ACCOUNT_LINES.includes(name)) return { source: { kind: 'constant', value: 0 }, denominator: 1 };
  if (name.startsWith('line.')) return linesOf(terms, name.slice('line.'.length));
  if (name.startsWith('units.'))
    return { source: knownUnits(terms, name.slice('units.'.length)), denominator: 1000 };
  return { source: UNKNOWN, denominator: 1 };
}

/** For each printed column the figure of a right bill that it is set beside. */
export const quickFigures = (terms: FigureTerms): readonly QuickFigure[] =>
  terms.names.printed.map((name, column) => ({ column, ...figureOf(terms, name) }));

/** An amount by its name: loads by name make no garbage, as one by a computed key does. */
function amountOf(amounts: QuickAmounts, of: keyof QuickAmounts): number {
  switch (of) {
    case 'opening':
      return amounts.opening;
    case 'closing':
      return amounts.closing;
    case 'billed':
      return amounts.billed;
    case 'due':
      return amounts.due;
    case 'sum':
      return amounts.sum;
    case 'payable':
      return amounts.payable;
  }
}

/** The sum of lines on the grid of the plan. */
function sumOfLines(lines: readonly LinePlace[], from: number): number {
  let sum = from;
  for (let index = 0; index < lines.length; index += 1) {
    const line = lines[index] as LinePlace;
    sum += (line.amounts[line.at] as number) * line.times;
  }
  return sum;
}

/** Own use or total use of one row; NaN where less was made than given. */
function derivedUnits(
  { columns, isOwn }: Extract<Source, { kind: 'derived' }>,
  known: readonly Float64Array[],
  row: number,
): number {
  const [taken, given, made] = columns.map((column) => (known[column] as Float64Array)[row] as number) as [
    number,
    number,
    number,
  ];
  return made < given ? NaN : isOwn ? made - given : taken + made - given;
}

/**
 * The numerator of a figure of one row; NaN: only the long way can say. Kept short: where it is not inlined, each number
 * that it gives is one for the garbage.
 */
function numeratorOf(
  source: Source,
  amounts: QuickAmounts,
  known: readonly Float64Array[],
  row: number,
): number {
  switch (source.kind) {
    case 'amount':
      return amountOf(amounts, source.of);
    case 'lines':
      return sumOfLines(source.lines, source.isSurplus ? amounts.due : 0);
    case 'known':
      return (known[source.column] as Float64Array)[row] as number;
    case 'constant':
      return source.value;
    case 'rounding':
      return amounts.payable * source.times - amounts.sum;
    case 'derived':
      return derivedUnits(source, known, row);
    case 'unknown':
      return NaN;
  }
}

/** Whether `mantissa / 10 ** places` is `numerator / denominator`; false, too, where a double has no room to say. */
function isSame(mantissa: number, places: number, numerator: number, denominator: number): boolean {
  const tens = TENS[places] as number;
  if (tens === denominator) return mantissa === numerator;
  const [own, other] = [mantissa * denominator, numerator * tens];
  return own === other && Math.abs(own) <= LARGEST_WHOLE;
}

/** Whether every figure that a row prints is that of the right bill. */
export function printsRight(
  figures: readonly QuickFigure[],
  amounts: QuickAmounts,
  { known, printed }: { readonly known: readonly Float64Array[]; readonly printed: readonly PrintedColumn[] },
  row: number,
): boolean {
  for (let index = 0; index < figures.length; index += 1) {
    const { column, source, denominator } = figures[index] as QuickFigure;
    const { mantissas, places } = printed[column] as PrintedColumn;
    const mantissa = mantissas[row] as number;
    // Not printed: NaN is not itself.
    if (mantissa !== mantissa) continue;
    const numerator = numeratorOf(source, amounts, known, row);
    if (!isSame(mantissa, places[row] as number, numerator, denominator)) return false;
  }
  return true;
}
