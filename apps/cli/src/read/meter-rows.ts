import type { DayNumber, Finding, ReadingRow } from '@unitbook/engine';
import { firstDaysOfMonths, readingRows, toReadingRows, type CollectedFile } from '@unitbook/meter-files';

/** Which days of a meter file are wanted: some, the first of each month, or (null) all with a reading. */
export type WantedDays = readonly DayNumber[] | 'first-days' | null;

/** Readings of a meter file as rows, and the line of the file on which each begins. */
export interface MeterRows {
  readonly rows: readonly ReadingRow[];
  readonly lines: readonly number[];
  readonly findings: readonly Finding[];
}

/** The readings of registers that a meter file holds, as rows. */
export function meterRows(file: CollectedFile, on: WantedDays): MeterRows {
  const days = on === 'first-days' ? firstDaysOfMonths(file) : on;
  const { value, findings } = readingRows(file, days === null ? {} : { on: days });
  return { rows: toReadingRows(value), lines: value.map(({ line }) => line), findings };
}
