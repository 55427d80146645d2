import { decimalToWhole } from '../quantity/index.ts';
import type { Definition } from '../tariff/index.ts';
import { quickLookingBack } from './quick-past.ts';
import { quickDaysShare, quickPercent, quickProduct, quickQuotient } from './quick-parts.ts';
import { quickNetting } from './quick-netting.ts';
import { ratioOf, timesRatio } from './quick-ratio.ts';
import type { QuickRun, QuickTime } from './quick-run.ts';
import type { Operand, PreparedQuantities, PreparedStep } from './settle-context.ts';

/** A step with its operands in places: numbers of the document have theirs behind the quantities. */
export interface QuickStep {
  readonly step: PreparedStep;
  readonly slots: readonly number[];
}

/** Steps that can be worked out on ordinary numbers. */
export interface QuickQuantities {
  readonly prepared: PreparedQuantities;
  readonly steps: readonly QuickStep[];
  /** The vector before anything is given: 0, and the numbers of the document. */
  readonly values: Float64Array;
}

/** Whether numbers are multiplied by an operand: they may be finer than thousandths. */
const isFactor = ({ is }: Definition): boolean => is === 'product';

/**
 * Give every operand a place; null where a number is finer than quantities are counted.
 *
 * @param prepared  the quantities of a rule
 */
export function quickQuantities(prepared: PreparedQuantities): QuickQuantities | null {
  const numbers: number[] = [];
  const count = prepared.names.length;
  const slotOf = ({ at, whole, scale }: Operand): number =>
    at >= 0 ? at : count + numbers.push((whole * 1000) / scale) - 1;
  const steps = prepared.steps.map((step) => ({ step, slots: step.operands.map(slotOf) }));
  const isFine = steps.every(
    ({ step, slots }) =>
      isFactor(step.definition) ||
      slots.every((slot) => slot < count || Number.isInteger(numbers[slot - count])),
  );
  if (!isFine) return null;
  const values = new Float64Array(count + numbers.length);
  values.set(numbers, count);
  return { prepared, steps, values };
}

/** Round the sum, difference and the like that a run leaves, as its definition says. */
function rounded(run: QuickRun, { definition, at }: PreparedStep): QuickRun {
  const rounding = 'rounding' in definition ? definition.rounding : undefined;
  if (rounding === undefined) return run;
  const ratio = ratioOf(1, 1, rounding);
  return (values) => {
    run(values);
    const value = timesRatio(values[at] as number, ratio);
    values[at] = value;
    return !Number.isNaN(value);
  };
}

function quickArithmetic(is: string, slots: readonly number[], at: number): QuickRun {
  const [first = 0, ...rest] = slots;
  const sum = (values: Float64Array, of: readonly number[]): number => {
    let total = 0;
    for (let index = 0; index < of.length; index += 1) total += values[of[index] as number] as number;
    return total;
  };
  const pick = (isLess: boolean) => (values: Float64Array) => {
    let best = values[first] as number;
    for (let index = 0; index < rest.length; index += 1) {
      const value = values[rest[index] as number] as number;
      if (isLess ? value < best : value > best) best = value;
    }
    values[at] = best;
    return true;
  };
  switch (is) {
    case 'difference':
    case 'excess': {
      const least = is === 'excess' ? 0 : -Infinity;
      return (values) => {
        const less = (values[first] as number) - sum(values, rest);
        values[at] = less > least ? less : least;
        return true;
      };
    }
    case 'least':
      return pick(true);
    case 'greatest':
      return pick(false);
    default:
      return (values) => {
        values[at] = sum(values, slots);
        return true;
      };
  }
}

function quickPart(definition: Definition & { is: 'part' }, slots: readonly number[], at: number): QuickRun {
  const [of = 0] = slots;
  const above = definition.above === undefined ? -1 : (slots[1] ?? -1);
  const upTo = definition.upTo === undefined ? -1 : (slots.at(-1) ?? -1);
  return (values) => {
    const whole = values[of] as number;
    const most = upTo < 0 ? whole : Math.min(whole, values[upTo] as number);
    values[at] = Math.max(0, above < 0 ? most : most - (values[above] as number));
    return true;
  };
}

function quickChoice(
  { steps }: Definition & { is: 'choice' },
  slots: readonly number[],
  at: number,
): QuickRun {
  const limits = steps.map(({ upTo }) => (upTo === undefined ? Infinity : decimalToWhole(upTo, 3)));
  const by = slots.at(-1) ?? 0;
  return (values) => {
    const reached = values[by] as number;
    let step = 0;
    while (step < limits.length && reached > (limits[step] as number)) step += 1;
    if (step === limits.length) return false;
    values[at] = values[slots[step] as number] as number;
    return true;
  };
}

/** The run of a step in a period; null where only the long way works it out. */
function runOf({ step, slots }: QuickStep, prepared: PreparedQuantities, time: QuickTime): QuickRun | null {
  const { definition, at } = step;
  switch (definition.is) {
    case 'netting':
      return quickNetting({ ...step, definition }, slots, prepared);
    case 'product':
      return quickProduct({ ...step, definition });
    case 'quotient':
      return quickQuotient(definition, slots, at);
    case 'percent':
      return quickPercent(definition, slots, at);
    case 'days-share':
      return quickDaysShare({ definition, slots, at }, time.period);
    case 'running-total':
    case 'mean':
      return quickLookingBack({ definition, slots, at }, time);
    case 'part':
      return quickPart(definition, slots, at);
    case 'choice':
      return quickChoice(definition, slots, at);
    default:
      return rounded(quickArithmetic(definition.is, slots, at), step);
  }
}

/** Whether a step is the same in every period. */
const isTimeless = ({ step: { definition } }: QuickStep): boolean =>
  definition.is !== 'days-share' && definition.is !== 'running-total' && definition.is !== 'mean';

/**
 * The steps of a rule in a period, in order; null where only the long way works one out.
 *
 * @param timeless  runs that periods share: filled by the first of them
 */
export function quickRuns(
  { prepared, steps }: QuickQuantities,
  time: QuickTime,
  timeless: (QuickRun | null | undefined)[],
): readonly QuickRun[] | null {
  const runs: QuickRun[] = [];
  for (const [index, step] of steps.entries()) {
    const known = timeless[index];
    const run = known === undefined ? runOf(step, prepared, time) : known;
    if (isTimeless(step)) timeless[index] = run;
    if (run === null) return null;
    runs.push(run);
  }
  return runs;
}
