import type { Finding } from '@unitbook/engine';
import {
  coverageFindings,
  fileCoverage,
  keepFindings,
  summariseMeterFile,
} from '../../packages/meter-files/src/collected/index.ts';
import {
  fileOf,
  fill,
  readingOf,
  streamOf,
  type ChunkParts,
  type FileParts,
} from '../support/meter-chunks.ts';
import type { MessageCase } from './message-case.ts';

const E1 = streamOf({ meter: 'M1', point: 'P1' });
const B1 = streamOf({ register: 'B1', quantity: 'export', meter: 'M1', point: 'P1' });

const collected = (parts: FileParts) => (): readonly Finding[] => fileOf(parts).findings;
const intervals = (...chunks: readonly ChunkParts[]): (() => readonly Finding[]) =>
  collected({ chunks: chunks.map((chunk) => ({ stream: E1, ...chunk })) });
const covered =
  (...chunks: readonly ChunkParts[]) =>
  (): readonly Finding[] =>
    coverageFindings(fileCoverage(fileOf({ chunks: chunks.map((chunk) => ({ stream: E1, ...chunk })) })));
const summed = (parts: FileParts) => (): readonly Finding[] => {
  const { sink, result } = summariseMeterFile();
  fill(sink, parts);
  return result().findings;
};

/** A thousand findings of one kind, and two more. */
const many = (severity: Finding['severity']) => (): readonly Finding[] => {
  const keeper = keepFindings();
  for (let line = 1; line <= 1002; line += 1) {
    const [code, text] = [`x/${severity}`, ''];
    keeper.add({
      code,
      severity,
      path: [],
      values: {},
      found: text,
      expected: text,
      remedy: text,
      position: { line, column: 1 },
    });
  }
  return keeper.findings();
};

const day = 1440;
const ASK = 'Ask for the missing data. What was counted in that time is in none of the sums.';

const MORE_CASES: readonly MessageCase[] = [
  {
    code: 'meter-file/more-errors',
    when: 'more than a thousand errors',
    make: many('error'),
    at: '1001:1',
    found: '2 more errors of the kind x/error, on lines 1001 to 1002',
    expected: 'a file with few errors of one kind',
    remedy: 'Correct those that are told in full first: the others are likely to have the same cause.',
    isAmongOthers: true,
  },
  {
    code: 'meter-file/more-questions',
    when: 'more than a thousand questions',
    make: many('question'),
    severity: 'question',
    at: '1001:1',
    found: '2 more questions of the kind x/question, on lines 1001 to 1002',
    expected: 'a file with few questions of one kind',
    remedy: 'Answer those that are told in full first: the others are likely to have the same cause.',
    isAmongOthers: true,
  },
  {
    code: 'meter-file/more-notes',
    when: 'more than a thousand notes',
    make: many('note'),
    severity: 'note',
    at: '1001:1',
    found: '2 more notes of the kind x/note, on lines 1001 to 1002',
    expected: 'a file with few notes of one kind',
    remedy: 'Nothing to do.',
    isAmongOthers: true,
  },
];

const INTERVAL_CASES: readonly MessageCase[] = [
  {
    code: 'meter-file/interval-too-fine',
    when: 'a value is too large for the decimals of another',
    make: intervals(
      { start: 0, values: [1000], places: 0, line: 4 },
      { start: 15, values: [1], places: 13, line: 5 },
    ),
    at: '4:1',
    found:
      'E1 of meter M1, point P1: 1 interval too large to be counted in 13 decimals of a kWh, at 1970-01-01 00:00; on line 4',
    expected:
      'values of at most 9,007,199,254,740,991 in the last decimal that any value of the register has',
    remedy:
      'Check the unit and the decimal mark of the values with the most decimals. These are not counted.',
  },
  {
    code: 'meter-file/interval-conflict',
    when: 'two actual values of one interval differ',
    make: intervals(
      { start: '2025-04-01 06:00', values: [250, 120], line: 3 },
      { start: '2025-04-01 06:00', values: [245, 121], line: 9 },
    ),
    at: '9:1',
    found:
      'E1 of meter M1, point P1: 2 intervals more than once, with different values of the same quality, the first at 2025-04-01 06:00, the last at 2025-04-01 06:15; the first: 0.250 kWh (actual) on line 3, 0.245 kWh (actual) on line 9',
    expected: 'one value for each interval, or a better one in place of another',
    remedy:
      'Take out those that are wrong; until then none of them is counted. If the clocks went back in that ' +
      'hour, read the file with its time zone.',
  },
  {
    code: 'meter-file/interval-replaced',
    when: 'an actual value comes after an estimated one',
    make: intervals(
      { start: '2025-04-01 06:00', values: [250], line: 3, quality: 'estimated' },
      { start: '2025-04-01 06:00', values: [245], line: 9 },
    ),
    severity: 'question',
    at: '3:1',
    found:
      'E1 of meter M1, point P1: 1 interval more than once, with values of different quality, at 2025-04-01 06:00; the first: 0.245 kWh (actual) on line 9, 0.250 kWh (estimated) on line 3',
    expected: 'one value for each interval',
    remedy: 'The value of the better quality is counted. Take it out if it is the wrong one.',
  },
  {
    code: 'meter-file/interval-replaced',
    when: 'a value comes after none',
    make: intervals({ start: 0, values: [null], line: 3 }, { start: 0, values: [-245], line: 9 }),
    severity: 'question',
    at: '3:1',
    found:
      'E1 of meter M1, point P1: 1 interval more than once, with values of different quality, at 1970-01-01 00:00; the first: -0.245 kWh (actual) on line 9, no value on line 3',
    expected: 'one value for each interval',
    remedy: 'The value of the better quality is counted. Take it out if it is the wrong one.',
  },
  {
    code: 'meter-file/interval-repeated',
    when: 'the same values come again',
    make: intervals({ start: 0, values: [1, 2], line: 3 }, { start: 0, values: [1, 2], line: 4 }),
    severity: 'question',
    at: '4:1',
    found:
      'E1 of meter M1, point P1: 2 intervals more than once, with the same value, the first at 1970-01-01 00:00, the last at 1970-01-01 00:15; on line 4',
    expected: 'each interval once',
    remedy:
      'Each is counted once. Nothing to do if parts of the file overlap. If the clocks went back in that ' +
      'hour, read the file with its time zone.',
  },
  {
    code: 'meter-file/interval-overlap',
    when: 'half hours lie over quarters',
    make: intervals({ start: 0, values: [1, 2], line: 3 }, { start: 0, values: [3], minutes: 30, line: 4 }),
    at: '4:1',
    found:
      'E1 of meter M1, point P1: 1 interval of 30 minutes over others of the same register, at 1970-01-01 00:00; on line 4',
    expected: 'intervals that begin where the one before ends, or later',
    remedy:
      'Take out one of the two. Of intervals over each other the shortest are counted, of the same length ' +
      'the earlier; these are not.',
  },
  {
    code: 'meter-file/reading-conflict',
    when: 'two actual readings of one time differ',
    make: collected({
      readings: [
        readingOf(E1, '2025-05-01', '10.5', { line: 2 }),
        readingOf(E1, '2025-05-01', '11', { line: 7 }),
      ],
    }),
    at: '7:1',
    found:
      'E1 of meter M1, point P1 at 2025-05-01: 10.5 kWh (actual) on line 2, and 11 kWh (actual) on line 7',
    expected: 'one reading of a register at one time, or a better one in place of another',
    remedy: 'Take out the one that is wrong; until then neither is used.',
  },
  {
    code: 'meter-file/reading-replaced',
    when: 'an estimated reading has an actual one beside it',
    make: collected({
      readings: [
        readingOf(E1, '2025-05-01 06:15', '10.5', { line: 2 }),
        readingOf(E1, '2025-05-01 06:15', '11', { line: 7, quality: 'estimated' }),
      ],
    }),
    severity: 'question',
    at: '7:1',
    found:
      'E1 of meter M1, point P1 at 2025-05-01 06:15: 10.5 kWh (actual) on line 2, and 11 kWh (estimated) on line 7',
    expected: 'one reading of a register at one time',
    remedy: 'The reading of the better quality is used. Take it out if it is the wrong one.',
  },
];

const COVERAGE_CASES: readonly MessageCase[] = [
  {
    code: 'meter-file/gap',
    when: 'eight days are missing',
    make: covered({ start: '2025-04-01', values: [1] }, { start: '2025-04-09 01:15', values: [1] }),
    severity: 'question',
    at: '',
    found: 'E1 of meter M1, point P1: no values for 8 days 1 h, from 2025-04-01 00:15 to 2025-04-09 01:15',
    expected: 'values from the first to the last without a gap',
    remedy: ASK,
  },
  {
    code: 'meter-file/short-gaps',
    when: 'one quarter is missing',
    make: covered({ start: 0, values: [1] }, { start: 30, values: [1] }),
    severity: 'question',
    at: '',
    found: 'E1 of meter M1, point P1: no values for 15 min, from 1970-01-01 00:15 on',
    expected: 'values from the first to the last without a gap',
    remedy: `${ASK} An hour is missing where clocks went forward and the file is in local time.`,
  },
  {
    code: 'meter-file/short-gaps',
    when: 'two days and a quarter are missing',
    make: covered({ start: 0, values: [1] }, { start: 30, values: [1] }, { start: 45 + day, values: [1] }),
    severity: 'question',
    at: '',
    found:
      'E1 of meter M1, point P1: 2 gaps of less than a week, 1 day 15 min in all, the first from 1970-01-01 00:15 on, the last from 1970-01-01 00:45 on',
    expected: 'values from the first to the last without a gap',
    remedy: `${ASK} An hour is missing where clocks went forward and the file is in local time.`,
  },
  {
    code: 'meter-file/begins-late',
    when: 'export begins a day after import',
    make: covered(
      { start: 0, values: [1, 1], minutes: day },
      { start: day, values: [1], minutes: day, stream: B1 },
    ),
    severity: 'question',
    at: '',
    found: 'B1 of meter M1, point P1 has its first value at 1970-01-02 00:00, 1 day after another register',
    expected: 'values from 1970-01-01 00:00 on, as the other has',
    remedy: 'Nothing to do if the register did not count before. Else ask for the missing data.',
  },
  {
    code: 'meter-file/ends-early',
    when: 'export ends a day before import',
    make: covered(
      { start: 0, values: [1, 1], minutes: day },
      { start: 0, values: [1], minutes: day, stream: B1 },
    ),
    severity: 'question',
    at: '',
    found: 'B1 of meter M1, point P1 has values up to 1970-01-02 00:00, 1 day less than another register',
    expected: 'values up to 1970-01-03 00:00, as the other has',
    remedy: 'Nothing to do if the register counted no longer. Else ask for the missing data.',
  },
  {
    code: 'meter-file/no-values',
    when: 'no interval of a register has a value',
    make: covered({ start: 0, values: [null] }),
    severity: 'question',
    at: '',
    found: 'E1 of meter M1, point P1: no value at all',
    expected: 'a register with values',
    remedy: 'Nothing to do if the register counts nothing. It is left out.',
  },
  {
    code: 'meter-file/values-missing',
    when: 'the last two intervals have no value',
    make: covered({ start: 0, values: [1, null, null] }),
    severity: 'question',
    at: '',
    found: 'E1 of meter M1, point P1: 2 intervals without a value',
    expected: 'a value for each interval',
    remedy: ASK,
  },
  {
    code: 'meter-file/values-missing',
    when: 'one interval has no value',
    make: covered({ start: 0, values: [1, null] }),
    severity: 'question',
    at: '',
    found: 'E1 of meter M1, point P1: 1 interval without a value',
    expected: 'a value for each interval',
    remedy: ASK,
  },
  {
    code: 'meter-file/counted-twice',
    when: 'a summary meets an interval again',
    make: summed({
      chunks: [
        { start: 0, values: [1, 2], stream: E1 },
        { start: 15, values: [2], stream: E1 },
      ],
    }),
    severity: 'question',
    at: '',
    found: 'E1 of meter M1, point P1: 15 min that the file has more than once',
    expected: 'each interval once',
    remedy:
      'In this summary they count each time that they are there. Take the doubled part out of the file.',
  },
  {
    code: 'meter-file/register-went-back',
    when: 'the last reading is below the first',
    make: summed({
      readings: [
        readingOf(E1, '2025-05-01', '99990.0', { line: 2 }),
        readingOf(E1, '2025-06-01', '10', { line: 3 }),
      ],
    }),
    severity: 'question',
    at: '3:1',
    found: 'E1 of meter M1, point P1: 10 kWh at last, less than 99990.0 kWh at first',
    expected: 'a register that counts up',
    remedy:
      'Did the counter pass its highest number, or was the meter changed? What it counted is not worked out.',
  },
];

/** Of intervals and readings as a file holds them. */
export const SERIES_CASES: readonly MessageCase[] = [...MORE_CASES, ...INTERVAL_CASES, ...COVERAGE_CASES];
