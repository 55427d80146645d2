import { dayText, exactText, type Figure, type Quotient } from '../../quantity/index.ts';
import type {
  BillFinding,
  BillReference,
  FindingExplanation,
  FindingLine,
  HeldEvidence,
} from './bill-finding.ts';
import type { BillsReport } from './bills-report.ts';
import type { LimitCheck } from './limitation.ts';
import type { BillRefund, RefundSum } from './refund.ts';

const text = ({ numerator, denominator }: Quotient): string => exactText(numerator, denominator);
const optional = (value: Quotient | null): string | null => (value === null ? null : text(value));
const day = (value: BillReference['due']): string | null => (value === null ? null : dayText(value));

const billDocument = ({ number, period, days, issued, due }: BillReference) => ({
  number,
  from: dayText(period.from),
  to: dayText(period.to),
  days: String(days),
  issued: day(issued),
  due: day(due),
});

const lineDocument = ({ name, label, printed, computed, difference, clauses }: FindingLine) => ({
  name,
  label,
  unit: printed.unit,
  printed: text(printed),
  computed: optional(computed),
  difference: optional(difference),
  clauses,
});

const explanationDocument = ({ confidence, causes, addedBefore, rounding }: FindingExplanation) => ({
  confidence,
  causes: causes.map((cause) => ({ ...cause, amount: optional(cause.amount) })),
  addedBefore: optional(addedBefore),
  rounding: optional(rounding),
});

function heldDocument(held: HeldEvidence) {
  const named = (figure: Figure) => ({
    name: figure.id,
    label: figure.label,
    unit: figure.unit,
    value: text(figure),
  });
  switch (held.kind) {
    case 'bill':
      return { kind: held.kind, bill: billDocument(held.bill) };
    case 'bill-before':
      return {
        kind: held.kind,
        bill: billDocument(held.bill),
        closing: held.closing.map(named),
        readings: held.readings.map(named),
      };
    case 'own-readings':
      return { kind: held.kind, days: held.days.map(dayText) };
    case 'payment':
      return { kind: held.kind, of: held.of, on: dayText(held.on), amount: text(held.amount) };
    case 'stated':
      return held;
  }
}

const limitDocument = ({ since, last, ...rest }: LimitCheck) => ({
  ...rest,
  since: dayText(since),
  last: dayText(last),
});

const sumDocument = ({ refund, interest, withdraw, credit, underBilled }: RefundSum) => ({
  refund: text(refund),
  interest: optional(interest),
  withdraw: text(withdraw),
  credit: text(credit),
  underBilled: text(underBilled),
});

const refundDocument = (refund: BillRefund) => ({
  difference: text(refund.difference),
  ...sumDocument(refund),
  parts: refund.parts.map(({ paidOn, principal, stretches }) => ({
    paidOn: dayText(paidOn),
    principal: text(principal),
    stretches: stretches.map(({ period, days, percent, interest }) => ({
      from: dayText(period.from),
      to: dayText(period.to),
      days: String(days),
      percent,
      interest: text(interest),
    })),
  })),
});

function findingDocument(finding: BillFinding) {
  const { bill, claim, lines, difference, explanations, deciders, evidence, limit, refund } = finding;
  const { handedOn, effects, reply, nearest, ...plain } = finding;
  return {
    ...plain,
    bill: billDocument(bill),
    reply: reply === null ? null : { ...reply, on: day(reply.on) },
    claim: lineDocument(claim),
    lines: lines.map(lineDocument),
    difference: optional(difference),
    explanations: explanations.map(explanationDocument),
    nearest: nearest.map(({ causes, missed }) => ({ causes, missed })),
    deciders: deciders.map(({ name, label, values }) => ({ name, label, values: values.map(optional) })),
    evidence: { held: evidence.held.map(heldDocument), wanted: evidence.wanted },
    limit: limit === null ? null : limitDocument(limit),
    refund: refund === null ? null : refundDocument(refund),
    handedOn: handedOn.map(({ ledger, label, printed, right }) => ({
      ledger,
      label,
      unit: right.unit,
      printed: optional(printed),
      right: text(right),
    })),
    effects:
      effects === null
        ? null
        : {
            bills: effects.bills.map(({ number, period, difference: own }) => ({
              number,
              from: dayText(period.from),
              to: dayText(period.to),
              difference: text(own),
            })),
            arrears: text(effects.arrears),
            lateFee: text(effects.lateFee),
            money: effects.money === undefined ? null : text(effects.money),
            bank: (effects.bank ?? []).map(({ ledger, units }) => ({ ledger, units: text(units) })),
          },
  };
}

/**
 * A report as a plain object for JSON, every number as exact text. The whole document, with the bills it was made of,
 * is {@link checkResultDocument}'s.
 */
export function reportDocument(report: BillsReport) {
  const { account, supplier, tariff, currency, on, findings, right, undecided, refund, rules, problems } =
    report;
  return {
    account,
    supplier,
    tariff,
    currency,
    on: dayText(on),
    tolerance: text(report.tolerance),
    findings: findings.map(findingDocument),
    right: right.map(({ bill, surprises }) => ({
      bill: billDocument(bill),
      surprises: surprises.map(({ what }) => what),
    })),
    undecided: undecided.map(({ bill, payable, alternatives, why, unread }) => ({
      bill: billDocument(bill),
      payable: optional(payable),
      alternatives: alternatives.map((one) => ({
        label: one.label,
        opening: text(one.opening),
        payable: text(one.payable),
      })),
      why: why.map(({ found, expected }) => `${found}; expected: ${expected}`),
      unread: unread.map(({ label, finding: { found, expected } }) => ({ label, found, expected })),
    })),
    refund: refund === null ? null : sumDocument(refund),
    rules:
      rules === null ? null : { ...rules.version, id: rules.document.id, sources: rules.document.sources },
    problems,
  };
}
