import { isSameQuotient } from '../../quantity/index.ts';
import { quotientOf } from '../printed.ts';
import { withUnits } from '../facts.ts';
import { isPositive, moneyPart, numberPart, said, told, type FindSurprise } from './surprise.ts';

/**
 * S11: a plant larger than the home's use: further units only earn the rate of surplus. Told at the settlement, where
 * one unit more would not have changed what is billed.
 */
export const surplusUnits: FindSurprise = ({ facts, right, month: { passbook }, run }) => {
  const payment = passbook?.payment ?? null;
  if (passbook === null || payment === null || payment.rate === null || !isPositive(passbook.paid))
    return null;
  if (payment.inBill !== 'next') return null;
  const exported = facts.units['export'];
  if (exported === undefined) return null;
  const sum = right.get('sum');
  const withMore = run(withUnits(facts, { export: exported + 1000 }))?.get('sum');
  if (sum === undefined || withMore === undefined || !isSameQuotient(sum, withMore)) return null;
  const rate = quotientOf(payment.rate);
  const earned = moneyPart(rate, facts.tariff.currency, payment.rate);
  return {
    id: 'surplus-units',
    ...told(
      said`${numberPart(passbook.paid)} units of the year found no use at home: each further unit earns ${earned} and takes nothing off the bill`,
    ),
    figures: { left: passbook.paid, rate },
    clause: payment.clause,
  };
};
