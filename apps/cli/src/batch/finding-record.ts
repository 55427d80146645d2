import { dayText, exactText, type CheckedBill, type Finding, type Quotient } from '@unitbook/engine';

const text = (value: Quotient | null | undefined): string | null =>
  value == null ? null : exactText(value.numerator, value.denominator);

/** In whose favour a bill is wrong. */
function favourOf(difference: Quotient | null): string | null {
  if (difference === null || difference.numerator === 0) return null;
  return difference.numerator > 0 ? 'utility' : 'household';
}

function explanationRecord({ attempt, confidence, attribution }: CheckedBill['explanations'][number]) {
  return {
    confidence,
    causes: attempt.steps.map(({ cause, variant }, at) => ({
      cause: cause.id,
      name: cause.name,
      variant: variant.id,
      what: variant.what,
      amount: text(attribution?.parts[at]?.amount),
    })),
    rounding: text(attribution?.rounding),
    rest: text(attribution?.rest),
  };
}

const told = ({ code, found, expected, remedy }: Finding) => ({ code, found, expected, remedy });

/** Whose bill a finding is about. */
export interface RowName {
  readonly account: string;
  readonly checked: CheckedBill;
}

/** The line of a bill among the findings: one JSON object, every number as text. */
export function billLine({ account, checked }: RowName): string {
  const { printed, verdict, right, difference, compared, explanations, deciders, alternatives, findings } =
    checked;
  const differing = compared.filter(({ agrees }) => !agrees);
  const { from, to } = printed.period;
  const record = {
    account,
    from: dayText(from),
    to: dayText(to),
    verdict,
    printed: text(printed.figures.get('payable')),
    right: text(right?.figures.get('payable')),
    difference: text(difference),
    favour: favourOf(difference),
    ...(differing.length === 0
      ? {}
      : {
          differs: differing.map((one) => ({
            figure: one.name,
            printed: text(one.printed),
            right: text(one.computed),
          })),
        }),
    ...(verdict === 'wrong' ? { explained: explanations.map(explanationRecord) } : {}),
    ...(deciders.length === 0 ? {} : { decides: deciders.map(({ figure }) => figure) }),
    ...(alternatives.length === 0
      ? {}
      : {
          alternatives: alternatives.map(({ ledger, opening, payable }) => ({
            ledger,
            opening: exactText(opening, 1000),
            payable: text(payable),
          })),
        }),
    ...(findings.length === 0 ? {} : { findings: findings.map(told) }),
  };
  return `${JSON.stringify(record)}\n`;
}

/** The line of a row that cannot be used. */
export function unreadLine(line: number, finding: Finding): string {
  return `${JSON.stringify({ line, verdict: 'unreadable', column: finding.path[0] ?? null, ...told(finding) })}\n`;
}

/** The line of a bill that is right. */
export const rightLine = (account: string, from: string, to: string): string =>
  `${JSON.stringify({ account, from, to, verdict: 'right' })}\n`;
