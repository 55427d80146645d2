import { dayText, exactText, quotientText, type Figure, type Finding } from '../../quantity/index.ts';
import { plantFinding } from './findings.ts';
import type { Judged, Judgement } from './judge.ts';
import type { GenerationPeriod } from './last-years.ts';
import type { PlantYields } from './yield-figures.ts';

/** What a plant made in a period, and what that is worth. */
export interface PlantMonth extends PlantYields {
  readonly period: GenerationPeriod['period'];
  readonly generation: Figure;
  /** Days on which the plant stood and the diary has no outage. */
  readonly daysInService: number;
  /** null where it cannot be told. */
  readonly expected: Figure | null;
  /** What the expectation rests on, in words; empty without one. */
  readonly basis: string;
  /** Made over expected; null without an expectation. */
  readonly share: Figure | null;
  readonly judgement: Judgement;
  /** null where it cannot be told. */
  readonly judged: Judged | null;
}

/** Why a period cannot be judged, and what it would take. */
const REASONS = {
  'no-plant': [
    'the plant had no capacity on every one of these days',
    'a period after the first day of the plant',
  ],
  estimated: ['a reading was estimated', 'readings that were taken'],
  outage: ['fewer than 7 days in service by the diary', 'at least 7 days in service (our own rule)'],
  short: ['fewer than 7 days', 'at least 7 days (our own rule)'],
  'no-expectation': [
    'nothing is expected of this plant',
    'a monthly table, or irradiation and a performance ratio, or earlier years',
  ],
  'no-earlier-year': [
    'the same days of an earlier year are not all known',
    'at least one full year before, without estimated readings',
  ],
  'nothing-expected': ['the table expects nothing of these days', 'more than 0'],
} as const satisfies Readonly<Record<string, readonly [string, string]>>;

/** One of the reasons why a period cannot be judged. */
export type Reason = keyof typeof REASONS;

const CODES = {
  watch: 'plant/month-watch',
  below: 'plant/month-low',
  above: 'plant/month-high',
} as const;

/** What there is to say of a month that was judged. */
export function judgedFindings(month: PlantMonth, path: readonly [string, number]): Finding[] {
  const { period, generation, expected, share, judgement, judged } = month;
  if (judgement === 'fine' || expected === null || share === null || judged?.side == null) return [];
  const code = judgement === 'watch' ? CODES.watch : CODES[judged.side];
  const values = {
    from: dayText(period.from),
    to: dayText(period.to),
    actual: exactText(generation.numerator, generation.denominator),
    expected: quotientText(expected.numerator, expected.denominator, 1),
    percent: quotientText(BigInt(share.numerator) * 100n, share.denominator, 1),
    sigmas: judged.sigmas.replace('-', ''),
    sigma: judged.sigmaPercent,
    basis: month.basis,
  };
  return [plantFinding(code, { path }, values)];
}

/** That a month cannot be judged, and why. */
export function untold(
  { period }: GenerationPeriod,
  reason: Reason,
  path: readonly [string, number],
): Finding {
  const [why, needed] = REASONS[reason];
  const values = { from: dayText(period.from), to: dayText(period.to), reason: why, needed };
  return plantFinding('plant/month-cannot-be-told', { path }, values);
}
