import { wholeNumber } from './digits.ts';
import { LONGEST_TEXT, type Position } from './elements.ts';
import { isCut, quoted, type Fields } from './fields.ts';
import type { EspiFindingCode } from './findings.ts';
import { graver, qualityOf, type Quality } from './quality.ts';

/** Something that makes a reading unusable. */
interface Problem {
  readonly code: EspiFindingCode;
  readonly at: Position;
  readonly values: Readonly<Record<string, string>>;
}

/** An IntervalReading as it stands in the feed, before it is known what it counts. NaN: not there. */
export interface RawReading {
  readonly at: Position;
  readonly valueAt: Position;
  /** Whether it has a time of its own. */
  readonly hasPeriod: boolean;
  /** Seconds since 1970-01-01 00:00 UTC. */
  readonly start: number;
  /** Seconds. */
  readonly duration: number;
  readonly value: number;
  /** null: that of the ReadingType. */
  readonly quality: Quality | null;
  /** NaN: that of the ReadingType; 0: none. */
  readonly tou: number;
  readonly hasTier: boolean;
  /** null where it can be used, as far as can be told. */
  readonly problems: readonly Problem[] | null;
}

/** What was found between the tags of an IntervalReading. */
export interface ReadingParts {
  readonly at: Position;
  hasPeriod: boolean;
  /** Children of the reading itself: value, tou, consumptionTier. */
  readonly own: Fields;
  /** Children of timePeriod: start, duration. */
  readonly period: Fields;
  /** Of all codes of ReadingQuality that it has. */
  quality: Quality | null;
}

/** An IntervalReading that begins. */
export const readingParts = (at: Position): ReadingParts => ({
  at,
  hasPeriod: false,
  own: new Map(),
  period: new Map(),
  quality: null,
});

/** Note a code of ReadingQuality; a reading can have several. */
export function addQuality(parts: ReadingParts, text: string): void {
  const code = wholeNumber(text);
  const quality = qualityOf(typeof code === 'number' ? code : null);
  parts.quality = parts.quality === null ? quality : graver(parts.quality, quality);
}

const FAULTS = {
  'not-whole': 'espi/not-a-whole-number',
  'too-many-digits': 'espi/too-many-digits',
} as const;

/** The number in an element; NaN where there is none, or none that can be used, which is a problem. */
function numberIn(fields: Fields, name: string, problems: Problem[]): number {
  const field = fields.get(name);
  if (field === undefined) return NaN;
  const { at, text, twice } = field;
  if (twice !== null) problems.push({ code: 'espi/given-twice', at: twice, values: { field: name } });
  if (isCut(field)) {
    problems.push({ code: 'espi/text-too-long', at, values: { field: name, most: String(LONGEST_TEXT) } });
    return NaN;
  }
  const number = wholeNumber(text);
  if (typeof number === 'number') return number;
  if (number === 'empty') return NaN;
  problems.push({ code: FAULTS[number], at, values: { field: name, text: quoted(text) } });
  return NaN;
}

/** Seconds from which on a start is no time of ours: the year 10000. */
const END_OF_TIME = 253_402_300_800;
/** The largest number of a rate, which is a whole number of 16 bits in the schema (from memory). */
const LARGEST_TOU = 32_767;
/** No reading lasts longer than a hundred years. */
const LONGEST_DURATION = 3_155_760_000;

function timeProblems({ own, period }: ReadingParts, raw: RawReading, problems: Problem[]): void {
  const range = (name: string, value: number, expected: string): void => {
    const at = period.get(name)?.at ?? raw.at;
    problems.push({ code: 'espi/time-range', at, values: { field: name, value: String(value), expected } });
  };
  if (raw.start < 0 || raw.start >= END_OF_TIME)
    range('start', raw.start, 'seconds since 1970-01-01 00:00 UTC, before the year 10000');
  if (raw.duration < 0 || raw.duration > LONGEST_DURATION)
    range('duration', raw.duration, 'seconds, from 0 to 3155760000 (a hundred years)');
  const tou = own.get('tou');
  if (tou !== undefined && (raw.tou < 0 || raw.tou > LARGEST_TOU))
    problems.push({ code: 'espi/tou', at: tou.at, values: { value: String(raw.tou) } });
}

/** What has a fault has been told already; what is not there, or empty, is told here. */
function missingProblems({ own, period }: ReadingParts, raw: RawReading, problems: Problem[]): void {
  const isTold = (at: Position | undefined): boolean => problems.some((problem) => problem.at === at);
  const value = own.get('value');
  if (Number.isNaN(raw.value) && !isTold(value?.at))
    problems.push({ code: 'espi/no-value', at: value?.at ?? raw.at, values: {} });
  const start = period.get('start');
  if (raw.hasPeriod && Number.isNaN(raw.start) && !isTold(start?.at))
    problems.push({ code: 'espi/no-start', at: start?.at ?? raw.at, values: {} });
}

/** Make a reading of what was found between its tags. */
export function rawReading(parts: ReadingParts): RawReading {
  const problems: Problem[] = [];
  const { at, own, period, hasPeriod } = parts;
  const tier = own.get('consumptionTier');
  const raw: RawReading = {
    at,
    valueAt: own.get('value')?.at ?? at,
    hasPeriod,
    start: numberIn(period, 'start', problems),
    duration: numberIn(period, 'duration', problems),
    value: numberIn(own, 'value', problems),
    quality: parts.quality,
    tou: numberIn(own, 'tou', problems),
    hasTier: tier !== undefined && wholeNumber(tier.text) !== 0,
    problems: null,
  };
  timeProblems(parts, raw, problems);
  missingProblems(parts, raw, problems);
  return problems.length === 0 ? raw : { ...raw, problems };
}
