import { leftAfterInstalment, type DrawSummary, type Payback, type Quote } from '@unitbook/engine';
import { ENGLISH_SENTENCES } from '../words/english-sentences.ts';
import { isOwedAgain, paybackText } from '../words/payback-text.ts';
import type { QuoteWriting } from './quote-writing.ts';

/** A line of the answer. */
export interface AnswerLine {
  readonly key: string;
  readonly label: string;
  readonly value: string;
  /** What has to be read with it; '' for nothing. */
  readonly note: string;
}

type Crossings = Pick<Payback, 'first' | 'last'>;

/** A number of years in words; null and Infinity are that something does not come within the life. */
export function yearsWords(years: number | null, writing: QuoteWriting): string {
  return years === null || years === Infinity ? ENGLISH_SENTENCES.never : `${writing.years(years)} years`;
}

/** When a price has come back, in words, and whether it is owed again after that. */
export const paybackWords = (payback: Crossings, writing: QuoteWriting): string =>
  paybackText(payback, ENGLISH_SENTENCES, (years) => yearsWords(years, writing));

/** The range that eight of ten draws are in at the longer side: from the middle to P90. */
export function paybackRange({ payback }: DrawSummary, writing: QuoteWriting): string {
  const { p50, p90 } = payback;
  const to = yearsWords(p90, writing);
  return p50 === Infinity
    ? to
    : p90 === Infinity
      ? `${writing.years(p50)} years, or ${to}`
      : `${writing.years(p50)} to ${to}`;
}

/** Why a payback can come twice. */
const AGAIN = ' It is owed again once something is replaced.';

/** Beside P50 and P90 what lies between them, and how many draws there were. */
const drawnNote = ({ payback, count }: DrawSummary, plain: string, writing: QuoteWriting): string =>
  `P50 to P90 of ${writing.number(String(count))} draws; P75: ${yearsWords(payback.p75, writing)}. As quoted, without chance: ${plain}.`;

function paybackLine(quote: Quote, { draws, mostOwnUse }: AnswerRange, writing: QuoteWriting): AnswerLine {
  const { simple, discounted } = quote.measures;
  const plain = paybackWords(simple, writing);
  const isAgain = isOwedAgain(simple);
  const discount = writing.number(quote.input.document.discountRate);
  const later = `Discounted at ${discount} %: ${paybackWords(discounted, writing)}.${isAgain ? AGAIN : ''}${otherEnd(plain, mostOwnUse && paybackWords(mostOwnUse.measures.simple, writing))}`;
  const line = { key: 'payback', label: 'Paid back after' };
  if (draws === null) return { ...line, value: plain, note: later };
  const range = paybackRange(draws, writing);
  return {
    ...line,
    // Draws count to the first time.
    value: isAgain ? ENGLISH_SENTENCES.atFirst(range) : range,
    note: `${drawnNote(draws, plain, writing)} ${later}`,
  };
}

/** What the draws say of the saving; '' without draws. */
function savedNote(draws: DrawSummary | null, { about }: QuoteWriting): string {
  if (draws === null) return '';
  const { p50, p75, p90 } = draws.saving;
  return ` Of the draws half save ${about(p50)} or more (P50), three in four ${about(p75)} (P75), nine in ten ${about(p90)} (P90).`;
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

/** What is worked out besides the quote itself; null: not yet, or there is no such thing. */
export interface AnswerRange {
  readonly draws: DrawSummary | null;
  /** The other end of a quote whose own use is not known: as much of it as use and generation allow. */
  readonly mostOwnUse: Quote | null;
}

/** The other end of a figure whose own use is not known: what it says with as much own use as there can be. */
function otherEnd(least: string, most: string | null): string {
  if (most === null) return '';
  return most === least
    ? ' However much is used at home as it is made.'
    : ` With nothing used at home as it is made; with as much as use and generation allow: ${most}.`;
}

/** The answer, line by line. */
export function answerOf(
  quote: Quote,
  { draws, mostOwnUse }: AnswerRange,
  writing: QuoteWriting,
): readonly AnswerLine[] {
  const { years, measures, dayOne } = quote;
  const [first] = years;
  const saved = writing.cash(first?.saving ?? 0);
  const mostSaved = mostOwnUse && writing.cash(mostOwnUse.years[0]?.saving ?? 0);
  const { price, borrowed } = dayOne;
  const lent = borrowed === 0 ? '' : `, of which ${writing.cash(borrowed)} is borrowed`;
  return [
    paybackLine(quote, { draws, mostOwnUse }, writing),
    {
      key: 'saving',
      label: 'Saved in the first year',
      value: saved,
      note: `Before upkeep of ${writing.cash(first?.cost ?? 0)}; surplus of ${writing.cash(first?.surplus ?? 0)} is in it.${otherEnd(saved, mostSaved)}${savedNote(draws, writing)}`,
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
