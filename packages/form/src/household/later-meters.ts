import { dayText, parseDay, readTypedDay, type AccountDocument, type ReadingRow } from '@unitbook/engine';
import { isEvent, type Household } from './household.ts';
import { without } from './without.ts';

/** The two meters of a household. */
export type Meter = 'grid' | 'generation';
export const METERS: readonly Meter[] = ['grid', 'generation'];

type Meters = AccountDocument['meters'];
/** A meter that took the place of another. */
export type LaterMeter =
  | NonNullable<Meters['grid']['later']>[number]
  | NonNullable<NonNullable<Meters['generation']>['later']>[number];

const FIELDS = { grid: ['import', 'export', 'rates'], generation: ['generation'] } as const;

/** The meters that a last or first reading is about: those it has numbers of, else those it has fields for. */
export function metersOf(row: ReadingRow): readonly Meter[] {
  const texts = (meter: Meter): readonly string[] =>
    meter === 'generation'
      ? [row.generation ?? '']
      : [
          row.import ?? '',
          row.export ?? '',
          ...Object.values(row.rates ?? {}).flatMap((one) => Object.values(one ?? {})),
        ];
  const typed = METERS.filter((meter) => texts(meter).some((text) => text.trim() !== ''));
  if (typed.length > 0) return typed;
  return METERS.filter((meter) => FIELDS[meter].some((field) => row[field] !== undefined));
}

/** A date as the account keeps it; one that cannot be read yet stays as typed, so that both still belong together. */
export function accountDay(text: string): string {
  const typed = readTypedDay(text);
  return typed === null ? text.trim() : dayText(typed.day);
}

/** The meters that took the place of the first, in order of time. */
export function laterOf({ account }: Household, meter: Meter): readonly LaterMeter[] {
  return account.meters[meter]?.later ?? [];
}

/** The household with other later meters; none are left out. */
export function withLater(household: Household, meter: Meter, later: readonly LaterMeter[]): Household {
  const { account } = household;
  const own = without<{ later?: unknown }, 'later'>(account.meters[meter] ?? {}, 'later');
  const changed = later.length === 0 ? own : { ...own, later };
  const meters = { ...account.meters, [meter]: changed };
  return { ...household, account: { ...account, meters } };
}

/** In order of time; one without a day stays behind the one it follows. */
export function inOrder(later: readonly LaterMeter[]): readonly LaterMeter[] {
  let last = -Infinity;
  const dated = later.map((one) => {
    last = parseDay(one.from) ?? last;
    return { one, day: last };
  });
  dated.sort((a, b) => (a.day === b.day ? 0 : a.day - b.day));
  return dated.map(({ one }) => one);
}

/** The place among the later meters of the one in force before a row; −1: the first meter. */
export function inForceBefore(household: Household, meter: Meter, index: number): number {
  const before = household.readings.slice(0, index).findLast((row) => readTypedDay(row.date) !== null);
  const day = before === undefined ? null : (readTypedDay(before.date)?.day ?? null);
  if (day === null) return -1;
  return laterOf(household, meter).findLastIndex(({ from }) => (parseDay(from) ?? Infinity) <= day);
}

/** The later meter that a first reading is of, by its day; null where the account names none. */
export function laterAt(household: Household, meter: Meter, index: number): number | null {
  const { readings } = household;
  const isFirst = (row: ReadingRow | undefined): boolean =>
    row?.event === 'first' && metersOf(row).includes(meter);
  if (!isFirst(readings[index])) return null;
  const from = accountDay(readings[index]?.date ?? '');
  const earlier = readings.slice(0, index).filter((row) => isFirst(row) && accountDay(row.date) === from);
  const places = laterOf(household, meter).flatMap((one, place) => (one.from === from ? [place] : []));
  return places[earlier.length] ?? null;
}

/** Whether some first reading is of a later meter. */
export function hasReadings(household: Household, meter: Meter, place: number): boolean {
  return household.readings.some((row, index) => isEvent(row) && laterAt(household, meter, index) === place);
}
