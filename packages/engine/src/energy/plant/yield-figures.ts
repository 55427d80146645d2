import { givenFigure, type Figure } from '../../quantity/index.ts';
import { arithmetic, over } from './exact-figures.ts';
import type { CapacityPart } from './service-days.ts';

/** Days of a period as a figure. */
export function daysFigure(days: number, id = 'days', label = 'Days'): Figure {
  return givenFigure({ id, label, unit: 'day', numerator: days, denominator: 1, clause: '' });
}

const capacityFigure = (watts: number): Figure =>
  givenFigure({
    id: 'plant-capacity',
    label: 'Plant capacity in kWp',
    unit: 'kW',
    numerator: watts,
    denominator: 1000,
    clause: 'plant',
  });

/**
 * The capacity of a period in kWp: the one there was, or the mean over its days.
 *
 * @param parts  at least one, with at least one day each
 * @param days   of each part that count
 * @example
 * meanCapacity([{ watts: 3000, days: 1 }, { watts: 5000, days: 3 }], ({ days }) => days).numerator //=> 18000
 */
export function meanCapacity(parts: readonly CapacityPart[], days: (part: CapacityPart) => number): Figure {
  const counted = parts.filter((part) => days(part) > 0);
  const [only] = counted;
  if (only !== undefined && counted.length === 1) return capacityFigure(only.watts);
  const all = counted.reduce((sum, part) => sum + days(part), 0);
  const wattDays = counted.reduce((sum, part) => sum + part.watts * days(part), 0);
  const products = counted.map((part) =>
    arithmetic({
      id: 'capacity-days',
      label: 'Capacity in kWp times its days',
      unit: 'kW',
      numerator: part.watts * days(part),
      denominator: 1000,
      operation: 'product',
      inputs: [capacityFigure(part.watts), daysFigure(days(part))],
    }),
  );
  const sum = arithmetic({
    id: 'all-capacity-days',
    label: 'Capacity in kWp times days, all together',
    unit: 'kW',
    numerator: wattDays,
    denominator: 1000,
    operation: 'sum',
    inputs: products,
  });
  return arithmetic({
    id: 'mean-capacity',
    label: 'Mean plant capacity in kWp',
    unit: 'kW',
    numerator: wattDays,
    denominator: 1000 * all,
    operation: 'quotient',
    inputs: [sum, daysFigure(all)],
  });
}

/** What a period made as a figure, from whole watt-hours. */
export function generationFigure(wattHours: number): Figure {
  return givenFigure({
    id: 'generation',
    label: 'Units the plant made',
    unit: 'kWh',
    numerator: wattHours,
    denominator: 1000,
    clause: 'generation',
  });
}

/** The yields of a period by IEC 61724-1; null where something is not known. */
export interface PlantYields {
  /** Units per kWp and day. */
  readonly specificYield: Figure | null;
  /** Units per kWp and day that the plant was in service; null where the diary has no outage. */
  readonly specificYieldInService: Figure | null;
  /** Units over capacity times every hour of the days: 8,760 hours in a year of 365 days, 8,784 in one of 366. */
  readonly capacityUtilisation: Figure | null;
  /** Final yield over reference yield. */
  readonly performanceRatio: Figure | null;
}

const HOURS_A_DAY = 24;

function hoursFigure(days: number): Figure {
  const day = givenFigure({
    id: 'hours-a-day',
    label: 'Hours of a day',
    unit: 'count',
    numerator: HOURS_A_DAY,
    denominator: 1,
    clause: '',
  });
  return arithmetic({
    id: 'hours',
    label: 'Hours',
    unit: 'count',
    numerator: days * HOURS_A_DAY,
    denominator: 1,
    operation: 'product',
    inputs: [daysFigure(days), day],
  });
}

/** Hours of full sun: irradiation over the 1 kW per m² at which capacity is rated. */
function referenceYield(wattHoursPerSquareMetre: number): Figure {
  return givenFigure({
    id: 'reference-yield',
    label: 'Reference yield: irradiation in kWh per m², over 1 kW per m²',
    unit: 'count',
    numerator: wattHoursPerSquareMetre,
    denominator: 1000,
    clause: 'irradiation',
  });
}

/**
 * The yields of a period.
 *
 * @param made         in whole watt-hours, as a figure
 * @param parts        the capacity of its days
 * @param irradiation  in the plane of the modules over the whole period, in whole Wh per m²; null: not known
 * @source IEC 61724-1 and IEC TS 61836 for the terms
 */
export function plantYields(
  made: Figure,
  parts: readonly CapacityPart[],
  irradiation: number | null,
): PlantYields {
  const days = parts.reduce((sum, part) => sum + part.days, 0);
  const running = parts.reduce((sum, part) => sum + part.inService.length, 0);
  if (days === 0) {
    return {
      specificYield: null,
      specificYieldInService: null,
      capacityUtilisation: null,
      performanceRatio: null,
    };
  }
  const capacity = meanCapacity(parts, (part) => part.days);
  const sun = irradiation === null || irradiation === 0 ? null : referenceYield(irradiation);
  const daily = { id: 'specific-yield', label: 'Units per kWp and day', unit: 'kWh/kWp/day' } as const;
  const use = { id: 'capacity-utilisation', label: 'Capacity utilisation', unit: 'ratio' } as const;
  const ratio = { id: 'performance-ratio', label: 'Performance ratio', unit: 'ratio' } as const;
  return {
    specificYield: over(daily, made, [capacity, daysFigure(days)]),
    specificYieldInService: running === days || running === 0 ? null : inService(made, parts, running),
    capacityUtilisation: over(use, made, [capacity, hoursFigure(days)]),
    performanceRatio: sun === null ? null : over(ratio, made, [capacity, sun]),
  };
}

function inService(made: Figure, parts: readonly CapacityPart[], days: number): Figure | null {
  const words = {
    id: 'specific-yield-in-service',
    label: 'Units per kWp and day in service',
    unit: 'kWh/kWp/day',
  } as const;
  const span = daysFigure(days, 'days-in-service', 'Days in service');
  return over(words, made, [meanCapacity(parts, (part) => part.inService.length), span]);
}
