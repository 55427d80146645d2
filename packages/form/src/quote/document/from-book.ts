import { calendarDay, exactText, MONTH_KEYS, type Book, type QuoteDocument } from '@unitbook/engine';

/**
 * The use of the last twelve billing periods of a household's book, by the calendar month that most days of
 * each are in.
 *
 * @returns  null where the book knows of no use
 */
export function useFromBook(book: Book | null): QuoteDocument['use'] | null {
  const known = (book?.months ?? []).flatMap(({ energy: { period, totalUse } }) => {
    if (totalUse === null) return [];
    const { month } = calendarDay(Math.floor((period.from + period.to - 1) / 2) as typeof period.from);
    const text = exactText(totalUse.numerator, totalUse.denominator);
    return text.includes('/') ? [] : [[MONTH_KEYS[month - 1] ?? '', text] as const];
  });
  if (known.length === 0) return null;
  const months = Object.fromEntries(known.slice(-12));
  const isWhole = Object.keys(months).length === 12;
  return {
    months,
    ...(isWhole ? {} : { fill: 'neighbours' as const }),
    source: `The household’s own readings, ${String(Object.keys(months).length)} months`,
  };
}
