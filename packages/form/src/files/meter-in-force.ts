import { parseDay, type AccountDocument, type DayNumber, type IntervalChannel } from '@unitbook/engine';
import type { Offer } from './fit-book.ts';

/** A register of an account, and the way to it. */
interface OwnRegister {
  readonly path: readonly string[];
  readonly register: {
    readonly digits: string;
    readonly decimals: string;
    readonly rates?: readonly { readonly id: string }[] | undefined;
  };
}

/** The register that counts on a day, of the meter that is in force then; null where the account has none. */
function registerOn({ meters }: AccountDocument, id: IntervalChannel, day: DayNumber): OwnRegister | null {
  const isMade = id === 'generation';
  const first = isMade ? meters.generation?.generation : meters.grid[id];
  if (first === undefined) return null;
  const path = ['meters', isMade ? 'generation' : 'grid'];
  const later = isMade
    ? (meters.generation?.later ?? []).map((meter) => ({ from: meter.from, register: meter.generation }))
    : (meters.grid.later ?? []).map((meter) => ({ from: meter.from, register: meter[id] }));
  const at = later.findLastIndex(({ from }) => (parseDay(from) ?? Infinity) <= day);
  const own = later[at];
  return own === undefined
    ? { path: [...path, id], register: first }
    : { path: [...path, 'later', String(at), id], register: own.register };
}

/** The register that some readings are of, and whether a meter was changed between them. */
export interface RegisterOfOffers {
  /** That of the last of them; null where the account has none. */
  readonly own: OwnRegister | null;
  readonly isChanged: boolean;
}

const bare = (serial: string): string => serial.replace(/[^\p{L}\p{N}]+/gu, '').toUpperCase();

/**
 * The meters of a file, where an account names others: somebody else's file, or a meter that was changed.
 *
 * @param meters  serial numbers as the file has them; '' for none
 * @returns       empty where either says nothing, or one is the other
 */
export function otherMeters(meters: readonly string[], { meters: own }: AccountDocument): readonly string[] {
  const { grid, generation } = own;
  const all = [grid, ...(grid.later ?? []), ...(generation ? [generation, ...(generation.later ?? [])] : [])];
  const known = all.map(({ serial }) => bare(serial)).filter((serial) => serial !== '');
  const filed = [...new Set(meters.filter((meter) => bare(meter) !== ''))];
  const isKnown = filed.some((meter) =>
    known.some((one) => bare(meter).includes(one) || one.includes(bare(meter))),
  );
  return known.length === 0 || isKnown ? [] : filed;
}

/** The register of an account that readings are of. */
export function registerOf(
  offers: readonly Offer[],
  account: AccountDocument,
  id: IntervalChannel,
): RegisterOfOffers {
  const days = offers.map(({ day }) => day).sort((a, b) => a - b);
  const last = days.at(-1) ?? (0 as DayNumber);
  const own = registerOn(account, id, last);
  const before = registerOn(account, id, days[0] ?? last);
  return { own, isChanged: own?.path.join() !== before?.path.join() };
}
