import { decimalPlaces, decimalToWhole, isDecimalText, type Finding, type Path } from '../quantity/index.ts';
import { tariffFinding } from './findings.ts';

/** The most decimals a rate, amount or percentage can have. */
const RATE_PLACES = 8;
/** The most decimals a limit in kWh or kW can have: whole watt-hours and watts. */
const LIMIT_PLACES = 3;

/** One row of a list with upper limits. */
export interface Limited {
  readonly upTo?: string | undefined;
}

/** Compare two checked decimals of at most three places. */
function above(limit: string, before: string): boolean {
  return decimalToWhole(limit, LIMIT_PLACES) > decimalToWhole(before, LIMIT_PLACES);
}

/** Digits before the point that a number of a tariff can have. */
const MOST_DIGITS = 9;
/** Digits before and after the point together: what a whole number of the last place can hold. */
const ALL_DIGITS = 15;

/** A number with more decimals or digits than its place takes. */
export function tooFine(text: string, most: number, path: Path): Finding[] {
  if (!isDecimalText(text)) return [];
  const [whole = ''] = text.replace('-', '').split('.');
  const places = decimalPlaces(text);
  if (whole.length > MOST_DIGITS || (places <= most && whole.length + places > ALL_DIGITS))
    return [tariffFinding('tariff/too-large', { path }, { value: text })];
  if (places <= most) return [];
  return [
    tariffFinding(
      'tariff/finer-than-grid',
      { path },
      { value: text, places: String(places), most: String(most) },
    ),
  ];
}

/** A rate, amount or percentage with too many decimals. */
export function rateTooFine(text: string | undefined, path: Path): Finding[] {
  return text === undefined ? [] : tooFine(text, RATE_PLACES, path);
}

/**
 * Check that limits ascend from above 0 and that only the last row has none.
 *
 * @param rows  in the document's order
 * @param path  of the list
 */
export function limitFindings(rows: readonly Limited[], path: Path): Finding[] {
  let before = '0';
  return rows.flatMap((row, index) => {
    const last = index === rows.length - 1;
    const at = [...path, index, 'upTo'];
    const limit = row.upTo;
    if (limit === undefined)
      return last ? [] : [tariffFinding('tariff/slab-limit-missing', { path: [...path, index] })];
    if (last) return [tariffFinding('tariff/last-slab-limited', { path: at }, { limit })];
    const fine = tooFine(limit, LIMIT_PLACES, at);
    if (fine.length > 0) return fine;
    if (!above(limit, before))
      return [tariffFinding('tariff/slabs-not-ascending', { path: at }, { limit, before })];
    before = limit;
    return [];
  });
}
