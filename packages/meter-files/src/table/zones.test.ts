import { describe, expect, it } from 'vitest';
import { intervalLayout, readTable, registerLayout, valuesOf } from '../../../../tests/support/table.ts';
import { minuteOf } from '../../../../tests/support/meter-chunks.ts';
import { dayText, type DayNumber } from '@unitbook/engine';
import { isZone } from '../collected/zone-clock.ts';
import { zoneOffset } from './zone-days.ts';

/** Changes of clocks in 2025, with the offsets before and after: the IANA time zone database (from memory). */
const CHANGES = [
  {
    zone: 'Europe/Amsterdam',
    change: '2025-03-30 01:00',
    before: 60,
    after: 120,
    day: '2025-03-30',
    hours: 23,
  },
  {
    zone: 'Europe/Amsterdam',
    change: '2025-10-26 01:00',
    before: 120,
    after: 60,
    day: '2025-10-26',
    hours: 25,
  },
  {
    zone: 'Australia/Adelaide',
    change: '2025-10-04 16:30',
    before: 570,
    after: 630,
    day: '2025-10-05',
    hours: 23,
  },
  {
    zone: 'Australia/Adelaide',
    change: '2025-04-05 16:30',
    before: 630,
    after: 570,
    day: '2025-04-06',
    hours: 25,
  },
  {
    zone: 'Australia/Lord_Howe',
    change: '2025-10-04 15:30',
    before: 630,
    after: 660,
    day: '2025-10-05',
    hours: 23.5,
  },
  {
    zone: 'Australia/Lord_Howe',
    change: '2025-04-05 15:00',
    before: 660,
    after: 630,
    day: '2025-04-06',
    hours: 24.5,
  },
  {
    zone: 'America/St_Johns',
    change: '2025-03-09 05:30',
    before: -210,
    after: -150,
    day: '2025-03-09',
    hours: 23,
  },
  {
    zone: 'America/St_Johns',
    change: '2025-11-02 04:30',
    before: -150,
    after: -210,
    day: '2025-11-02',
    hours: 25,
  },
] as const;

type Change = (typeof CHANGES)[number];

const MINUTES = 15;

const textOf = (local: number): string => {
  const day = Math.floor(local / 1440);
  const two = (value: number): string => value.toString().padStart(2, '0');
  const minute = local - day * 1440;
  return `${dayText(day as DayNumber)} ${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
};

/** Quarter hours from a day before a change to a day after it, by their beginnings in UTC. */
const startsOf = ({ change }: Change): readonly number[] =>
  Array.from({ length: 192 }, (_, at) => minuteOf(change) - 1440 + at * MINUTES);

/** What a clock on the wall shows at a minute in UTC. */
const shownAt = ({ change, before, after }: Change, utc: number): number =>
  utc + (utc < minuteOf(change) ? before : after);

const fileOf = (labels: readonly number[]): string =>
  ['time,import', ...labels.map((label, at) => `${textOf(label)},${at}`)].join('\n');

const expected = (starts: readonly number[]): readonly (readonly [number, number])[] =>
  starts.map((start, at) => [start, at]);

describe.each(CHANGES)('$zone on $day, of $hours hours', (change) => {
  const { zone, day, hours } = change;
  const starts = startsOf(change);
  const labels = starts.map((start) => shownAt(change, start));

  it('has so many quarter hours', () => {
    expect(labels.filter((label) => textOf(label).startsWith(day)).length).toBe(hours * 4);
  });

  it('is read in UTC, as one run', () => {
    const { chunks, findings, clock } = readTable(intervalLayout({ zone }), fileOf(labels));
    expect([findings, clock]).toEqual([[], { offset: 0 }]);
    expect(chunks.length).toBe(1);
    expect(valuesOf(chunks)).toEqual(expected(starts));
  });

  it('is read by the ends of its intervals, as clocks show them', () => {
    const ends = starts.map((start) => shownAt(change, start + MINUTES));
    const { chunks, findings } = readTable(intervalLayout({ zone, label: 'end' }), fileOf(ends));
    expect(findings).toEqual([]);
    expect(valuesOf(chunks)).toEqual(expected(starts));
  });

  it('is read by ends that are told by the clock at the beginning', () => {
    const ends = labels.map((label) => label + MINUTES);
    const { chunks, findings } = readTable(intervalLayout({ zone, label: 'end' }), fileOf(ends));
    expect(findings).toEqual([]);
    expect(valuesOf(chunks)).toEqual(expected(starts));
  });

  it('is read with the newest first', () => {
    const { chunks, findings } = readTable(intervalLayout({ zone }), fileOf(labels.toReversed()));
    expect(findings).toEqual([]);
    expect(valuesOf(chunks)).toEqual(expected(starts.toReversed()));
  });

  it('is the same by local minutes where no zone is known', () => {
    const { chunks, findings, clock } = readTable(intervalLayout(), fileOf(labels));
    expect([findings, clock]).toEqual([[], { offset: null }]);
    expect(valuesOf(chunks)).toEqual(expected(labels));
    expect(chunks.length).toBe(2);
  });
});

describe('a time that the clocks leave out', () => {
  const rows = [
    'time,import',
    '2025-03-30 01:45,1',
    '2025-03-30 02:00,2',
    '2025-03-30 02:45,3',
    '2025-03-30 03:00,4',
  ];
  const zone = 'Europe/Amsterdam';

  it('is told, and the rows around it are read', () => {
    const { chunks, findings } = readTable(intervalLayout({ zone }), rows.join('\n'));
    expect(findings.map(({ code, position }) => [code, position?.line])).toEqual([
      ['table/time-does-not-exist', 3],
      ['table/time-does-not-exist', 4],
    ]);
    const start = minuteOf('2025-03-30 00:45');
    expect(valuesOf(chunks)).toEqual([
      [start, 1],
      [start + 15, 4],
    ]);
  });

  it('is told of registers too', () => {
    const { registers, findings } = readTable(registerLayout({ zone }), rows.join('\n'));
    expect(findings.map(({ position }) => position?.line)).toEqual([3, 4]);
    expect(registers.map(({ value }) => value)).toEqual(['1', '4']);
  });

  it('can be a whole day', () => {
    // Samoa left 30 December 2011 out when it changed sides of the date line (IANA, from memory).
    const file = 'time,import\n2011-12-29 23:45,1\n2011-12-30 12:00,2\n2011-12-31 00:00,3\n';
    const { chunks, findings } = readTable(intervalLayout({ zone: 'Pacific/Apia' }), file);
    expect(findings.map(({ code, position }) => [code, position?.line])).toEqual([
      ['table/time-does-not-exist', 3],
    ]);
    expect(chunks.map(({ values }) => [...values])).toEqual([[1, 3]]);
  });
});

describe('an hour that comes twice', () => {
  const zone = 'Europe/Amsterdam';
  const read = (...times: readonly string[]): ReturnType<typeof readTable> =>
    readTable(
      intervalLayout({ zone, minutes: '60' }),
      ['time,import', ...times.map((time, at) => `2025-10-26 ${time},${at}`)].join('\n'),
    );

  it('is told when it comes a third time', () => {
    const { chunks, findings } = read('01:00', '02:00', '02:00', '02:00', '03:00');
    expect(findings.map(({ code, position }) => [code, position?.line])).toEqual([
      ['table/time-once-more', 5],
    ]);
    expect(chunks.map(({ values }) => [...values])).toEqual([[0, 1, 2, 4]]);
  });

  it('is the first of the two where it comes once', () => {
    const { chunks, findings } = read('01:00', '02:00', '03:00');
    expect(findings).toEqual([]);
    expect(chunks.map(({ start, values }) => [start, [...values]])).toEqual([
      [minuteOf('2025-10-25 23:00'), [0, 1]],
      [minuteOf('2025-10-26 02:00'), [2]],
    ]);
  });

  it('begins anew where a file has the same days again', () => {
    const hour = ['02:00', '02:00'];
    const file = [...hour, '12:00'].map((time) => `2025-10-26 ${time},1`);
    const later = '2025-12-01 00:00,1';
    const { chunks, findings } = readTable(
      intervalLayout({ zone, minutes: '60' }),
      ['time,import', ...file, later, ...file].join('\n'),
    );
    expect(findings).toEqual([]);
    const starts = valuesOf(chunks).map(([start]) => start);
    expect(starts.slice(0, 3)).toEqual(starts.slice(4));
  });
});

describe('clocks besides a local one', () => {
  const file = 'time,import\n2025-05-01 00:00,1\n';

  it.each([
    ['utc', '2025-05-01 00:00'],
    ['+05:30', '2025-04-30 18:30'],
    ['-03:30', '2025-05-01 03:30'],
  ])('%s begins in UTC at %s', (clock, start) => {
    const read = readTable(intervalLayout({ clock }), file);
    expect(read.clock).toEqual({ offset: 0 });
    expect(read.chunks.map((chunk) => chunk.start)).toEqual([minuteOf(start)]);
  });

  it('is written in each cell', () => {
    const cells = ['2025-05-01T00:00:00+05:45', '2025-04-30T18:30Z', '2025-04-30 14:30:00.000 -0400'];
    const { chunks, findings } = readTable(
      intervalLayout({ clock: 'in-text' }),
      ['time,import', ...cells.map((cell) => `${cell},1`)].join('\r\n'),
    );
    expect(findings).toEqual([]);
    // 00:00 − 5:45 = 18:15; 18:30; 14:30 + 4:00 = 18:30, which is no later: a run of its own.
    expect(chunks.map(({ start, values }) => [start, values.length])).toEqual([
      [minuteOf('2025-04-30 18:15'), 2],
      [minuteOf('2025-04-30 18:30'), 1],
    ]);
  });

  it('gives the local day of a register where the zone is known', () => {
    const { registers } = readTable(
      registerLayout({ clock: 'utc', zone: 'Asia/Kathmandu' }),
      'time,import\n2025-05-01 20:00,7\n',
    );
    // 20:00 + 5:45 = 01:45 of the day after.
    expect(registers.map(({ day, minute }) => [dayText(day), minute])).toEqual([['2025-05-02', 105]]);
  });

  it('shifts days by their fixed offset, and keeps days of a zone local', () => {
    const days = { minutes: '1440', columns: [{ is: 'date' }, { is: 'import', unit: 'kWh' }] } as const;
    const text = 'time,import\n2025-03-30,1\n2025-03-31,2\n';
    const layout = { ...days, columns: [...days.columns] };
    const fixed = readTable(intervalLayout({ ...layout, clock: '+05:30' }), text);
    expect([fixed.clock.offset, fixed.chunks[0]?.start]).toEqual([0, minuteOf('2025-03-29 18:30')]);
    const local = readTable(intervalLayout({ ...layout, zone: 'Europe/Amsterdam' }), text);
    expect([local.clock.offset, local.chunks.length, local.chunks[0]?.start]).toEqual([
      null,
      1,
      minuteOf('2025-03-30'),
    ]);
  });
});

describe('a time zone', () => {
  it.each(['Europe/Amsterdam', 'Asia/Kathmandu', 'Etc/GMT+5', 'UTC', 'America/Port-au-Prince'])(
    '%s is known',
    (name) => {
      expect(isZone(name)).toBe(true);
    },
  );

  it.each(['', '+05:30', 'Nowhere/At-All', 'ABC+05', 'Etc/GMT+99', '__proto__'])('%j is none', (name) => {
    expect(isZone(name)).toBe(false);
  });

  it('has its offset', () => {
    expect(zoneOffset('Asia/Kathmandu', minuteOf('2025-01-01'))).toBe(345);
    expect(zoneOffset('America/St_Johns', minuteOf('2025-01-01'))).toBe(-210);
  });
});
