import type { DisputeStep } from './dispute-schema.ts';
import type { ReportNotation } from './report-words.ts';

/** The rules of a place decide, and they change: it stands below every report and every list of steps. */
export const LOCAL_RULES_CAUTION =
  'Local rules decide, and they change: check each clause before you rely on it. This is a calculation, not legal advice.';

type Limit = NonNullable<DisputeStep['limits']>[number];

const UNIT_WORDS: Readonly<Record<Limit['unit'], readonly [string, string]>> = {
  days: ['day', 'days'],
  'working-days': ['working day', 'working days'],
  months: ['month', 'months'],
};

/** "within 3 working days of the complaint", "on the day of the complaint" */
export function limitWords({ within, unit, from }: Limit, notation: ReportNotation): string {
  if (within === '0') return `on the day of ${from}`;
  const [one, several] = UNIT_WORDS[unit];
  return `within ${notation.number(within)} ${within === '1' ? one : several} of ${from}`;
}

/** A step in words: who is written to, and the times that belong to it, each with its clause. */
export function stepWords(step: DisputeStep, notation: ReportNotation): string {
  const limits = (step.limits ?? []).map(
    (limit) => `${limit.of} ${limitWords(limit, notation)} (${limit.clause})`,
  );
  const head = `${step.name}: ${step.body} (${step.clause})`;
  return limits.length === 0 ? head : `${head}: ${limits.join('; ')}`;
}
