import { addDays, type Figure } from '../../quantity/index.ts';
import { quotientOf } from '../printed.ts';
import {
  dayPart,
  isPositive,
  moneyPart,
  numberPart,
  said,
  told,
  type FindSurprise,
  type SurprisePart,
  type SurpriseTerms,
} from './surprise.ts';

interface Reset {
  readonly paid: Figure;
  readonly lapsed: Figure;
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

/** What a ledger holds is units, or money. */
const held = (figure: Figure): SurprisePart =>
  figure.unit === 'money' ? moneyPart(figure) : numberPart(figure);

function partsOf({ paid, lapsed, rate, inBill }: Reset): readonly SurprisePart[] {
  const bill = inBill === 'same' ? 'this bill' : 'the next bill';
  const at = rate === null ? '' : said` at ${moneyPart(quotientOf(rate), '', rate)}`;
  return [
    ...(isPositive(paid) ? said`${held(paid)} are paid in ${bill}${at}` : []),
    ...(isPositive(paid) && isPositive(lapsed) ? [', '] : []),
    ...(isPositive(lapsed) ? said`${held(lapsed)} lapse` : []),
  ];
}

/** S7: a settlement closes the bank by its clause. */
export const settlementReset: FindSurprise = (terms) => {
  const reset = resetOf(terms);
  if (reset === null) return null;
  const last = dayPart(addDays(terms.facts.period.to, -1));
  return {
    id: 'settlement-reset',
    ...told(said`the settlement in the period to ${last} brings the bank to 0: ${partsOf(reset)}`),
    figures: { paid: reset.paid, lapsed: reset.lapsed },
    clause: reset.clause,
  };
};
