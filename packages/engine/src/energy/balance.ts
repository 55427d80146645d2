import { exactText, type Figure, type Finding } from '../quantity/index.ts';
import type { Account, AccuracyClass, ReadingPair } from '../readings/index.ts';
import { energyFinding } from './findings.ts';

/**
 * How far a meter may be from the truth at a low current, in tenths of a percent.
 *
 * @source IEC 62053-21 (classes 1 and 2) and IEC 62053-22 (0.2S, 0.5S), from memory; Directive 2014/32/EU,
 *         Annex V, table 2 (A, B, C at +5 to +30 °C, below the transitional current)
 */
const LOW_CURRENT_TENTHS: Readonly<Record<AccuracyClass, number>> = {
  '0.2S': 4,
  '0.5S': 10,
  '1': 15,
  '2': 25,
  A: 35,
  B: 20,
  C: 10,
};

/** The class of most meters in homes. Common practice. */
const USUAL_CLASS: AccuracyClass = '1';

/** How much more a meter of export may show than one of generation, in tenths of a percent of it. */
function metersDifferTenths({ span }: ReadingPair): number {
  const { export: given, generation } = span.totals;
  const limit = (own: AccuracyClass | null): number => LOW_CURRENT_TENTHS[own ?? USUAL_CLASS];
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
  const tenths = metersDifferTenths(pair);
  const values = {
    export: exactText(exported, given.denominator),
    generation: exactText(generated, made.denominator),
    percent: exactText(tenths, 10),
  };
  const place = { path: [...pair.to.path, 'export'] };
  const isWithin = exported * 1000 <= generated * (1000 + tenths);
  if (isWithin) return [energyFinding('energy/export-about-generation', place, values)];
  if (hasBattery) return [energyFinding('energy/export-from-battery', place, values)];
  return [answerable(energyFinding('energy/export-above-generation', place, values), 'export', pair)];
}
