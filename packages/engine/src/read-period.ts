import { parseDay, type DayNumber, type Outcome, type Path, type Period } from './quantity/index.ts';
import { periodFinding } from './period-findings.ts';
import type { UnitsPeriod } from './periods-document.ts';

/** First and last day of a period, after those of the one before. */
export function readPeriod(
  { from, to }: UnitsPeriod,
  before: DayNumber | null,
  path: Path,
): Outcome<Period | null> {
  const days = { from: parseDay(from), to: parseDay(to) };
  const wrong = (['from', 'to'] as const).filter((key) => days[key] === null);
  if (wrong.length > 0) {
    const findings = wrong.map((key) =>
      periodFinding('period/no-such-day', { path: [...path, key] }, { value: key === 'from' ? from : to }),
    );
    return { value: null, findings };
  }
  const period = days as Period;
  if (period.to <= period.from) {
    return { value: null, findings: [periodFinding('period/ends-before-it-begins', { path }, { from, to })] };
  }
  if (before !== null && period.from !== before) {
    const code = period.from < before ? 'period/overlaps' : 'period/gap';
    return { value: null, findings: [periodFinding(code, { path: [...path, 'from'] }, { from })] };
  }
  return { value: period, findings: [] };
}
