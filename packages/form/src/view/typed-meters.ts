import { checkAccount, parseDay, type AccountDocument, type MeterSpan } from '@unitbook/engine';
import {
  accountDay,
  laterOf,
  METERS,
  metersOf,
  withLater,
  type LaterMeter,
  type Meter,
} from '../household/later-meters.ts';
import type { Household } from '../household/household.ts';

/** An account in which later meters whose day is still being typed are left out, and which are left. */
export interface DatedAccount {
  readonly document: AccountDocument;
  /** The places of the later meters that are left. */
  readonly places: Readonly<Record<Meter, readonly number[]>>;
}

/** Whether the day of a later meter is told wrong where it is typed, beside the readings of the change. */
function isDatedByRow({ readings }: Household, { from }: LaterMeter, meter: Meter): boolean {
  return readings.some(
    (row) => row.event === 'first' && metersOf(row).includes(meter) && accountDay(row.date) === from,
  );
}

/**
 * Leave out the later meters whose day cannot be read yet and is typed beside the readings of a change:
 * what is wrong with it is said there, and the rest of the account can be used.
 */
export function datedAccount(household: Household): DatedAccount {
  let dated = household;
  const places: Record<Meter, number[]> = { grid: [], generation: [] };
  for (const meter of METERS) {
    const later = laterOf(household, meter);
    places[meter] = later.flatMap((one, at) =>
      parseDay(one.from) === null && isDatedByRow(household, one, meter) ? [] : [at],
    );
    if (places[meter].length === later.length) continue;
    dated = withLater(
      dated,
      meter,
      places[meter].flatMap((at) => later[at] ?? []),
    );
  }
  return { document: dated.account, places };
}

/** Numbers that say nothing, for the meters to be read before the rest of the account is typed. */
const NEUTRAL = { sanctionedLoad: '1', plantCapacity: '1', openingCredit: '0' } as const;
const FACTOR = { multiplyingFactor: '1' } as const;

type Meters = AccountDocument['meters'];

/** Meters without their factors, as far as asked for. */
function plainMeters({ grid, generation }: Meters, isWhole: boolean): Meters {
  const plain = <One extends object>(one: One): One => ({ ...one, ...FACTOR });
  const later = <One extends object>(list: readonly One[] | undefined) =>
    isWhole && list !== undefined ? { later: list.map(plain) } : {};
  const { later: gridLater, ...ownGrid } = grid;
  const bare = { ...ownGrid, import: digitsOf(grid.import), export: digitsOf(grid.export) };
  const { later: generationLater, ...ownGeneration } = generation ?? {};
  return {
    grid: { ...plain(isWhole ? ownGrid : bare), ...later(gridLater) },
    ...(generation === undefined
      ? {}
      : { generation: { ...plain(ownGeneration), ...later(generationLater) } as Meters['generation'] }),
  };
}

const digitsOf = ({ digits, decimals }: Meters['grid']['import']): Meters['grid']['import'] => ({
  digits,
  decimals,
});

/**
 * The meters as they followed each other, whether or not the rest of the account can be used. Where what is
 * said of later meters or rates cannot be, the first meters alone.
 */
export function typedSpans({ format, id, meters }: AccountDocument): readonly MeterSpan[] {
  const spans = (isWhole: boolean): readonly MeterSpan[] | undefined =>
    checkAccount({ format, id, ...NEUTRAL, meters: plainMeters(meters, isWhole) }).value?.spans;
  return spans(true) ?? spans(false) ?? [];
}
