import { figureLabel, FIGURE, type CheckedBill, type Quotient } from '@unitbook/engine';
import { figureText } from './check-figures.ts';
import type { PageNotation } from './notation.ts';
import { moneyFigure } from './sum-figures.ts';

const money = (value: Quotient, notation: PageNotation): string => notation.amount(moneyFigure(value));

function wrongText({ difference }: CheckedBill, should: string, notation: PageNotation): string {
  if (difference === null || difference.numerator === 0) return `Wrong, though the amount is right.${should}`;
  const { numerator } = difference;
  const size = money({ ...difference, numerator: numerator < 0 ? -numerator : numerator }, notation);
  return numerator > 0
    ? `Wrong: ${size} too much.${should}`
    : `Wrong: ${size} too little, in the account's favour; it may be asked for later.${should}`;
}

/** What each credit brought forward would come to, where nobody knows it. */
function unknownText(
  { alternatives, facts: { tariff } }: CheckedBill,
  should: string,
  notation: PageNotation,
): string {
  if (alternatives.length < 2)
    return `Cannot be told yet.${should} Add what the bill prints, and the line that differs is shown.`;
  const cases = alternatives.map(({ ledger, opening, payable }) => {
    const name = FIGURE.opening(ledger);
    const held = figureText(name, { numerator: opening, denominator: 1000 }, tariff, notation);
    return `${money(payable, notation)} if ${figureLabel(name, tariff).toLowerCase()} is ${held}`;
  });
  return `Cannot be told: ${cases.join(', ')}. Look at what the bill before carried forward.`;
}

/**
 * What a check says of a bill, in a sentence or two.
 *
 * @param notation  how amounts and units are written
 */
export function verdictText(checked: CheckedBill, notation: PageNotation): string {
  const payable = checked.right?.figures.get('payable');
  const should = payable === undefined ? '' : ` It should be ${money(payable, notation)}.`;
  switch (checked.verdict) {
    case 'right':
      return 'Right: every printed figure is as computed.';
    case 'right-but-surprising':
      return 'Right, though it surprises: every printed figure is as computed.';
    case 'follows':
      return `Follows from a bill before: what that one handed on makes every figure of this one.${should}`;
    case 'wrong':
      return wrongText(checked, should, notation);
    case 'cannot-tell':
      return unknownText(checked, should, notation);
  }
}
