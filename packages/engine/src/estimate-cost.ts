import {
  addQuotients,
  parseDay,
  subtractQuotients,
  type DayNumber,
  type Outcome,
  type Period,
  type Quotient,
} from './quantity/index.ts';
import {
  editRow,
  readingByDays,
  readingText,
  readReadings,
  readTypedDay,
  shownBy,
  withoutEdits,
  type Account,
  type ReadingPair,
  type ReadingRow,
  type Register,
  type RegisterId,
} from './readings/index.ts';
import { keepBook, type Book, type BookInput, type BookMonth } from './book.ts';

/** One bill with an estimate at an end of its period: as printed, and as it should have been. */
export interface EstimatedMonth {
  readonly period: Period;
  readonly import: Compared;
  readonly export: Compared;
  readonly payable: Compared;
}

/** A figure by the estimate and by the reading that takes its place. */
export interface Compared {
  readonly estimated: Quotient;
  readonly right: Quotient;
  /** By the estimate less right: above 0 to the cost of the household, for units taken and money. */
  readonly difference: Quotient;
}

/** What a run of estimated readings cost, from the actual reading before it to the one after it. */
export interface EstimateCost {
  readonly period: Period;
  readonly months: readonly EstimatedMonth[];
  /** Over all bills of the run. */
  readonly import: Compared;
  readonly export: Compared;
  readonly payable: Compared;
  /** Credit in units after the last bill of the run; null where the tariff keeps no such credit. */
  readonly credit: Compared | null;
  /** Whether every bill of the run could be made in both ways. */
  readonly isWhole: boolean;
  /** Whether what is right is only a share by days: nobody read the meter at the estimate. */
  readonly isByDays: boolean;
}

function compare(estimated: Quotient, right: Quotient): Compared {
  return { estimated, right, difference: subtractQuotients(estimated, right) };
}

function compareSums(pairs: readonly Compared[]): Compared {
  return compare(
    addQuotients(pairs.map(({ estimated }) => estimated)),
    addQuotients(pairs.map(({ right }) => right)),
  );
}

const isEstimate = ({ status, estimated = [] }: ReadingRow): boolean =>
  status === 'estimated' || estimated.length > 0;

/** What one register would show on a day, were its units of the pair shared by days. */
function shareOf(register: Register, pair: ReadingPair, day: DayNumber): string | null {
  const [before, shown] = [shownBy(pair.from, register), shownBy(pair.to, register)];
  if (before === null || shown === null) return null;
  const after = shown < before ? shown + register.fullScale : shown;
  const known = { before, after, from: pair.from.day, to: pair.to.day };
  return readingText(readingByDays(register, known, day) % register.fullScale);
}

/** An estimated row with every estimate shared by days. */
function shareRow(row: ReadingRow, pair: ReadingPair): ReadingRow {
  const day = readTypedDay(row.date)?.day ?? parseDay(row.date);
  if (day === null || pair.stretches?.some(({ beganAnew }) => beganAnew) === true) return row;
  if (day <= pair.from.day || day >= pair.to.day) return row;
  const estimated = (id: RegisterId): boolean =>
    row.status === 'estimated' || (row.estimated ?? []).includes(id);
  return pair.span.counted
    .filter(({ id }) => estimated(id))
    .reduce((shared, register) => {
      const value = shareOf(register, pair, day);
      return value === null ? shared : editRow(shared, { register: register.key, value, method: 'by-days' });
    }, row);
}

/** The rows with every estimate that nobody read the meter for shared by days between actual readings. */
function sharedByDays(rows: readonly ReadingRow[], account: Account): readonly ReadingRow[] {
  const actual = rows.flatMap((row, index) => (isEstimate(row) ? [] : [{ row, index }]));
  const read = readReadings(
    actual.map(({ row }) => row),
    account,
  );
  const shared = [...rows];
  for (const pair of read.value) {
    const [from = 0, to = 0] = [pair.from, pair.to].map(({ path }) =>
      typeof path[1] === 'number' ? actual[path[1]]?.index : undefined,
    );
    const isChanged = rows.slice(from + 1, to).some(({ event }) => event !== undefined);
    for (let at = from + 1; at < to && !isChanged; at += 1)
      shared[at] = shareRow(rows[at] as ReadingRow, pair);
  }
  return shared;
}

function monthOf(estimated: BookMonth, right: BookMonth): EstimatedMonth {
  return {
    period: estimated.energy.period,
    import: compare(estimated.energy.import, right.energy.import),
    export: compare(estimated.energy.export, right.energy.export),
    payable: compare(estimated.bill.payable, right.bill.payable),
  };
}

const wasEstimated = ({ edits = [] }: ReadingRow): boolean =>
  edits.some((edit) => edit.wasEstimated === true);

/** Runs of months from an actual reading to the next, with an estimate in between. */
function runsOf(rows: readonly ReadingRow[], months: number): readonly (readonly number[])[] {
  const usual = rows.filter(({ event }) => event === undefined);
  const estimates = usual.map((row) => isEstimate(row) || wasEstimated(row));
  const runs: number[][] = [];
  for (let index = 0; index < months; index += 1) {
    if (estimates[index] === true && runs.length > 0) runs.at(-1)?.push(index);
    else if (estimates[index + 1] === true) runs.push([index]);
  }
  return runs;
}

/** What a run of bills is billed by: the books, and the rows that close its periods. */
interface Billed {
  readonly estimated: Book;
  readonly right: Book;
  readonly rows: readonly ReadingRow[];
}

function costOf(run: readonly number[], { estimated, right, rows }: Billed): EstimateCost | null {
  const both = run.filter((at) => estimated.months[at] !== undefined && right.months[at] !== undefined);
  const months = both.map((at) => monthOf(estimated.months[at] as BookMonth, right.months[at] as BookMonth));
  const [first, last, at = 0] = [months[0], months.at(-1), both.at(-1)];
  if (first === undefined || last === undefined) return null;
  const [printed, own] = [estimated.months[at]?.passbook, right.months[at]?.passbook];
  const usual = rows.filter(({ event }) => event === undefined);
  return {
    period: { from: first.period.from, to: last.period.to },
    months,
    isWhole: months.length === run.length,
    import: compareSums(months.map((month) => month.import)),
    export: compareSums(months.map((month) => month.export)),
    payable: compareSums(months.map((month) => month.payable)),
    credit: printed == null || own == null ? null : compare(printed.closing, own.closing),
    isByDays: run.some((month) => isEstimate(usual[month + 1] ?? BLANK)),
  };
}

const BLANK: ReadingRow = { date: '' };

/**
 * What estimated readings cost: every run of bills with an estimate in it, billed once by the estimate and
 * once by what took its place: a photo of the meter, or a share by days where nobody read it.
 *
 * @param input  account, tariff and readings; an estimate that was replaced is among the edits of its row
 * @returns      a cost for each run, over the bills that can be made in both ways: an estimate above the
 *               next reading leaves no bill after it; and the findings of the readings as they stand
 */
export function estimateCosts(input: BookInput): Outcome<readonly EstimateCost[]> {
  const rows = sharedByDays(input.readings, input.account);
  const right = keepBook({ ...input, readings: rows }).value;
  const printed = rows.map((row) => (wasEstimated(row) ? withoutEdits(row) : row));
  const estimated = keepBook({ ...input, readings: printed });
  const billed = { estimated: estimated.value, right, rows };
  const value = runsOf(rows, right.months.length).flatMap((run) => costOf(run, billed) ?? []);
  return { value, findings: estimated.findings };
}
