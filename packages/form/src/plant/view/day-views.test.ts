import { addDays, parseDay, readPlant, type DayNumber, type Plant } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { DayMemo } from './day-memo.ts';
import { daysOf, dayViews } from './day-views.ts';

const day = (text: string): DayNumber => parseDay(text) ?? (0 as DayNumber);
const first = day('2025-04-01');

function plantOf(parts: object = {}): Plant {
  const { value } = readPlant(
    JSON.stringify({ format: 'unitbook-plant-1', capacity: [{ kWp: '4' }], ...parts }),
  );
  if (value === null) throw new Error('no plant');
  return value;
}

/** Days that differ a little, with one made nothing and two not known. */
const days = Array.from({ length: 40 }, (_, at) => ({
  day: addDays(first, at),
  wattHours: at === 10 ? 0 : at === 20 || at === 21 ? null : 14_000 + at * 7,
}));

it('numbers findings and names the days that show them', () => {
  const { findings } = dayViews(days, plantOf());
  expect(findings.map(({ number, finding, days: span }) => [number, finding.code, span])).toEqual([
    [1, 'plant/zero-days', { from: addDays(first, 10), to: addDays(first, 11) }],
    [2, 'plant/missing-days', { from: addDays(first, 20), to: addDays(first, 22) }],
  ]);
});

it('sets the expectation of each calendar month beside the days, by the lengths of the months', () => {
  const { bands } = dayViews(days, plantOf({ expected: { monthly: Array<string>(12).fill('480') } }));
  // 480 ÷ 4 ÷ 30 = 4 in April, 480 ÷ 4 ÷ 31 = 3.87097 in May.
  expect(bands.map(({ from, to, middle }) => [to - from, middle])).toEqual([
    [30, 40_000],
    [31, 38_710],
  ]);
  expect(dayViews(days, plantOf()).bands).toEqual([]);
});

it('knows the days of a finding from its words', () => {
  const finding = {
    code: 'plant/short-days',
    severity: 'question',
    path: ['days', '2025-04-01'],
    values: { first: '2025-04-01' },
    found: '',
    expected: '',
    remedy: '',
  } as const;
  expect(daysOf(finding)).toEqual({ from: first, to: addDays(first, 10) });
  expect(daysOf({ ...finding, code: 'plant/spike' })).toEqual({ from: first, to: addDays(first, 1) });
  expect(daysOf({ ...finding, path: ['periods', 0] })).toBeNull();
});

it('looks through days again only where something changed, and not while somebody types', () => {
  let made = 0;
  const memo = new DayMemo(() => {
    made += 1;
    return { days: [], findings: [], bands: [] };
  });
  const [plant, files, other] = [plantOf(), {}, {}];
  const look = (key: readonly unknown[], isTyping: boolean): readonly [number, boolean] => {
    memo.maker(key, isTyping)(days, plant);
    return [made, memo.isStale];
  };
  expect(look([files], false)).toEqual([1, false]);
  expect(look([files], false)).toEqual([1, false]);
  expect(look([other], true)).toEqual([1, true]);
  expect(look([other], false)).toEqual([2, false]);
  memo.clear();
  expect(look([files], true)).toEqual([3, false]);
});
