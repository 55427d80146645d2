import { addDays, calendarDay, dayNumber, daysInMonth, type DayNumber } from '../../quantity/index.ts';
import type { Plant } from './plant.ts';
import { UPKEEP_TASKS, type UpkeepPeriod, type UpkeepTask } from './upkeep-tasks.ts';

/** A task on its day: done by the diary, or due. */
export interface UpkeepEntry {
  readonly task: UpkeepTask;
  readonly day: DayNumber;
  readonly state: 'done' | 'due';
  /** The day it was last done before; null where the diary has none. */
  readonly last: DayNumber | null;
  /** The day it fell due, where that is before the calendar begins; else null. */
  readonly overdueSince: DayNumber | null;
  /** Of a task that was done: the note of the diary. */
  readonly note: string;
}

/** The day some months later; the last of the month where it has no such day. */
function monthsLater(day: DayNumber, months: number): DayNumber {
  const { year, month, day: of } = calendarDay(day);
  const count = month - 1 + months;
  const then = { year: year + Math.floor(count / 12), month: (count % 12) + 1 };
  return dayNumber({ ...then, day: Math.min(of, daysInMonth(then.year, then.month)) });
}

const nextAfter = (day: DayNumber, every: UpkeepPeriod): DayNumber =>
  'days' in every ? addDays(day, every.days) : monthsLater(day, every.months);

type Upkept = Pick<Plant, 'diary' | 'isOnCoast'>;

interface Done {
  readonly day: DayNumber;
  readonly note: string;
}

/** The first time a task is due after it was last done or due, not before the calendar begins. */
function dueAfter(cursor: DayNumber | null, every: UpkeepPeriod, from: DayNumber): DayNumber {
  const due = cursor === null ? from : nextAfter(cursor, every);
  return due < from ? from : due;
}

function doneOf({ id }: UpkeepTask, { diary }: Upkept): readonly Done[] {
  return diary
    .filter(({ did }) => did === id)
    .map(({ through, note }) => ({ day: through, note }))
    .sort((one, other) => one.day - other.day);
}

function entriesOf(task: UpkeepTask, plant: Upkept, from: DayNumber, to: DayNumber): readonly UpkeepEntry[] {
  const every = plant.isOnCoast ? task.everyOnCoast : task.every;
  const done = doneOf(task, plant);
  let last = done.filter(({ day }) => day < from).at(-1)?.day ?? null;
  let cursor = last;
  const entries: UpkeepEntry[] = [];
  const rest = done.filter(({ day }) => day >= from && day < to);
  for (;;) {
    const due = dueAfter(cursor, every, from);
    const next = rest[0];
    if (next !== undefined && next.day <= due) {
      entries.push({ task, day: next.day, state: 'done', last, overdueSince: null, note: next.note });
      last = next.day;
      cursor = next.day;
      rest.shift();
      continue;
    }
    if (due >= to) return entries;
    const fell = cursor === null ? due : nextAfter(cursor, every);
    entries.push({ task, day: due, state: 'due', last, overdueSince: fell < from ? fell : null, note: '' });
    cursor = due;
  }
}

/**
 * The calendar of upkeep: what was done by the diary, and what is due when by common practice.
 *
 * A task is due so long after it was last done; one that the diary has never is due on the first day. One that
 * fell due before the calendar begins is due on its first day, with the day it fell due. Where a task is not
 * done when it is due it comes again after its time.
 *
 * @param plant  with its diary; near the sea some tasks are due more often
 * @param from   first day
 * @param to     the day after the last
 * @returns      in order of days, on one day in the order of `UPKEEP_TASKS`
 * @throws RangeError when `to` is before `from`: a caller's bug
 * @example
 * upkeepCalendar({ isOnCoast: false, diary: [] }, 0, 20).filter(({ task }) => task.id === 'cleaning').map(({ day }) => day) //=> [0,15]
 */
export function upkeepCalendar(plant: Upkept, from: DayNumber, to: DayNumber): readonly UpkeepEntry[] {
  if (to < from) throw new RangeError('a calendar that ends before it begins');
  return UPKEEP_TASKS.flatMap((task) => entriesOf(task, plant, from, to)).sort(
    (one, other) => one.day - other.day,
  );
}
