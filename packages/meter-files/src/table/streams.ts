import type { Stream } from '../stream.ts';
import type { TablePlan, ValuePlan } from './plan.ts';
import type { TableRow } from './table-row.ts';

/** The stream of a column of values for one point and meter. */
export function streamOf({ column, name }: ValuePlan, point: string, meter: string): Stream {
  const { is: quantity, rate = null, unit } = column;
  return { point, meter, register: name, quantity, rate, unit };
}

/** What belongs to one point and meter of a table, made when it comes up first. */
export class Groups<Group> {
  private readonly plan: TablePlan;
  private readonly make: (point: string, meter: string) => Group;
  private readonly groups = new Map<string, Group>();
  private last: Group | null = null;
  private lastPoint = '';
  private lastMeter = '';

  constructor(plan: TablePlan, make: (point: string, meter: string) => Group) {
    this.plan = plan;
    this.make = make;
  }

  get size(): number {
    return this.groups.size;
  }

  all(): Iterable<Group> {
    return this.groups.values();
  }

  /** The one that a row belongs to. */
  of({ cells }: TableRow): Group {
    const point = this.plan.point < 0 ? '' : (cells[this.plan.point] ?? '').trim();
    const meter = this.plan.meter < 0 ? '' : (cells[this.plan.meter] ?? '').trim();
    if (this.last !== null && point === this.lastPoint && meter === this.lastMeter) return this.last;
    const key = JSON.stringify([point, meter]);
    let group = this.groups.get(key);
    if (group === undefined) {
      group = this.make(point, meter);
      this.groups.set(key, group);
    }
    this.last = group;
    this.lastPoint = point;
    this.lastMeter = meter;
    return group;
  }
}
