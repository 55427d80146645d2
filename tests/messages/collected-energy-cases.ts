import type { Finding } from '@unitbook/engine';
import {
  energyByDay,
  energyInPeriods,
  localColumns,
  readingRows,
  registerIntervals,
  type LocalOptions,
} from '../../packages/meter-files/src/collected/index.ts';
import type { RegisterValue } from '../../packages/meter-files/src/stream.ts';
import { dayOf, fileOf, readingOf, streamOf, type ChunkParts } from '../support/meter-chunks.ts';
import type { MessageCase } from './message-case.ts';

const E2 = streamOf({ register: 'E2' });
const B1 = streamOf({ register: 'B1', quantity: 'export' });

const columns =
  (chunks: readonly ChunkParts[], options: LocalOptions = { zone: null }, offset: number | null = null) =>
  (): readonly Finding[] =>
    localColumns(fileOf({ chunks }, { offset }), options).findings;
const days = (chunks: readonly ChunkParts[]) => (): readonly Finding[] =>
  energyByDay(fileOf({ chunks }), { zone: 'Asia/Kolkata' }).findings;
const april =
  (...chunks: readonly ChunkParts[]) =>
  (): readonly Finding[] =>
    energyInPeriods(fileOf({ chunks }), [{ from: dayOf('2025-04-01'), to: dayOf('2025-05-01') }], {
      zone: 'UTC',
    }).findings;
const rows = (readings: readonly RegisterValue[], on?: readonly string[]) => (): readonly Finding[] =>
  readingRows(fileOf({ readings }), on === undefined ? {} : { on: on.map(dayOf) }).findings;

const ones = (count: number): readonly number[] => Array.from({ length: count }, () => 1);
const EXACT = 'at most 9,007,199,254,740,991 in the last decimal';
const CHECK = 'Check the unit and the decimal mark of the values.';

const CLOCK_CASES: readonly MessageCase[] = [
  {
    code: 'meter-file/zone-not-known',
    when: 'a file in market time has no zone',
    make: columns([{ start: 0, values: [1] }], { zone: null }, 600),
    severity: 'question',
    at: '',
    found: 'times at UTC+10:00 all year, and no time zone',
    expected: 'the time zone of the place, such as Europe/Amsterdam',
    remedy: 'Name the time zone. Until then days and months begin and end by the clock of the file.',
  },
  {
    code: 'meter-file/zone-not-known',
    when: 'a file west of UTC has no zone',
    make: columns([{ start: 0, values: [1] }], { zone: null }, -210),
    severity: 'question',
    at: '',
    found: 'times at UTC-03:30 all year, and no time zone',
    expected: 'the time zone of the place, such as Europe/Amsterdam',
    remedy: 'Name the time zone. Until then days and months begin and end by the clock of the file.',
  },
  {
    code: 'meter-file/zone-not-needed',
    when: 'a file in local time has one',
    make: columns([{ start: 0, values: [1] }], { zone: 'Europe/Amsterdam' }),
    severity: 'note',
    at: '',
    found: 'the time zone Europe/Amsterdam, and a file in local time',
    expected: 'a time zone where times have to be moved to it',
    remedy: 'Nothing to do. Times stand as they are; the zone tells on which days clocks change.',
  },
  {
    code: 'meter-file/day-left-out',
    when: 'Samoa goes over the date line',
    make: columns(
      [{ start: '2011-12-29 12:00', values: ones(96), minutes: 30 }],
      { zone: 'Pacific/Apia' },
      0,
    ),
    severity: 'note',
    at: '',
    found: 'no 2011-12-30 in Pacific/Apia: the calendar went from the day before to the day after',
    expected: 'every day of the calendar',
    remedy: 'Nothing to do. No data is missing on that day.',
  },
  {
    code: 'meter-file/odd-clock-change',
    when: 'Nepal put its clock forward by a quarter of an hour',
    isAmongOthers: true,
    make: columns(
      [{ start: '1985-12-31 12:00', values: ones(96), minutes: 30 }],
      { zone: 'Asia/Kathmandu' },
      0,
    ),
    severity: 'question',
    at: '',
    found: 'clocks that change by 15 minutes on 1986-01-01 in Asia/Kathmandu',
    expected: 'a change of an hour, or of half an hour',
    remedy:
      'Check what is said of the intervals of that day: those that come twice or are left out by the clock ' +
      'can be taken for faults.',
  },
];

const STREAM_CASES: readonly MessageCase[] = [
  {
    code: 'meter-file/net',
    when: 'intervals of net energy are not assigned',
    make: columns([{ start: 0, values: [1], stream: streamOf({ register: 'N1', quantity: 'net' }) }]),
    at: '',
    found: 'net energy, import less export: N1',
    expected: 'import and export, each by itself',
    remedy:
      'Ask for the data of both registers: import and export cannot be worked out from their difference. ' +
      'Say what the register is to be counted as if it is one of the two.',
    isAmongOthers: true,
  },
  {
    code: 'meter-file/other-registers',
    when: 'two registers count reactive energy',
    make: columns([
      { start: 0, values: [1] },
      { start: 0, values: [1], stream: streamOf({ register: 'Q1', quantity: 'other' }) },
      { start: 0, values: [1], stream: streamOf({ register: 'Q2', quantity: 'other', meter: 'M2' }) },
    ]),
    severity: 'note',
    at: '',
    found: 'registers of neither import, export nor generation: Q1; Q2 of meter M2',
    expected: 'import, export or generation in kWh',
    remedy: 'Nothing to do. They are left out.',
  },
  {
    code: 'meter-file/several-points',
    when: 'a file has two connections',
    make: columns([
      { start: 0, values: [1], stream: streamOf({ point: 'P1' }) },
      { start: 0, values: [1], stream: streamOf({ point: 'P2' }) },
    ]),
    at: '',
    found: '2 metering points: P1; P2',
    expected: 'the data of one connection',
    remedy: 'Say which registers are to be counted.',
  },
  {
    code: 'meter-file/several-meters',
    when: 'a meter was changed',
    make: columns([
      { start: 0, values: [1], stream: streamOf({ point: 'P', meter: 'M1' }) },
      { start: 15, values: [1, 1], stream: streamOf({ point: 'P', meter: 'M2' }) },
    ]),
    severity: 'note',
    at: '',
    found:
      'E1 of point P counted by several meters: M1 from 1970-01-01 00:00 to 1970-01-01 00:15; M2 from 1970-01-01 00:15 to 1970-01-01 00:45',
    expected: 'one meter, or one after another',
    remedy: 'Nothing to do if the meter was changed. Where several count at one time, they are added up.',
  },
  {
    code: 'meter-file/rates-in-total',
    when: 'a total has its rates beside it',
    make: columns([
      { start: 0, values: [3] },
      { start: 0, values: [1], stream: streamOf({ register: '1.8.1', rate: '1' }) },
      { start: 0, values: [2], stream: streamOf({ register: '1.8.2', rate: '2' }) },
    ]),
    severity: 'note',
    at: '',
    found: 'registers of single rates beside the register of all: 1.8.1; 1.8.2',
    expected: 'either the total or its rates',
    remedy: 'Nothing to do. The total is counted; the rates are in it.',
  },
  {
    code: 'meter-file/no-intervals',
    when: 'a file has register readings only',
    make: columns([]),
    at: '',
    found: 'no interval values of import, export or generation',
    expected: 'interval values of one of them at least',
    remedy: 'Choose a file with interval values, or say what its registers are to be counted as.',
  },
];

const COLUMN_CASES: readonly MessageCase[] = [
  {
    code: 'meter-file/no-columns',
    when: 'values are daily',
    make: columns([
      { start: 0, values: [1], minutes: 1440 },
      { start: 0, values: [1], stream: B1 },
    ]),
    at: '',
    found: 'intervals of 15, 1440 minutes',
    expected: 'lengths that all divide 5, 15, 30 or 60 minutes',
    remedy: 'Count the energy by day or by billing period: that can be done with intervals of any length.',
  },
  {
    code: 'meter-file/summed-up',
    when: 'intervals have ten minutes',
    make: columns([{ start: 0, values: ones(3), minutes: 10 }]),
    severity: 'note',
    at: '',
    found: 'intervals of 10 minutes',
    expected: 'one length, of 5, 15, 30 or 60 minutes',
    remedy: 'Nothing to do. The shorter ones are summed up to 30 minutes.',
  },
  {
    code: 'meter-file/partial',
    when: 'a half hour lacks ten minutes',
    make: columns([{ start: 0, values: ones(5), minutes: 10, line: 6 }]),
    severity: 'question',
    at: '6:1',
    found:
      '2 intervals that fill no whole 30 minutes, the first at 1970-01-01 00:30, the last at 1970-01-01 00:40',
    expected: 'values for all of every 30 minutes by the local clock',
    remedy: 'Ask for the missing data. What these hold is not counted.',
    isAmongOthers: true,
  },
  {
    code: 'meter-file/too-large',
    when: 'two registers are too large together',
    make: columns([
      { start: 0, values: [9007199254740991] },
      { start: 0, values: [1], stream: E2 },
    ]),
    at: '',
    found: '1 interval with a sum that is too large to be exact, at 1970-01-01 00:00',
    expected: EXACT,
    remedy: CHECK,
  },
  {
    code: 'meter-file/incomplete',
    when: 'one register lacks what another has',
    make: columns([
      { start: 0, values: [1, 1, 1] },
      { start: 0, values: [1], stream: B1 },
    ]),
    severity: 'question',
    at: '',
    found:
      'B1: 2 intervals missing that other registers have, the first at 1970-01-01 00:15, the last at 1970-01-01 00:30',
    expected: 'a value of every register for each interval',
    remedy:
      'Ask for the missing data. These intervals are left out of all registers. If the register counted ' +
      'nothing then, count the file without it.',
  },
  {
    code: 'meter-file/no-whole-interval',
    when: 'two registers have no interval in common',
    make: columns([
      { start: 0, values: [1] },
      { start: 15, values: [1], stream: B1 },
    ]),
    at: '',
    found: 'no 15 minutes for which every register has values',
    expected: 'intervals for which every register has a value',
    remedy: 'Check whether the registers belong to one time, or say which are to be counted.',
    isAmongOthers: true,
  },
  {
    code: 'meter-file/finer-than-watt-hour',
    when: 'values have four decimals',
    make: columns([{ start: 0, values: [6, 10, 7], places: 4 }]),
    severity: 'note',
    at: '',
    found: '2 values of import with parts of a watt-hour, in 4 decimals of a kWh',
    expected: 'whole watt-hours',
    remedy: 'Nothing to do. Parts are carried to the next interval; at the end 0.0003 kWh are left over.',
  },
];

const SUM_CASES: readonly MessageCase[] = [
  {
    code: 'meter-file/across-days',
    when: 'hours by UTC lie over midnight in Kolkata',
    make: days([{ start: '2025-04-01 18:00', values: ones(2), minutes: 60, line: 3 }]),
    severity: 'question',
    at: '3:1',
    found: '1 interval across the end of a local day, at 2025-04-01 18:00',
    expected: 'intervals that lie in one local day',
    remedy:
      'Each is counted on the day on which it begins; neither of its days is whole. Check the time zone.',
  },
  {
    code: 'meter-file/day-too-large',
    when: 'a day is too large to be exact',
    make: days([{ start: 0, values: [9007199254740991, 1], line: 3 }]),
    at: '3:1',
    found: '1 interval on days whose sum is too large to be exact, at 1970-01-01 00:15',
    expected: `${EXACT} on a day`,
    remedy: CHECK,
  },
  {
    code: 'meter-file/straddles',
    when: 'a week lies over the end of a month',
    make: april(
      { start: '2025-04-01', values: ones(4), minutes: 7 * 1440 },
      { start: '2025-04-29', values: [1], minutes: 7 * 1440, line: 9 },
    ),
    at: '9:1',
    found:
      'E1: the interval of 10080 minutes at 2025-04-29 00:00, across the edge of the period at 2025-05-01 00:00',
    expected: 'intervals that lie in the period from 2025-04-01 to 2025-05-01 or outside it',
    remedy:
      'Check the time zone and the dates of the period: nothing says which part of the interval lies in ' +
      'which period. The import of the period is not worked out.',
  },
  {
    code: 'meter-file/period-incomplete',
    when: 'two days of a month are missing',
    make: april(
      { start: '2025-04-01', values: ones(10), minutes: 1440 },
      { start: '2025-04-13', values: ones(18), minutes: 1440 },
    ),
    severity: 'question',
    at: '',
    found: 'E1: 2 intervals missing, the first at 2025-04-11 00:00, the last at 2025-04-12 00:00',
    expected: 'values for all of the period from 2025-04-01 to 2025-05-01, every 1440 minutes',
    remedy: 'Ask for the missing data. What was counted then is not in the import of the period.',
  },
];

const IMPORT = streamOf({ register: '1.8.0' });
const EXPORT = streamOf({ register: '2.8.0', quantity: 'export' });

const ROW_CASES: readonly MessageCase[] = [
  {
    code: 'meter-file/no-registers',
    when: 'a file has intervals only',
    make: rows([]),
    at: '',
    found: 'no reading of a register of import, export or generation',
    expected: 'readings of one of them at least',
    remedy: 'Choose a file with register readings, or say what its registers are to be counted as.',
  },
  {
    code: 'meter-file/several-registers',
    when: 'two meters have a register of import',
    make: rows(['M1', 'M2'].map((meter) => readingOf(streamOf({ meter }), '2025-05-01', '1'))),
    at: '',
    found: '2 registers of import: E1 of meter M1; E1 of meter M2',
    expected: 'one register of each quantity and rate',
    remedy: 'Say which is to be used. If the meter was changed, add its last and its first reading.',
  },
  {
    code: 'meter-file/several-registers',
    when: 'two meters have a register of one rate',
    make: rows(['M1', 'M2'].map((meter) => readingOf(streamOf({ meter, rate: '2' }), '2025-05-01', '1'))),
    at: '',
    found: '2 registers of import, rate 2: E1 of meter M1; E1 of meter M2',
    expected: 'one register of each quantity and rate',
    remedy: 'Say which is to be used. If the meter was changed, add its last and its first reading.',
  },
  {
    code: 'meter-file/reading-other-time',
    when: 'export was read an hour later',
    make: rows([
      readingOf(IMPORT, '2025-05-01 06:00', '1', { line: 2 }),
      readingOf(EXPORT, '2025-05-01 07:00', '1', { line: 3 }),
    ]),
    severity: 'question',
    at: '3:1',
    found: '2.8.0, read at 2025-05-01 07:00',
    expected: 'a reading at 2025-05-01 06:00, as of the other registers',
    remedy: 'It is used for that day. Check that it can stand beside the others.',
  },
  {
    code: 'meter-file/no-reading-on',
    when: 'the meter was read a day later',
    make: rows([readingOf(IMPORT, '2025-05-02', '1')], ['2025-05-01']),
    severity: 'question',
    at: '',
    found: '1.8.0: no reading on 2025-05-01',
    expected: 'a reading on that day',
    remedy: 'The nearest day with a reading is 2025-05-02. Choose that day if the bill goes by it.',
    offer: '2025-05-02',
  },
  {
    code: 'meter-file/days-without',
    when: 'export was not read once',
    make: rows([
      readingOf(IMPORT, '2025-05-01', '1'),
      readingOf(IMPORT, '2025-06-01', '1'),
      readingOf(EXPORT, '2025-06-01', '1'),
    ]),
    severity: 'question',
    at: '',
    found: '2.8.0: no reading on 2025-05-01, when others were read',
    expected: 'a reading of every register on each day',
    remedy: 'Ask for the missing readings, or use the days that have all.',
  },
  {
    code: 'meter-file/days-without',
    when: 'export was not read twice',
    make: rows([
      readingOf(IMPORT, '2025-05-01', '1'),
      readingOf(IMPORT, '2025-06-01', '1'),
      readingOf(EXPORT, '2025-07-01', '1'),
      readingOf(IMPORT, '2025-07-01', '1'),
    ]),
    severity: 'question',
    at: '',
    found: '2.8.0: no reading on 2 days when others were read, the first 2025-05-01, the last 2025-06-01',
    expected: 'a reading of every register on each day',
    remedy: 'Ask for the missing readings, or use the days that have all.',
  },
];

const REGISTER_CASES: readonly MessageCase[] = [
  {
    code: 'meter-file/register-fell',
    when: 'a register shows less than before',
    make: () =>
      registerIntervals(
        fileOf({
          readings: [
            readingOf(IMPORT, '2025-05-01', '0400.50', { line: 2 }),
            readingOf(IMPORT, '2025-05-02 06:00', '3', { line: 3 }),
          ],
        }),
      ).findings,
    severity: 'question',
    at: '3:1',
    found: '1.8.0: 3 on 2025-05-02 06:00, below 400.5 on 2025-05-01',
    expected: 'a register that counts up',
    remedy:
      'It passed its full scale, began anew or belongs to another meter from then on: the file does not say ' +
      'which. What was counted between the two is in no sum. Ask for it, or add both readings of the change.',
  },
  {
    code: 'meter-file/register-stuck',
    when: 'a register stands still while another goes on',
    make: () =>
      registerIntervals(
        fileOf({
          readings: [
            readingOf(IMPORT, '2025-05-01', '4', { line: 2 }),
            readingOf(IMPORT, '2025-05-02', '5', { line: 3 }),
            readingOf(IMPORT, '2025-05-05', '5', { line: 4 }),
            readingOf(EXPORT, '2025-05-02', '1', { line: 5 }),
            readingOf(EXPORT, '2025-05-05', '9', { line: 6 }),
          ],
        }),
      ).findings,
    severity: 'question',
    at: '4:1',
    found:
      '1.8.0: the same number for 3 days, from 2025-05-02 00:00 to 2025-05-05 00:00, while others went on',
    expected: 'a register that moves now and then',
    remedy:
      'Was the plant off, or nothing given? Then nothing is wrong. Else the meter or its log stood still: ' +
      'compare it with its display.',
  },
];

/** Of what the intervals and readings of a file come to. */
export const ENERGY_CASES: readonly MessageCase[] = [
  ...CLOCK_CASES,
  ...STREAM_CASES,
  ...COLUMN_CASES,
  ...SUM_CASES,
  ...ROW_CASES,
  ...REGISTER_CASES,
];
