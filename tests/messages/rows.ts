import { readReadings, type Finding, type ReadingRow } from '@unitbook/engine';
import { accountOf } from '../support/demo.ts';
import { dayOf } from '../support/make.ts';

/** Readings of a house with one two-way meter: each row its date, import and export. */
export const rows =
  (
    ...texts: readonly (readonly [date: string, taken: string, given: string, more?: Partial<ReadingRow>])[]
  ) =>
  (): readonly Finding[] =>
    readReadings(
      texts.map(([date, taken, given, more]) => ({ date, import: taken, export: given, ...more })),
      accountOf({ generationMeter: false }),
      { today: dayOf('2025-12-31') },
    ).findings;

/** A first reading, of 1 May 2025. */
export const FIRST = ['2025-05-01', '4342.1', '2935.8'] as const;

/** The import of 1 June 2025, after 4342.1 on 1 May. */
export const june = (taken: string, more: Partial<ReadingRow> = {}) =>
  rows(FIRST, ['2025-06-01', taken, '3151.0', more]);
