import { dayText, exactText, minorUnitDigits, wholeToDecimal, type Finding } from './quantity/index.ts';
import {
  countOfRates,
  type DrawSummary,
  type Exceeded,
  type FlyerLine,
  type Payback,
  type Quote,
} from './quote/index.ts';
import type { TariffResult } from './quote-tariffs.ts';
import {
  comesTo,
  leftAfterInstalment,
  optionalText,
  PROJECTION_PLACES,
  projectionText,
  quoteTables,
  type QuoteResult,
} from './quote-tables.ts';

function exceededTexts({ p10, p25, p50, p75, p90 }: Exceeded, places: number) {
  const [t10, t25, t50, t75, t90] = [p10, p25, p50, p75, p90].map((value) => optionalText(value, places));
  return { p10: t10, p25: t25, p50: t50, p75: t75, p90: t90 };
}

const paybackDocument = ({ first, last, crossings }: Payback) => ({
  first: optionalText(first, PROJECTION_PLACES.years),
  last: optionalText(last, PROJECTION_PLACES.years),
  crossings: crossings.map(({ at, recovered }) => ({
    at: projectionText(at, PROJECTION_PLACES.years),
    recovered,
  })),
});

function measuresDocument(quote: Quote) {
  const { measures, outlay } = quote;
  return {
    ...comesTo(quote),
    netPrice: exactText(outlay.price - outlay.subsidy, quote.grid),
    countOfRates: countOfRates(measures.rates),
    payback: paybackDocument(measures.simple),
    discountedPayback: paybackDocument(measures.discounted),
    modifiedRate: optionalText(measures.modifiedRate, PROJECTION_PLACES.part),
    levelisedCost: optionalText(measures.levelisedCost, PROJECTION_PLACES.perUnit),
    benefitCost: optionalText(measures.benefitCost, PROJECTION_PLACES.perUnit),
  };
}

function loanDocument(quote: Quote) {
  const { loan, input } = quote;
  const left = leftAfterInstalment(quote);
  if (loan === null || left === null) return null;
  const text = (amount: number): string => wholeToDecimal(amount, loan.places);
  return {
    ...input.document.loan,
    instalment: text(loan.instalment),
    paid: text(loan.paid),
    interest: text(loan.interest),
    fees: text(loan.fees),
    cost: text(loan.cost),
    leftInMonth: exactText(left.numerator, left.denominator),
  };
}

function drawsDocument(draws: DrawSummary, places: number) {
  return {
    count: String(draws.count),
    never: String(draws.never),
    payback: exceededTexts(draws.payback, PROJECTION_PLACES.years),
    saving: exceededTexts(draws.saving, places),
    lifeNet: exceededTexts(draws.lifeNet, places),
  };
}

function batteryDocument({ battery, grid }: Quote) {
  if (battery === null) return null;
  const { cost, saving, payback } = battery;
  return {
    cost: exactText(cost, grid),
    saving: exactText(saving, grid),
    payback: optionalText(payback, PROJECTION_PLACES.years),
  };
}

function dayOneDocument(quote: Quote) {
  const { dayOne, outlay, grid } = quote;
  const money = (amount: number): string => exactText(amount, grid);
  return {
    price: money(dayOne.price),
    borrowed: money(dayOne.borrowed),
    fees: money(dayOne.fees),
    cash: money(dayOne.cash),
    items: outlay.items.map(({ item, amount, tax }) => ({ item, amount: money(amount), tax: money(tax) })),
    subsidy: money(outlay.subsidy),
  };
}

function tariffResultDocument({ id, name, quote, findings, unknownCharges }: TariffResult) {
  const [first] = quote?.years ?? [];
  const told = { id, name, findings, unknownCharges };
  if (quote === null || first === undefined) return { ...told, before: null, after: null, comesTo: null };
  const money = (amount: number): string => exactText(amount, quote.grid);
  return {
    ...told,
    before: money(first.before),
    after: money(first.after),
    comesTo: measuresDocument(quote),
  };
}

/** What is told of a quote besides what it comes to. */
export interface ToldOfQuote {
  /** The id of the tariff. */
  readonly tariff: string;
  /** null: there is no flyer. */
  readonly flyer: readonly FlyerLine[] | null;
  /** The quote under other tariffs. */
  readonly others: readonly TariffResult[];
  readonly findings: readonly Finding[];
}

/** A quote worked out as JSON, every number as text. */
export type QuoteResultDocument = ReturnType<typeof quoteResultDocument>;

/**
 * Put a quote, what it comes to, its cases, sizes and draws into a plain object for JSON, every number as text:
 * money and units exact, projections rounded as {@link quoteTables} does.
 *
 * @param told  the id of the tariff, the claims of a flyer beside the quote, and what was found in all of it
 */
export function quoteResultDocument(result: QuoteResult, { tariff, flyer, others, findings }: ToldOfQuote) {
  const { quote, mostOwnUse, draws, sizes } = result;
  const { input, currency, carbon } = quote;
  const places = minorUnitDigits(currency) ?? 2;
  const { band, ...tables } = quoteTables(result, places);
  const mark = sizes.onlySurplusFrom;
  return {
    format: 'unitbook-quote-result-1',
    tariff,
    currency,
    start: dayText(input.start),
    dayOne: dayOneDocument(quote),
    comesTo: measuresDocument(quote),
    mostOwnUse: mostOwnUse === null ? null : measuresDocument(mostOwnUse),
    loan: loanDocument(quote),
    battery: batteryDocument(quote),
    carbon: carbon === null ? null : { ...input.document.carbon, ...carbon },
    ...tables,
    onlySurplusFrom: mark === null ? null : exactText(mark.watts, 1000),
    draws: draws === null ? null : { ...drawsDocument(draws, places), band },
    flyer,
    tariffs: others.map(tariffResultDocument),
    findings,
  };
}
