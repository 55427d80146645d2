import { isSameQuotient, wholeSteps, type Outcome, type Quotient, signOf } from '../../quantity/index.ts';
import type { Stage } from '../cause.ts';
import type { BillFacts } from '../facts.ts';
import { FIGURE } from '../figure-names.ts';
import { differenceIn } from '../figures.ts';
import type { BillFinding, Favour, FindingCause, FindingExplanation } from './bill-finding.ts';
import type { CheckedParts, FindingTerms } from './checked-parts.ts';
import { brokenClauses } from './clauses.ts';
import { evidenceOf } from './evidence.ts';
import { explanationParts } from './explanation-rows.ts';
import { billReference, claimLine, findingDeciders, findingLines, handedOn } from './finding-lines.ts';
import { checkLimit, type LimitCheck } from './limitation.ts';
import { nearestCauses } from './nearest.ts';
import { recommendationsOf } from './recommendations.ts';
import { refundOf, type BillRefund, type Payment } from './refund.ts';
import type { ClauseReference } from './source-of-clause.ts';

const THOUSANDTH = { numerator: 1, denominator: 1000 } as const;

/** The facts that causes are applied to: with the credit of the books, where a bill is explained from there. */
function handedOnFacts({ facts, carried }: CheckedParts): BillFacts {
  if (carried === null) return facts;
  const opening = Object.entries(facts.opening).map(([ledger, right]) => {
    const own = carried.figures.get(FIGURE.opening(ledger));
    return [ledger, own === undefined ? right : wholeSteps(own, THOUSANDTH, 'half-up')] as const;
  });
  return { ...facts, opening: Object.fromEntries(opening) };
}

/** The causes of an attempt, each with what it adds and the rules that it breaks. */
function causesOf(
  { attempt, attribution }: CheckedParts['explanations'][number],
  checked: CheckedParts,
): readonly FindingCause[] {
  let before = handedOnFacts(checked);
  return attempt.steps.map(({ cause, variant }, at) => {
    const clauses = brokenClauses(before, variant.facts);
    before = variant.facts;
    return {
      id: cause.id,
      name: cause.name,
      what: variant.what,
      amount: attribution?.parts[at]?.amount ?? null,
      clauses,
      evidence: cause.evidence,
      signs: variant.signs ?? [],
    };
  });
}

function explanationsOf(checked: CheckedParts): readonly FindingExplanation[] {
  return checked.explanations.map((one) => {
    const { addedBefore, rounding } = explanationParts(checked, one);
    return { addedBefore, confidence: one.confidence, causes: causesOf(one, checked), rounding };
  });
}

/** Printed less right of what is to be paid, or of the sum; null where neither is printed. */
function differenceOf({ compared }: CheckedParts): Quotient | null {
  return differenceIn(compared, 'payable') ?? differenceIn(compared, 'sum');
}

/** In whose favour a bill is: by its money, or else by the credit it hands on. */
function favourOf(difference: Quotient | null, { compared }: CheckedParts): Favour {
  const sign = difference === null ? 0 : signOf(difference);
  if (sign !== 0) return sign > 0 ? 'supplier' : 'household';
  const closing = compared.find(({ name, agrees }) => !agrees && name.startsWith(FIGURE.closing('')));
  const left = closing?.difference == null ? 0 : signOf(closing.difference);
  return left === 0 ? 'none' : left < 0 ? 'supplier' : 'household';
}

/** What is compared for a refund: sums where interest runs on sums, and what is to be paid else. */
function refundBasis({ compared, printed }: CheckedParts, on: 'payable' | 'sum') {
  const find = (name: string) => {
    const one = compared.find((own) => own.name === name);
    if (one?.computed == null) return null;
    return { printed: one.printed, right: one.agrees ? one.printed : one.computed };
  };
  const payable = find('payable');
  const payments: readonly Payment[] = printed.paid === null ? [] : [printed.paid];
  const sums = on === 'sum' ? find('sum') : null;
  if (sums === null) return payable === null ? null : { ...payable, payments };
  // Whoever paid the rounded amount paid the sum.
  const paid = payments.map((one) =>
    payable !== null && isSameQuotient(one.amount, payable.printed) ? { ...one, amount: sums.printed } : one,
  );
  return { ...sums, payments: paid };
}

function refundFor(checked: CheckedParts, { rules, on }: FindingTerms): Outcome<BillRefund | null> {
  const rule = rules?.interest ?? null;
  const basis = refundBasis(checked, rule?.kind === 'simple' ? rule.on : 'payable');
  return basis === null ? { value: null, findings: [] } : refundOf(basis, rule, on);
}

/** Whether a claim is in time: of the household, or of the supplier where the bill is too low. */
function limitOf(favour: Favour, { printed }: CheckedParts, { rules, on }: FindingTerms): LimitCheck | null {
  const limit = favour === 'household' ? rules?.arrears : rules?.claim;
  if (limit === undefined) return null;
  const { issued, due } = billReference(printed);
  const days = { 'period-end': printed.period.to, issued, due, paid: printed.paid?.on ?? null };
  return checkLimit(limit, days, on);
}

/** Each clause once. */
function eachOnce(clauses: readonly ClauseReference[]): readonly ClauseReference[] {
  return [...new Map(clauses.map((one) => [one.clause, one])).values()];
}

/** Causes that reproduce nothing whole: named in no explanation. */
function ruledOut({ explanations }: CheckedParts, { causes }: FindingTerms): readonly string[] {
  if (explanations.length === 0) return [];
  const named = new Set(explanations.flatMap(({ attempt }) => attempt.steps.map(({ cause }) => cause.id)));
  return causes.filter(({ id }) => !named.has(id)).map(({ name }) => name);
}

const stagesOf = ({ explanations }: CheckedParts): readonly Stage[] =>
  explanations[0]?.attempt.steps.map(({ cause }) => cause.stage) ?? [];

/**
 * Put together everything that is to be said of a bill that is wrong, in whosever favour.
 *
 * @param checked  a bill of which at least one printed figure differs
 * @returns        null where none does; findings where interest cannot be worked out
 */
export function makeFinding(checked: CheckedParts, terms: FindingTerms): Outcome<BillFinding | null> {
  const lines = findingLines(checked, terms);
  const claim = claimLine(lines);
  if (claim === null) return { value: null, findings: [] };
  const difference = differenceOf(checked);
  const favour = favourOf(difference, checked);
  const explanations = explanationsOf(checked);
  const [surest] = explanations;
  const { value: refund, findings } = refundFor(checked, terms);
  const told = {
    favour,
    explanations,
    refund,
    deciders: findingDeciders(checked),
    handedOn: handedOn(checked, terms),
    isConsequence: checked.verdict === 'follows',
  };
  const broken = surest === undefined ? lines : surest.causes;
  const value: BillFinding = {
    ...told,
    id: terms.id,
    reply: terms.reply,
    account: terms.account,
    meter: terms.meter,
    bill: billReference(checked.printed),
    claim,
    lines,
    inconsistencies: checked.findings,
    difference,
    ruledOut: ruledOut(checked, terms),
    nearest: nearestCauses(checked.nearest, checked.facts.tariff),
    clauses: eachOnce(broken.flatMap(({ clauses }) => clauses)),
    evidence: evidenceOf(checked, terms, explanations),
    limit: limitOf(favour, checked, terms),
    effects: terms.effects,
    recommendations: recommendationsOf(told, stagesOf(checked)),
  };
  return { value, findings };
}
