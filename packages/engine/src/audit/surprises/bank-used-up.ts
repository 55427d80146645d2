import { FIGURE } from '../figure-names.ts';
import { figuresAt, isPositive, numberPart, said, told, type FindSurprise } from './surprise.ts';

const BILLED = FIGURE.units('billed');
const NAMES = { opening: FIGURE.opening('credit'), closing: FIGURE.closing('credit'), billed: BILLED };

/** S6: after bills with nothing to pay for, the credit of the season is used up and units are billed again. */
export const bankUsedUp: FindSurprise = ({ right, before, month }) => {
  const units = figuresAt(right, NAMES);
  const billedBefore = before?.figures.get(BILLED);
  if (units === null || billedBefore === undefined || month.passbook?.isClosed === true) return null;
  const isTurn = !isPositive(billedBefore) && isPositive(units.billed);
  if (!isTurn || !isPositive(units.opening) || isPositive(units.closing)) return null;
  return {
    id: 'bank-used-up',
    ...told(
      said`the ${numberPart(units.opening)} units brought forward are used up: ${numberPart(units.billed)} are billed after a month with none`,
    ),
    figures: units,
    clause: month.passbook?.setOff.clause ?? null,
  };
};
