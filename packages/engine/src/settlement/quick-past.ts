import { LARGEST_WHOLE, type Period } from '../quantity/index.ts';
import { pastPeriods, type LookingBack } from './past.ts';
import { ratioOf, timesRatio } from './quick-ratio.ts';
import type { QuickRun, QuickTime } from './quick-run.ts';
import type { PastPeriod } from './settle-context.ts';
import { SettlementProblem } from './settlement-problem.ts';

/** A period that remembers some names. */
export function rememberedPeriod(period: Period, names: readonly string[]): PastPeriod {
  return { period, quantities: Object.fromEntries(names.map((name) => [name, 0])) };
}

/** The window of a definition in a period; null where the long way finds a problem. */
function windowOf(definition: LookingBack, time: QuickTime): { from: number; to: number } | null {
  const { period, account, past } = time;
  const context = { values: new Float64Array(0), given: [], period, account, past: past.periods };
  try {
    const window = pastPeriods(definition, context);
    const isKnown = window.every(({ quantities }) => quantities[definition.of] !== undefined);
    const to = past.periods.length;
    return isKnown ? { from: to - window.length, to } : null;
  } catch (error) {
    if (error instanceof SettlementProblem) return null;
    throw error;
  }
}

interface Step {
  readonly definition: LookingBack;
  readonly slots: readonly number[];
  readonly at: number;
}

/** A running total or a mean of a period; null where only the long way works it out. */
export function quickLookingBack({ definition, slots, at }: Step, time: QuickTime): QuickRun | null {
  const window = windowOf(definition, time);
  const sums = time.past.sums.get(definition.of);
  if (window === null || sums === undefined) return null;
  const { from, to } = window;
  const own = definition.through === 'this-period' ? (slots[0] ?? -1) : -1;
  const count = to - from + (own < 0 ? 0 : 1);
  const isMean = definition.is === 'mean';
  if (isMean && definition.whenFewer === 'refused' && count < Number.parseInt(definition.periods, 10)) {
    return null;
  }
  const ratio = isMean ? ratioOf(1, Math.max(1, count), definition.rounding) : null;
  return (values) => {
    const past = (sums[to] as number) - (sums[from] as number);
    const sum = own < 0 ? past : past + (values[own] as number);
    const value = ratio === null ? sum : timesRatio(sum, ratio);
    values[at] = value;
    return Math.abs(value) <= LARGEST_WHOLE;
  };
}
