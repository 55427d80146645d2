import {
  countOfRates,
  leftAfterInstalment,
  projectionText,
  wholeToDecimal,
  type Quote,
} from '@unitbook/engine';
import { headEntry } from './head-entry.ts';
import { paybackWords, type QuoteWriter } from './quote-writer.ts';

type Entry = readonly [label: string, text: string];

function returnText({ measures, input }: Quote, { percent, number }: QuoteWriter): string {
  const { rates } = measures.rates;
  const texts = rates.map(percent);
  const modified =
    measures.modifiedRate === null
      ? ''
      : ` The modified rate, with money paid and put by at ${number(input.document.discountRate)} %: ${percent(measures.modifiedRate)}.`;
  switch (countOfRates(measures.rates)) {
    case 'none':
      return `no rate: at none is the value now 0.${modified}`;
    case 'one':
      return `${texts.join('')} a year: the one rate at which the value now is 0 (internal rate of return).${modified}`;
    case 'several':
      return `several rates, ${texts.join(', ')}: none of them says whether it pays, the value now does.${modified}`;
  }
}

function netPriceText({ outlay }: Quote, { money }: QuoteWriter): string {
  const { price, subsidy } = outlay;
  if (subsidy === 0) return `${money(price)}: no subsidy is taken off`;
  return `${money(price - subsidy)}: ${money(price)} less the subsidy, as if it came on the first day`;
}

const KINDS = { reducing: 'on what is still owed', flat: 'flat, on the whole amount to the end' } as const;

function loanText(quote: Quote, writer: QuoteWriter): string {
  const { loan, input } = quote;
  const left = leftAfterInstalment(quote);
  const terms = input.document.loan;
  if (loan === null || left === null || terms === undefined) return 'none';
  const text = (amount: number): string => writer.amount(wholeToDecimal(amount, loan.places));
  const fees = loan.fees === 0 ? '' : ` and ${text(loan.fees)} of fees`;
  const isShort = left.numerator < 0;
  const size = writer.quotient(isShort ? { ...left, numerator: -BigInt(left.numerator) } : left);
  return (
    `${writer.amount(terms.amount)} at ${writer.number(terms.rate)} % a year ${KINDS[terms.kind]}: ` +
    `${writer.number(terms.months)} instalments of ${text(loan.instalment)}, ${text(loan.paid)} in all, ` +
    `${text(loan.interest)} of it interest${fees}. A month of year 1 saves ${size} ${isShort ? 'less' : 'more'} ` +
    'than its instalment, after upkeep and on the average.'
  );
}

/** What a battery brings by itself, so that the plant does not pay for it unseen. */
function batteryEntry({ battery }: Quote, writer: QuoteWriter): readonly Entry[] {
  if (battery === null) return [];
  const { money } = writer;
  const own = { first: battery.payback, last: battery.paybackForGood };
  const text =
    `${money(battery.cost)} of the price; by itself it adds ${money(battery.saving)} to the saving of year 1. ` +
    `Its own payback: ${paybackWords(own, writer)}`;
  return [['Battery', text]];
}

function carbonText({ carbon, input, years }: Quote, { number }: QuoteWriter): string {
  const terms = input.document.carbon;
  if (carbon === null || terms === undefined) return 'no factor is given';
  const kilograms = (text: string): string => number(text.replace(/\.?0+$/, ''));
  return (
    `${kilograms(carbon.year)} kg in year 1, ${kilograms(carbon.life)} kg in ${String(years.length)} years: ` +
    `what is made times ${number(terms.factor)} kg a kWh (${terms.version}; ${terms.variant})`
  );
}

/** What the years of a quote come to, the loan, and CO2. */
export function comesToLines(quote: Quote, writer: QuoteWriter): readonly string[] {
  const { measures, input } = quote;
  const { number, money } = writer;
  const { levelisedCost, benefitCost } = measures;
  const places = writer.notation.moneyPlaces;
  const ratio = (value: number | null, digits: number): string =>
    value === null ? 'not defined' : number(projectionText(value, digits));
  const discount = number(input.document.discountRate);
  const entries: readonly Entry[] = [
    ['Net price', netPriceText(quote, writer)],
    [
      'Life',
      `${money(measures.lifeNet)} over ${String(input.years)} years: all net savings less the net price`,
    ],
    [
      'Value now',
      `${money(measures.netPresentValue)}: the same with later years discounted at ${discount} % a year (net present value)`,
    ],
    ['Return', returnText(quote, writer)],
    [
      'Unit cost',
      `${ratio(levelisedCost, places)} for a kWh: all costs over all units made, both discounted (levelised cost)`,
    ],
    ['Ratio', `${ratio(benefitCost, 2)} saved for each 1 paid, both discounted (benefit-cost ratio)`],
    ['Loan', loanText(quote, writer)],
    ...batteryEntry(quote, writer),
    ['CO2', carbonText(quote, writer)],
  ];
  return entries.flatMap(([label, text]) => headEntry(label, text));
}
