import { readFileSync } from 'node:fs';
import type { ReadingRow } from '@unitbook/engine';

/** A month of a real home: whole tenths of a unit taken, given and made. */
export interface HomeMonth {
  readonly import: number;
  readonly export: number;
  readonly generation: number;
}

/** A real home, month by month. */
export interface Home {
  readonly name: string;
  readonly months: readonly HomeMonth[];
}

const FOLDER = 'tests/published/data/homes';
const lines = (path: string): readonly string[] =>
  readFileSync(path, 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'));
const tenths = (kWh: number): number => Math.round(kWh * 10);

/** Daily values summed by calendar month; months of fewer than 28 days are left out. */
function byMonth(path: string, name: string): Home {
  const sums = new Map<string, { days: number; values: [number, number, number] }>();
  for (const line of lines(path).slice(1)) {
    const [day = '', ...cells] = line.split(',');
    const month = sums.get(day.slice(0, 7)) ?? { days: 0, values: [0, 0, 0] };
    month.days += 1;
    cells.slice(0, 3).forEach((cell, at) => {
      month.values[at] = (month.values[at] ?? 0) + Number(cell);
    });
    sums.set(day.slice(0, 7), month);
  }
  const months = [...sums.values()].filter(({ days }) => days >= 28);
  return {
    name,
    months: months.map(({ values: [taken, given, made] }) => ({
      import: tenths(taken),
      export: tenths(Math.min(given, made)),
      generation: tenths(made),
    })),
  };
}

/** Registers at irregular days: what they counted between two readings. */
function byRegisters(path: string): readonly Home[] {
  const rows = lines(path)
    .slice(1)
    .map((line) => line.split(','));
  const names = [...new Set(rows.map(([home = '']) => home))];
  return names.map((name) => {
    const own = rows.filter(([home]) => home === name).map((row) => row.slice(2).map(Number));
    const months = own.slice(1).map((row, at) => {
      const before = own[at] ?? [];
      const [taken = 0, given = 0, made = 0] = row.map((value, column) =>
        tenths(value - (before[column] ?? 0)),
      );
      return { import: taken, export: Math.min(given, made), generation: made };
    });
    return { name: `Konstanz ${name}`, months };
  });
}

/** Five real homes: see tests/published/data/homes/SOURCE.txt and tests/published/data/konstanz-homes.csv. */
export function realHomes(): readonly Home[] {
  return [
    byMonth(`${FOLDER}/home-1-battery-daily.csv`, 'home 1'),
    byMonth(`${FOLDER}/home-2-daily.csv`, 'home 2'),
    ...byRegisters('tests/published/data/konstanz-homes.csv'),
  ];
}

/** Days on which meters are read: the first of every so manieth month from a month on. */
export function readingDays(from: string, count: number, every: number): readonly string[] {
  const [year = 0, month = 0] = from.split('-').map(Number);
  return Array.from({ length: count }, (_, at) => {
    const whole = year * 12 + month - 1 + at * every;
    return `${String(Math.floor(whole / 12))}-${String((whole % 12) + 1).padStart(2, '0')}-01`;
  });
}

/** How the meters of a home are read. */
export interface Reading {
  /** What the import register shows on the first day, in tenths. */
  readonly begin: number;
  /** Tenths that it shows once more from 0 on. */
  readonly fullScale: number;
  readonly factor: number;
  /** The month, from 1 on, in which the grid meter is changed; null: never. */
  readonly changed: number | null;
}

type Shown = Record<'import' | 'export' | 'generation', number>;

const text = (value: number): string => (value / 10).toFixed(1);
const rowOf = (date: string, { import: taken, export: given, generation }: Shown): ReadingRow => ({
  date,
  import: text(taken),
  export: text(given),
  generation: text(generation),
});

/** The change of the grid meter on the tenth day of a month: the old one's last reading, the new one's first. */
function changeOf(month: HomeMonth, shown: Shown, day: string): readonly ReadingRow[] {
  const part = (value: number): number => Math.floor(value / 3);
  const last = {
    ...shown,
    import: shown.import + part(month.import),
    export: shown.export + part(month.export),
  };
  const date = `${day.slice(0, 8)}10`;
  Object.assign(shown, { import: 70 - part(month.import), export: 20 - part(month.export) });
  const { import: taken, export: given } = rowOf(date, last);
  return [
    { date, import: taken, export: given, event: 'final' },
    { date, import: '7.0', export: '2.0', event: 'first' },
  ];
}

/** The registers of a home on these days. */
export function readingsOf(
  months: readonly HomeMonth[],
  days: readonly string[],
  { begin, fullScale, factor, changed }: Reading,
): readonly ReadingRow[] {
  const shown: Shown = { import: begin, export: 26_552, generation: 68_904 };
  return days.flatMap((date, at) => {
    const month = at === 0 ? undefined : months[at - 1];
    const before = month !== undefined && changed === at ? changeOf(month, shown, days[at - 1] ?? date) : [];
    shown.import = (shown.import + Math.round((month?.import ?? 0) / factor)) % fullScale;
    shown.export += Math.round((month?.export ?? 0) / factor);
    shown.generation += month?.generation ?? 0;
    return [...before, rowOf(date, shown)];
  });
}
