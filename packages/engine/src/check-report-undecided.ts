import { givenFigure, type Figure, type Quotient } from './quantity/index.ts';
import {
  FIGURE,
  figureLabel,
  figureUnit,
  billReference,
  type UndecidedBill,
  type UnreadFigure,
} from './audit/index.ts';
import type { CheckedBill } from './check-bill.ts';

const money = (id: string, label: string, { numerator, denominator }: Quotient): Figure =>
  givenFigure({ id, label, unit: 'money', numerator, denominator, clause: '' });

/**
 * A bill of which it cannot be said whether it is right: what it comes to by what is known, or for each balance that
 * may have been brought forward, and what stands in the way.
 *
 * @param unread  its printed figures that cannot be read
 */
export function undecidedBill(
  { printed, right, alternatives, findings, facts }: CheckedBill,
  unread: readonly UnreadFigure[],
): UndecidedBill {
  const payable = right?.figures.get('payable');
  return {
    bill: billReference(printed),
    payable: payable === undefined ? null : (right?.month.bill.payable ?? null),
    alternatives: alternatives.map((one) => {
      const name = FIGURE.opening(one.ledger);
      const label = figureLabel(name, facts.tariff);
      const unit = figureUnit(name, facts.tariff);
      const opening = { numerator: one.opening, denominator: 1000 };
      return {
        label,
        opening: givenFigure({ id: one.ledger, label, unit, ...opening, clause: '' }),
        payable: money('payable', 'To be paid', one.payable),
      };
    }),
    why: findings.filter(({ severity }) => severity === 'error'),
    unread,
  };
}
