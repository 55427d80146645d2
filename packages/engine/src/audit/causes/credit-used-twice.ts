import { isSameQuotient } from '../../quantity/index.ts';
import type { Cause } from '../cause.ts';
import { unitLedgers } from '../charge-basis.ts';
import { FIGURE } from '../figure-names.ts';
import { thousandths, withShown } from '../facts.ts';

/** C22: credit brought forward is used twice. The owner has to expect that it is taken back. */
export const CREDIT_USED_TWICE: Cause = {
  id: 'credit-used-twice',
  name: 'Credit used twice',
  stage: 'credit',
  evidence: [
    'the chain of bills: credit used must not be more than what was brought forward',
    'the closing credit of the bill before',
  ],
  source: 'C22, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts, { printed }) =>
    unitLedgers(facts).flatMap((ledger) => {
      const units = facts.opening[ledger] ?? 0;
      if (units <= 0) return [];
      const twice = { ...facts, opening: { ...facts.opening, [ledger]: 2 * units } };
      const shown = printed.get(FIGURE.opening(ledger));
      const showsTwice = shown !== undefined && isSameQuotient(shown, thousandths(2 * units));
      const once = withShown(twice, { [FIGURE.opening(ledger)]: thousandths(units) });
      const what = 'Credit brought forward is set off twice';
      return [{ id: ledger, what, facts: showsTwice ? twice : once }];
    }),
};
