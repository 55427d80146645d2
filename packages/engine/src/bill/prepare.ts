import { periodDays, type Period } from '../quantity/index.ts';
import type { InForce, Tariff, TariffVersion } from '../tariff/index.ts';
import { makeConstants, type Constants } from './constants.ts';
import { dayFactor, lowestTerms, type DayFactor } from './day-factor.ts';
import { shapeOf, type Shape } from './shape.ts';
import { traceTables, type TraceTables } from './trace-tables.ts';

/** A version of the charges for one set of day factors, ready to bill and to explain. */
export interface Prepared {
  readonly constants: Constants;
  readonly tables: TraceTables;
}

/** A tariff in normal form, with what has been worked out for the periods billed so far. */
export interface PreparedTariff {
  readonly tariff: Tariff;
  readonly shapes: ReadonlyMap<TariffVersion, Shape>;
  /** Remembered by version, factors and split; filled as periods are billed. */
  readonly prepared: Map<Shape, Map<string, Prepared>>;
}

/**
 * Bring a tariff into normal form, once for any number of bills.
 *
 * @param tariff  read and checked
 */
export function prepareTariff(tariff: Tariff): PreparedTariff {
  const shapes = new Map(tariff.versions.map(({ item }) => [item, shapeOf(item, tariff.document)]));
  const prepared = new Map<Shape, Map<string, Prepared>>();
  for (const shape of shapes.values()) prepared.set(shape, new Map<string, Prepared>());
  return { tariff, shapes, prepared };
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

/**
 * The constants for the part of a period that one version is in force for.
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
  const shape = prepared.shapes.get(part.version.item) as Shape;
  const factors = factorsFor(shape, part, whole);
  const cache = prepared.prepared.get(shape) as Map<string, Prepared>;
  const key = factorKey(factors, energyScale);
  const known = cache.get(key);
  if (known !== undefined) return known;
  const constants = makeConstants(shape, factors, energyScale);
  const made = { constants, tables: traceTables(constants) };
  cache.set(key, made);
  return made;
}
