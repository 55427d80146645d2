import type { Bill, Book, BookMonth, Figure } from '@unitbook/engine';

/** Whether a figure was worked out with the bill before, where its way there is told. */
function isOfBillBefore(figure: Figure, month: BookMonth): boolean {
  return figure.id === 'opening' || (figure.id === 'paid' && month.passbook.payment?.inBill !== 'same');
}

/**
 * A figure with its derivation down to what the bill before handed on.
 *
 * The credit brought forward follows from the bill before, and so from all before that one: told in full
 * with each bill, the derivation would double with every month.
 *
 * @param figure  of a bill
 * @param month   of that bill
 * @param number  of that bill in the book, from 1
 */
export function cutFigure(figure: Figure, month: BookMonth, number: number): Figure {
  const { id, label, unit, numerator, denominator, operation, parameters, rounding, clause } = figure;
  const own = { id, label, unit, numerator, denominator };
  if (number > 1 && figure.inputs.length > 0 && isOfBillBefore(figure, month)) {
    const before = `bill ${String(number - 1)}`;
    return { ...own, operation: 'given', inputs: [], parameters: [], rounding: null, clause: before };
  }
  const inputs = figure.inputs.map((input) => cutFigure(input, month, number));
  return { ...own, operation, inputs, parameters, rounding, clause };
}

/** The lines stand beside the rounding of their sum; once is enough. */
function withoutInputs(figure: Figure | null, month: BookMonth, number: number): Figure | null {
  return figure === null ? null : { ...cutFigure(figure, month, number), inputs: [] };
}

function cutBill(bill: Bill, month: BookMonth, number: number): Bill {
  const lines = bill.lines.map((line) => ({ ...line, figure: cutFigure(line.figure, month, number) }));
  return { ...bill, lines, roundingDifference: withoutInputs(bill.roundingDifference, month, number) };
}

/** A book whose bills each tell their own derivations and no other's. */
export function cutBook(book: Book): Book {
  const months = book.months.map((month, index): BookMonth => {
    const number = index + 1;
    const { bill, withoutSolar } = month;
    return {
      ...month,
      bill: cutBill(bill, month, number),
      withoutSolar: withoutSolar === null ? null : cutBill(withoutSolar, month, number),
    };
  });
  return { ...book, months };
}
