import { describe, expect, it } from 'vitest';
import { codesOf, dayOf, fileOf, streamOf, type ChunkParts } from '../../../../tests/support/meter-chunks.ts';
import { energyInPeriods } from './energy-in-periods.ts';
import type { LocalOptions } from './local-columns.ts';

const B1 = streamOf({ register: 'B1', quantity: 'export' });
const APRIL = { from: dayOf('2025-04-01'), to: dayOf('2025-05-01') };
const MAY = { from: dayOf('2025-05-01'), to: dayOf('2025-06-01') };
const UTC: LocalOptions = { zone: 'UTC' };

const periodsOf = (chunks: readonly ChunkParts[], periods = [APRIL, MAY], options = UTC, offset = 0) =>
  energyInPeriods(fileOf({ chunks }, { offset }), periods, options);
const many = (count: number, value = 1): readonly number[] => Array.from({ length: count }, () => value);

describe('the energy of periods', () => {
  it('is exact text by quantity, from intervals of any length', () => {
    const { value, findings } = periodsOf([
      // 61 days of 1.25 kWh: 37.5 and 38.75
      { start: '2025-04-01', values: many(61, 125), minutes: 1440, places: 2 },
      // 30 and 31 days of 288 times 1 Wh: 8.64 and 8.928
      { start: '2025-04-01', values: many(61 * 288), minutes: 5, stream: B1 },
    ]);
    expect(value).toEqual([
      { period: APRIL, import: '37.5', export: '8.64', generation: null },
      { period: MAY, import: '38.75', export: '8.928', generation: null },
    ]);
    expect(findings).toEqual([]);
  });

  it('asks about what is missing, with the first, the last and the count', () => {
    const { value, findings } = periodsOf(
      [
        { start: '2025-04-01', values: many(10 * 96) },
        { start: '2025-04-12', values: [null, ...many(19 * 96 - 1)] },
      ],
      [APRIL],
    );
    // 29 days less one interval.
    expect(value[0]?.import).toBe('2.783');
    expect(
      findings.map(({ code, values }) => [code, values['count'], values['first'], values['last']]),
    ).toEqual([['meter-file/period-incomplete', '97', '2025-04-11 00:00', '2025-04-12 00:00']]);
  });

  it('is null for a period without any value', () => {
    const { value, findings } = periodsOf([{ start: '2025-04-01', values: many(30 * 24, 2), minutes: 60 }]);
    expect(value.map((one) => one.import)).toEqual(['1.44', null]);
    expect(findings.map(({ code, values }) => [code, values['count']])).toEqual([
      ['meter-file/period-incomplete', String(31 * 24)],
    ]);
  });

  it('is an error where an interval lies across the edge of a period', () => {
    // A week that begins on 28 April.
    const { value, findings } = periodsOf([
      { start: '2025-03-31', values: many(9, 70), minutes: 7 * 1440, line: 4 },
      { start: '2025-04-01', values: many(61), minutes: 1440, stream: B1 },
    ]);
    expect(value).toEqual([
      { period: APRIL, import: null, export: '0.03', generation: null },
      { period: MAY, import: null, export: '0.031', generation: null },
    ]);
    expect(
      findings.map(({ code, values, position }) => [code, values['start'], values['edge'], position?.line]),
    ).toEqual([
      ['meter-file/straddles', '2025-03-31 00:00', '2025-04-01 00:00', 4],
      ['meter-file/straddles', '2025-04-28 00:00', '2025-05-01 00:00', 4],
      ['meter-file/straddles', '2025-04-28 00:00', '2025-05-01 00:00', 4],
      ['meter-file/straddles', '2025-05-26 00:00', '2025-06-01 00:00', 4],
    ]);
  });

  it('goes by the days of the zone', () => {
    // Midnight in Kolkata is 18:30 UTC of the day before.
    const { value, findings } = periodsOf(
      [{ start: '2025-03-31 18:00', values: [100, ...many(30 * 48), 1000], minutes: 30 }],
      [APRIL],
      { zone: 'Asia/Kolkata' },
    );
    expect([value[0]?.import, findings]).toEqual(['1.44', []]);
    const hours = periodsOf(
      [{ start: '2025-03-31 18:00', values: many(30 * 24 + 1), minutes: 60 }],
      [APRIL],
      { zone: 'Asia/Kolkata' },
    );
    expect(codesOf(hours.findings)).toEqual(['meter-file/straddles', 'meter-file/straddles']);
  });

  it('is exact past 2^53', () => {
    const largest = Number.MAX_SAFE_INTEGER;
    const { value } = periodsOf([
      { start: '2025-04-01', values: [largest, largest], minutes: 1440, places: 0 },
    ]);
    expect(value[0]?.import).toBe('18014398509481982');
  });

  it('is none where no stream can be counted', () => {
    const { value, findings } = periodsOf([{ start: 0, values: [1], stream: streamOf({ quantity: 'net' }) }]);
    expect([value, codesOf(findings)]).toEqual([[], ['meter-file/net', 'meter-file/no-intervals']]);
  });

  it.each([
    [[MAY, APRIL]],
    [[APRIL, { from: dayOf('2025-04-30'), to: dayOf('2025-05-02') }]],
    [[{ ...APRIL, to: APRIL.from }]],
  ])('has no periods in disorder: %#', (periods) => {
    expect(() => periodsOf([{ start: 0, values: [1] }], periods)).toThrow(RangeError);
  });

  it('has none of no periods', () => {
    expect(periodsOf([{ start: 0, values: [1] }], [])).toEqual({ value: [], findings: [] });
  });
});
