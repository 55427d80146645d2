import { projectionText, type Payback, type SizePoint } from '@unitbook/engine';
import type { QuoteWriter } from './quote-writer.ts';

/** Stands behind a payback after which the price is owed again. */
const MARK = '*';

/** Years as a column has them: to a hundredth, so that cases close to each other are told apart. */
const short = (value: number | null, { number }: QuoteWriter): string =>
  value === null ? 'never' : number(projectionText(value, 2));

type Crossings = Pick<Payback, 'first' | 'last'>;

/** The mark of a payback after which the price is owed again; '' for one that is the last word. */
export const markOf = ({ first, last }: Crossings): string => (first === null || first === last ? '' : MARK);

/** When a price has first come back, marked where it is owed again after that. */
export const crossed = (payback: Crossings, writer: QuoteWriter): string =>
  `${short(payback.first, writer)}${markOf(payback)}`;

/** The same of a plant of some size. */
export const crossedAt = ({ payback, paybackForGood }: SizePoint, writer: QuoteWriter): string =>
  crossed({ first: payback, last: paybackForGood }, writer);

/** What the mark means, where a table has one; '' otherwise. */
export function markMeans(body: readonly (readonly string[])[]): string {
  const isThere = body.some((cells) => cells.some((cell) => cell.endsWith(MARK)));
  return isThere
    ? ` "${MARK}": the first time; the price is owed again after that, once something is replaced.`
    : '';
}
