import { findingMaker, type Finding, type FindingPlace } from '../quantity/index.ts';

/** Everything that can be wrong when a period is settled, by code. */
export const SETTLEMENT_FINDINGS = {
  'settlement/no-rule-in-force': {
    severity: 'error',
    text: (v) => ({
      found: `no settlement rule on ${v['day'] ?? ''}, the last day of the period`,
      expected: `a day that the tariff covers: ${v['covered'] ?? ''}`,
      remedy: 'Add the rule of that time to the tariff, or bill only the periods it covers.',
    }),
  },
  'settlement/two-rules': {
    severity: 'error',
    text: (v) => ({
      found:
        `the bank closes on ${v['close'] ?? ''} by the settlement rule from ${v['before'] ?? ''}, ` +
        `but this period ends under the one from ${v['after'] ?? ''}`,
      expected: 'a period that one rule settles, or no closing day in the part before the change',
      remedy: `Add the reading of ${v['after'] ?? ''}, and ask the supplier how it settled the days on each side.`,
    }),
  },
  'settlement/quantity-unknown': {
    severity: 'error',
    text: (v) => ({
      found: `a cap on ${v['quantity'] ?? ''}, which is not known for this period`,
      expected: 'the reading it follows from',
      remedy: 'Add the generation readings, or clear up the balance of the period.',
    }),
  },
  'settlement/not-given': {
    severity: 'error',
    text: (v) => ({
      found: `no "${v['quantity'] ?? ''}" for this period, which the settlement rule needs`,
      expected: 'the units or the power, from a register, the bill or the account',
      remedy: `Add "${v['quantity'] ?? ''}" to the period, or to the account where it does not change.`,
    }),
  },
  'settlement/finer-than-units': {
    severity: 'error',
    text: (v) => ({
      found: `"${v['quantity'] ?? ''}" (${v['id'] ?? ''}) comes to ${v['value'] ?? ''}, finer than a thousandth`,
      expected: 'whole thousandths of a unit, or a rounding that makes them so',
      remedy: 'Add "rounding" to it in the tariff, as the rules have it.',
    }),
  },
  'settlement/divided-by-nothing': {
    severity: 'error',
    text: (v) => ({
      found: `"${v['quantity'] ?? ''}" divided by 0 or less`,
      expected: 'a divisor above 0',
      remedy: 'Check the quantity it is divided by.',
    }),
  },
  'settlement/below-nothing': {
    severity: 'error',
    text: (v) => ({
      found: `${v['value'] ?? ''} of "${v['quantity'] ?? ''}" to be set off`,
      expected: 'units of 0 or more',
      remedy: 'Use "excess" where a difference may fall below 0.',
    }),
  },
  'settlement/too-few-periods': {
    severity: 'error',
    text: (v) => ({
      found: `${v['found'] ?? ''} of the ${v['wanted'] ?? ''} periods that "${v['quantity'] ?? ''}" is the mean of`,
      expected: 'all of them',
      remedy: 'Add the earlier periods.',
    }),
  },
  'settlement/past-unknown': {
    severity: 'error',
    text: (v) => ({
      found: `an earlier period without "${v['quantity'] ?? ''}", which this one looks back to`,
      expected: 'the quantity in every period that counts',
      remedy: 'Let the settlement rule of that time work it out too, or begin the count after it.',
    }),
  },
  'settlement/account-day-needed': {
    severity: 'error',
    text: (v) => ({
      found: `an account without "${v['what'] ?? ''}", which "${v['ledger'] ?? ''}" goes by`,
      expected: 'the day that the rule goes by',
      remedy: `Add "${v['what'] ?? ''}" to the account.`,
    }),
  },
  'settlement/no-price': {
    severity: 'error',
    text: (v) => ({
      found: v['problem'] ?? '',
      expected: 'a price for every day that is billed',
      remedy: 'Add the price of that time to the tariff.',
    }),
  },
  'settlement/ledger-out-of-balance': {
    severity: 'error',
    text: (v) => ({
      found: `"${v['ledger'] ?? ''}" would keep more than it had, or take in less than nothing`,
      expected: '"keeps" between 0 and the balance brought forward, and "adds" of 0 or more',
      remedy:
        'Let "keeps" name what a netting leaves of the ledger, and "adds" what it leaves of the export.',
    }),
  },
  'settlement/changed-inside': {
    severity: 'error',
    text: (v) => ({
      found: `"${v['quantity'] ?? ''}" changed inside the period, and the settlement works with it`,
      expected: 'one value for the whole period',
      remedy: 'Bill the days before and after the change as two periods, with a reading between them.',
    }),
  },
  'settlement/balance-has-no-ledger': {
    severity: 'error',
    text: (v) => ({
      found: `a balance of ${v['balance'] ?? ''} in "${v['ledger'] ?? ''}", which the settlement rule from ${v['from'] ?? ''} does not know`,
      expected: 'a rule that says what becomes of it',
      remedy: 'Close the ledger in the rule before, or let the new rule have a ledger of the same name.',
    }),
  },
  'settlement/credit-below-nothing': {
    severity: 'error',
    text: (v) => ({
      found: `credit for "${v['ledger'] ?? ''}" that comes to less than 0`,
      expected: 'lines that earn 0 or more',
      remedy: 'Let what can fall below 0 be a charge of its own, not a credit.',
    }),
  },
  'settlement/too-large': {
    severity: 'error',
    text: () => ({
      found: 'a quantity of more than 15 digits on the way',
      expected: 'quantities that can be counted exactly',
      remedy: 'Check the readings and the factors of the tariff.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];

/** A code of a finding about settlement. */
export type SettlementFindingCode = keyof typeof SETTLEMENT_FINDINGS;

/** Make a finding about the settlement of a period. */
export const settlementFinding: (
  code: SettlementFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<SettlementFindingCode>(SETTLEMENT_FINDINGS);
