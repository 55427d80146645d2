import { periodDays, type FigureKind, type Period } from '../quantity/index.ts';
import type { InForce, Tariff, TariffVersion } from '../tariff/index.ts';
import { makeConstants, quantityVector, type Constants } from './constants.ts';
import { dayFactor, lowestTerms, type DayFactor } from './day-factor.ts';
import { shapeOf, type Shape } from './shape.ts';
import { stepRounding, type StepRounding } from './step-rounding.ts';
import { traceTables } from './trace-tables.ts';
import type { BillSource } from './trace.ts';

/** A version of the charges for one set of day factors, ready to bill and to explain. */
export interface Prepared {
  readonly constants: Constants;
  /** How each line unfolds. */
  readonly kinds: readonly FigureKind<BillSource>[];
  /** Room for the evaluator, used anew by every bill. */
  readonly vector: Float64Array;
  readonly amounts: Float64Array;
}

/** A tariff in normal form, with what has been worked out for the periods billed so far. */
export interface PreparedTariff {
  readonly tariff: Tariff;
  /** Roundings of a line and of the total, as whole numbers; null for none. */
  readonly lineRounding: StepRounding | null;
  readonly totalRounding: StepRounding | null;
  /** What has been worked out, by version; filled as periods are billed. */
  readonly prepared: ReadonlyMap<TariffVersion, Memory>;
}

/** One version in normal form, and what has been worked out for it. */
export interface Memory {
  readonly shape: Shape;
  readonly byDates: Map<number, Prepared>;
  readonly byFactors: Map<string, Prepared>;
}

/**
 * Bring a tariff into normal form, once for any number of bills.
 *
 * @param tariff  read and checked
 */
export function prepareTariff(tariff: Tariff): PreparedTariff {
  const prepared = new Map<TariffVersion, Memory>();
  for (const { item } of tariff.versions) {
    const memory: Memory = {
      shape: shapeOf(item, tariff.document),
      byDates: new Map(),
      byFactors: new Map(),
    };
    prepared.set(item, memory);
  }
  const { rounding } = tariff.document;
  return {
    tariff,
    prepared,
    lineRounding: stepRounding(rounding.line),
    totalRounding: stepRounding(rounding.total),
  };
}

/** The part of a period that one version is in force for. */
export interface PeriodPart {
  readonly version: InForce<TariffVersion>;
  readonly period: Period;
}

function factorsFor(shape: Shape, part: PeriodPart, whole: Period): Record<string, DayFactor> {
  const { versionChange } = shape.document;
  const shared = versionChange.rule === 'split-by-days' && versionChange.factor === 'share-of-period';
  const factors: Record<string, DayFactor> = {};
  for (const [name, rule] of Object.entries(shape.document.dayRules ?? {})) {
    if (!shared) factors[name] = dayFactor(rule, part.period);
    else {
      const factor = dayFactor(rule, whole);
      const top = factor.numerator * periodDays(part.period);
      factors[name] = lowestTerms(top, factor.denominator * periodDays(whole));
    }
  }
  return factors;
}

/** A short key for factors: they repeat from month to month. */
function factorKey(factors: Readonly<Record<string, DayFactor>>, energyScale: number): string {
  let key = String(energyScale);
  for (const name in factors) {
    const factor = factors[name] as DayFactor;
    key += ` ${String(factor.numerator)}/${String(factor.denominator)}`;
  }
  return key;
}

/** A number for the dates of a period: first day and length. */
function dateKey(period: Period): number {
  return period.from * 65_536 + (period.to - period.from);
}

/**
 * The constants for the part of a period that one version is in force for.
 *
 * Remembered by dates, which whole districts share, and behind that by factors, which most months share.
 *
 * @param part         version and days
 * @param whole        the whole billing period
 * @param energyScale  what energy quantities are multiplied by: the days of a period split exactly
 */
export function preparedFor(
  prepared: PreparedTariff,
  part: PeriodPart,
  whole: Period,
  energyScale: number,
): Prepared {
  const memory = prepared.prepared.get(part.version.item) as Memory;
  const key = part.period === whole ? dateKey(whole) : null;
  const sameDates = key === null ? undefined : memory.byDates.get(key);
  if (sameDates !== undefined) return sameDates;
  const factors = factorsFor(memory.shape, part, whole);
  const factorsKey = factorKey(factors, energyScale);
  const ready = memory.byFactors.get(factorsKey) ?? makePrepared(memory.shape, factors, energyScale);
  memory.byFactors.set(factorsKey, ready);
  if (key !== null) memory.byDates.set(key, ready);
  return ready;
}

function makePrepared(
  shape: Shape,
  factors: Readonly<Record<string, DayFactor>>,
  energyScale: number,
): Prepared {
  const constants = makeConstants(shape, factors, energyScale);
  const amounts = new Float64Array(constants.lines.length);
  return { constants, kinds: traceTables(constants), vector: quantityVector(), amounts };
}
