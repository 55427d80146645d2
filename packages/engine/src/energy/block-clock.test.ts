import { describe, expect, it } from 'vitest';
import { dayOf, periodOf } from '../../../../tests/support/make.ts';
import type { TimeBlockEntry, TimeBlocks } from '../tariff/index.ts';
import { blockClock } from './block-clock.ts';

const WORKDAYS: TimeBlockEntry['days'] = ['mon', 'tue', 'wed', 'thu', 'fri'];

/** Night, day, and an evening peak on workdays of the cool season; weekends and holidays are all low. */
const BLOCKS: TimeBlocks = {
  clause: 'T 1',
  blocks: ['night', 'day', 'peak', 'low'].map((id) => ({ id, label: id })),
  calendar: [
    { block: 'night', from: '22:00', to: '06:00', days: WORKDAYS },
    { block: 'day', from: '06:00', to: '18:00', days: WORKDAYS },
    { block: 'day', from: '18:00', to: '22:00', days: WORKDAYS, season: 'warm' },
    { block: 'peak', from: '18:00', to: '22:00', days: WORKDAYS, season: 'cool' },
    { block: 'low', from: '00:00', to: '24:00', days: ['sat', 'sun', 'holiday'] },
  ],
  seasons: { warm: { from: '04-01', through: '09-30' }, cool: { from: '10-01', through: '03-31' } },
  holidays: { clause: 'T 2', days: ['2025-12-25'] },
};

const clock = blockClock(BLOCKS, 15);
const blockAt = (day: string, time: string): string | undefined => {
  const [hours = 0, minutes = 0] = time.split(':').map((part) => Number.parseInt(part, 10));
  return clock.blocks[clock.blockAt(dayOf(day) * 1440 + hours * 60 + minutes)]?.id;
};

describe('the clock of time blocks', () => {
  // 2025-03-31 and 2025-04-07 were Mondays, 2025-12-25 a Thursday, 1969-12-29 a Monday.
  it.each([
    ['2025-03-31', '05:59', 'night'],
    ['2025-03-31', '06:00', 'day'],
    ['2025-03-31', '18:00', 'peak'],
    ['2025-03-31', '22:00', 'night'],
    ['2025-04-01', '18:00', 'day'],
    ['2025-04-07', '18:00', 'day'],
    ['2025-09-30', '21:59', 'day'],
    ['2025-10-01', '21:59', 'peak'],
    ['2024-02-29', '18:00', 'peak'],
    ['2025-04-05', '12:00', 'low'],
    ['2025-12-24', '18:00', 'peak'],
    ['2025-12-25', '18:00', 'low'],
    ['1969-12-29', '18:00', 'peak'],
    ['1969-12-28', '18:00', 'low'],
  ])('knows the block of %s %s: %s', (day, time, block) => {
    expect(blockAt(day, time)).toBe(block);
  });

  it('gives a night that wraps to the date on which each of its hours lies', () => {
    // Friday ends in the night, Saturday begins low, Monday begins in the night.
    expect([blockAt('2025-04-04', '23:59'), blockAt('2025-04-05', '00:00')]).toEqual(['night', 'low']);
    expect([blockAt('2025-04-06', '23:59'), blockAt('2025-04-07', '00:00')]).toEqual(['low', 'night']);
  });

  it('takes a holiday for its weekday where no entry names holidays', () => {
    const calendar = BLOCKS.calendar.map((entry) =>
      entry.block === 'low' ? { ...entry, days: ['sat' as const, 'sun' as const] } : entry,
    );
    const plain = blockClock({ ...BLOCKS, calendar }, 15);
    expect(plain.blocks[plain.blockAt(dayOf('2025-12-25') * 1440 + 18 * 60)]?.id).toBe('peak');
  });

  it('has runs of slots that say the same as the slots', () => {
    const { slots, runEnds, runBlocks } = clock.day(dayOf('2025-03-31'));
    expect([...runEnds]).toEqual([24, 72, 88, 96]);
    expect([...runBlocks]).toEqual([0, 1, 2, 0]);
    expect(slots.length).toBe(96);
  });

  it('marks slots that two blocks share', () => {
    const early = BLOCKS.calendar.map((entry) => ({
      ...entry,
      from: entry.from === '06:00' ? '06:10' : entry.from,
      to: entry.to === '06:00' ? '06:10' : entry.to,
    }));
    const { slots, isSplit } = blockClock({ ...BLOCKS, calendar: early }, 15).day(dayOf('2025-03-31'));
    expect([slots[23], slots[24], slots[25], isSplit]).toEqual([0, 4, 1, true]);
    expect(clock.day(dayOf('2025-03-31')).isSplit).toBe(false);
  });

  it('names the years without holidays, where holidays count', () => {
    const years = (from: string, to: string) => clock.yearsWithoutHolidays(periodOf(from, to));
    expect(years('2025-12-01', '2026-01-01')).toEqual([]);
    expect(years('2025-12-01', '2026-01-02')).toEqual([2026]);
    expect(years('2024-01-01', '2027-01-01')).toEqual([2024, 2026]);
    expect(blockClock(null, 15).yearsWithoutHolidays(periodOf('2024-01-01', '2027-01-01'))).toEqual([]);
  });

  it('has one block for a tariff without time blocks', () => {
    const plain = blockClock(null, 60);
    expect([plain.blocks.length, plain.blockAt(0), plain.day(dayOf('2025-01-01')).slots.length]).toEqual([
      1, 0, 24,
    ]);
  });

  it('refuses lengths that do not fit an hour, and time blocks that leave a gap', () => {
    for (const minutes of [0, -15, 7, 90, NaN]) expect(() => blockClock(BLOCKS, minutes)).toThrow(RangeError);
    const gap = blockClock({ ...BLOCKS, calendar: BLOCKS.calendar.slice(1) }, 15);
    expect(() => gap.blockAt(dayOf('2025-03-31') * 1440)).toThrow('checked before');
  });
});
