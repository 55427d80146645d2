import type { Rounding } from '../../quantity/index.ts';
import type { TariffDocument } from '../../tariff/index.ts';
import type { Cause, Variant } from '../cause.ts';
import { tariffVariant } from '../changed-tariff.ts';
import type { BillFacts } from '../facts.ts';

const ID = 'rounded-otherwise';

type LineRule = TariffDocument['rounding']['line'];

interface Way {
  readonly id: string;
  readonly what: string;
  readonly rule: Rounding | 'none';
}

const rule = (step: string, mode: Rounding['mode']): Rounding => ({ step, mode });

/** How lines are rounded where somebody rounds them otherwise. */
const LINES: readonly Way[] = [
  { id: 'line-up', what: 'Every line is rounded up to a whole amount', rule: rule('1', 'up') },
  { id: 'line-down', what: 'Every line is cut to a whole amount', rule: rule('1', 'down') },
  { id: 'line-whole', what: 'Every line is rounded to a whole amount', rule: rule('1', 'half-up') },
  { id: 'line-cut', what: 'Every line is cut after two decimals', rule: rule('0.01', 'down') },
  { id: 'line-exact', what: 'No line is rounded', rule: 'none' },
];

/** How the total is rounded where somebody rounds it otherwise. */
const TOTALS: readonly Way[] = [
  { id: 'total-up', what: 'What is to be paid is rounded up to a whole amount', rule: rule('1', 'up') },
  { id: 'total-down', what: 'What is to be paid is cut to a whole amount', rule: rule('1', 'down') },
  { id: 'total-whole', what: 'What is to be paid is rounded to a whole amount', rule: rule('1', 'half-up') },
  { id: 'total-ten', what: 'What is to be paid is rounded to tens', rule: rule('10', 'half-up') },
  { id: 'total-exact', what: 'What is to be paid is not rounded', rule: 'none' },
];

const isSame = (one: LineRule, other: Way['rule']): boolean =>
  one === 'none' || other === 'none' ? one === other : one.step === other.step && one.mode === other.mode;

/** Every line by one rule: those of charges that have a rule of their own, too. */
function byLine(document: TariffDocument, line: Way['rule']): TariffDocument | null {
  if (isSame(document.rounding.line, line)) return null;
  const versions = document.versions.map((version) => ({
    ...version,
    charges: version.charges.map((charge) => ({ ...charge, rounding: undefined })),
  }));
  return { ...document, rounding: { ...document.rounding, line }, versions };
}

function byTotal(document: TariffDocument, total: Way['rule']): TariffDocument | null {
  if (isSame(document.rounding.total, total)) return null;
  return { ...document, rounding: { ...document.rounding, total } };
}

const ways = (
  facts: BillFacts,
  list: readonly Way[],
  change: (document: TariffDocument, rule: Way['rule']) => TariffDocument | null,
): readonly Variant[] =>
  list.flatMap(({ id, what, rule: own }) =>
    tariffVariant(facts, { cause: ID, id, what }, (document) => change(document, own)),
  );

/** C42: lines or the total are rounded by another rule. */
export const ROUNDED_OTHERWISE: Cause = {
  id: ID,
  name: 'Rounded otherwise',
  stage: 'account',
  evidence: ['the clause of rounding', 'whether every line of the bill is a whole amount'],
  source:
    'C42, Why a net-metered bill is wrong, or right but surprising, project reference, 2025; a deposit of a net-billed customer, info-ogrzewanie forum, n.d.',
  variants: (facts) => [...ways(facts, LINES, byLine), ...ways(facts, TOTALS, byTotal)],
};
