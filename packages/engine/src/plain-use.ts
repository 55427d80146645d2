import { addDays, dayText, shareOut, wholeToDecimal, type Period } from './quantity/index.ts';
import type { TariffDocument } from './tariff/index.ts';
import type { BlockClock, BlockDay } from './energy/index.ts';
import type { PreparedTariff } from './bill/index.ts';
import { clockOf } from './keep-intervals.ts';
import type { UnitsAccount, UnitsPeriod } from './periods-document.ts';

/** What a household without a plant uses in every month, and what else a tariff has to know of it. */
export interface PlainUse {
  /** Whole units a month. */
  readonly units: number;
  /** Powers and measures by the names of the tariff, as decimal text: sanctioned-load, maximum-demand … */
  readonly quantities: Readonly<Record<string, string>>;
}

/** A plain household under a tariff: its account, and its units in any period. */
export interface PlainHousehold {
  readonly account: UnitsAccount;
  /** Whole units over a period, spread evenly over its hours: in whole units, or to a thousandth. */
  readonly periodOf: (period: Period, units: number, spread?: 'whole' | 'thousandths') => UnitsPeriod;
  /** How many minutes of a period each time block has, in the order of the blocks; null without blocks. */
  readonly blockMinutes: (period: Period) => readonly number[] | null;
  /** Tells the time blocks; null without. */
  readonly clock: BlockClock | null;
}

/** Channels that only a plant makes. */
const NOTHING = ['export', 'generation'] as const;
const MINUTES = 60;

/** Adds up the minutes of blocks, each kind of day once. */
function minutesCounter(clock: BlockClock): (period: Period) => readonly number[] {
  const ofKinds = new Map<BlockDay, readonly number[]>();
  const ofDay = (day: BlockDay): readonly number[] => {
    const known = ofKinds.get(day);
    if (known !== undefined) return known;
    const counts = clock.blocks.map((_, index) =>
      day.minutes.reduce((sum, one) => sum + +(one === index), 0),
    );
    ofKinds.set(day, counts);
    return counts;
  };
  const ofPeriods = new Map<string, readonly number[]>();
  return ({ from, to }) => {
    const key = `${from} ${to}`;
    const before = ofPeriods.get(key);
    if (before !== undefined) return before;
    const counts = clock.blocks.map(() => 0);
    for (let day = from; day < to; day = addDays(day, 1)) {
      for (const [index, minutes] of ofDay(clock.day(day)).entries())
        counts[index] = (counts[index] ?? 0) + minutes;
    }
    ofPeriods.set(key, counts);
    return counts;
  };
}

/** Measures that a netting inside the period leaves: of a household that gives nothing, what is metered. */
function windowed({ measures = {} }: TariffDocument, units: string, own: Readonly<Record<string, string>>) {
  const names = Object.entries(measures).filter(([name]) => own[name] === undefined);
  return Object.fromEntries(
    names.flatMap(([name, { window }]) => {
      if (window === undefined) return [];
      return [[name, window.of === 'import' || window.of === 'total-use' ? units : '0'] as const];
    }),
  );
}

/**
 * A household without a plant: what it uses it takes from the grid, it makes nothing and gives nothing.
 * Under a tariff with time blocks its units are spread evenly over the hours, in whole units by largest
 * remainder.
 *
 * @param prepared    the tariff it is billed under
 * @param quantities  powers and measures by name, as decimal text
 */
export function plainHousehold(
  { tariff: { document } }: PreparedTariff,
  quantities: Readonly<Record<string, string>>,
): PlainHousehold {
  const clock = document.timeBlocks === undefined ? null : clockOf(document, MINUTES);
  const count = clock === null ? null : minutesCounter(clock);
  const inBlocks = (period: Period, units: number, places: number): Record<string, string> => {
    if (clock === null || count === null) return {};
    const shares = shareOut(units * 10 ** places, count(period));
    return Object.fromEntries(
      clock.blocks.flatMap(({ id }, index) => [
        [`import@${id}`, wholeToDecimal(shares[index] ?? 0, places)] as const,
        ...NOTHING.map((channel) => [`${channel}@${id}`, '0'] as const),
      ]),
    );
  };
  return {
    clock,
    account: { settlementDay: '01-01', quantities: { 'plant-capacity': '0', ...quantities } },
    blockMinutes: (period) => count?.(period) ?? null,
    periodOf: (period, units, spread = 'whole') => {
      const text = String(units);
      const blocks = inBlocks(period, units, spread === 'whole' ? 0 : 3);
      const channels = { import: text, export: '0', generation: '0', ...blocks };
      return {
        from: dayText(period.from),
        to: dayText(period.to),
        quantities: { ...channels, ...windowed(document, text, quantities) },
      };
    },
  };
}
