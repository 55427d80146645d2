import { findingMaker, type Finding, type FindingPlace } from '../quantity/index.ts';

/** Everything that can stand in the way of a bill, by code. */
export const BILL_FINDINGS = {
  'bill/no-tariff-in-force': {
    severity: 'error',
    text: (v) => ({
      found: `no charges in force from ${v['from'] ?? ''} through ${v['through'] ?? ''}`,
      expected: `days that the tariff covers: ${v['covered'] ?? ''}`,
      remedy: 'Choose the tariff of that time, or bill only the periods it covers.',
    }),
  },
  'bill/quantity-unknown': {
    severity: 'error',
    text: (v) => ({
      found: `"${v['charge'] ?? ''}" is charged on ${v['quantity'] ?? ''}, which is not known for this period`,
      expected: 'the readings it follows from',
      remedy: 'Add the generation readings, or clear up the balance of the period.',
    }),
  },
  'bill/no-price': {
    severity: 'error',
    text: (v) => ({
      found: v['problem'] ?? '',
      expected: 'a price for every day that is billed',
      remedy: 'Add the price of that time to the tariff, or bill only the periods it covers.',
    }),
  },
  'bill/change-unscaled': {
    severity: 'error',
    text: (v) => ({
      found: `a change of the account inside the period, and "${v['charge'] ?? ''}" that no day rule scales`,
      expected: 'a day rule, so that each part bears its share only',
      remedy: 'Add "scaledBy" to it in the tariff, or let the account of one day bill the whole period.',
    }),
  },
  'bill/too-large': {
    severity: 'error',
    text: (v) => ({
      found: `an amount in "${v['charge'] ?? ''}" that needs more than 15 digits on the way`,
      expected: 'amounts that can be counted exactly, with what the day rules and percentages add',
      remedy:
        'Check the readings and the rates. Where lines are not rounded, exact fractions pile up: round the ' +
        'lines in the tariff as the bill does.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];

/** A code of a finding about a bill. */
export type BillFindingCode = keyof typeof BILL_FINDINGS;

/** Make a finding about a bill. */
export const billFinding: (
  code: BillFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<BillFindingCode>(BILL_FINDINGS);
