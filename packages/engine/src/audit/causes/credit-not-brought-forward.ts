import type { Cause } from '../cause.ts';

/** C20: credit of the bill before is not brought forward. */
export const CREDIT_NOT_BROUGHT_FORWARD: Cause = {
  id: 'credit-not-brought-forward',
  name: 'Credit not brought forward',
  stage: 'credit',
  evidence: ['the closing credit of the bill before', 'the chain of bills since the last settlement'],
  variants: (facts) =>
    Object.entries(facts.opening)
      .filter(([, units]) => units !== 0)
      .map(([ledger]) => ({
        id: ledger,
        what: 'Nothing is brought forward from the bill before',
        facts: { ...facts, opening: { ...facts.opening, [ledger]: 0 } },
      })),
};
