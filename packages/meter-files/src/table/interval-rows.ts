import type { MeterSink } from '../stream.ts';
import { IntervalRun, LONGEST_RUN, type IntervalValue } from './interval-run.ts';
import { QUALITY, type TablePlan, type ValuePlan } from './plan.ts';
import { fixedOffset, RowMoment } from './row-moment.ts';
import { Groups, streamOf } from './streams.ts';
import type { Report, TableRow } from './table-row.ts';
import { ValueCell } from './value-cell.ts';
import { ZoneDays } from './zone-days.ts';
import { startOnZone, type RowOrder } from './zone-moments.ts';

const DAY = 1440;
/** Values that are held before they are all handed on, where a table has so many streams. */
const MOST_HELD = 64 * LONGEST_RUN;

interface Group extends RowOrder {
  readonly runs: readonly IntervalRun[];
}

/** The offset of the clock of the intervals of a layout: 0 where they are told in UTC, else null. */
export function intervalOffset({ clock, zone, minutes }: TablePlan['layout']): 0 | null {
  if (fixedOffset(clock) !== null) return 0;
  // Days by a clock that changes have 23 to 25 hours: they follow each other on the local clock only.
  if (minutes === String(DAY)) return null;
  return clock === 'in-text' || zone !== undefined ? 0 : null;
}

/** Reads the rows of a table of intervals. */
export class IntervalRows {
  private readonly plan: TablePlan;
  private readonly report: Report;
  private readonly moment: RowMoment;
  private readonly cell: ValueCell;
  private readonly groups: Groups<Group>;
  private readonly minutes: number;
  private readonly back: number;
  /** Minutes east of UTC by which all times are moved to UTC. */
  private readonly offset: number;
  private readonly zone: ZoneDays | null;
  private readonly takesOffset: boolean;
  private readonly value: IntervalValue = { start: 0, line: 0, whole: NaN, places: 0, quality: 0 };
  private held = 0;

  constructor(plan: TablePlan, report: Report, sink: MeterSink) {
    const { clock, zone, label, minutes = '' } = plan.layout;
    this.plan = plan;
    this.report = report;
    this.moment = new RowMoment(plan, report);
    this.cell = new ValueCell(plan, report);
    this.minutes = Number.parseInt(minutes, 10);
    this.back = label === 'end' ? this.minutes : 0;
    this.offset = fixedOffset(clock) ?? 0;
    this.takesOffset = clock === 'in-text' && this.minutes < DAY;
    this.zone = clock === 'local' && zone !== undefined && this.minutes < DAY ? new ZoneDays(zone) : null;
    this.groups = new Groups(plan, (point, meter) => ({
      previous: NaN,
      direction: 1,
      runs: plan.values.map(
        (value) => new IntervalRun(streamOf(value, point, meter), this.minutes, sink.intervals),
      ),
    }));
  }

  row(row: TableRow): void {
    if (!this.moment.read(row)) return;
    const group = this.groups.of(row);
    const start = this.startOf(row, group);
    if (start === null) return;
    const step = start - group.previous;
    // A step of more than a day is no sign: the same days may begin anew.
    if (step !== 0 && Math.abs(step) <= DAY) group.direction = step > 0 ? 1 : -1;
    group.previous = start;
    this.value.start = start;
    this.value.line = row.line;
    this.takeValues(row, group.runs);
  }

  end(): void {
    for (const { runs } of this.groups.all()) for (const run of runs) run.flush();
  }

  private startOf(row: TableRow, order: RowOrder): number | null {
    const { day, minute, offset } = this.moment.cell;
    const local = day * DAY + (minute ?? 0);
    if (this.zone === null) {
      return local - this.back - (this.takesOffset ? (offset ?? 0) : this.offset);
    }
    const { minutes, back, zone } = this;
    const start = startOnZone(zone, { label: local, back, minutes }, order);
    if (typeof start === 'number') return start;
    const at = this.plan.dateTime >= 0 ? this.plan.dateTime : this.plan.time;
    this.report(start, row, at, { zone: zone.zone });
    return null;
  }

  private takeValues(row: TableRow, runs: readonly IntervalRun[]): void {
    const { values } = this.plan;
    let isEmpty = true;
    for (let at = 0; at < values.length; at += 1) {
      const plan = values[at] as ValuePlan;
      if (this.takeValue(row, plan)) isEmpty = false;
      (runs[at] as IntervalRun).add(this.value);
    }
    if (isEmpty) this.report('table/no-value', row, 0);
    if (this.groups.size * values.length > MOST_HELD / LONGEST_RUN) this.letGo(values.length);
  }

  /** Read one value. @returns whether there is anything in its cell. */
  private takeValue(row: TableRow, plan: ValuePlan): boolean {
    const { value, cell } = this;
    const kind = cell.read(row, plan);
    value.whole = NaN;
    value.quality = QUALITY.missing;
    if (kind !== 'number') return kind === 'bad';
    const quality = cell.quality(row, plan);
    if (quality !== QUALITY.missing && this.scale(plan)) value.quality = quality;
    else if (quality !== QUALITY.missing) this.report('table/too-many-digits', row, plan.at);
    return true;
  }

  /** Put the number of a cell into kWh. @returns false where that needs more digits than are exact. */
  private scale({ shift }: ValuePlan): boolean {
    const { value, cell } = this;
    const places = cell.number.places + shift;
    const whole = places < 0 ? cell.number.whole * 10 ** -places : cell.number.whole;
    if (places > 15 || Math.abs(whole) >= 1e15) return false;
    value.whole = whole;
    value.places = Math.max(0, places);
    return true;
  }

  /** Hand on all runs from time to time, where there are so many that they would fill the memory. */
  private letGo(added: number): void {
    this.held += added;
    if (this.held < MOST_HELD) return;
    this.held = 0;
    for (const { runs } of this.groups.all()) for (const run of runs) run.release();
  }
}
