import {
  durationText,
  fileCoverage,
  METERED_QUANTITIES,
  streamText,
  VALUE_QUALITIES,
  type CollectedFile,
  type IntervalSeries,
  type RegisterSeries,
  type Stream,
} from '@unitbook/meter-files';
import { LARGEST_WHOLE, wholeToDecimal } from '@unitbook/engine';
import type { Writing } from '../writing/writing.ts';
import { exactOf, minus, plainDecimal, plus, type Exact } from './exact.ts';
import { endMoment, readingMoment, startMoment } from './moments.ts';
import { counted, streamWords, unitWords } from './words.ts';

/** What is to be told of one register or channel of a file. */
export interface StreamContents {
  readonly stream: Stream;
  readonly name: string;
  readonly words: string;
  readonly first: string;
  readonly last: string;
  /** What it counted between the two, in the grouping of the reader; '' where that cannot be told. */
  readonly amount: string;
  readonly unit: string;
  /** How many values, how far apart, and what is not as it should be. */
  readonly notes: readonly string[];
}

/** The sum of the values of a series, exactly. */
export function seriesTotal({ values, places }: Pick<IntervalSeries, 'values' | 'places'>): Exact {
  let carried = 0n;
  let sum = 0;
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    if (Math.abs(sum + value) <= LARGEST_WHOLE) sum += value;
    else {
      carried += BigInt(sum);
      sum = value;
    }
  }
  return { whole: carried + BigInt(sum), places };
}

const decimal = ({ whole, places }: Exact): string => plainDecimal(wholeToDecimal(whole, places));

const ESTIMATED = (['estimated', 'substituted'] as const).map((word) => VALUE_QUALITIES.indexOf(word));

function estimatedIn({ qualities }: IntervalSeries): number {
  return qualities.reduce((count, quality) => count + (ESTIMATED.includes(quality) ? 1 : 0), 0);
}

const lengthText = (minutes: number): string => (minutes === 1440 ? 'a day' : durationText(minutes));

/** What is to be told of what is not there, and of how values came about. */
function intervalNotes(series: readonly IntervalSeries[], file: CollectedFile): readonly string[] {
  const stream = series[0]?.stream;
  const coverage = fileCoverage(file).find((one) => one.stream === stream);
  const gaps = coverage?.gaps ?? [];
  const missing = gaps.reduce((sum, { from, to }) => sum + to - from, 0);
  const estimated = series.reduce((sum, one) => sum + estimatedIn(one), 0);
  return [
    ...series.map(({ starts, minutes }) => `${counted(starts.length, 'interval')} of ${lengthText(minutes)}`),
    estimated === 0 ? 'none estimated' : `${String(estimated)} estimated`,
    gaps.length === 0 ? 'no gaps' : `${counted(gaps.length, 'gap')}, ${durationText(missing)} in all`,
    ...(coverage === undefined || coverage.missing === 0
      ? []
      : [`${counted(coverage.missing, 'interval')} without a value`]),
  ];
}

function intervalContents(
  series: readonly IntervalSeries[],
  file: CollectedFile,
  writing: Writing,
): StreamContents {
  const [{ stream }] = series as readonly [IntervalSeries];
  const first = Math.min(...series.map(({ starts }) => starts[0] ?? Infinity));
  const end = Math.max(...series.map(({ starts, minutes }) => (starts.at(-1) ?? -Infinity) + minutes));
  const total = series.map(seriesTotal).reduce(plus);
  return {
    stream,
    name: streamText(stream),
    words: streamWords(stream),
    first: startMoment(first, writing),
    last: endMoment(end, writing),
    amount: writing.number(decimal(total)),
    unit: unitWords(stream),
    notes: intervalNotes(series, file),
  };
}

function registerContents({ stream, readings }: RegisterSeries, writing: Writing): readonly StreamContents[] {
  const [first, last] = [readings[0], readings.at(-1)];
  if (first === undefined || last === undefined) return [];
  const estimated = readings.filter(({ quality }) => quality === 'estimated' || quality === 'substituted');
  const advance = minus(exactOf(last.value), exactOf(first.value));
  const wentBack = advance.whole < 0n;
  const isOne = readings.length === 1;
  return [
    {
      stream,
      name: streamText(stream),
      words: streamWords(stream),
      first: `${writing.number(plainDecimal(first.value))} on ${readingMoment(first.day, first.minute, writing)}`,
      last: isOne
        ? ''
        : `${writing.number(plainDecimal(last.value))} on ${readingMoment(last.day, last.minute, writing)}`,
      amount: isOne || wentBack ? '' : writing.number(decimal(advance)),
      unit: unitWords(stream),
      notes: [
        counted(readings.length, 'reading'),
        estimated.length === 0 ? 'none estimated' : `${String(estimated.length)} estimated`,
        ...(wentBack ? ['the last is below the first'] : []),
      ],
    },
  ];
}

/** The series of each stream, the shortest intervals first. */
function byStream(intervals: readonly IntervalSeries[]): readonly (readonly IntervalSeries[])[] {
  const groups = new Map<Stream, IntervalSeries[]>();
  for (const series of intervals) groups.set(series.stream, [...(groups.get(series.stream) ?? []), series]);
  return [...groups.values()];
}

const place = ({ stream }: StreamContents): number => METERED_QUANTITIES.indexOf(stream.quantity);

const sorted = (contents: readonly StreamContents[]): readonly StreamContents[] =>
  [...contents].sort((a, b) => place(a) - place(b));

/**
 * What is in a file, register by register: those that are read first, then those that count intervals; of
 * each what is taken before what is given.
 */
export function contentsOf(file: CollectedFile, writing: Writing): readonly StreamContents[] {
  return [
    ...sorted(file.registers.flatMap((register) => registerContents(register, writing))),
    ...sorted(byStream(file.intervals).map((series) => intervalContents(series, file, writing))),
  ];
}
