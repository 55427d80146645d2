import type { Finding, Path } from '../quantity/index.ts';
import { readingFinding } from './findings.ts';
import type { MeterSpan } from './meter-spans.ts';
import { shownBy, type Reading } from './reading.ts';
import { readingText } from './register-text.ts';
import type { Register } from './register.ts';

/** A total and the rates that should make it. */
interface RateContext {
  readonly totals: Readonly<Record<'import' | 'export', number | null>>;
  readonly rates: Readonly<Record<string, number>>;
  readonly span: MeterSpan;
  readonly before: Reading | null;
  readonly path: Path;
}

/** How far a total is from the sum of its rates, in thousandths; null where not all was read. */
function differenceIn(total: number | null, values: readonly (number | null)[]): number | null {
  if (total === null) return null;
  let sum = 0;
  for (const value of values) {
    if (value === null) return null;
    sum += value;
  }
  return total - sum;
}

/** A display cuts the last digit off: a total can lack up to one step, and the rates one step each. */
function isDisplayRounding(difference: number, { step }: Register, rates: number): boolean {
  return difference > -step && difference < rates * step;
}

/**
 * Whether a total is the sum of its rates, as far as a display can show (1.8.0 = 1.8.1 + 1.8.2).
 *
 * A difference that was there at the reading before is no fault of this one: registers of rates often
 * began later than the total.
 *
 * @returns what to say, or null
 */
export function rateFinding(id: 'import' | 'export', context: RateContext): Finding | null {
  const { totals, rates, span, before, path } = context;
  const own = span.counted.filter((register) => register.id === id && register.rate !== null);
  const difference = differenceIn(
    totals[id],
    own.map(({ key }) => rates[key] ?? null),
  );
  if (difference === null || isDisplayRounding(difference, span.totals[id], own.length)) return null;
  const earlier =
    before === null
      ? null
      : differenceIn(
          before[id],
          own.map((register) => shownBy(before, register)),
        );
  const sum = (totals[id] ?? 0) - difference;
  const values = {
    register: id,
    total: readingText(totals[id] ?? 0),
    sum: sum < 0 ? '0' : readingText(sum),
    rates: own.map(({ rate }) => rate).join(' and '),
    difference: `${difference < 0 ? '-' : ''}${readingText(Math.abs(difference))}`,
  };
  const { step } = span.totals[id];
  const isOld =
    earlier !== null &&
    !isDisplayRounding(earlier, span.totals[id], own.length) &&
    Math.abs(difference - earlier) < (own.length + 1) * step;
  return readingFinding(isOld ? 'reading/rates-offset' : 'reading/rates-differ', { path }, values);
}
