import {
  decimalPlaces,
  decimalToWhole,
  isSameQuotient,
  periodDays,
  roundLargeQuotient,
  type Quotient,
} from '../quantity/index.ts';
import type { Charge, DayRule } from '../tariff/index.ts';
import { isScaledByDays } from './day-scaling.ts';
import type { BillFacts } from './facts.ts';
import { lineRounding, roundedLine } from './solved-number.ts';

type SlabCharge = Extract<Charge, { kind: 'slabs' }>;

/** A limit of telescopic slabs to solve for. */
export interface LimitToSolve {
  readonly charge: SlabCharge;
  /** Which of the slabs, from 0; not the last. */
  readonly at: number;
  readonly units: Quotient;
  /** As the line shows it. */
  readonly amount: Quotient;
}

/** Rates in 10^-8 of money, limits and units in 10^-3 of a unit. */
const RATE = 8;
const UNIT = 3;

const bigOf = (text: string, places: number): bigint =>
  BigInt(decimalToWhole(text, decimalPlaces(text))) * 10n ** BigInt(places - decimalPlaces(text));

/** The factor of a day rule for a period, as a quotient; null where it is rounded or no plain quotient of days. */
function factorOf(rule: DayRule | undefined, facts: BillFacts): readonly [bigint, bigint] | null {
  if (rule === undefined || !isScaledByDays(facts)) return [1n, 1n];
  if (rule.rule !== 'days-over' || rule.factor !== undefined || rule.limits !== undefined) return null;
  if (decimalPlaces(rule.divisor) > 0) return null;
  return [BigInt(periodDays(facts.period)), BigInt(decimalToWhole(rule.divisor, 0))];
}

interface Slab {
  readonly rate: bigint;
  readonly limit: bigint;
}

/** What units cost in slabs: rate × units, in the parts of both. */
function priced(slabs: readonly Slab[], units: bigint): bigint {
  let from = 0n;
  let sum = 0n;
  for (const { rate, limit } of slabs) {
    const to = limit < units ? limit : units;
    if (to > from) sum += rate * (to - from);
    from = limit > from ? limit : from;
  }
  return sum;
}

/** Limits and units brought to one month: both are divided by the factor, so that units stay whole in its parts. */
function prepared({ charge, units }: LimitToSolve, [days, divisor]: readonly [bigint, bigint]) {
  const most = (BigInt(units.numerator) * 10n ** BigInt(UNIT) * divisor) / BigInt(units.denominator);
  const slabs = charge.slabs.map(({ rate, upTo }): Slab => {
    const limit = upTo === undefined ? null : bigOf(upTo, UNIT) * days;
    return { rate: bigOf(rate, RATE), limit: limit === null || limit < 0n ? most + 1n : limit };
  });
  return { most, slabs };
}

/**
 * The whole number at which one of the slabs must end for units to cost an amount, the other limits as they are.
 *
 * @param wanted  the charge, which of its slabs, and what the bill shows
 * @param facts   for the days of the period and the rounding of lines
 * @returns       null where no whole number does
 */
export function solveLimit(wanted: LimitToSolve, facts: BillFacts): string | null {
  const { charge, at, amount } = wanted;
  const rule = charge.scaledBy === undefined ? undefined : facts.tariff.dayRules?.[charge.scaledBy];
  const factor = factorOf(rule, facts);
  if (factor === null) return null;
  const [days, divisor] = factor;
  const { most, slabs } = prepared(wanted, factor);
  const [own, next] = [slabs[at], slabs[at + 1]];
  const below = slabs[at - 1]?.limit ?? 0n;
  if (own === undefined || next === undefined || own.rate === next.rate) return null;
  const withLimit = (limit: bigint): bigint =>
    priced(
      slabs.map((slab, index) => (index === at ? { ...slab, limit } : slab)),
      most,
    );
  const scale = 10n ** BigInt(RATE + UNIT) * divisor;
  const target = roundLargeQuotient(BigInt(amount.numerator) * scale, BigInt(amount.denominator), 'half-up');
  const one = 10n ** BigInt(UNIT) * days;
  // The amount grows by the difference of both rates with every part of a unit that the limit moves.
  const slope = own.rate - next.rate;
  const steep = slope < 0n ? -slope : slope;
  const over = (target - withLimit(below)) * (slope < 0n ? -1n : 1n) + below * steep;
  const steps = roundLargeQuotient(over, steep * one, 'half-up');
  const limit = steps * one;
  // Where it reaches all units, any higher limit does as well: it is not determined.
  if (limit <= below || limit >= next.limit || limit >= most) return null;
  const shown = asMoney(withLimit(limit), scale);
  return isSameQuotient(roundedLine(shown, lineRounding(facts.tariff, charge)), amount)
    ? steps.toString()
    : null;
}

/** An exact amount in hundred-millionths or finer, as a quotient that can be rounded. */
function asMoney(parts: bigint, scale: bigint): Quotient {
  const denominator = Number.parseInt(scale.toString(), 10);
  return { numerator: parts, denominator };
}
