import { isDecimalText, type Period } from '../quantity/index.ts';
import { priceAt, type TariffDocument } from '../tariff/index.ts';
import { SettlementProblem } from './settlement-problem.ts';

/**
 * The rate at which a settlement pays: a number, or what a price comes to in the period, with its clause
 * (empty for a number).
 *
 * @throws SettlementProblem where the price is not in force
 */
export function paidRate(document: TariffDocument, rate: string, period: Period) {
  if (isDecimalText(rate)) return { text: rate, clause: '' };
  const price = priceAt(document, rate, period);
  if ('problem' in price) throw new SettlementProblem('settlement/no-price', { problem: price.problem });
  return price;
}
