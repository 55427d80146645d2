import { readFileSync } from 'node:fs';
import { dayText } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { dayOf, readingOf, streamOf } from '../../../../tests/support/meter-chunks.ts';
import { proposeTable } from '../table/index.ts';
import { readMeterFile } from '../open/index.ts';
import { collectMeterFile } from './collect.ts';
import { energyByDay } from './energy-by-day.ts';
import { energyInPeriods } from './energy-in-periods.ts';
import { localColumns } from './local-columns.ts';
import { registerIntervals } from './register-intervals.ts';

const TAKEN = streamOf({ register: '1.8.0' });
const GIVEN = streamOf({ register: '2.8.0', quantity: 'export' });
const HERE = { zone: null } as const;

type Shown = readonly (readonly [moment: string, value: string])[];

function collected(taken: Shown, given: Shown = []) {
  const { sink, result } = collectMeterFile();
  taken.forEach(([moment, value], at) => {
    sink.register(readingOf(TAKEN, moment, value, { line: at + 2 }));
  });
  given.forEach(([moment, value], at) => {
    sink.register(readingOf(GIVEN, moment, value, { line: at + 2 }));
  });
  return result({ offset: null });
}

const fileOf = (taken: Shown, given: Shown = []) => registerIntervals(collected(taken, given));

describe('registers as intervals', () => {
  it('are what each went on, exactly, however many digits are shown', () => {
    const file = fileOf([
      ['2025-04-01 00:00', '0010.25'],
      ['2025-04-01 00:15', '10.3'],
      ['2025-04-01 00:30', '10.305'],
    ]);
    expect(file.intervals.map(({ minutes, places, values }) => [minutes, places, [...values]])).toEqual([
      [15, 3, [50, 5]],
    ]);
    expect(localColumns(file, HERE).value?.columns.import?.join()).toBe('50,5');
  });

  it('keep the energy of a gap as one long interval, and of days without a minute as days', () => {
    const file = fileOf([
      ['2025-04-01', '10'],
      ['2025-04-02', '12'],
      ['2025-04-05', '18'],
    ]);
    expect(file.intervals.map(({ minutes, values }) => [minutes, [...values]])).toEqual([
      [1440, [2]],
      [4320, [6]],
    ]);
    const whole = { from: dayOf('2025-04-01'), to: dayOf('2025-04-05') };
    expect(energyInPeriods(file, [whole], HERE).value[0]?.import).toBe('8');
    const without = registerIntervals(
      collected([
        ['2025-04-01', '10'],
        ['2025-04-02', '12'],
        ['2025-04-05', '18'],
      ]),
      1440,
    );
    expect(without.intervals.map(({ values }) => [...values])).toEqual([[2]]);
  });

  it('have no interval where a register falls, and say so', () => {
    const file = fileOf([
      ['2025-04-01', '99990'],
      ['2025-04-02', '00004'],
      ['2025-04-03', '00010'],
    ]);
    expect(
      file.findings.map(({ code, position, values }) => [code, position?.line, values['after']]),
    ).toEqual([['meter-file/register-fell', 3, '4']]);
    expect(energyByDay(file, HERE).value?.import?.energy).toEqual([6]);
  });

  it.each([
    ['three days still while another goes on', '2025-04-04', true, ['meter-file/register-stuck']],
    ['two days', '2025-04-03', true, []],
    ['three days while all stand still', '2025-04-04', false, []],
  ] as const)('are asked about after %s', (_, until, goesOn, codes) => {
    const still: Shown = [
      ['2025-03-31', '5'],
      ['2025-04-01', '10'],
      [until, '10'],
      ['2025-04-05', '12'],
    ];
    const other: Shown = [
      ['2025-04-01', '3'],
      [until, goesOn ? '9' : '3'],
    ];
    expect(fileOf(still, other).findings.map(({ code }) => code)).toEqual(codes);
  });

  it('of a measured home sum to last less first, quarter hour by quarter hour', () => {
    // One home in the Netherlands, September 2022, two rates each way: MIT, (c) Patrick Vorgers.
    const path = '../../../../tests/published/data/homes/home-6-two-rate-registers-15min.csv';
    const text = readFileSync(new URL(path, import.meta.url), 'utf8');
    const { layout } = proposeTable(text.slice(0, 65_536));
    const { file } = readMeterFile(text, { layout: { ...layout, confirmed: true } });
    if (file === null) throw new Error('not read');
    const intervals = registerIntervals(file);
    const rows = text
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => line.trim().split(','));
    const thousandths = (value = ''): bigint => {
      const [whole = '', decimals = ''] = value.split('.');
      return BigInt(whole + decimals.padEnd(3, '0'));
    };
    const advance = (column: number): bigint =>
      thousandths(rows.at(-1)?.[column]) - thousandths(rows[0]?.[column]);
    const sums = intervals.intervals.map(({ values, places }) =>
      [...values].reduce((sum, value) => sum + BigInt(value) * 10n ** BigInt(3 - places), 0n),
    );
    expect(intervals.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    const total = (from: number): bigint => advance(from) + advance(from + 1);
    expect(sums.reduce((all, sum) => all + sum, 0n)).toBe(total(1) + total(3));
    expect(localColumns(file, HERE).value?.columns.import?.length).toBe(2879);
    const columns = localColumns(intervals, HERE).value;
    expect(columns?.columns.minutes).toBe(15);
    expect(columns === null ? '' : dayText(columns.span.from)).toBe('2022-09-01');
    const taken = [...(columns?.columns.import ?? [])].reduce((sum, value) => sum + BigInt(value), 0n);
    expect(taken).toBe(total(1));
  });
});
