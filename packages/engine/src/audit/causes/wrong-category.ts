import type { Cause } from '../cause.ts';

/** C29: the account is billed by the tariff of another category. */
export const WRONG_CATEGORY: Cause = {
  id: 'wrong-category',
  name: 'Wrong tariff category',
  stage: 'slabs',
  evidence: ['the sanction letter, which names the category', 'what the premises are used for'],
  source: 'C29, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts, { otherTariffs }) =>
    otherTariffs
      .filter(({ id }) => id !== facts.tariff.id)
      .map((tariff) => ({
        id: tariff.id,
        what: `Billed by ${tariff.name}`,
        facts: { ...facts, tariff },
      })),
};
