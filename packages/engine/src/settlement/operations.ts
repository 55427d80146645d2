import {
  calendarDay,
  daysInMonth,
  decimalPlaces,
  decimalToWhole,
  exactText,
  LARGEST_WHOLE,
  NumberTooLarge,
  periodDays,
  wholeProduct,
  wholeSteps,
  type Period,
  type Rounding,
} from '../quantity/index.ts';
import type { Definition } from '../tariff/index.ts';
import { pastValues } from './past.ts';
import type { Operand, SettleContext } from './settle-context.ts';
import { SettlementProblem } from './settlement-problem.ts';

/** An exact result in thousandths before it is rounded. */
export interface Exact {
  readonly numerator: number | bigint;
  readonly denominator: number;
}

/** Steps are in units; quantities are counted in thousandths of one. */
export const THOUSAND = 1000;

/** The value of an operand in thousandths. */
export function valueOf(operand: Operand, { values }: SettleContext): number {
  return operand.at < 0 ? (operand.whole * THOUSAND) / operand.scale : (values[operand.at] as number);
}

const sumOf = (operands: readonly Operand[], context: SettleContext): number =>
  operands.reduce((sum, operand) => sum + valueOf(operand, context), 0);

/** Round a result as a definition says; without a rounding it has to be whole thousandths. */
export function thousandths(exact: Exact, rounding: Rounding | undefined, definition: Definition): number {
  if (rounding !== undefined) {
    const places = decimalPlaces(rounding.step);
    const step = decimalToWhole(rounding.step, places);
    const steps = wholeSteps(
      { numerator: exact.numerator, denominator: exact.denominator },
      { numerator: step * THOUSAND, denominator: 10 ** places },
      rounding.mode,
    );
    if (Math.abs(steps * step * THOUSAND) > LARGEST_WHOLE) throw new NumberTooLarge();
    return (steps * step * THOUSAND) / 10 ** places;
  }
  const whole = wholeSteps(exact, { numerator: 1, denominator: 1 }, 'down');
  if (BigInt(whole) * BigInt(exact.denominator) !== BigInt(exact.numerator)) {
    const value = exactText(exact.numerator, exact.denominator * THOUSAND);
    const { id, label } = definition;
    throw new SettlementProblem('settlement/finer-than-units', { quantity: label, id, value });
  }
  return whole;
}

/** The product of operands, exact, in thousandths. */
export function productOf(operands: readonly Operand[], context: SettleContext): Exact {
  let numerator: number | bigint = 1;
  let denominator = 1;
  for (const operand of operands) {
    const whole = operand.at < 0 ? operand.whole : valueOf(operand, context);
    numerator = typeof numerator === 'number' ? wholeProduct(numerator, whole) : numerator * BigInt(whole);
    denominator *= operand.at < 0 ? operand.scale : THOUSAND;
  }
  return { numerator: BigInt(numerator) * BigInt(THOUSAND), denominator };
}

/** One operand divided by another, in thousandths. */
export function quotientOf([top, bottom]: readonly Operand[], context: SettleContext, label: string): Exact {
  const over = bottom === undefined ? 0 : valueOf(bottom, context);
  if (top === undefined || over <= 0) {
    throw new SettlementProblem('settlement/divided-by-nothing', { quantity: label });
  }
  return { numerator: wholeProduct(valueOf(top, context), THOUSAND), denominator: over };
}

/** A percentage of a sum, in thousandths. */
export function percentOf(percent: string, sum: number): Exact {
  const places = decimalPlaces(percent);
  return { numerator: wholeProduct(sum, decimalToWhole(percent, places)), denominator: 100 * 10 ** places };
}

/** The days that a share of the days is counted for. */
export function daysOfShare({ days, when }: Definition & { is: 'days-share' }, period: Period): number {
  const own = periodDays(period);
  const { year, month } = calendarDay(
    days === 'month-of-last-day' ? ((period.to - 1) as Period['to']) : period.from,
  );
  const wanted = days.startsWith('month') ? daysInMonth(year, month) : Number.parseInt(days, 10);
  return when === 'longer' && own <= wanted ? own : wanted;
}

/** Which step of a choice a quantity reaches. */
export function stepReached({ steps }: Definition & { is: 'choice' }, by: number): number {
  return steps.findIndex(({ upTo }) => upTo === undefined || by <= decimalToWhole(upTo, 3));
}

/** Sums, differences and the like of operands, in thousandths, before they are rounded. */
export function arithmetic(is: string, operands: readonly Operand[], context: SettleContext): number {
  const values = operands.map((operand) => valueOf(operand, context));
  const [first = 0, ...rest] = values;
  const less = first - rest.reduce((sum, value) => sum + value, 0);
  switch (is) {
    case 'difference':
      return less;
    case 'excess':
      return less > 0 ? less : 0;
    case 'least':
      return Math.min(...values);
    case 'greatest':
      return Math.max(...values);
    default:
      return sumOf(operands, context);
  }
}

function partOf(
  definition: Definition & { is: 'part' },
  operands: readonly Operand[],
  context: SettleContext,
): number {
  const [of, ...limits] = operands.map((operand) => valueOf(operand, context));
  const above = definition.above === undefined ? 0 : (limits[0] ?? 0);
  const upTo = definition.upTo === undefined ? Infinity : (limits.at(-1) ?? Infinity);
  return Math.max(0, Math.min(of ?? 0, upTo) - above);
}

/** The exact result of a definition that may need rounding; null for those that never do. */
export function exactOf(
  definition: Definition,
  operands: readonly Operand[],
  context: SettleContext,
): Exact | null {
  switch (definition.is) {
    case 'product':
      return productOf(operands, context);
    case 'quotient':
      return quotientOf(operands, context, definition.label);
    case 'percent':
      return percentOf(definition.percent, sumOf(operands, context));
    case 'days-share': {
      const days = daysOfShare(definition, context.period);
      const top = wholeProduct(valueOf(operands[0] as Operand, context), days);
      return { numerator: top, denominator: periodDays(context.period) };
    }
    case 'mean': {
      const values = pastValues(definition, context, operands[0] as Operand);
      const sum = values.reduce((total, value) => total + value, 0);
      return { numerator: sum, denominator: Math.max(1, values.length) };
    }
    default:
      return null;
  }
}

/** The result of a definition other than a netting, in whole thousandths. */
export function resultOf(
  definition: Definition,
  operands: readonly Operand[],
  context: SettleContext,
): number {
  const exact = exactOf(definition, operands, context);
  if (exact !== null) {
    const rounding = 'rounding' in definition ? definition.rounding : undefined;
    return thousandths(exact, rounding, definition);
  }
  switch (definition.is) {
    case 'part':
      return partOf(definition, operands, context);
    case 'choice': {
      const by = valueOf(operands.at(-1) as Operand, context);
      return valueOf(operands[stepReached(definition, by)] as Operand, context);
    }
    case 'running-total':
      return pastValues(definition, context, operands[0] as Operand).reduce((sum, value) => sum + value, 0);
    default: {
      const value = arithmetic(definition.is, operands, context);
      const rounding = 'rounding' in definition ? definition.rounding : undefined;
      return rounding === undefined
        ? value
        : thousandths({ numerator: value, denominator: 1 }, rounding, definition);
    }
  }
}
