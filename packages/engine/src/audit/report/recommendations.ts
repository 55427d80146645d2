import type { Stage } from '../cause.ts';
import { signOf } from '../../quantity/index.ts';
import { agrees, EXACT } from '../figures.ts';
import type { BillFinding, Recommendation } from './bill-finding.ts';

/** What each recommendation says. */
const TEXTS: Readonly<Record<Recommendation['id'], string>> = {
  'revise-bill': 'Revise the bill to the figures worked out here.',
  'pay-back': 'Pay back what was paid too much, with interest to the day of adjustment.',
  withdraw: 'Withdraw what was asked for too much, and recover nothing of it meanwhile.',
  'pay-credit': 'Pay or credit what the bill owes the household.',
  'keep-aside': 'The bill is too low: keep the difference aside, since it may be asked for later.',
  'correct-credit': 'Correct the credit carried into the next bill, and the bills since.',
  'correct-readings': 'Correct the readings on record, of each register.',
  'test-meter': 'Have the meter read or tested in the presence of both sides.',
  'correct-rules': 'Correct the rate or the rule in the billing system, so that the next bill is right.',
  'clear-account': 'Correct the account: payments, arrears and fees.',
  'show-working': 'Ask for the working of the bill, line by line.',
  decide: 'Ask for the figure that decides between the explanations.',
};

/** What is recommended to be done about a stage. */
const OF_STAGE: Readonly<Record<Stage, Recommendation['id']>> = {
  readings: 'correct-readings',
  netting: 'correct-rules',
  credit: 'correct-credit',
  slabs: 'correct-rules',
  charges: 'correct-rules',
  account: 'clear-account',
};

type Basis = Pick<
  BillFinding,
  'refund' | 'favour' | 'explanations' | 'deciders' | 'handedOn' | 'isConsequence'
>;

function ofMoney({ refund, favour }: Basis): readonly Recommendation['id'][] {
  if (refund === null) return favour === 'household' ? ['keep-aside'] : [];
  return [
    ...(signOf(refund.refund) > 0 ? (['pay-back'] as const) : []),
    ...(signOf(refund.withdraw) > 0 ? (['withdraw'] as const) : []),
    ...(signOf(refund.credit) > 0 ? (['pay-credit'] as const) : []),
    ...(signOf(refund.underBilled) > 0 ? (['keep-aside'] as const) : []),
  ];
}

/** Whether a balance is printed otherwise than it should be handed on. */
const isCreditWrong = ({ handedOn }: Basis): boolean =>
  handedOn.some(({ printed, right }) => printed !== null && !agrees(printed, right, EXACT));

function ofCauses(basis: Basis, stages: readonly Stage[]): readonly Recommendation['id'][] {
  const { explanations, isConsequence, deciders } = basis;
  if (isConsequence) return ['correct-credit'];
  if (explanations.length === 0) return ['show-working', 'test-meter'];
  return [
    ...(explanations.length > 1 && deciders.length > 0 ? (['decide'] as const) : []),
    ...stages.map((stage) => OF_STAGE[stage]),
    ...(isCreditWrong(basis) ? (['correct-credit'] as const) : []),
  ];
}

/**
 * What should be done about a finding, each once, in the order in which it is asked for.
 *
 * @param stages  those of the causes of the surest explanation
 */
export function recommendationsOf(basis: Basis, stages: readonly Stage[]): readonly Recommendation[] {
  const ids = ['revise-bill' as const, ...ofMoney(basis), ...ofCauses(basis, stages)];
  return [...new Set(ids)].map((id) => ({ id, text: TEXTS[id] }));
}
