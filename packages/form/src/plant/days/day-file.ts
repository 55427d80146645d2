import type { Finding, PlantDay } from '@unitbook/engine';

/** A file of daily or interval generation that was read. */
export interface DayFile {
  readonly name: string;
  /** In order, each once. */
  readonly days: readonly PlantDay[];
  /** The zone that its times were moved to; null where they stand as they are. */
  readonly zone: string | null;
  readonly findings: readonly Finding[];
}

/** A file that was not taken, and why. */
export interface RefusedFile {
  readonly name: string;
  readonly reason: string;
  readonly findings: readonly Finding[];
}

/** A table of which a person has to say what its columns are. */
export interface AskedFile {
  readonly name: string;
  readonly blob: Blob;
  /** Its first lines. */
  readonly head: string;
}

/** The days of some files: of a day in several, the file opened last counts. */
export function mergedDays(files: readonly DayFile[]): readonly PlantDay[] {
  const days = new Map(files.flatMap((file) => file.days.map((day) => [day.day, day] as const)));
  return [...days.values()].sort((one, other) => one.day - other.day);
}
