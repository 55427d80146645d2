import type { DayNumber, Quotient } from '../../quantity/index.ts';
import type { AccuracyClass } from '../../readings/index.ts';
import type { DiaryDeed, PlantDocument } from './plant-document.ts';

/** A capacity and the first day it stands for; null: from the beginning. */
export interface DatedCapacity {
  readonly from: DayNumber | null;
  /** Whole watts of peak power. */
  readonly watts: number;
}

/** An entry of the diary; both days belong to it. */
export interface DiaryEntry {
  readonly date: DayNumber;
  readonly through: DayNumber;
  readonly did: DiaryDeed;
  readonly note: string;
}

/** What the plant is expected to make; months from January on, at index 0. */
export type Expected =
  | { readonly kind: 'monthly'; readonly wattHours: readonly number[] }
  | {
      readonly kind: 'irradiation';
      /** Whole Wh per m², of a day or of the month. */
      readonly wattHours: readonly number[];
      readonly per: 'day' | 'month';
      readonly performanceRatio: Quotient;
      readonly source: string;
    }
  | { readonly kind: 'last-years' };

/** A plant document that was read and checked. */
export interface Plant {
  readonly document: PlantDocument;
  /** In order of days, at least one. */
  readonly capacities: readonly DatedCapacity[];
  readonly isOnCoast: boolean;
  readonly inverters: { readonly count: number; readonly kind: 'string' | 'module' } | null;
  readonly expected: Expected | null;
  /** One sigma of a month from year to year, in hundredths of a percent; null without local data. */
  readonly yearToYear: number | null;
  readonly meterClass: AccuracyClass | null;
  /** In order of days. */
  readonly diary: readonly DiaryEntry[];
}

/**
 * The capacity on a day, in whole watts.
 *
 * @returns 0 before the first day of the plant
 * @example
 * capacityOn({ capacities: [{ from: 10, watts: 3000 }, { from: 20, watts: 5000 }] }, 20) //=> 5000
 */
export function capacityOn({ capacities }: Pick<Plant, 'capacities'>, day: DayNumber): number {
  return capacities.reduce((watts, one) => (one.from === null || one.from <= day ? one.watts : watts), 0);
}

/**
 * Whether the diary says that the plant stood still on a day.
 *
 * @example
 * isOutage({ diary: [{ date: 3, through: 5, did: 'outage', note: '' }] }, 5) //=> true
 */
export function isOutage({ diary }: Pick<Plant, 'diary'>, day: DayNumber): boolean {
  return diary.some(({ did, date, through }) => did === 'outage' && date <= day && day <= through);
}
