import { MomentCell } from './moment-cell.ts';
import type { TablePlan } from './plan.ts';
import type { Report, TableRow } from './table-row.ts';

const DATES = {
  'year-month-day': 'a date from 1980 to 2199 with the year first, such as 2025-05-01',
  'day-month-year': 'a date from 1980 to 2199 with the day first, such as 1/5/2025',
  'month-day-year': 'a date from 1980 to 2199 with the month first, such as 5/1/2025',
} as const;

const DAY_MINUTES = '1440';

/**
 * Minutes east of UTC of a clock with a fixed offset; null for another.
 *
 * @example
 * fixedOffset('-03:30') //=> -210
 * fixedOffset('local') //=> null
 */
export function fixedOffset(clock: string): number | null {
  if (clock === 'utc') return 0;
  const [, sign, hours = '', minutes = ''] = /^([+-])(\d\d):(\d\d)$/.exec(clock) ?? [];
  if (sign === undefined) return null;
  const size = Number.parseInt(hours, 10) * 60 + Number.parseInt(minutes, 10);
  return sign === '-' ? 0 - size : size;
}

/** What was expected of the offset in a cell. */
function offsetExpected(clock: string): string {
  if (clock === 'in-text') return 'a time with its offset from UTC behind it, such as +02:00 or Z';
  if (clock === 'local') return 'a local time without an offset, as set up for this table';
  return `a time by ${clock === 'utc' ? 'UTC' : clock}, as set up for this table`;
}

/** Reads the date and the time of rows, and says what is wrong with them. */
export class RowMoment {
  /** What was read last. */
  readonly cell: MomentCell;
  private readonly plan: TablePlan;
  private readonly report: Report;
  /** The offset that a cell may state, besides none; null where it has to state one. */
  private readonly fixed: number | null;
  private readonly isInText: boolean;
  private readonly isWhole: boolean;
  private readonly needsTime: boolean;

  constructor(plan: TablePlan, report: Report) {
    const { clock, dateOrder, holds, minutes } = plan.layout;
    this.cell = new MomentCell(dateOrder);
    this.plan = plan;
    this.report = report;
    this.fixed = fixedOffset(clock);
    this.isInText = clock === 'in-text';
    this.isWhole = holds === 'intervals';
    this.needsTime = holds === 'intervals' && minutes !== DAY_MINUTES;
  }

  /** Read the time of a row into `cell`. @returns whether it has one. */
  read(row: TableRow): boolean {
    const { plan } = this;
    if (plan.dateTime >= 0) {
      const fault = this.cell.readBoth(row.cells[plan.dateTime] ?? '');
      return fault === null ? this.fits(row, plan.dateTime) : this.refuse(fault, row, plan.dateTime);
    }
    const dateFault = this.cell.readDay(row.cells[plan.date] ?? '');
    if (dateFault !== null) return this.refuse(dateFault, row, plan.date);
    if (plan.time < 0) return this.fits(row, plan.date);
    const timeFault = this.cell.readTime(row.cells[plan.time] ?? '');
    return timeFault === null ? this.fits(row, plan.time) : this.refuse(timeFault, row, plan.time);
  }

  private refuse(code: 'table/bad-date' | 'table/bad-time', row: TableRow, at: number): false {
    this.report(code, row, at, { expected: DATES[this.plan.layout.dateOrder] });
    return false;
  }

  private fits(row: TableRow, at: number): boolean {
    const { cell } = this;
    if (cell.minute === null) {
      if (this.needsTime)
        this.report('table/time-missing', row, at, { minutes: this.plan.layout.minutes ?? '' });
      return !this.needsTime;
    }
    if (cell.hasSeconds && this.isWhole) {
      this.report('table/part-of-minute', row, at);
      return false;
    }
    const isRight = cell.offset === null ? !this.isInText : this.isInText || cell.offset === this.fixed;
    if (!isRight) this.report('table/offset', row, at, { expected: offsetExpected(this.plan.layout.clock) });
    return isRight;
  }
}
