import {
  addDays,
  blockClock,
  calendarDay,
  dayNumber,
  intervalRowsToColumns,
  keepIntervals,
  prepareTariff,
  measureIntervalYear,
  type IntervalColumns,
  type IntervalPeriod,
  type IntervalRow,
  type IntervalRules,
  type NettingWindow,
  type Outcome,
  type Period,
  type UnitsMonth,
  type PreparedTariff,
  type BlockClock,
} from '@unitbook/engine';
import { makeRandom } from '../support/random.ts';
import { floatBills, floatRows, floatYear, type FloatRow, type FloatYear } from './interval-float.ts';
import { blockTariff, TIME_BLOCKS } from './interval-tariff.ts';
import { measure, type Subject } from './measure.ts';

const DAYS = 365;
const FIRST_DAY = dayNumber({ year: 2025, month: 1, day: 1 });
const ROWS = DAYS * 96;

const NETTING = { of: 'import', less: 'export' } as const;
const WINDOWS: readonly NettingWindow[] = [
  { id: 'interval', ...NETTING, within: 'interval' },
  { id: 'hour', ...NETTING, within: 'hour' },
  { id: 'noon', ...NETTING, within: 'day-hours', from: '10:00', to: '16:00' },
];

const MONTHS: readonly Period[] = Array.from({ length: 12 }, (_, month) => ({
  from: dayNumber({ year: 2025, month: month + 1, day: 1 }),
  to: month === 11 ? addDays(FIRST_DAY, DAYS) : dayNumber({ year: 2025, month: month + 2, day: 1 }),
}));

/** A year of 15-minute intervals in every form that a subject wants. */
interface YearData {
  readonly columns: IntervalColumns;
  readonly rows: readonly IntervalRow[];
  readonly float: FloatYear;
  readonly floatRows: readonly FloatRow[];
}

function makeYear(): YearData {
  const random = makeRandom(11);
  const column = (most: number): Int32Array => Int32Array.from({ length: ROWS }, () => random.below(most));
  const [taken, given, made] = [column(900), column(700), column(1100)];
  const starts = Int32Array.from({ length: ROWS }, (_, row) => FIRST_DAY * 1440 + row * 15);
  const inKwh = (values: Int32Array): Float64Array => Float64Array.from(values, (value) => value / 1000);
  const rows = Array.from(starts, (start, row) => ({
    start,
    import: taken[row] ?? 0,
    export: given[row] ?? 0,
    generation: made[row] ?? 0,
  }));
  return {
    columns: { starts, minutes: 15, import: taken, export: given, generation: made },
    rows,
    float: {
      starts,
      taken: inKwh(taken),
      given: inKwh(given),
      made: inKwh(made),
      months: Uint8Array.from({ length: DAYS }, (_, day) => calendarDay(addDays(FIRST_DAY, day)).month - 1),
      firstDay: FIRST_DAY,
    },
    floatRows: rows.map((row) => ({
      start: row.start,
      import: row.import / 1000,
      export: row.export / 1000,
      generation: row.generation / 1000,
    })),
  };
}

type Results = readonly Outcome<IntervalPeriod | null>[];

/** A number that depends on every sum. */
const checksum = (results: Results): number =>
  results.reduce((sum, { value }) => sum + (value?.totals.import ?? NaN) + (value?.totals.export ?? NaN), 0);

const rulesOf = (windows: readonly NettingWindow[]): IntervalRules => ({
  clock: blockClock(TIME_BLOCKS, 15),
  windows,
});

const repeated =
  (once: () => number) =>
  (times: number): number => {
    let sum = 0;
    for (let at = 0; at < times; at += 1) sum += once();
    return sum;
  };

/** Twelve bills by time block, with what solar saved left out. */
function billsOf(tariff: PreparedTariff, columns: IntervalColumns, clock: BlockClock): readonly UnitsMonth[] {
  const { value, findings } = keepIntervals({
    account: {},
    tariff,
    columns,
    periods: MONTHS,
    clock,
    withSavings: false,
  });
  if (findings.length > 0 || value.length < MONTHS.length) throw new Error(JSON.stringify(findings));
  return value;
}

const lastPayable = (months: readonly UnitsMonth[]): number =>
  (months.at(-1)?.bill.payable.numerator as number | undefined) ?? NaN;

/** A year of intervals to twelve bills. */
function billSubjects({ columns, rows, float, floatRows: floats }: YearData): readonly Subject[] {
  const tariff = prepareTariff(blockTariff());
  const clock = blockClock(TIME_BLOCKS, 15);
  const sums = new Float64Array(12 * 4 * 3);
  const payables = new Float64Array(12);
  const billed = (sum: () => void): number => {
    sum();
    floatBills(sums, payables);
    return payables[11] ?? NaN;
  };
  const fromRows = (): readonly UnitsMonth[] =>
    billsOf(tariff, intervalRowsToColumns(rows, 15), blockClock(TIME_BLOCKS, 15));
  return [
    { name: 'columns to bills, exact', run: repeated(() => lastPayable(billsOf(tariff, columns, clock))) },
    {
      name: 'columns to bills, float',
      run: repeated(() =>
        billed(() => {
          floatYear(float, sums);
        }),
      ),
    },
    { name: 'rows to bills, exact', run: repeated(() => lastPayable(fromRows())) },
    {
      name: 'rows to bills, float',
      run: repeated(() =>
        billed(() => {
          floatRows(floats, float.months, float.firstDay, sums);
        }),
      ),
    },
  ];
}

/** That both bill the same: rupees, which floats get right here. */
function checkSameBills({ columns, float }: YearData): void {
  const months = billsOf(prepareTariff(blockTariff()), columns, blockClock(TIME_BLOCKS, 15));
  const sums = new Float64Array(12 * 4 * 3);
  const payables = new Float64Array(12);
  floatYear(float, sums);
  floatBills(sums, payables);
  months.forEach(({ bill }, month) => {
    const { numerator, denominator } = bill.payable;
    if ((numerator as number) / denominator !== payables[month]) {
      throw new Error(`month ${String(month)}: ${String(numerator)} and ${String(payables[month])}`);
    }
  });
}

/** From columns the clock is there already, as a program has it; from rows it is made anew every time. */
function subjects({ columns, rows, float, floatRows: floats }: YearData): readonly Subject[] {
  const [plain, netted] = [rulesOf([]), rulesOf(WINDOWS)];
  const sums = new Float64Array(12 * 4 * 3);
  return [
    {
      name: 'columns, exact',
      run: repeated(() => checksum(measureIntervalYear(columns, MONTHS, plain))),
    },
    {
      name: 'columns, three nettings',
      run: repeated(() => checksum(measureIntervalYear(columns, MONTHS, netted))),
    },
    {
      name: 'columns, float loop',
      run: repeated(() => {
        floatYear(float, sums);
        return sums[0] ?? NaN;
      }),
    },
    {
      name: 'rows, exact',
      run: repeated(() =>
        checksum(measureIntervalYear(intervalRowsToColumns(rows, 15), MONTHS, rulesOf([]))),
      ),
    },
    {
      name: 'rows, float loop',
      run: repeated(() => {
        floatRows(floats, float.months, float.firstDay, sums);
        return sums[0] ?? NaN;
      }),
    },
  ];
}

/** That both sum the same: float sums are near the exact ones, and how many are not those. */
function checkSameSums({ columns, float }: YearData): { readonly sums: number; readonly floatWrong: number } {
  const results = measureIntervalYear(columns, MONTHS, rulesOf([]));
  const sums = new Float64Array(12 * 4 * 3);
  floatYear(float, sums);
  let floatWrong = 0;
  results.forEach(({ value }, month) => {
    value?.blocks.forEach((block, at) => {
      const exact = [block.import ?? NaN, block.export ?? NaN, block.generation ?? NaN];
      exact.forEach((wattHours, channel) => {
        const kilowattHours = sums[(month * 4 + at) * 3 + channel] ?? NaN;
        if (Math.round(kilowattHours * 1000) !== wattHours) {
          throw new Error(`month ${String(month)}: ${String(kilowattHours)} and ${String(wattHours)}`);
        }
        if (kilowattHours !== wattHours / 1000) floatWrong += 1;
      });
    });
  });
  return { sums: sums.length, floatWrong };
}

/** Bytes beyond the data that twelve bills from a year ask for, once the program is warm. */
function memoryBeyond({ columns }: YearData): number {
  const tariff = prepareTariff(blockTariff());
  const clock = blockClock(TIME_BLOCKS, 15);
  for (let at = 0; at < 500; at += 1) billsOf(tariff, columns, clock);
  const samples = Array.from({ length: 15 }, () => {
    const before = process.memoryUsage();
    const months = billsOf(tariff, columns, clock);
    const after = process.memoryUsage();
    if (Number.isNaN(lastPayable(months))) throw new Error('no bills');
    return after.heapUsed + after.external - before.heapUsed - before.external;
  });
  // A collection in between makes a sample smaller than it was, even negative: the middle one is meant.
  return samples.sort((a, b) => a - b)[samples.length >> 1] ?? NaN;
}

/** The speed of a year of 15-minute intervals into twelve months and four blocks. */
export interface IntervalReport {
  /** Nanoseconds for a year. */
  readonly columns: { readonly exact: number; readonly netted: number; readonly float: number };
  readonly rows: { readonly exact: number; readonly float: number };
  /** From the data to twelve bills by time block. */
  readonly bills: {
    readonly columns: { readonly exact: number; readonly float: number };
    readonly rows: { readonly exact: number; readonly float: number };
  };
  /** Exact ÷ float loop. */
  readonly columnsRatio: number;
  readonly rowsRatio: number;
  /** Bytes allocated beyond the data, without the data's own. */
  readonly bytesBeyondData: number;
  /** Of so many float sums, so many are not the exact one. */
  readonly sums: number;
  readonly floatWrong: number;
}

/**
 * Measure a year of 15-minute intervals with three channels into twelve months × four blocks, exact
 * against a plain float loop, from columns and from row objects.
 */
export function measureIntervalSpeed(): IntervalReport {
  const year = makeYear();
  const same = checkSameSums(year);
  checkSameBills(year);
  const bytesBeyondData = memoryBeyond(year);
  const timings = measure([...subjects(year), ...billSubjects(year)]);
  const of = (name: string): number => timings.get(name) ?? NaN;
  const columns = {
    exact: of('columns, exact'),
    netted: of('columns, three nettings'),
    float: of('columns, float loop'),
  };
  const rows = { exact: of('rows, exact'), float: of('rows, float loop') };
  const pair = (name: string) => ({ exact: of(`${name}, exact`), float: of(`${name}, float`) });
  return {
    columns,
    rows,
    bills: { columns: pair('columns to bills'), rows: pair('rows to bills') },
    columnsRatio: columns.exact / columns.float,
    rowsRatio: rows.exact / rows.float,
    bytesBeyondData,
    ...same,
  };
}
