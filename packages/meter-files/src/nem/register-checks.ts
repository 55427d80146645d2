import { wholeToDecimal } from '@unitbook/engine';
import { momentText, type Moment } from './moment.ts';
import { cellOf, placeOf, shown, type NemRecord, type Report } from './record.ts';
import { CELL, type RegisterRead } from './register-read.ts';
import { advance, compareNumbers, isAdvance, readFileNumber } from './register-text.ts';

/** Below, at or above 0 by time; where one of them is a day alone, by day. */
function compareMoments(one: Moment, other: Moment): -1 | 0 | 1 {
  const length = one.minute === null || other.minute === null ? 8 : 14;
  const [first, second] = [one.order.slice(0, length), other.order.slice(0, length)];
  return first === second ? 0 : first < second ? -1 : 1;
}

/** The two reads of a record: the previous and the current. */
export type Reads = readonly [previous: RegisterRead, current: RegisterRead];

/** Whether the current read is not before the previous; says so where it is. */
export function areInOrder(record: NemRecord, [previous, current]: Reads, report: Report): boolean {
  if (compareMoments(current.moment, previous.moment) >= 0) return true;
  report('nem/reads-out-of-order', placeOf(record, CELL.current + 1), {
    previous: momentText(previous.moment),
    current: momentText(current.moment),
  });
  return false;
}

/** Compare what is printed beside the two reads with what lies between them. */
export function checkQuantity(record: NemRecord, [previous, current]: Reads, report: Report): void {
  const between = advance(previous.number, current.number);
  const values = {
    previous: previous.number.text,
    current: current.number.text,
    difference: wholeToDecimal(between.whole, between.places),
    ...(between.full === null ? {} : { full: between.full }),
  };
  const text = cellOf(record, CELL.quantity);
  const place = placeOf(record, CELL.quantity);
  const reads = placeOf(record, CELL.current);
  const quantity = readFileNumber(text);
  if (text === '' && between.full !== null) report('nem/current-below-previous', reads, values);
  if (text === '') return;
  if (quantity === 'no-number') report('nem/quantity', place, { quantity: shown(text) });
  else if (quantity === 'too-many')
    report('nem/too-many-digits', place, { what: `"${shown(text)}" as the quantity` });
  else if (!isAdvance(quantity, between))
    report('nem/quantity-differs', place, { ...values, quantity: text });
  else if (between.full !== null) report('nem/rolled-over', reads, values);
}

/** Ask about a read of a time when the file was made already. */
export function checkTime(
  record: NemRecord,
  { moment, quality }: RegisterRead,
  made: Moment | null,
  report: Report,
): void {
  if (made === null || compareMoments(moment, made) <= 0) return;
  const code = quality === 'estimated' ? 'nem/forward-estimate' : 'nem/read-after-file';
  const values = { time: momentText(moment), made: momentText(made) };
  report(code, placeOf(record, CELL.current + 1), values);
}

const readText = ({ number, moment }: RegisterRead): string => `${number.text} on ${momentText(moment)}`;

/** Ask about a previous read that is not the current read of the record before, of the same register. */
export function checkChain(
  record: NemRecord,
  previous: RegisterRead,
  last: RegisterRead | null,
  report: Report,
): void {
  if (last === null) return;
  const moments = compareMoments(previous.moment, last.moment);
  const order = moments === 0 ? compareNumbers(previous.number, last.number) : moments;
  if (order === 0) return;
  const code = order > 0 ? 'nem/register-gap' : 'nem/register-overlap';
  report(code, placeOf(record, CELL.previous), { found: readText(previous), expected: readText(last) });
}
