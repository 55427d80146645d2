import { addDays, type DayNumber, type Finding } from '../../quantity/index.ts';
import { capacityOn, isOutage, type Plant } from './plant.ts';

/** What a plant made on a day, and what else is known of that day. */
export interface PlantDay {
  readonly day: DayNumber;
  /** Whole watt-hours; null where it is not known. */
  readonly wattHours: number | null;
  /** Whole watt-hours given to the grid. */
  readonly exportWattHours?: number;
  /** First and last minute of the day, from midnight, in which the plant made something. */
  readonly firstMinute?: number;
  readonly lastMinute?: number;
}

/** One place in the row of days: every day from the first to the last has one. */
export interface SeriesDay {
  readonly day: DayNumber;
  /** Whole watts on that day. */
  readonly watts: number;
  readonly isOutage: boolean;
  readonly wattHours: number | null;
  readonly exportWattHours: number | null;
  readonly minutes: { readonly first: number; readonly last: number } | null;
}

/** What a look at the days found, and which of them, by their place, are no measure of the plant. */
export interface DayFindings {
  readonly findings: readonly Finding[];
  readonly unfit: readonly number[];
}

const isWhole = (value: number | null | undefined): boolean =>
  value === null || value === undefined || (Number.isSafeInteger(value) && value >= 0);

function checkCall(days: readonly PlantDay[]): void {
  const seen = new Set<DayNumber>();
  for (const { day, wattHours, exportWattHours } of days) {
    if (seen.has(day)) throw new RangeError('a day given twice');
    if (!isWhole(wattHours) || !isWhole(exportWattHours)) throw new RangeError('no whole watt-hours');
    seen.add(day);
  }
}

/**
 * Put days in a row without gaps, from the first with a capacity and a value to the last given.
 *
 * @throws RangeError when a day comes twice or an energy is no whole number from 0 on: a caller's bug
 */
export function daySeries(days: readonly PlantDay[], plant: Plant): readonly SeriesDay[] {
  checkCall(days);
  const known = new Map(days.map((one) => [one.day, one]));
  const sorted = days.filter(({ day }) => capacityOn(plant, day) > 0).sort((a, b) => a.day - b.day);
  const first = sorted.find(({ wattHours }) => wattHours !== null)?.day;
  const last = sorted.at(-1)?.day;
  if (first === undefined || last === undefined) return [];
  const series: SeriesDay[] = [];
  for (let day = first; day <= last; day = addDays(day, 1)) {
    const one = known.get(day);
    const { firstMinute, lastMinute } = one ?? {};
    series.push({
      day,
      watts: capacityOn(plant, day),
      isOutage: isOutage(plant, day),
      wattHours: one?.wattHours ?? null,
      exportWattHours: one?.exportWattHours ?? null,
      minutes:
        firstMinute === undefined || lastMinute === undefined
          ? null
          : { first: firstMinute, last: lastMinute },
    });
  }
  return series;
}

/** Days in a row of one kind: from a place, to the place after the last. */
export interface Run {
  readonly from: number;
  readonly to: number;
}

/**
 * The runs of days that are alike.
 *
 * @param isOne     whether a day is of the kind
 * @param goesOn    whether a day of the kind goes on with the one before; left out: always
 * @example
 * runsOf([1, 0, 0, 1], (value) => value === 0) //=> [{"from":1,"to":3}]
 */
export function runsOf<Item>(
  items: readonly Item[],
  isOne: (item: Item) => boolean,
  goesOn: (item: Item, before: Item) => boolean = () => true,
): readonly Run[] {
  const runs: { from: number; to: number }[] = [];
  let before: Item | undefined;
  items.forEach((item, place) => {
    const run = runs.at(-1);
    if (isOne(item)) {
      if (run?.to === place && before !== undefined && goesOn(item, before)) run.to += 1;
      else runs.push({ from: place, to: place + 1 });
    }
    before = item;
  });
  return runs;
}

/** The places of a run. */
export function placesOf({ from, to }: Run): readonly number[] {
  return Array.from({ length: to - from }, (_, offset) => from + offset);
}
