import { existsSync, readFileSync } from 'node:fs';
import {
  checkAccountBills,
  readAccount,
  readPrintedBill,
  readTariff,
  type Account,
  type CheckedBill,
  type DayNumber,
  type PrintedBill,
  type PrintedBillDocument,
  type ReadingRow,
  type Tariff,
} from '@unitbook/engine';
import { readingDays, readingsOf, type Home, type Reading } from './homes.ts';
import { HABITS, printBill } from './paper.ts';

/** Example tariffs that homes are billed by, and the month from which on. */
const TARIFFS: readonly (readonly [path: string, from: string])[] = [
  ['tarumira/taresco-domestic', '2024-05'],
  ['tarumira/taresco-shop', '2024-05'],
  ['tarumira/taresco-fixed-by-slab', '2024-05'],
  ['tarumira/taresco-anniversary', '2024-05'],
  ['tarumira/taresco-yearly-cap', '2024-05'],
  ['tarumira/taresco-cash-out-floor', '2024-05'],
  ['tarumira/taresco-tax-inside', '2024-05'],
  ['tarumira/taresco-surplus-lower-price', '2024-05'],
  ['tarumira/taresco-two-ledgers', '2024-05'],
  ['tarumira/taresco-slabs-per-day', '2024-05'],
  ['tarumira/taresco-netting-free', '2024-05'],
  ['tarumira/taresco-tax-after-credit', '2024-05'],
];

/** A home billed by a tariff. */
export interface BenchAccount {
  readonly name: string;
  readonly account: Account;
  readonly tariff: Tariff;
  readonly others: readonly Tariff[];
  readonly readings: readonly ReadingRow[];
  readonly days: readonly string[];
}

/** How the meters of the homes are read, one after the other. */
interface Meters extends Reading {
  /** Months between two readings. */
  readonly every: number;
  readonly digits: '5' | '6';
}

const PLAIN: Meters = {
  begin: 41_206,
  fullScale: 10_000_000,
  factor: 1,
  changed: null,
  every: 1,
  digits: '6',
};
const METERS: readonly Meters[] = [
  PLAIN,
  PLAIN,
  { ...PLAIN, begin: 990_000, fullScale: 1_000_000, digits: '5' },
  { ...PLAIN, changed: 3 },
  { ...PLAIN, every: 2 },
];

/** The day on which the grid meter is changed. */
const changedOn = (days: readonly string[], { changed }: Meters): string | null =>
  changed === null ? null : `${(days[changed - 1] ?? '').slice(0, 8)}10`;

function accountOf(id: string, meters: Meters, days: readonly string[]): Account {
  const register = { digits: meters.digits, decimals: '1' };
  const grid = { multiplyingFactor: String(meters.factor), import: register, export: register };
  const from = changedOn(days, meters);
  const later = from === null ? {} : { later: [{ from, serial: 'PB-2', ...grid }] };
  const { value, findings } = readAccount(
    JSON.stringify({
      format: 'unitbook-account-1',
      id,
      sanctionedLoad: '4',
      plantCapacity: '5',
      openingCredit: '0',
      since: '2021-04-01',
      settlementDay: '09-30',
      meters: {
        grid: { serial: 'PB-1', ...grid, ...later },
        generation: { serial: 'GN-1', multiplyingFactor: '1', generation: register },
      },
    }),
  );
  if (value === null) throw new Error(`the account of the bench cannot be read: ${findings[0]?.found ?? ''}`);
  return value;
}

function tariffAt(path: string): Tariff {
  const file = `tariffs-examples/${path}/tariff.json`;
  const { value } = existsSync(file) ? readTariff(readFileSync(file, 'utf8')) : { value: null };
  if (value === null) throw new Error(`${file} is no tariff`);
  return value;
}

/** The most months of a home that are billed one after the other. */
const MOST_MONTHS = 14;

/** Every home under every tariff; those whose readings or rules do not fit each other are left out, and named. */
export function benchAccounts(homes: readonly Home[]): {
  readonly accounts: readonly BenchAccount[];
  readonly leftOut: readonly string[];
} {
  const shop = tariffAt('tarumira/taresco-shop');
  const leftOut: string[] = [];
  const accounts = TARIFFS.flatMap(([path, from]) => {
    const tariff = tariffAt(path);
    return homes.flatMap((home, at): BenchAccount[] => {
      const plain = METERS[at % METERS.length] ?? PLAIN;
      const meters = tariff.document.id === shop.document.id ? { ...plain, factor: 20 } : plain;
      const months = home.months.slice(0, MOST_MONTHS);
      const days = readingDays(from, months.length + 1, meters.every);
      const name = `${home.name}, ${path}`;
      const readings = readingsOf(months, days, meters);
      const one = {
        name,
        account: accountOf(name, meters, days),
        tariff,
        others: tariff.document.id === shop.document.id ? [] : [shop],
        readings,
        days,
      };
      const bills = rightBills(one);
      if (bills.every(({ right }) => right !== null)) return [one];
      leftOut.push(name);
      return [];
    });
  });
  return { accounts, leftOut };
}

/** Understand printed bills; a fault of the bench throws. */
export function readBills(documents: readonly PrintedBillDocument[]): readonly PrintedBill[] {
  return documents.map((document, at) => {
    const { value, findings } = readPrintedBill(document, ['bills', at]);
    if (value === null) throw new Error(`bill ${String(at)}: ${findings[0]?.found ?? ''}`);
    return value;
  });
}

/** Check bills of an account. */
export function checkBills(
  { account, tariff, others, readings }: BenchAccount,
  documents: readonly PrintedBillDocument[],
  connected: DayNumber | null = null,
): readonly CheckedBill[] {
  const bills = readBills(documents);
  return checkAccountBills({ account, tariff, otherTariffs: others, readings, bills, connected }).bills;
}

/** The right bills of an account, of which nothing is printed but their days. */
export function rightBills(one: BenchAccount): readonly CheckedBill[] {
  const documents = one.days.slice(1).map((to, at) => ({ from: one.days[at] ?? '', to }));
  return checkBills(one, documents);
}

/** Right bills as they are printed. */
export function printedRight(
  bills: readonly CheckedBill[],
  habit = HABITS[0],
): readonly PrintedBillDocument[] {
  return bills.flatMap(({ facts, right }) =>
    right === null || habit === undefined ? [] : [printBill(facts, right.figures, habit)],
  );
}
