import {
  amountsOf,
  dayText,
  exactText,
  keepPeriods,
  prepareTariff,
  type AmountsInput,
  type Figure,
  type PreparedTariff,
  type Tariff,
  type UnitsMonth,
} from '@unitbook/engine';
import { thousandthsText } from '../random-scheme.ts';

/** Periods with their units, as both ways take them. */
export interface AmountsCase {
  readonly tariff: Tariff;
  readonly input: AmountsInput;
  /** Whole thousandths, a row for each period. */
  readonly units: readonly number[];
}

/** What came out, in words that are equal when the amounts are. */
export interface Told {
  readonly amounts: readonly string[];
  readonly findings: unknown;
}

const textOf = ({ numerator, denominator }: Pick<Figure, 'numerator' | 'denominator'>): string =>
  exactText(numerator, denominator);

const NOTHING = { numerator: 0, denominator: 1 };

function toldOf({ bill, ledgers, passbook }: UnitsMonth, columns: readonly string[]): string {
  const balances = columns.map((id) => {
    const own = ledgers.find((entry) => entry.id === id)?.closing;
    return `${id} ${textOf(own ?? (id === 'credit' ? passbook?.closing : undefined) ?? NOTHING)}`;
  });
  return [`payable ${textOf(bill.payable)}`, ...balances].join(', ');
}

/** The amounts as `keepPeriods` has them. */
export function keptAmounts({ tariff, input, units }: AmountsCase, columns: readonly string[]): Told {
  const { account, names } = input;
  const periods = input.periods.map(({ from, to }, row) => ({
    from: dayText(from),
    to: dayText(to),
    quantities: Object.fromEntries(
      names.map((name, column) => [name, thousandthsText(units[row * names.length + column] ?? 0)]),
    ),
  }));
  const { value, findings } = keepPeriods({ account, tariff, periods, withSavings: false });
  return { amounts: value.map((month) => toldOf(month, columns)), findings };
}

/** The amounts without figures; after other units, whose traces must not show. */
export function quickAmounts(one: AmountsCase, prepared: PreparedTariff = prepareTariff(one.tariff)) {
  const amounts = amountsOf(prepared, one.input);
  const result = amounts.makeResult();
  const columns = amounts.columns.map(({ id }) => id);
  const units = Float64Array.from(one.units);
  amounts.run(Float64Array.from(units).reverse(), result);
  const findings = amounts.run(units, result);
  const told = Array.from({ length: result.count }, (_, at) => {
    const balances = columns.map((id, column) => {
      const place = at * columns.length + column;
      const text = exactText(result.balances[place] ?? NaN, result.balanceGrids[place] ?? NaN);
      return `${id} ${text}`;
    });
    const payable = exactText(result.payables[at] ?? NaN, result.payableGrids[at] ?? NaN);
    return [`payable ${payable}`, ...balances].join(', ');
  });
  return { told: { amounts: told, findings }, columns, isQuick: result.isQuick };
}
