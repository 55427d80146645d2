import { leftAfterInstalment, type DrawSummary, type Quote } from '@unitbook/engine';
import type { QuoteWriting } from './quote-writing.ts';

/** A line of the answer. */
export interface AnswerLine {
  readonly key: string;
  readonly label: string;
  readonly value: string;
  /** What has to be read with it; '' for nothing. */
  readonly note: string;
}

/** Years until the price has come back, in words. */
export function paybackText(years: number | null, writing: QuoteWriting): string {
  return years === null || years === Infinity ? 'not within the life' : `${writing.years(years)} years`;
}

/** The range that eight of ten draws are in at the longer side: from the middle to P90. */
export function paybackRange({ payback }: DrawSummary, writing: QuoteWriting): string {
  const { p50, p90 } = payback;
  const to = paybackText(p90, writing);
  return p50 === Infinity
    ? to
    : p90 === Infinity
      ? `${writing.years(p50)} years, or ${to}`
      : `${writing.years(p50)} to ${to}`;
}

function paybackLine(quote: Quote, draws: DrawSummary | null, writing: QuoteWriting): AnswerLine {
  const { simple, discounted } = quote.measures;
  const later = `Discounted at ${writing.number(quote.input.document.discountRate)} %: ${paybackText(discounted.first, writing)}.`;
  const simpleText = paybackText(simple.first, writing);
  if (draws === null) return { key: 'payback', label: 'Paid back after', value: simpleText, note: later };
  return {
    key: 'payback',
    label: 'Paid back after',
    value: paybackRange(draws, writing),
    note: `P50 to P90 of ${writing.number(String(draws.count))} draws. As quoted, without chance: ${simpleText}. ${later}`,
  };
}

/** What a month leaves once upkeep and the instalment are paid, or what has to be added. */
function leftText(quote: Quote, writing: QuoteWriting): string {
  const left = leftAfterInstalment(quote);
  if (left === null) return '';
  const text = writing.share(left);
  return text.startsWith('−')
    ? ` After upkeep it has to be topped up: ${text} a month in the mean.`
    : ` After upkeep and the instalment ${text} a month is left in the mean.`;
}

function loanLine(quote: Quote, writing: QuoteWriting): readonly AnswerLine[] {
  const { loan, years, grid } = quote;
  const [first] = years;
  if (loan === null || first === undefined) return [];
  const monthly = writing.share({ numerator: first.saving, denominator: grid * 12 });
  return [
    {
      key: 'instalment',
      label: 'Instalment each month',
      value: writing.share({ numerator: loan.instalment, denominator: 10 ** loan.places }),
      note: `For ${String(loan.lines.length)} months. Against it the bills of the first year are lower by ${monthly} a month in the mean; each month differs.${leftText(quote, writing)}`,
    },
  ];
}

/** When the subsidy comes, which is not on the first day. */
function subsidyNote({ outlay, input }: Quote, writing: QuoteWriting): string {
  const { subsidy } = input.document;
  if (subsidy === undefined || outlay.subsidy === 0) return '';
  const who = subsidy.to === 'customer' ? 'you' : 'the seller';
  return ` The subsidy of ${writing.cash(outlay.subsidy)} comes later, to ${who}: ${writing.number(subsidy.paidAfter)} months after the start, if it is granted.`;
}

/** The answer, line by line. */
export function answerOf(
  quote: Quote,
  draws: DrawSummary | null,
  writing: QuoteWriting,
): readonly AnswerLine[] {
  const { years, measures, dayOne } = quote;
  const [first] = years;
  const { price, borrowed } = dayOne;
  const lent = borrowed === 0 ? '' : `, of which ${writing.cash(borrowed)} is borrowed`;
  return [
    paybackLine(quote, draws, writing),
    {
      key: 'saving',
      label: 'Saved in the first year',
      value: writing.cash(first?.saving ?? 0),
      note: `Before upkeep of ${writing.cash(first?.cost ?? 0)}; surplus of ${writing.cash(first?.surplus ?? 0)} is in it.`,
    },
    {
      key: 'smallest',
      label: 'Smallest bill that stays',
      value: writing.cash(measures.smallestBill),
      note: `The largest is ${writing.cash(measures.largestBill)}. Bills vary, and never become nothing: fixed charges, minimum and taxes stay.`,
    },
    {
      key: 'cash',
      label: 'Cash on the first day',
      value: writing.cash(dayOne.cash),
      note: `The price is ${writing.cash(price)}${lent}.${subsidyNote(quote, writing)}`,
    },
    ...loanLine(quote, writing),
  ];
}
