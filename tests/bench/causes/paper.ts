import {
  dayText,
  exactText,
  quotientText,
  type BillFacts,
  type Figures,
  type PrintedBillDocument,
} from '@unitbook/engine';

/** How a utility prints its figures. */
export interface Habit {
  readonly name: string;
  /** Decimals of readings. */
  readonly readings: 0 | 1;
  /** Whether zeros at the end of amounts are printed. */
  readonly zeros: boolean;
  /** Decimals of units that are printed even where they are zeros. */
  readonly units: 0 | 1 | 2;
  /** Whether lines are printed in whole money. */
  readonly isWhole: boolean;
}

/** Every habit of printing that bills are made with here. */
export const HABITS: readonly Habit[] = [
  { name: 'to the coin', readings: 1, zeros: true, units: 0, isWhole: false },
  { name: 'without zeros', readings: 1, zeros: false, units: 0, isWhole: false },
  { name: 'readings cut to whole units', readings: 0, zeros: true, units: 0, isWhole: false },
  { name: 'units with decimals', readings: 1, zeros: true, units: 2, isWhole: false },
  { name: 'lines in whole money', readings: 0, zeros: true, units: 0, isWhole: true },
];

type Value = NonNullable<ReturnType<Figures['get']>>;

const decimal = ({ numerator, denominator }: Value, most: number): string => {
  const exact = exactText(numerator, denominator);
  const places = exact.split('.')[1]?.length ?? 0;
  return exact.includes('/') || places > most ? quotientText(numerator, denominator, most) : exact;
};

const padded = (text: string, places: number): string => {
  if (places === 0) return text;
  const [whole = '', decimals = ''] = text.split('.');
  return `${whole}.${decimals.padEnd(places, '0')}`;
};

/** Cut off, as displays are read. */
const cut = ({ numerator, denominator }: Value, places: number): string => {
  const grid = 10 ** places;
  const steps = Math.floor((Number(numerator) * grid) / denominator);
  return padded(String(steps / grid), places);
};

function money(value: Value, { zeros, isWhole }: Habit): string {
  if (isWhole) return quotientText(value.numerator, value.denominator, 0);
  const text = decimal(value, 2);
  return zeros ? padded(text, 2) : text.replace(/\.0+$|(\.\d*[1-9])0+$/, '$1');
}

function under(figures: Figures, prefix: string): readonly (readonly [string, Value])[] {
  return [...figures].flatMap(([name, value]) =>
    name.startsWith(prefix) ? [[name.slice(prefix.length), value] as const] : [],
  );
}

const record = (pairs: readonly (readonly [string, string])[]): Record<string, string> =>
  Object.fromEntries(pairs);

/** A bill printed with some figures, as a utility would. */
export function printBill(
  { period }: Pick<BillFacts, 'period'>,
  figures: Figures,
  habit: Habit,
): PrintedBillDocument {
  const readings: Record<string, { previous?: string; present?: string }> = {};
  for (const [name, value] of under(figures, 'reading.')) {
    const [register = '', end = ''] = name.split('.');
    readings[register] = { ...readings[register], [end]: cut(value, habit.readings) };
  }
  const optional = (key: string): string | undefined => {
    const value = figures.get(key);
    return value === undefined || Number(value.numerator) === 0 ? undefined : money(value, habit);
  };
  const units = under(figures, 'units.').filter(([name]) =>
    ['import', 'export', 'generation', 'billed'].includes(name),
  );
  const balances = (end: string) =>
    record(under(figures, `${end}.`).map(([id, value]) => [id, padded(decimal(value, 3), 0)] as const));
  const payable = figures.get('payable');
  const sum = figures.get('sum');
  return {
    from: dayText(period.from),
    to: dayText(period.to),
    days: decimal(figures.get('days') ?? { numerator: period.to - period.from, denominator: 1 }, 0),
    readings,
    units: record(units.map(([name, value]) => [name, padded(decimal(value, 3), habit.units)] as const)),
    opening: balances('opening'),
    closing: balances('closing'),
    lines: under(figures, 'line.').map(([charge, value]) => ({ charge, amount: money(value, habit) })),
    arrears: optional('arrears'),
    lateFee: optional('late-fee'),
    adjustment: optional('adjustment'),
    ...(sum === undefined || habit.isWhole ? {} : { sum: money(sum, habit) }),
    ...(payable === undefined ? {} : { payable: padded(decimal(payable, 2), 0) }),
  };
}
