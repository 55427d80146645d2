import type { PlantDay } from '@unitbook/engine';
import { makeRandom } from './random.ts';
import { daysFrom } from './plant-days.ts';

/** Units a day of a healthy plant by the day of its year, in thousandths: 20 with a quarter more and less. */
const season = (day: number): number => 20_000 + 5000 * Math.cos((2 * Math.PI * (day - 172)) / 365);

/** What a quote for that plant would list: the mean day of each month, times its days. */
export const RANDOM_TABLE: readonly string[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31].map(
  (days, month) => String(Math.round((season(15 + 30.4 * month) * days) / 1000)),
);

/** A year from 1 January 2025 whose days lie anywhere from 40 % below to 40 % above the season. */
export function randomYear(seed: number, part: (day: number) => number = () => 1): PlantDay[] {
  const random = makeRandom(seed);
  const values = Array.from({ length: 365 }, (_, day) => {
    const weather = 600 + random.below(801);
    return Math.floor((season(day) * weather * part(day)) / 1000);
  });
  return daysFrom('2025-01-01', values);
}
