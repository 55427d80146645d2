import { type CheckedBill, type PrintedBillDocument } from '@unitbook/engine';
import fc from 'fast-check';
import { readingsOf, type HomeMonth } from '../../bench/causes/homes.ts';
import { HABITS, printBill, type Habit } from '../../bench/causes/paper.ts';
import { checkPapers, dayIn, homeAccount, type Example, type Papers } from './examples.ts';

/** From where the units of a bill are known: as it prints them, from own readings, from readings that it prints. */
type Source = 'units' | 'own readings' | 'printed readings';

/** Papers of one account, drawn at random, before anything but units is printed on them. */
export interface Draw {
  readonly papers: Papers;
  readonly habit: Habit;
  readonly source: Source;
}

/** The most periods that are billed one after the other. */
const MOST_PERIODS = 30;

const tenths: fc.Arbitrary<number> = fc.oneof(fc.constant(0), fc.nat(600), fc.nat(6000), fc.nat(30_000));

/** Months of a home that gives no more than it makes, with a share of each time block. */
const months: fc.Arbitrary<readonly (HomeMonth & { readonly shares: readonly number[] })[]> = fc.array(
  fc
    .record({
      taken: tenths,
      given: tenths,
      used: tenths,
      shares: fc.array(fc.nat(9), { minLength: 12, maxLength: 12 }),
    })
    .map(({ taken, given, used, shares }) => ({
      import: taken,
      export: given,
      generation: given + used,
      shares,
    })),
  { minLength: MOST_PERIODS, maxLength: MOST_PERIODS },
);

const text = (value: number): string => (value / 10).toFixed(1);

/** A number of tenths shared among blocks; what is left over is of the last one. */
function shared(total: number, blocks: readonly string[], shares: readonly number[]): readonly number[] {
  const weights = blocks.map((_, at) => (shares[at] ?? 0) + 1);
  const sum = weights.reduce((before, weight) => before + weight, 0);
  const parts = weights.map((weight) => Math.floor((total * weight) / sum));
  const rest = total - parts.reduce((before, part) => before + part, 0);
  return parts.map((part, at) => (at === parts.length - 1 ? part + rest : part));
}

type Month = HomeMonth & { readonly shares: readonly number[] };

function unitsOf({ shares, ...month }: Month, blocks: readonly string[]): Record<string, string> {
  const units: Record<string, string> = {
    import: text(month.import),
    export: text(month.export),
    generation: text(month.generation),
  };
  for (const channel of ['import', 'export'] as const) {
    const own = channel === 'import' ? shares : [...shares].reverse();
    shared(month[channel], blocks, own).forEach((part, at) => {
      units[`${channel}@${blocks[at] ?? ''}`] = text(part);
    });
  }
  return units;
}

interface Row {
  readonly start: number;
  /** Months of a period. */
  readonly every: number;
  /** The day of the month on which meters are read. */
  readonly date: number;
  readonly periods: number;
}

/** The day of the reading before and of the reading now of each period. */
function daysOf(
  { months: { from, count } }: Example,
  { start, every, date, periods: wanted }: Row,
): readonly string[] {
  // A period that ends within a month needs the whole of it.
  const most = Math.floor((count - (date > 1 ? 1 : 0)) / every);
  const periods = Math.max(1, Math.min(wanted, most));
  const first = start % Math.max(1, count - periods * every - (date > 1 ? 1 : 0) + 1);
  return Array.from({ length: periods + 1 }, (_, at) => dayIn(from + first + at * every, date));
}

const METERS = { begin: 41_206, fullScale: 10_000_000, factor: 1, changed: null };

/** Papers of an account under an example tariff: several years where the tariff has as many. */
export function randomPapers(example: Example, most = MOST_PERIODS): fc.Arbitrary<Draw> {
  const isNetting = example.tariff.document.settlements.every(({ scheme }) => scheme === 'unit-netting');
  const isShort = example.months.count < 6;
  // A meter of the law has one register for all hours: time blocks are known from printed units only.
  const sources: readonly Source[] =
    example.blocks.length > 0 ? ['units'] : ['units', 'own readings', 'printed readings'];
  return fc
    .record({
      months,
      start: fc.nat(),
      every: isShort ? fc.constant(1) : fc.constantFrom(1, 1, 1, 2),
      date: isShort ? fc.constant(1) : fc.constantFrom(1, 1, 15),
      settlementDay: fc.constantFrom('09-30', '05-14', '12-31'),
      // Only the bank of unit netting takes credit that an account brings along.
      openingCredit: isNetting ? fc.constantFrom('0', '35', '1240') : fc.constant('0'),
      habit: fc.constantFrom(...HABITS),
      source: fc.constantFrom(...sources),
    })
    .map(({ months: home, habit, source, settlementDay, openingCredit, ...when }) => {
      const days = daysOf(example, { ...when, periods: most });
      const account = homeAccount({ since: days[0] ?? '', settlementDay, openingCredit });
      const rows = readingsOf(home, days, METERS);
      const documents = days.slice(1).map((to, at): PrintedBillDocument => {
        const units = unitsOf(home[at] as Month, example.blocks);
        return { from: days[at] ?? '', to, ...(source === 'own readings' ? {} : { units }) };
      });
      const readings = source === 'own readings' ? rows : [];
      const plain = { account, tariff: example.tariff, readings, documents };
      return { papers: source === 'printed readings' ? withReadings(plain, rows) : plain, habit, source };
    });
}

/** Bills that print their readings in place of units. */
function withReadings(papers: Papers, rows: Papers['readings']): Papers {
  const documents = papers.documents.map(({ from, to }, at) => {
    const [before, now] = [rows[at], rows[at + 1]];
    const readings = Object.fromEntries(
      (['import', 'export', 'generation'] as const).map((id) => [
        id,
        { previous: before?.[id] ?? '', present: now?.[id] ?? '' },
      ]),
    );
    return { from, to, readings };
  });
  return { ...papers, documents };
}

/** What ends a row of bills because the tariff itself says no more: prices that run out, a bank that is given up. */
const TARIFF_ENDS = [
  'bill/no-price',
  'settlement/no-price',
  'settlement/no-rule-in-force',
  'settlement/two-rules',
  'settlement/balance-has-no-ledger',
];

/**
 * Right bills of papers that print no money, up to where the tariff ends; one that cannot be made for another reason
 * is a fault, and throws.
 */
export function rightBills({ papers }: Draw): readonly CheckedBill[] {
  const bills = checkPapers(papers, { causes: [] });
  const end = bills.findIndex(({ right }) => right === null);
  if (end < 0) return bills;
  const told = (bills[end]?.findings ?? []).map(({ code, found }) => ({ code, found }));
  if (!told.some(({ code }) => TARIFF_ENDS.includes(code))) throw new Error(JSON.stringify(told));
  return bills.slice(0, end);
}

/** How the bills of a draw are printed: readings that bills are made of cannot be cut. */
function habitOf({ habit, source }: Draw): Habit {
  return source === 'printed readings' ? { ...habit, readings: 1 } : habit;
}

/** The papers of a draw as the utility prints them: every right figure. */
export function printed(draw: Draw, bills: readonly CheckedBill[]): Papers {
  const documents = bills.map(({ facts, right, printed: { document } }) => {
    const paper = printBill(facts, right?.figures ?? new Map(), habitOf(draw));
    // A utility that bills by time blocks prints their units, too.
    return { ...paper, units: { ...document.units, ...paper.units } };
  });
  return { ...draw.papers, documents };
}
