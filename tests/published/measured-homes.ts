import { readRational } from './rational.ts';

/** One reading of a measured home: a calendar day and its cumulative registers, as printed. */
interface MeasuredReading {
  readonly date: string;
  readonly import: string;
  readonly export: string;
  readonly generation: string;
}

/** A measured home. */
export interface MeasuredHome {
  readonly name: string;
  /** Whether it has an export register; one without is read as export that stays at 0. */
  readonly hasExport: boolean;
  readonly readings: readonly MeasuredReading[];
}

const files = import.meta.glob<string>('./data/konstanz-homes.csv', {
  query: '?raw',
  import: 'default',
  eager: true,
});

const rows: readonly (readonly string[])[] = Object.values(files)
  .join('\n')
  .split('\n')
  .filter((line) => line.startsWith('DE_'))
  .map((line) => line.split(','));

/** The day some years later; none of the days is 29 February. */
function shifted(timestamp: string, years: number): string {
  const year = readRational(timestamp.slice(0, 4)).top + BigInt(years);
  return `${year}${timestamp.slice(4, 10)}`;
}

function home(name: string, years: number): MeasuredHome {
  const own = rows.filter(([id]) => id === name);
  const hasExport = own.some(([, , , given]) => given !== '');
  const readings = own
    .filter(([, , , given]) => !hasExport || given !== '')
    .map(([, readAt = '', taken = '', given = '', made = '']) => ({
      date: shifted(readAt, years),
      import: taken,
      export: hasExport ? given : '0',
      generation: made,
    }));
  return { name, hasExport, readings };
}

/**
 * The measured homes with their days moved by whole years into the time that the demo tariff covers.
 *
 * A day is the local calendar day of the reading, whatever its hour. Rows of a home with an export register
 * that are empty in it (the first of one home) are left out.
 *
 * @param years  added to every year: 9 brings May 2016 to May 2025
 */
export function measuredHomes(years: number): readonly MeasuredHome[] {
  const names = [...new Set(rows.map(([id = '']) => id))];
  return names.map((name) => home(name, years));
}
