import { readNumberText, readTypedDay, type DayNumber, type ReadingRow } from '@unitbook/engine';
import { isEvent, type Household } from '../household/household.ts';
import { plainDecimal } from './exact.ts';

/** A reading that can be taken over. */
export interface Offer {
  readonly day: DayNumber;
  readonly row: ReadingRow;
}

/** A register of which the book and the file say different things. */
interface Difference {
  /** The key of the register: "import", or "import-1" for rate 1. */
  readonly key: string;
  readonly typed: string;
  readonly offered: string;
}

/** How a reading goes with the book as it is. */
export interface OfferFit {
  readonly offer: Offer;
  /** Not there yet; there with the same numbers; there with some of them blank; or there with others. */
  readonly fit: 'new' | 'same' | 'fills' | 'differs';
  /** The place of the reading of that day in the book; null where there is none. */
  readonly at: number | null;
  /** The keys of registers that are blank in the book. */
  readonly blank: readonly string[];
  readonly differences: readonly Difference[];
}

/** The texts of a reading by the keys of its registers, blank ones left out. */
export function registerTexts(row: ReadingRow): ReadonlyMap<string, string> {
  const totals = (['import', 'export', 'generation'] as const).map((id) => [id, row[id] ?? ''] as const);
  const rates = (['import', 'export'] as const).flatMap((id) =>
    Object.entries(row.rates?.[id] ?? {}).map(([rate, text]) => [`${id}-${rate}`, text] as const),
  );
  return new Map([...totals, ...rates].filter(([, text]) => text.trim() !== ''));
}

/** The numbers that a text can be: of a comma that may mark decimals or thousands, both; else the text itself. */
function numbersIn(text: string): readonly string[] {
  const read = readNumberText(text);
  if (read.kind === 'number') return [plainDecimal(read.text)];
  return read.kind === 'comma-unclear' ? [read.grouped, read.decimal].map(plainDecimal) : [text.trim()];
}

/** Whether two texts can be the same number. */
function isSame(typed: string, offered: string): boolean {
  const numbers = numbersIn(offered);
  return numbersIn(typed).some((number) => numbers.includes(number));
}

/** The places of usual readings by their day. */
function placesByDay({ readings }: Household): ReadonlyMap<number, number> {
  return new Map(
    readings.flatMap((row, at) => {
      const day = isEvent(row) ? null : (readTypedDay(row.date)?.day ?? null);
      return day === null ? [] : [[day, at] as const];
    }),
  );
}

function fitOf(offer: Offer, at: number, row: ReadingRow): OfferFit {
  const typed = registerTexts(row);
  const offered = [...registerTexts(offer.row)];
  const blank = offered.filter(([key]) => !typed.has(key)).map(([key]) => key);
  const differences = offered.flatMap(([key, text]): Difference[] => {
    const own = typed.get(key);
    return own === undefined || isSame(own, text) ? [] : [{ key, typed: own, offered: text }];
  });
  const fit = differences.length > 0 ? 'differs' : blank.length > 0 ? 'fills' : 'same';
  return { offer, fit, at, blank, differences };
}

/**
 * How readings of a file go with those that a book has. The last reading of a meter and the first of the
 * next are no readings of a month, and are not compared.
 *
 * @param offers  numbers as they are in the file
 */
export function fitOffers(offers: readonly Offer[], household: Household): readonly OfferFit[] {
  const places = placesByDay(household);
  return offers.map((offer) => {
    const at = places.get(offer.day);
    const row = at === undefined ? undefined : household.readings[at];
    return at === undefined || row === undefined
      ? { offer, fit: 'new', at: null, blank: [], differences: [] }
      : fitOf(offer, at, row);
  });
}
