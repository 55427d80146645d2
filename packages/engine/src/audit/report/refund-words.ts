import { exactText, figureValue, type Quotient, signOf } from '../../quantity/index.ts';
import { quotientOf } from '../printed.ts';
import type { InterestRule } from './dispute-schema.ts';
import type { LimitCheck, LimitDays } from './limitation.ts';
import type { BillRefund, RefundPart, RefundSum } from './refund.ts';
import { dayWords, moneyWords, type ReportNotation } from './report-words.ts';

/** What money means, row by row; those of 0 are left out. */
function moneyRows(
  { withdraw, credit, underBilled }: Pick<BillRefund, 'withdraw' | 'credit' | 'underBilled'>,
  notation: ReportNotation,
): readonly (readonly string[])[] {
  const row = (label: string, value: Quotient): readonly (readonly string[])[] =>
    signOf(value) === 0 ? [] : [[label, moneyWords(value, notation)]];
  return [
    ...row('Asked for too much and not paid: to be withdrawn', withdraw),
    ...row('Owed to the household and left out: to be paid or credited', credit),
    ...row('Asked for too little: told apart, set off against nothing', underBilled),
  ];
}

/** A refund row by row: what is paid back, its interest, and what else is to be set right. */
export function refundRows(refund: RefundSum, notation: ReportNotation): readonly (readonly string[])[] {
  const { interest } = refund;
  const paidBack = signOf(refund.refund) !== 0;
  return [
    ...(paidBack ? [['Paid too much: to be paid back', figureValue(refund.refund, notation)]] : []),
    ...(paidBack
      ? [['Interest on it', interest === null ? 'not known' : figureValue(interest, notation)]]
      : []),
    ...moneyRows(refund, notation),
  ];
}

const DAY_COUNT_WORDS = {
  '365': 'days over 365',
  '360': 'days over 360',
  calendar: 'days over those of the calendar year',
} as const;

/** How interest is worked out, in a sentence. */
export function interestRuleWords(rule: InterestRule | null, notation: ReportNotation): string {
  if (rule === null) return 'Whether interest is due is not known here.';
  if (rule.kind === 'none') return `No interest is due on a refund (${rule.clause}).`;
  const on = rule.on === 'payable' ? 'what was to be paid' : 'the sum before it was rounded';
  const at = rule.roundedAt === 'bill' ? 'each bill' : 'all bills together';
  const step = moneyWords(quotientOf(rule.rounding.step), notation);
  return `Simple interest on ${on}, ${DAY_COUNT_WORDS[rule.dayCount]}, rounded to ${step} for ${at} (${rule.clause}).`;
}

/** "Rs 316.00 × 9 % × 60 ÷ 365 = Rs 4.6751…": each stretch of days, before rounding. */
export function stretchWords(
  { principal, stretches }: RefundPart,
  notation: ReportNotation,
): readonly string[] {
  return stretches.map(({ period, days, percent, interest }) => {
    const yearDays = interest.inputs[1];
    const over = yearDays === undefined ? '' : exactText(yearDays.numerator, yearDays.denominator);
    const time = `from ${dayWords(period.from, notation)} to ${dayWords(period.to, notation)}`;
    return `${figureValue(principal, notation)} × ${notation.number(percent)} % × ${notation.number(String(days))} ÷ ${over}, ${time}`;
  });
}

const FROM_WORDS: Readonly<Record<keyof LimitDays, string>> = {
  'period-end': 'the end of the period',
  issued: 'the day of the bill',
  due: 'the day it was due',
  paid: 'the day it was paid',
};

/** Whether a claim is in time, in a sentence. */
export function timeLimitWords(limit: LimitCheck, notation: ReportNotation): string {
  const { months, from, since, last, isInTime, isAssumed, clause } = limit;
  const assumed = isAssumed ? ', since the day of the rule is not known' : '';
  const counted = `${notation.number(months)} months from ${FROM_WORDS[from]}, ${dayWords(since, notation)}${assumed}`;
  const end = isInTime ? 'it can be claimed until' : 'the time to claim it ended on';
  return `By ${clause}, counted as ${counted}, ${end} ${dayWords(last, notation)}.`;
}
