import {
  calendarDay,
  dayNumber,
  daysInMonth,
  decimalToWhole,
  keepPeriods,
  parseDay,
  dayText,
  type AmountsInput,
  type DayNumber,
  type Period,
  type Tariff,
  type WorkedCase,
} from '@unitbook/engine';
import { EXAMPLE_FOLDERS, readFolder } from '../published/example-folders.ts';

/** A year of billing periods under an example tariff, with the units of its first case. */
export interface ExampleYear {
  readonly name: string;
  readonly tariff: Tariff;
  readonly input: AmountsInput;
  /** Whole thousandths, a row for each period. */
  readonly units: readonly number[];
}

const MONTHS = 12;

function monthsAfter(day: DayNumber, months: number): DayNumber {
  const { year, month, day: date } = calendarDay(day);
  const at = year * 12 + month - 1 + months;
  const later = { year: Math.floor(at / 12), month: (at % 12) + 1 };
  return dayNumber({ ...later, day: Math.min(date, daysInMonth(later.year, later.month)) });
}

const yearFrom = (first: DayNumber): readonly Period[] =>
  Array.from({ length: MONTHS }, (_, at) => ({
    from: monthsAfter(first, at),
    to: monthsAfter(first, at + 1),
  }));

/** What a column holds where a period of the case leaves it out. */
const FILLERS: Readonly<Record<string, string>> = { import: '300', export: '120', generation: '250' };

function unitsOf({ periods }: WorkedCase, names: readonly string[]): readonly number[] {
  return Array.from({ length: MONTHS }, (_, at) => periods[at % periods.length]).flatMap((one) =>
    names.map((name) => {
      const text =
        one?.quantities[name] ?? periods.find((other) => name in other.quantities)?.quantities[name];
      return decimalToWhole(text ?? FILLERS[name] ?? '0', 3);
    }),
  );
}

/** Whether every month can be billed with these units. */
function isBillable({ tariff, input, units }: ExampleYear): boolean {
  const { names, account } = input;
  const periods = input.periods.map(({ from, to }, row) => ({
    from: dayText(from),
    to: dayText(to),
    quantities: Object.fromEntries(
      names.map((name, column) => [name, String((units[row * names.length + column] ?? 0) / 1000)]),
    ),
  }));
  const { value } = keepPeriods({ account, tariff, periods, withSavings: false });
  return value.length === MONTHS;
}

/** The first year, from that of a case back, that a tariff covers; null where it covers none. */
function yearOf(name: string, tariff: Tariff, one: WorkedCase): ExampleYear | null {
  const first = parseDay(one.periods[0]?.from ?? '') ?? (0 as DayNumber);
  const names = [...new Set(one.periods.flatMap(({ quantities }) => Object.keys(quantities)))];
  const units = unitsOf(one, names);
  for (let back = 0; back < MONTHS; back += 1) {
    const periods = yearFrom(monthsAfter(first, -back));
    const year = { name, tariff, input: { account: one.account ?? {}, periods, names }, units };
    if (isBillable(year)) return year;
  }
  return null;
}

/** The years of all example tariffs that cover one, and the names of those that do not. */
export function exampleYears(): {
  readonly years: readonly ExampleYear[];
  readonly without: readonly string[];
} {
  const years: ExampleYear[] = [];
  const without: string[] = [];
  for (const folder of EXAMPLE_FOLDERS) {
    const { tariff, cases } = readFolder(folder);
    const name = `${folder.country}/${folder.name}`;
    const first = cases?.cases[0];
    const year = tariff === null || first === undefined ? null : yearOf(name, tariff, first);
    if (year === null) without.push(name);
    else years.push(year);
  }
  return { years, without };
}
