import { addDays, calendarDay, monthParts, type BookMonth, type Finding } from '@unitbook/engine';
import { commandFinding } from '../findings.ts';

/** A bill and its number in the book, from 1. */
export interface NumberedBill {
  readonly month: BookMonth;
  readonly number: number;
}

function hasDayIn(month: BookMonth, wanted: string): boolean {
  return monthParts(month.energy.period).some(
    (part) => `${String(part.year)}-${String(part.month).padStart(2, '0')}` === wanted,
  );
}

function knownText(months: readonly BookMonth[]): string {
  const first = months[0]?.energy.period.from;
  const last = months.at(-1)?.energy.period.to;
  if (first === undefined || last === undefined) return '';
  const from = calendarDay(first);
  const to = calendarDay(addDays(last, -1));
  const text = ({ year, month }: { year: number; month: number }): string =>
    `${String(year)}-${String(month).padStart(2, '0')}`;
  return `1 to ${String(months.length)}, or a month from ${text(from)} to ${text(to)}`;
}

/**
 * Choose the bills to print.
 *
 * @param months  of the book
 * @param wanted  a number from 1, or a month as yyyy-mm: every bill with a day in it; left out: all
 */
export function chooseBills(
  months: readonly BookMonth[],
  wanted: string | undefined,
): { value: readonly NumberedBill[]; findings: readonly Finding[] } {
  const all = months.map((month, index) => ({ month, number: index + 1 }));
  if (wanted === undefined) return { value: all, findings: [] };
  const chosen = all.filter(({ month, number }) => String(number) === wanted || hasDayIn(month, wanted));
  // Without any bill, the messages about the readings say why.
  if (chosen.length > 0 || all.length === 0) return { value: chosen, findings: [] };
  const values = { value: wanted, known: knownText(months) };
  return { value: [], findings: [commandFinding('command/no-such-bill', { path: [] }, values)] };
}
