import {
  addDays,
  calendarDay,
  dayNumber,
  dayText,
  parseDay,
  type DayNumber,
  type Period,
} from '../quantity/index.ts';
import {
  entriesOn,
  minuteEntries,
  namesHolidays,
  seasonsOn,
  weekdayOf,
  type DayKind,
  type TimeBlocks,
} from '../tariff/index.ts';

/** Minutes of a day on the local clock. */
export const DAY_MINUTES = 1440;

/** A day by its blocks. Days of the same kind in the same season are one object. */
export interface BlockDay {
  /** The block of each minute. */
  readonly minutes: Uint16Array;
  /** The block of each slot; the number of blocks where two blocks share the slot. */
  readonly slots: Uint16Array;
  /** The slots again, as runs of one block: the slot at which each run ends, and its block. */
  readonly runEnds: Uint16Array;
  readonly runBlocks: Uint16Array;
  /** Whether two blocks share any slot. */
  readonly isSplit: boolean;
}

/** Tells the time block of any minute of the local clock; blocks are told by their index. */
export interface BlockClock {
  readonly blocks: TimeBlocks['blocks'];
  readonly slotMinutes: number;
  /** The blocks of a day. */
  readonly day: (day: DayNumber) => BlockDay;
  /** The block of a minute since 1970-01-01 00:00 on the local clock. */
  readonly blockAt: (minute: number) => number;
  /** The years of a period in which holidays would count but none is listed. */
  readonly yearsWithoutHolidays: (period: Period) => readonly number[];
}

/** One block at all times: the clock of a tariff without time blocks. */
const ONE_BLOCK: TimeBlocks = {
  clause: '',
  blocks: [{ id: 'all-day', label: 'All day' }],
  calendar: [{ block: 'all-day', from: '00:00', to: '24:00' }],
};

/** The blocks of slots, and their runs, from the blocks of minutes. */
function blockDay(minutes: Uint16Array, slotMinutes: number, blocks: number): BlockDay {
  const slots = Uint16Array.from({ length: DAY_MINUTES / slotMinutes }, (_, slot) => {
    const own = minutes.subarray(slot * slotMinutes, (slot + 1) * slotMinutes);
    return own.every((block) => block === own[0]) ? (own[0] ?? blocks) : blocks;
  });
  const ends = [...slots.keys()].map((slot) => slot + 1).filter((end) => slots[end] !== slots[end - 1]);
  return {
    minutes,
    slots,
    runEnds: Uint16Array.from(ends),
    runBlocks: Uint16Array.from(ends, (end) => slots[end - 1] ?? blocks),
    isSplit: slots.includes(blocks),
  };
}

/** The block of each minute of a day on which some entries apply. */
function blockMinutes({ blocks, calendar }: TimeBlocks, applying: readonly number[]): Uint16Array {
  const blockOf = calendar.map(({ block }) => blocks.findIndex(({ id }) => id === block));
  return Uint16Array.from(minuteEntries(calendar, applying), (entry) => {
    const block = blockOf[entry] ?? -1;
    if (block < 0) throw new RangeError('time blocks have to be checked before a clock is made of them');
    return block;
  });
}

/** What a key stands for, made once. */
function remembered<Key, Value>(known: Map<Key, Value>, key: Key, make: () => Value): Value {
  const before = known.get(key);
  if (before !== undefined) return before;
  const value = make();
  known.set(key, value);
  return value;
}

/** The tables of days, each made once: by the entries that apply, by kind of day and seasons, by day. */
function dayTables(timeBlocks: TimeBlocks, slotMinutes: number): (day: DayNumber) => BlockDay {
  const { blocks, calendar } = timeBlocks;
  const listed = namesHolidays(calendar) ? (timeBlocks.holidays?.days ?? []) : [];
  const holidays = new Set<number | null>(listed.map(parseDay));
  const ofEntries = new Map<string, BlockDay>();
  const ofKinds = new Map<string, BlockDay>();
  const ofDays = new Map<number, BlockDay>();
  const ofKind = (kind: DayKind, seasons: readonly string[]): BlockDay => {
    const applying = entriesOn(calendar, kind, seasons);
    return remembered(ofEntries, applying.join(), () =>
      blockDay(blockMinutes(timeBlocks, applying), slotMinutes, blocks.length),
    );
  };
  return (day) =>
    remembered(ofDays, day, () => {
      const kind = holidays.has(day) ? 'holiday' : weekdayOf(day);
      const seasons = seasonsOn(timeBlocks.seasons, dayText(day).slice(5));
      return remembered(ofKinds, [kind, ...seasons].join(), () => ofKind(kind, seasons));
    });
}

/**
 * Make the clock of a tariff's time blocks. Minutes are whole minutes since 1970-01-01 00:00 on the local
 * clock: there is no time zone here.
 *
 * @param timeBlocks   checked; null for a tariff without: one block, "all-day"
 * @param slotMinutes  the length of the intervals it will be asked about, a divisor of 60
 * @throws RangeError  for time blocks that do not cover a day exactly, and for other lengths
 * @example
 * blockClock({ clause: 'T 1', blocks: [{ id: 'low', label: 'Low' }, { id: 'high', label: 'High' }], calendar: [{ block: 'high', from: '06:00', to: '22:00' }, { block: 'low', from: '22:00', to: '06:00' }] }, 15).blockAt(6 * 60) //=> 1
 */
export function blockClock(timeBlocks: TimeBlocks | null, slotMinutes: number): BlockClock {
  if (!(slotMinutes > 0) || 60 % slotMinutes !== 0) {
    throw new RangeError(`intervals of ${slotMinutes} minutes do not fit an hour`);
  }
  const own = timeBlocks ?? ONE_BLOCK;
  const day = dayTables(own, slotMinutes);
  const years = new Set((own.holidays?.days ?? []).map((text) => text.slice(0, 4)));
  const hasHolidays = namesHolidays(own.calendar);
  return {
    blocks: own.blocks,
    slotMinutes,
    day,
    blockAt: (minute) => {
      const number = Math.floor(minute / DAY_MINUTES);
      return day(number as DayNumber).minutes[minute - number * DAY_MINUTES] ?? 0;
    },
    yearsWithoutHolidays: ({ from, to }) => {
      if (!hasHolidays || to <= from) return [];
      const [first, last] = [calendarDay(from).year, calendarDay(addDays(to, -1)).year];
      const all = Array.from({ length: last - first + 1 }, (_, at) => first + at);
      return all.filter((year) => !years.has(dayText(dayNumber({ year, month: 1, day: 1 })).slice(0, 4)));
    },
  };
}
