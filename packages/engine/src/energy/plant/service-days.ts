import { addDays, type DayNumber, type Period } from '../../quantity/index.ts';
import { capacityOn, isOutage, type Plant } from './plant.ts';

/** The part of a period in which the capacity was one and the same. */
export interface CapacityPart {
  readonly watts: number;
  /** Days of the calendar with this capacity. */
  readonly days: number;
  /** Those of them on which the plant did not stand still by the diary. */
  readonly inService: readonly DayNumber[];
}

/**
 * A period cut where the capacity changes; days before the plant are in no part.
 *
 * @returns in order of days
 * @example
 * capacityParts({ from: 0, to: 4 }, { capacities: [{ from: 1, watts: 3000 }], diary: [] })[0].days //=> 3
 */
export function capacityParts(
  period: Period,
  plant: Pick<Plant, 'capacities' | 'diary'>,
): readonly CapacityPart[] {
  const parts: { watts: number; days: number; inService: DayNumber[] }[] = [];
  for (let day = period.from; day < period.to; day = addDays(day, 1)) {
    const watts = capacityOn(plant, day);
    if (watts === 0) continue;
    let part = parts.at(-1);
    if (part?.watts !== watts) {
      part = { watts, days: 0, inService: [] };
      parts.push(part);
    }
    part.days += 1;
    if (!isOutage(plant, day)) part.inService.push(day);
  }
  return parts;
}
