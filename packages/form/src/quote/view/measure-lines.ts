import { countOfRates, projectionText, type Quote } from '@unitbook/engine';
import { ENGLISH_CASES } from '../words/english-sentences.ts';
import { returnText } from '../words/payback-text.ts';
import type { AnswerLine } from './answer-view.ts';
import type { QuoteWriting } from './quote-writing.ts';

const UNDEFINED = 'not defined';

/** What is said with none, one or several rates of return. */
const OF_RETURNS = {
  none: 'At no rate is the present value 0.',
  one: 'The one rate at which the present value is 0 (internal rate of return).',
  several: ENGLISH_CASES.ofSeveral,
} as const;

/** The rate of return, and the modified one, which is always one. */
function returnLines(
  { measures }: Quote,
  discount: string,
  { percent }: QuoteWriting,
): readonly AnswerLine[] {
  const { rates, modifiedRate } = measures;
  return [
    {
      key: 'return',
      label: 'Rate of return, a year',
      value: returnText(rates, ENGLISH_CASES, percent),
      note: OF_RETURNS[countOfRates(rates)],
    },
    {
      key: 'modified',
      label: 'Modified rate of return',
      value: modifiedRate === null ? UNDEFINED : percent(modifiedRate),
      note: `With money paid and put by at ${discount}.`,
    },
  ];
}

/** What is not emitted elsewhere, by the factor that the quote names; none without one. */
function carbonLine({ carbon, input }: Quote, { number }: QuoteWriting): readonly AnswerLine[] {
  const said = input.document.carbon;
  if (carbon === null || said === undefined) return [];
  const kilograms = (text: string): string => `${number(text.replace(/\.?0+$/, ''))} kg`;
  return [
    {
      key: 'carbon',
      label: 'CO₂ in the first year',
      value: kilograms(carbon.year),
      note: `${kilograms(carbon.life)} over the life, at ${number(said.factor)} kg a unit: ${said.version}; ${said.variant}.`,
    },
  ];
}

/**
 * What a quote comes to besides its answer: present value, rates of return, the cost of a unit, savings over costs, CO2.
 * Money as the quote rounds it; what compares amounts over time is shown to two decimals.
 */
export function measureLines(quote: Quote, writing: QuoteWriting): readonly AnswerLine[] {
  const { measures, input } = quote;
  const { netPresentValue, levelisedCost, benefitCost } = measures;
  const discount = `${writing.number(input.document.discountRate)} % a year`;
  const shown = (value: number | null, write: (text: string) => string): string =>
    value === null ? UNDEFINED : write(projectionText(value, 2));
  return [
    {
      key: 'present',
      label: 'Present value',
      value: writing.cash(netPresentValue),
      note: `All net savings less the net price, later years discounted at ${discount}.`,
    },
    ...returnLines(quote, discount, writing),
    {
      key: 'levelised',
      label: 'Cost of a unit made',
      value: shown(levelisedCost, writing.money),
      note: 'All costs over all units made, both discounted (levelised cost).',
    },
    {
      key: 'benefit',
      label: 'Saved for each 1 paid',
      value: shown(benefitCost, writing.number),
      note: 'All savings over all costs, both discounted (benefit-cost ratio).',
    },
    ...carbonLine(quote, writing),
  ];
}
