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
} as const satisfies Parameters<typeof findingMaker>[0];

/** A code of a finding about settlement. */
export type SettlementFindingCode = keyof typeof SETTLEMENT_FINDINGS;

/** Make a finding about the settlement of a period. */
export const settlementFinding: (
  code: SettlementFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<SettlementFindingCode>(SETTLEMENT_FINDINGS);
