import { exactText, type Figure, type Finding } from '../quantity/index.ts';
import type { Account, AccuracyClass, ReadingPair } from '../readings/index.ts';
import { energyFinding } from './findings.ts';
import { METER_LIMITS } from './meter-accuracy.ts';

/** Hundredths of a percent in one. */
const HUNDREDTHS = 10_000;

/** The class of most meters in homes. Common practice. */
const USUAL_CLASS: AccuracyClass = '1';

/** How much more a meter of export may show than one of generation, in hundredths of a percent of it. */
function metersDiffer({ span }: ReadingPair): number {
  const { export: given, generation } = span.totals;
  // Much of both is counted at a low current: the limit for that holds.
  const limit = (own: AccuracyClass | null): number => METER_LIMITS[own ?? USUAL_CLASS].low;
  return limit(given.accuracyClass) + limit(generation?.accuracyClass ?? null);
}

/** A question that was answered with "it is right" stays as a note. */
export function answerable(finding: Finding, register: string, pair: ReadingPair): Finding {
  const answered = pair.to.confirmed.includes(`${finding.code}:${register}`);
  return answered && finding.severity === 'question' ? { ...finding, severity: 'note' } : finding;
}

/**
 * What is to be said where more was given to the grid than made: two meters can differ by the limits of
 * their classes, a battery can give what it took before, and anything else is asked about.
 */
export function balanceFindings(
  given: Figure,
  made: Figure,
  pair: ReadingPair,
  { hasBattery }: Pick<Account, 'hasBattery'>,
): Finding[] {
  const exported = given.numerator as number;
  const generated = made.numerator as number;
  if (exported <= generated) return [];
  const hundredths = metersDiffer(pair);
  const values = {
    export: exactText(exported, given.denominator),
    generation: exactText(generated, made.denominator),
    percent: exactText(hundredths, 100),
  };
  const place = { path: [...pair.to.path, 'export'] };
  const isWithin = exported * HUNDREDTHS <= generated * (HUNDREDTHS + hundredths);
  if (isWithin) return [energyFinding('energy/export-about-generation', place, values)];
  if (hasBattery) return [energyFinding('energy/export-from-battery', place, values)];
  return [answerable(energyFinding('energy/export-above-generation', place, values), 'export', pair)];
}
