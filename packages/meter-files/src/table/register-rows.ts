import type { DayNumber } from '@unitbook/engine';
import { VALUE_QUALITIES, type MeterSink, type Stream } from '../stream.ts';
import { movePoint } from './number-cell.ts';
import type { TablePlan, ValuePlan } from './plan.ts';
import { fixedOffset, RowMoment } from './row-moment.ts';
import { Groups, streamOf } from './streams.ts';
import type { Report, TableRow } from './table-row.ts';
import { ValueCell } from './value-cell.ts';
import { ZoneDays, zoneOffset } from './zone-days.ts';
import { momentsOf } from './zone-moments.ts';

const DAY = 1440;

interface LocalTime {
  readonly day: DayNumber;
  readonly minute: number | null;
}

const localTime = (minute: number): LocalTime => {
  const day = Math.floor(minute / DAY);
  return { day: day as DayNumber, minute: minute - day * DAY };
};

/** Reads the rows of a table of register readings. */
export class RegisterRows {
  private readonly plan: TablePlan;
  private readonly report: Report;
  private readonly sink: MeterSink;
  private readonly moment: RowMoment;
  private readonly cell: ValueCell;
  private readonly groups: Groups<readonly Stream[]>;
  private readonly offset: number | null;
  private readonly zone: ZoneDays | null;

  constructor(plan: TablePlan, report: Report, sink: MeterSink) {
    this.plan = plan;
    this.report = report;
    this.sink = sink;
    this.moment = new RowMoment(plan, report);
    this.cell = new ValueCell(plan, report);
    this.groups = new Groups(plan, (point, meter) =>
      plan.values.map((value) => streamOf(value, point, meter)),
    );
    this.offset = fixedOffset(plan.layout.clock);
    this.zone = plan.layout.zone === undefined ? null : new ZoneDays(plan.layout.zone);
  }

  row(row: TableRow): void {
    if (!this.moment.read(row)) return;
    const time = this.timeOf(row);
    if (time === null) return;
    const streams = this.groups.of(row);
    let isEmpty = true;
    const { values } = this.plan;
    for (let at = 0; at < values.length; at += 1)
      if (this.takeValue(row, values[at] as ValuePlan, { time, stream: streams[at] as Stream }))
        isEmpty = false;
    if (isEmpty) this.report('table/no-value', row, 0);
  }

  /** Readings are handed on one by one: nothing is held. */
  end(): void {
    // Nothing to do.
  }

  private timeOf(row: TableRow): LocalTime | null {
    const { day, minute, offset } = this.moment.cell;
    if (minute === null) return { day: day as DayNumber, minute };
    const written = day * DAY + minute;
    const east = offset ?? this.offset;
    if (this.zone === null) return localTime(written);
    if (east !== null) {
      const utc = written - east;
      return localTime(utc + zoneOffset(this.zone.zone, utc));
    }
    if (momentsOf(this.zone.day(day), written).length > 0) return localTime(written);
    const at = this.plan.dateTime >= 0 ? this.plan.dateTime : this.plan.time;
    this.report('table/time-does-not-exist', row, at, { zone: this.zone.zone });
    return null;
  }

  /** Read one value and hand it on. @returns whether there is anything in its cell. */
  private takeValue(
    row: TableRow,
    plan: ValuePlan,
    { time, stream }: { readonly time: LocalTime; readonly stream: Stream },
  ): boolean {
    const kind = this.cell.read(row, plan);
    if (kind !== 'number') return kind === 'bad';
    const quality = VALUE_QUALITIES[this.cell.quality(row, plan)] ?? 'estimated';
    if (quality === 'missing') return true;
    const value = movePoint(this.cell.number.text(row.cells[plan.at] ?? ''), -plan.shift);
    const { day, minute } = time;
    this.sink.register({ stream, day, minute, value, quality, line: row.line });
    return true;
  }
}
