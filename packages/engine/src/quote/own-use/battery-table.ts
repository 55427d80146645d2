import { daysInMonth, periodDays, type Period } from '../../quantity/index.ts';
import { BatteryMonths } from './battery-month.ts';
import type { BatterySource, BatteryTerms } from './battery-source.ts';
import type { ProfileMonth } from './profile.ts';

/** Levels of use, and of generation, between none and those of the first year. */
const LEVELS = 16;
/** Levels of a table: up to four times the first year. */
const SIZE = 4 * LEVELS;
/** A year whose February has 28 days. */
const PLAIN_YEAR = 2025;
/** The first two values of a level; after them those of time blocks, then those of measures. */
const [DELIVERED, KEPT, BLOCKS] = [0, 1, 2];

/** A calendar month from 0 on, and what is made and used in it. */
export interface CalendarUnits {
  readonly calendar: number;
  /** A February may have 29. */
  readonly days: number;
  readonly made: number;
  readonly used: number;
}

type Month = Pick<CalendarUnits, 'calendar' | 'days'>;

/** Units of a month with as much more or less than in the first year as another month has. */
const alike = (units: number, own: number | undefined, other: number | undefined): number =>
  own === undefined || own === 0 ? 0 : (units / own) * (other ?? 0);

/**
 * Run a battery through a calendar month that follows on the one before it with as much more or less use and
 * generation, so that it begins with what the battery then holds.
 */
export function runAfterOne(
  months: BatteryMonths,
  { profile, use, generation }: BatteryTerms,
  { calendar, days, made, used }: CalendarUnits,
): void {
  const before = (calendar + 11) % 12;
  months.dispatched.content = 0;
  months.run(profile.months[before] as ProfileMonth, {
    made: alike(made, generation[calendar], generation[before]),
    used: alike(used, use[calendar], use[before]),
    days: daysInMonth(PLAIN_YEAR, before + 1),
  });
  months.run(profile.months[calendar] as ProfileMonth, { made, used, days });
}

/**
 * What a battery does in a month by tables over what is made and used in it: for random draws, where running every
 * interval of a thousand lives would take seconds.
 *
 * Each calendar month is run where levels of use and generation meet, when it is first asked for, and between levels
 * both are taken as straight lines; beyond the last level the month itself is run. A month follows on the one before
 * it with as much more or less of both: what the battery holds at the beginning can be another than in the life, and
 * in the first month of the life it is not empty.
 */
export class BatteryTable implements BatterySource {
  delivered = 0;
  kept = 0;
  readonly taken: Float64Array;
  readonly given: Float64Array;
  readonly met: Float64Array;
  private readonly terms: BatteryTerms;
  private readonly months: BatteryMonths;
  private readonly tables: Float64Array[] = [];
  private readonly width: number;
  private readonly values: Float64Array;

  constructor(terms: BatteryTerms) {
    this.terms = terms;
    this.months = new BatteryMonths(terms.battery, terms.profile);
    const { length } = this.months.dispatched.taken;
    const windows = BLOCKS + 2 * length;
    this.width = windows + this.months.met.length;
    this.values = new Float64Array(this.width);
    this.taken = this.values.subarray(BLOCKS, BLOCKS + length);
    this.given = this.values.subarray(BLOCKS + length, windows);
    this.met = this.values.subarray(windows);
  }

  begin(): void {
    // Each month follows on the one before it, whatever was asked for last.
  }

  run(at: number, made: number, used: number): void {
    const { terms, values } = this;
    const calendar = (terms.offset + at) % 12;
    const days = periodDays(terms.periods[at] as Period);
    const row = made / levelOf(terms.generation[calendar]);
    const column = used / levelOf(terms.use[calendar]);
    if (row < SIZE && column < SIZE) this.between({ calendar, days }, row, column);
    else this.runInto(values, 0, { calendar, days, made, used });
    this.delivered = values[DELIVERED] as number;
    this.kept = values[KEPT] as number;
  }

  /** Straight lines between the four levels around. */
  private between(month: Month, row: number, column: number): void {
    const { values, width } = this;
    const [low, left] = [Math.floor(row), Math.floor(column)];
    const [up, right] = [row - low, column - left];
    const table = this.tableOf(month);
    const place = (more: number, further: number): number =>
      this.cell(table, month, low + more, left + further);
    const [a, b, c, d] = [place(0, 0), place(0, 1), place(1, 0), place(1, 1)];
    for (let at = 0; at < width; at += 1) {
      const under = (table[a + at] as number) * (1 - right) + (table[b + at] as number) * right;
      const over = (table[c + at] as number) * (1 - right) + (table[d + at] as number) * right;
      values[at] = under * (1 - up) + over * up;
    }
  }

  private tableOf({ calendar, days }: Month): Float64Array {
    // A February of 29 days has a table of its own.
    const at = days === 29 ? 12 : calendar;
    const known = this.tables[at];
    if (known !== undefined) return known;
    const table = new Float64Array((SIZE + 1) * (SIZE + 1) * this.width).fill(NaN);
    this.tables[at] = table;
    return table;
  }

  /** The place of a level, which is run when it is asked for first. */
  private cell(table: Float64Array, month: Month, row: number, column: number): number {
    const from = (row * (SIZE + 1) + column) * this.width;
    if (Number.isNaN(table[from])) {
      const made = row * levelOf(this.terms.generation[month.calendar]);
      const used = column * levelOf(this.terms.use[month.calendar]);
      this.runInto(table, from, { ...month, made, used });
    }
    return from;
  }

  private runInto(into: Float64Array, from: number, units: CalendarUnits): void {
    const { months } = this;
    runAfterOne(months, this.terms, units);
    const { taken, given } = months.dispatched;
    into[from + DELIVERED] = months.delivered;
    into[from + KEPT] = months.kept;
    into.set(taken, from + BLOCKS);
    into.set(given, from + BLOCKS + taken.length);
    into.set(months.met, from + BLOCKS + 2 * taken.length);
  }
}

/** Units between two levels; of a month without any, one thousandth. */
function levelOf(units: number | undefined): number {
  return units === undefined || units === 0 ? 1 : units / LEVELS;
}
