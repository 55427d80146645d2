import {
  addQuotients,
  shareOut,
  subtractQuotients,
  periodDays,
  type Figure,
  type Path,
  type Period,
  type Quotient,
} from './quantity/index.ts';
import type { TariffDocument } from './tariff/index.ts';
import { closeBill, type Bill, type BillLine, type PreparedTariff } from './bill/index.ts';
import type { Given } from './read-units.ts';

type TrueUpRule = NonNullable<TariffDocument['trueUp']>;

/** Units that are counted, and so are spread; powers and classes stay what they are. */
const COUNTED = ['kWh', 'kVAh', 'count'];

/** What each of several periods gets of a whole, by the rule of the tariff. */
function sharesOf(figure: Figure, periods: readonly Period[], rule: TrueUpRule): readonly number[] {
  const weights = periods.map((period) => (rule.spread === 'by-days' ? periodDays(period) : 1));
  const step = rule.units === 'whole' && (figure.numerator as number) % 1000 === 0 ? 1000 : 1;
  return shareOut(figure.numerator as number, weights, step);
}

/**
 * Spread what was read at last over the periods that were billed provisionally.
 *
 * @param given    quantities of the whole
 * @param periods  in order of time
 * @returns        the quantities of each period; their sum is the whole, to the thousandth
 */
export function spreadUnits(given: Given, periods: readonly Period[], rule: TrueUpRule): readonly Given[] {
  const spread = periods.map((): Given => ({}));
  for (const [name, figure] of Object.entries(given)) {
    const shares = COUNTED.includes(figure.unit) ? sharesOf(figure, periods, rule) : null;
    spread.forEach((one, index) => {
      one[name] = shares === null ? figure : shareFigure(figure, shares[index] ?? 0, rule);
    });
  }
  return spread;
}

function shareFigure(figure: Figure, numerator: number, { clause }: TrueUpRule): Figure {
  return {
    ...figure,
    label: `${figure.label}, share of what was read at last`,
    numerator,
    operation: 'given',
    inputs: [],
    clause,
  };
}

const money = (
  words: Pick<Figure, 'id' | 'label' | 'clause' | 'operation'>,
  value: Quotient,
  inputs: readonly Figure[],
): Figure => ({
  ...words,
  unit: 'money',
  numerator: value.numerator,
  denominator: value.denominator,
  inputs,
  parameters: [],
  rounding: null,
});

interface LineSums {
  readonly id: string;
  readonly label: string;
  readonly counts: boolean;
  readonly version: string;
  readonly right: Figure[];
  readonly billed: Figure[];
}

/** Lines of several bills, by their id and whether they count, in the order in which they first stand. */
function sumLines(right: readonly Bill[], billed: readonly Bill[]): readonly LineSums[] {
  const sums = new Map<string, LineSums>();
  const take = (key: 'right' | 'billed', { figure, counts, version }: BillLine): void => {
    const { id, label } = figure;
    const name = `${id} ${String(counts)}`;
    const at = sums.get(name) ?? { id, label, counts, version, right: [], billed: [] };
    at[key].push(figure);
    sums.set(name, at);
  };
  for (const bill of right) for (const line of bill.lines) take('right', line);
  for (const bill of billed) for (const line of bill.lines) take('billed', line);
  return [...sums.values()];
}

function trueUpLine({ id, label, counts, version, right, billed }: LineSums, clause: string): BillLine {
  const should = {
    id: `${id}-right`,
    label: `${label}, as it should have been`,
    clause,
    operation: 'sum',
  } as const;
  const was = { id: `${id}-billed`, label: `${label}, as billed`, clause, operation: 'sum' } as const;
  const [own, before] = [addQuotients(right), addQuotients(billed)];
  const inputs = [money(should, own, right), money(was, before, billed)];
  const words = { id, label, clause, operation: 'difference' } as const;
  return { figure: money(words, subtractQuotients(own, before), inputs), counts, version };
}

/**
 * The bill that sets provisional bills right: line by line, what they should have been less what they
 * were. A fixed charge stands in both, and so is charged once.
 *
 * @param right   bills of the periods with the units read at last
 * @param billed  the provisional bills
 */
export function trueUpBill(
  prepared: PreparedTariff,
  {
    right,
    billed,
    period,
    path,
  }: {
    readonly right: readonly Bill[];
    readonly billed: readonly Bill[];
    readonly period: Period;
    readonly path: Path;
  },
) {
  const clause = prepared.tariff.document.trueUp?.clause ?? '';
  const lines = sumLines(right, billed).map((sums) => trueUpLine(sums, clause));
  return closeBill(prepared, { period, quantities: {}, payments: [], path }, lines);
}
