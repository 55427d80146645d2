import type { DrawSummary, Quote, QuoteDocument, QuoteResult } from '@unitbook/engine';
import { headEntry } from './head-entry.ts';
import { paybackWords, type QuoteWriter } from './quote-writer.ts';

/** "4 months after the start" */
export function afterStart(months: string): string {
  if (/^0+$/.test(months)) return 'at the start';
  return `${months} ${months === '1' ? 'month' : 'months'} after the start`;
}

function drawnPayback(
  { count, unbilled, payback, never }: DrawSummary,
  { years, number }: QuoteWriter,
): string {
  const seldom =
    never === 0 ? '' : ` In ${number(String(never))} of them the price does not come back within the life.`;
  const leftOut =
    unbilled === 0 ? '' : ` ${number(String(unbilled))} more could not be billed and are left out.`;
  return (
    `Of ${number(String(count))} random draws half come to ${years(payback.p50)} at most (P50), ` +
    `three in four to ${years(payback.p75)} (P75), nine in ten to ${years(payback.p90)} (P90).${seldom}${leftOut}`
  );
}

const NOTHING_HOME = 'with nothing used at home';
const MOST_HOME = 'with as much used at home as use and generation allow';

/** A figure, or the two ends of it where own use is not known. */
function rangeText(least: string, most: string | undefined): string {
  if (most === undefined) return least;
  if (most === least) return `${least}, however much is used at home`;
  return `${least} ${NOTHING_HOME}, ${most} ${MOST_HOME}`;
}

function paybackText({ quote, mostOwnUse, draws }: QuoteResult, writer: QuoteWriter): string {
  const { measures, input } = quote;
  const most = mostOwnUse === null ? undefined : paybackWords(mostOwnUse.measures.simple, writer);
  const simple = rangeText(paybackWords(measures.simple, writer), most);
  const end = most === undefined ? '' : `, ${NOTHING_HOME}`;
  const discounted = `discounted at ${writer.number(input.document.discountRate)} % a year${end}: ${paybackWords(measures.discounted, writer)}`;
  const drawn = draws === null ? '' : ` ${drawnPayback(draws, writer)}`;
  return `${simple}; ${discounted}.${drawn}`;
}

function savingText({ quote, mostOwnUse, draws }: QuoteResult, { money, drawn }: QuoteWriter): string {
  const [first] = quote.years;
  const most = mostOwnUse?.years[0]?.saving;
  if (first === undefined) return '';
  const surplus = first.surplus === 0 ? '' : ` (${money(first.surplus)} of it surplus paid out)`;
  const text = (amount: number): string => `${money(amount)} in year 1`;
  const saving = rangeText(text(first.saving), most === undefined ? undefined : text(most));
  const random =
    draws === null
      ? ''
      : ` Of the draws half save ${drawn(draws.saving.p50)} or more, three in four ${drawn(draws.saving.p75)}, nine in ten ${drawn(draws.saving.p90)}.`;
  return `${saving}${surplus}; after upkeep ${money(first.net)}.${random}`;
}

function billText({ measures, years }: Quote, { money }: QuoteWriter): string {
  const { smallestBill, largestBill } = measures;
  const all = money(years[0]?.after ?? 0);
  if (smallestBill > 0)
    return (
      `${money(smallestBill)} is the smallest bill of a month that stays in year 1, ${money(largestBill)} the ` +
      `largest; all twelve come to ${all}.`
    );
  return (
    `${all} of bills stay in year 1; the largest of a month is ${money(largestBill)}. In some months nothing is ` +
    `left to pay (${money(smallestBill)}).`
  );
}

function subsidyText({ paidAfter, to }: NonNullable<QuoteDocument['subsidy']>, amount: string): string {
  const when = afterStart(paidAfter);
  const isLater = when.endsWith('after the start');
  return isLater
    ? ` The subsidy of ${amount} comes later, ${when}, to the ${to}.`
    : ` The subsidy of ${amount} is paid ${when}, to the ${to}; it is not taken off here.`;
}

function firstDayText({ dayOne, outlay, input }: Quote, { money }: QuoteWriter): string {
  const { price, borrowed, fees, cash } = dayOne;
  const { subsidy } = input.document;
  const less = borrowed === 0 ? '' : `, ${money(borrowed)} of it borrowed`;
  const more = fees === 0 ? '' : `, and ${money(fees)} of fees for the loan`;
  const later = subsidy === undefined ? '' : subsidyText(subsidy, money(outlay.subsidy));
  return `${money(cash)} in cash: the price is ${money(price)}${less}${more}.${later}`;
}

/** What a reader asks first: payback, saving, the bill that stays, the cash of the first day. */
export function answerLines(result: QuoteResult, writer: QuoteWriter): readonly string[] {
  const { quote } = result;
  return [
    ...headEntry('Payback', paybackText(result, writer)),
    ...headEntry('Saving', savingText(result, writer)),
    ...headEntry('Bill left', billText(quote, writer)),
    ...headEntry('First day', firstDayText(quote, writer)),
  ];
}
