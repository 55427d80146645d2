import { describe, expect, it } from 'vitest';
import { dayText, type DayNumber } from '@unitbook/engine';
import { codesOf, dayOf, fileOf, readingOf, streamOf } from '../../../../tests/support/meter-chunks.ts';
import type { RegisterValue } from '../stream.ts';
import { firstDaysOfMonths, readingRows, type RowOptions } from './reading-rows.ts';

const IMPORT = streamOf({ register: '1-0:1.8.0' });
const EXPORT = streamOf({ register: '1-0:2.8.0', quantity: 'export' });
const [RATE_1, RATE_2] = ['1', '2'].map((rate) => streamOf({ register: `1-0:1.8.${rate}`, rate })) as [
  typeof IMPORT,
  typeof IMPORT,
];

const rowsOf = (readings: readonly RegisterValue[], options: RowOptions = {}) =>
  readingRows(fileOf({ readings }), options);

describe('rows of readings', () => {
  it('have the registers of each day, total and rates, digits as they stand', () => {
    const { value, findings } = rowsOf([
      readingOf(RATE_1, '2025-05-01 00:00', '001581.120', { line: 7 }),
      readingOf(RATE_2, '2025-05-01 00:00', '001435.706', { line: 8, quality: 'estimated' }),
      readingOf(IMPORT, '2025-05-01 00:00', '3016.826', { line: 9, quality: 'substituted' }),
      readingOf(EXPORT, '2025-05-01 00:00', '0', { line: 6, quality: 'edited' }),
    ]);
    expect(value).toEqual([
      {
        day: dayOf('2025-05-01'),
        minute: 0,
        values: {
          import: '3016.826',
          export: '0',
          rates: { import: { '1': '001581.120', '2': '001435.706' } },
        },
        estimated: ['import', 'import@2'],
        line: 6,
      },
    ]);
    expect(findings).toEqual([]);
  });

  it('have no rates where there are none', () => {
    expect(rowsOf([readingOf(IMPORT, '2025-05-01', '7')]).value[0]?.values).toEqual({ import: '7' });
  });

  it('take the earliest time of a day at which most registers were read', () => {
    const { value, findings } = rowsOf([
      readingOf(IMPORT, '2025-05-01 00:00', '1'),
      readingOf(IMPORT, '2025-05-01 00:15', '2'),
      readingOf(EXPORT, '2025-05-01 00:15', '3'),
      readingOf(IMPORT, '2025-05-01 00:30', '4'),
      readingOf(EXPORT, '2025-05-01 00:30', '5'),
    ]);
    expect(value.map(({ minute, values }) => [minute, values])).toEqual([[15, { import: '2', export: '3' }]]);
    expect(findings).toEqual([]);
  });

  it('take a register from another time of the day only with a question', () => {
    const { value, findings } = rowsOf([
      readingOf(IMPORT, '2025-05-01 06:00', '1', { line: 2 }),
      readingOf(EXPORT, '2025-05-01 07:00', '2', { line: 3 }),
      readingOf(EXPORT, '2025-05-01 09:00', '3', { line: 4 }),
    ]);
    expect(value.map(({ minute, values }) => [minute, values])).toEqual([
      [360, { import: '1', export: '2' }],
    ]);
    expect(findings.map(({ code, position }) => [code, position?.line])).toEqual([
      ['meter-file/reading-other-time', 3],
    ]);
  });

  it('tell on which days a register was not read', () => {
    const { value, findings } = rowsOf([
      readingOf(IMPORT, '2025-05-01', '1'),
      readingOf(IMPORT, '2025-06-01', '2'),
      readingOf(IMPORT, '2025-07-01', '3'),
      readingOf(EXPORT, '2025-06-01', '4'),
    ]);
    expect(value.map(({ values }) => values)).toEqual([
      { import: '1' },
      { import: '2', export: '4' },
      { import: '3' },
    ]);
    expect(findings.map(({ code, values }) => [code, values])).toEqual([
      [
        'meter-file/days-without',
        { register: '1-0:2.8.0', count: '2', first: '2025-05-01', last: '2025-07-01' },
      ],
    ]);
  });
});

describe('rows of chosen days', () => {
  const readings = [
    readingOf(IMPORT, '2025-04-30', '1'),
    readingOf(IMPORT, '2025-05-02', '2'),
    readingOf(IMPORT, '2025-06-01', '3'),
    readingOf(EXPORT, '2025-05-02', '4'),
  ];
  const days = ['2025-06-01', '2025-05-01', '2025-06-01'].map(dayOf);

  it('are those of the days alone; the nearest day is offered, and not taken', () => {
    const { value, findings } = rowsOf(readings, { on: days });
    expect(value.map(({ day, values }) => [dayText(day), values])).toEqual([['2025-06-01', { import: '3' }]]);
    expect(
      findings.map(({ code, values, offer }) => [code, values['register'], values['day'], offer]),
    ).toEqual([
      // 30 April and 2 May are as near; the earlier is offered.
      ['meter-file/no-reading-on', '1-0:1.8.0', '2025-05-01', '2025-04-30'],
      ['meter-file/no-reading-on', '1-0:2.8.0', '2025-05-01', '2025-05-02'],
      ['meter-file/no-reading-on', '1-0:2.8.0', '2025-06-01', '2025-05-02'],
    ]);
  });

  it('can be the first days of months', () => {
    const first = (moments: readonly string[]): readonly string[] =>
      firstDaysOfMonths(fileOf({ readings: moments.map((one) => readingOf(IMPORT, one, '1')) })).map(dayText);
    expect(first(['2024-11-30', '2025-02-01'])).toEqual(['2024-12-01', '2025-01-01', '2025-02-01']);
    expect(first(['2024-11-01', '2024-11-30'])).toEqual(['2024-11-01']);
    expect(first(['2024-11-02'])).toEqual([]);
    expect(first([])).toEqual([]);
  });

  it('are none for no days', () => {
    expect(rowsOf(readings, { on: [] as DayNumber[] })).toEqual({ value: [], findings: [] });
  });
});

describe('registers', () => {
  it('of one quantity that are several are an error, and none is used', () => {
    const [one, other] = [streamOf({ meter: 'M1' }), streamOf({ meter: 'M2' })];
    const readings = [
      readingOf(one, '2025-05-01', '9'),
      readingOf(other, '2025-05-01', '0'),
      readingOf(EXPORT, '2025-05-01', '5'),
    ];
    const { value, findings } = rowsOf(readings);
    expect([value.map(({ values }) => values), codesOf(findings)]).toEqual([
      [{ export: '5' }],
      ['meter-file/several-registers'],
    ]);
    const assign: RowOptions['assign'] = ({ meter }) => (meter === 'M2' ? 'import' : null);
    const chosen = rowsOf(readings, { assign });
    expect([chosen.value.map(({ values }) => values), chosen.findings]).toEqual([[{ import: '0' }], []]);
  });

  it('of net energy are an error, and of no active energy left out', () => {
    const { value, findings } = rowsOf([
      readingOf(IMPORT, '2025-05-01', '1'),
      readingOf(streamOf({ register: '16.8.0', quantity: 'net' }), '2025-05-01', '2'),
      readingOf(streamOf({ register: '3.8.0', quantity: 'other' }), '2025-05-01', '3'),
    ]);
    expect([value.map(({ values }) => values), codesOf(findings)]).toEqual([
      [{ import: '1' }],
      ['meter-file/net', 'meter-file/other-registers'],
    ]);
  });

  it('that are none are an error', () => {
    expect(rowsOf([])).toMatchObject({ value: [], findings: [{ code: 'meter-file/no-registers' }] });
  });
});
