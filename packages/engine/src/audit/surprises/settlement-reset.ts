import { addDays, dayText, type Quotient } from '../../quantity/index.ts';
import { isPositive, textOf, type FindSurprise, type SurpriseTerms } from './surprise.ts';

interface Reset {
  readonly paid: Quotient;
  readonly lapsed: Quotient;
  readonly rate: string | null;
  readonly inBill: 'same' | 'next' | null;
  readonly clause: string;
}

/** What a settlement took out of the bank in this period. */
function resetOf({ month: { passbook, ledgers } }: SurpriseTerms): Reset | null {
  const entries = [...(passbook === null ? [] : [passbook]), ...ledgers];
  const entry = entries.find(
    ({ isClosed, paid, lapsed, closing }) =>
      isClosed && !isPositive(closing) && (isPositive(paid) || isPositive(lapsed)),
  );
  if (entry === undefined) return null;
  const { paid, lapsed, payment } = entry;
  const clause = payment?.clause ?? (isPositive(lapsed) ? lapsed.clause : paid.clause);
  return { paid, lapsed, rate: payment?.rate ?? null, inBill: payment?.inBill ?? null, clause };
}

function wordsOf({ paid, lapsed, rate, inBill }: Reset): string {
  const bill = inBill === 'same' ? 'this bill' : 'the next bill';
  return [
    ...(isPositive(paid) ? [`${textOf(paid)} are paid in ${bill}${rate === null ? '' : ` at ${rate}`}`] : []),
    ...(isPositive(lapsed) ? [`${textOf(lapsed)} lapse`] : []),
  ].join(', ');
}

/** S7: a settlement closes the bank by its clause. */
export const settlementReset: FindSurprise = (terms) => {
  const reset = resetOf(terms);
  if (reset === null) return null;
  const last = dayText(addDays(terms.facts.period.to, -1));
  return {
    id: 'settlement-reset',
    what: `the settlement in the period to ${last} brings the bank to 0: ${wordsOf(reset)}`,
    figures: { paid: reset.paid, lapsed: reset.lapsed },
    clause: reset.clause,
  };
};
