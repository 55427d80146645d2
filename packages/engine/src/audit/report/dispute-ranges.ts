import {
  decimalPlaces,
  decimalToWhole,
  isDecimalText,
  type Finding,
  type Path,
} from '../../quantity/index.ts';
import { disputeFinding } from './dispute-findings.ts';
import type { DisputeStep, DisputeVersion, InterestRule } from './dispute-schema.ts';

/** What a number may be: from `least` to `most` whole ones, on so many places. */
interface Bounds {
  readonly what: string;
  readonly least: number;
  readonly most: number;
  readonly places: number;
  /** Whether the least itself is left out. */
  readonly above?: boolean;
}

const BOUNDS = {
  percent: { what: 'percent a year', least: 0, most: 100, places: 4 },
  fee: { what: 'percent a month', least: 0, most: 100, places: 4 },
  months: { what: 'months', least: 1, most: 600, places: 0 },
  time: { what: 'a time', least: 0, most: 3650, places: 0 },
  step: { what: 'a step of rounding', least: 0, most: 1000, places: 6, above: true },
} as const satisfies Readonly<Record<string, Bounds>>;

const MOST_DIGITS = 12;

function isInside(text: string, { least, most, places, above }: Bounds): boolean {
  if (!isDecimalText(text) || text.length > MOST_DIGITS || decimalPlaces(text) > places) return false;
  const value = decimalToWhole(text, places);
  const scale = 10 ** places;
  return (above === true ? value > least * scale : value >= least * scale) && value <= most * scale;
}

function ranged(text: string, bounds: Bounds, path: Path): readonly Finding[] {
  if (isInside(text, bounds)) return [];
  const { least, most, places, above } = bounds;
  const kind = places === 0 ? 'a whole number' : `a number with up to ${String(places)} decimals`;
  const begin = above === true ? `above ${String(least)} and` : `from ${String(least)}`;
  const values = { value: text, what: bounds.what, range: `${kind}, ${begin} up to ${String(most)}` };
  return [disputeFinding('dispute/number-out-of-range', { path }, values)];
}

const stepRanges = ({ limits = [] }: DisputeStep, path: Path): readonly Finding[] =>
  limits.flatMap(({ within }, at) => ranged(within, BOUNDS.time, [...path, 'limits', at, 'within']));

function interestRanges(rule: InterestRule | undefined, path: Path): readonly Finding[] {
  if (rule?.kind !== 'simple') return [];
  return [
    ...ranged(rule.rounding.step, BOUNDS.step, [...path, 'rounding', 'step']),
    ...rule.rates.flatMap(({ percent }, at) =>
      ranged(percent, BOUNDS.percent, [...path, 'rates', at, 'percent']),
    ),
  ];
}

/** Numbers of a version that are out of their range. */
export function rangesOf(
  { steps, interest, claim, arrears, lateFee }: DisputeVersion,
  path: Path,
): readonly Finding[] {
  const months = (text: string | undefined, key: string): readonly Finding[] =>
    text === undefined ? [] : ranged(text, BOUNDS.months, [...path, key, 'months']);
  return [
    ...steps.flatMap((step, at) => stepRanges(step, [...path, 'steps', at])),
    ...interestRanges(interest, [...path, 'interest']),
    ...months(claim?.months, 'claim'),
    ...months(arrears?.months, 'arrears'),
    ...(lateFee === undefined ? [] : ranged(lateFee.percent, BOUNDS.fee, [...path, 'lateFee', 'percent'])),
  ];
}
