import { describe, expect, it } from 'vitest';
import { EVENING_HOUSE, profileOf, yearOf } from '../../../../../tests/support/quote-profile.ts';
import { blockClock } from '../../energy/index.ts';
import type { QuoteProfile } from './profile.ts';
import { emptyMonths, readProfile } from './read-profile.ts';

const none = () => null;
const codesOf = (profile: QuoteProfile): readonly string[] =>
  readProfile(profile, none).findings.map(({ code }) => code);

/** The same profile with one value changed. */
function withValue(profile: QuoteProfile, channel: 'use' | 'generation', row: number, value: number) {
  const values = Float64Array.from(profile[channel]);
  values[row] = value;
  return { ...profile, [channel]: values };
}

const YEAR = yearOf(EVENING_HOUSE);
const DAY_NIGHT = blockClock(
  {
    clause: 'T 1',
    blocks: [
      { id: 'night', label: 'Night' },
      { id: 'day', label: 'Day' },
    ],
    calendar: [
      { block: 'day', from: '06:30', to: '22:00' },
      { block: 'night', from: '22:00', to: '06:30' },
    ],
  },
  30,
);

describe('readProfile', () => {
  it('sorts a year by calendar month', () => {
    const { value, findings } = readProfile(YEAR, none);
    expect(findings).toEqual([]);
    // Each day 20 × 200 + 4 × 1,000 are used, and 8 × 1,500 made.
    expect(value?.months.map(({ totals }) => totals.use / 8000)).toEqual([
      31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31,
    ]);
    expect(value?.months[1]?.totals.generation).toBe(28 * 12_000);
    expect(value?.blocks).toEqual([]);
  });

  it('takes a year that begins inside a month: its two ends are one month', () => {
    const profile = profileOf('2024-04-16', '2025-04-16', { shape: EVENING_HOUSE });
    const { value, findings } = readProfile(profile, none);
    expect(findings).toEqual([]);
    expect(value?.months[3]?.use).toHaveLength(720);
  });

  it('takes an hour that comes twice, and one that does not come', () => {
    // On 2 November 2025, 01:00 to 02:00 comes twice; on 9 March, 02:00 to 03:00 does not come.
    const rows = [...YEAR.starts.keys()].flatMap((row) => {
      const start = (YEAR.starts[row] ?? 0) - Date.UTC(2025, 0, 1) / 60_000;
      if (start === (67 * 24 + 2) * 60) return [];
      return start === (305 * 24 + 1) * 60 ? [row, row] : [row];
    });
    const pick = (values: Float64Array): Float64Array => Float64Array.from(rows, (row) => values[row] ?? 0);
    const starts = Int32Array.from(rows, (row) => YEAR.starts[row] ?? 0);
    const profile = { ...YEAR, starts, use: pick(YEAR.use), generation: pick(YEAR.generation) };
    const { value, findings } = readProfile(profile, none);
    expect(findings).toEqual([]);
    expect([value?.months[2]?.use.length, value?.months[10]?.use.length]).toEqual([743, 721]);
  });

  it('tells the time block of each interval', () => {
    const value = readProfile(yearOf(EVENING_HOUSE, 30), () => DAY_NIGHT).value;
    expect(value?.blocks).toEqual(['night', 'day']);
    const [january] = value?.months ?? [];
    expect([...(january?.block.subarray(12, 15) ?? [])]).toEqual([0, 1, 1]);
    // Half hours of 200 Wh: 17 by night. By day 31 − 8 of 200, and 8 of 1,000.
    expect([...(january?.blockUse ?? [])]).toEqual([31 * 17 * 200, 31 * (23 * 200 + 8 * 1000)]);
    expect([...(january?.blockGeneration ?? [])]).toEqual([0, 31 * 16 * 1500]);
  });

  it('is null for intervals that two blocks share', () => {
    const { value, findings } = readProfile(YEAR, (minutes) =>
      blockClock(
        {
          clause: 'T 1',
          blocks: DAY_NIGHT.blocks,
          calendar: [
            { block: 'day', from: '06:30', to: '22:00' },
            { block: 'night', from: '22:00', to: '06:30' },
          ],
        },
        minutes,
      ),
    );
    expect(value).toBeNull();
    expect(findings.map(({ code, found }) => `${code}: ${found}`)).toEqual([
      'quote/profile-splits-block: an interval from 2025-01-01 06:00, of 60 minutes, that two time blocks share',
    ]);
  });

  it('is null without a month', () => {
    const { value, findings } = readProfile(
      profileOf('2025-01-01', '2025-11-01', { shape: EVENING_HOUSE }),
      none,
    );
    expect(value).toBeNull();
    expect(findings.map(({ found }) => found)).toEqual(['a profile without November, December']);
  });

  it('takes a month in part for the whole month, and says so', () => {
    const { value, findings } = readProfile(
      profileOf('2025-01-11', '2026-01-01', { shape: EVENING_HOUSE }),
      none,
    );
    expect(value?.months[0]?.use).toHaveLength(21 * 24);
    expect(findings.map(({ severity, found }) => [severity, found])).toEqual([
      ['note', 'a profile with 504 intervals of January, of 744'],
    ]);
  });

  it.each([-1, 0.5, NaN, Infinity, 2 ** 26])('is null with %d Wh', (value) => {
    const { value: read, findings } = readProfile(withValue(YEAR, 'generation', 8, value), none);
    expect(read).toBeNull();
    expect(findings.map(({ found }) => found)).toEqual([
      `${String(value)} for generation in the interval from 2025-01-01 08:00`,
    ]);
  });

  it('is null for other lengths, and for starts between the steps', () => {
    expect(codesOf({ ...YEAR, minutes: 20 })).toEqual(['quote/profile-interval']);
    expect(codesOf({ ...YEAR, minutes: NaN })).toEqual(['quote/profile-interval']);
    const shifted = { ...YEAR, starts: YEAR.starts.map((start) => start + 5) };
    const [finding] = readProfile(shifted, none).findings;
    expect(finding?.found).toBe('a profile with an interval of 60 minutes from 2025-01-01 00:05');
  });

  it('is null where intervals do not follow in time', () => {
    const back = YEAR.starts.map((start, row) => (row < 100 ? start : start - 24 * 60));
    const [finding] = readProfile({ ...YEAR, starts: back }, none).findings;
    expect(finding?.found).toBe('the interval from 2025-01-04 04:00 after the one from 2025-01-05 03:00');
    const twice = YEAR.starts.map((start, row) => (row % 2 === 0 ? start : start - 60));
    expect(codesOf({ ...YEAR, starts: twice })).toEqual(['quote/profile-out-of-order']);
  });

  it('throws for columns of different lengths', () => {
    expect(() => readProfile({ ...YEAR, use: YEAR.use.subarray(1) }, none)).toThrow(RangeError);
  });

  it('is null for a profile of nothing', () => {
    const nothing = { minutes: 60, starts: new Int32Array(), use: new Float64Array() };
    expect(codesOf({ ...nothing, generation: new Float64Array() })).toEqual(['quote/profile-month-missing']);
  });
});

describe('emptyMonths', () => {
  const dark = yearOf((moment) => ({
    ...EVENING_HOUSE(moment),
    ...(moment.month === 12 ? { generation: 0 } : {}),
  }));
  const read = readProfile(dark, none).value;
  if (read === null) throw new Error('no profile');
  const all = (units: number): readonly number[] => Array<number>(12).fill(units);

  it('are those without a shape for what the quote has', () => {
    const findings = emptyMonths(read, { use: all(400_000), generation: all(450_500) });
    expect(findings.map(({ found }) => found)).toEqual([
      'a profile with no generation at all in December, where the quote has 450.500 units',
    ]);
  });

  it('are none where the quote has nothing there either', () => {
    const generation = all(450_000).map((units, month) => (month === 11 ? 0 : units));
    expect(emptyMonths(read, { use: all(400_000), generation })).toEqual([]);
  });
});
