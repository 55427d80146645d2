import {
  addDays,
  checkPlant,
  parseDay,
  type DayNumber,
  type Plant,
  type PlantDay,
  type PlantDocument,
} from '@unitbook/engine';

/** A table of 20 units on every day of the year, February counted with 28. */
export const TWENTY_A_DAY: readonly string[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31].map((days) =>
  String(days * 20),
);

/** A day that has to exist. */
export function dayOf(text: string): DayNumber {
  const found = parseDay(text);
  if (found === null) throw new Error(`${text} is no day`);
  return found;
}

/** A plant of 5 kWp and the table of 20 units a day, unless something else is said. */
export function plantOf(more: Partial<PlantDocument> = {}): Plant {
  const { value, findings } = checkPlant({
    format: 'unitbook-plant-1',
    capacity: [{ kWp: '5' }],
    expected: { monthly: [...TWENTY_A_DAY] },
    ...more,
  });
  if (value === null) throw new Error(findings.map(({ found }) => found).join('; '));
  return value;
}

/** Days in a row from a first one, from whole watt-hours. */
export function daysFrom(first: string, wattHours: readonly (number | null)[]): PlantDay[] {
  const from = dayOf(first);
  return wattHours.map((value, place) => ({ day: addDays(from, place), wattHours: value }));
}

/** Four days of bright weather with one dull one: 18.4 units a day on the mean, 20 on the best. */
const BRIGHT_DAYS = [20_000, 19_600, 19_800, 14_200] as const;

/** So many bright days, each a part of what it would be; `part` gives thousandths by place. */
export function brightDays(count: number, part: (place: number) => number = () => 1000): number[] {
  return Array.from({ length: count }, (_, place) =>
    Math.floor(((BRIGHT_DAYS[place % 4] ?? 0) * part(place)) / 1000),
  );
}
