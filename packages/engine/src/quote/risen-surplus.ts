import {
  dayText,
  exactText,
  isDecimalText,
  roundLargeQuotient,
  wholeToDecimal,
  type Rounding,
} from '../quantity/index.ts';
import type { ExactFactor } from '../bill/index.ts';
import type { Price, TariffDocument } from '../tariff/index.ts';
import { yearStart } from './cases.ts';
import type { QuoteDocument } from './document/quote-document.ts';
import { exactDecimal } from './exact-decimals.ts';
import { percentFactor } from './factors.ts';
import type { QuoteInput } from './quote-input.ts';
import { rateFactors } from './rate-factors.ts';

type SurplusRise = NonNullable<QuoteDocument['escalation']['surplus']>;
type Settlement = TariffDocument['settlements'][number];

/** Decimals of the factor that a rate worked out from other prices is multiplied by. */
const FACTOR_PLACES = 8;
const FACTOR = 'rise-of-surplus';
const RISEN = 'risen-surplus-';

function decimalFactor({ numerator, denominator }: ExactFactor): string {
  const scale = 10n ** BigInt(FACTOR_PLACES);
  return wholeToDecimal(roundLargeQuotient(numerator * scale, denominator, 'half-up'), FACTOR_PLACES);
}

/** A rate times a factor, rounded once; until it rises, as the tariff writes it. */
function risenRate(rate: string, factor: ExactFactor, { step, mode }: Rounding): string {
  if (factor.numerator === factor.denominator) return rate;
  const own = exactDecimal(rate);
  const each = exactDecimal(step);
  const top = own.numerator * factor.numerator * each.denominator;
  const steps = roundLargeQuotient(top, own.denominator * factor.denominator * each.numerator, mode);
  return exactText(steps * each.numerator, Number.parseInt(each.denominator.toString(), 10));
}

/** What a settlement pays for, with every rate replaced. */
function withRates(rule: Settlement, replaced: (rate: string, clause: string) => string): Settlement {
  if (rule.scheme === 'unit-netting') {
    const { close } = rule;
    if (close.rate === undefined) return rule;
    return { ...rule, close: { ...close, rate: replaced(close.rate, close.clause) } };
  }
  if (rule.ledgers === undefined) return rule;
  const ledgers = rule.ledgers.map((ledger) => {
    const { payment } = ledger;
    if (payment?.rate === undefined) return ledger;
    return { ...ledger, payment: { ...payment, rate: replaced(payment.rate, payment.clause) } };
  });
  return { ...rule, ledgers };
}

/** Prices of the life: a dated list for each rate, and the factor of those that follow other prices. */
class RisenPrices {
  readonly prices: Record<string, Price>;
  private readonly names = new Map<string, string>();
  private readonly days: readonly string[];
  private readonly factors: readonly ExactFactor[];
  private readonly rounding: Rounding;

  constructor(document: TariffDocument, { percent, step }: SurplusRise, input: RiseTerms) {
    this.prices = { ...document.prices };
    this.rounding = { step, mode: 'half-up' };
    this.factors = rateFactors(input, percentFactor(percent)).exact;
    const first = document.settlements.map(({ from }) => from).reduce((one, two) => (one < two ? one : two));
    const starts = this.factors.map((_, year) => dayText(yearStart(input.start, year + 1)));
    this.days = starts.map((day, year) => (year === 0 && first < day ? first : day));
  }

  private series(clause: string, rateOf: (factor: ExactFactor) => string): Price {
    const values = this.factors.map((factor, year) => ({
      from: this.days[year] ?? '',
      rate: rateOf(factor),
    }));
    return { is: 'series', clause, values, inForce: 'first-day' };
  }

  /** The name of a rate risen. */
  readonly named = (rate: string, clause: string): string => {
    const known = this.names.get(rate);
    if (known !== undefined) return known;
    const name = `${RISEN}${String(this.names.size + 1)}`;
    this.names.set(rate, name);
    const { rounding } = this;
    if (isDecimalText(rate)) {
      this.prices[name] = this.series(clause, (factor) => risenRate(rate, factor, rounding));
    } else {
      this.prices[FACTOR] ??= this.series(clause, decimalFactor);
      this.prices[name] = { is: 'product', clause, of: [rate, FACTOR], rounding };
    }
    return name;
  };
}

/** What rises are counted by. */
export type RiseTerms = Pick<QuoteInput, 'start' | 'years' | 'ratesOfYear'>;

/**
 * A tariff of a life under which what surplus is paid rises every year, half-up to the step of the quote: the rate of
 * the tariff times the whole factor, rounded once. Of a rate that follows other prices, the factor is rounded to
 * eight decimals first.
 *
 * @param rise  undefined: the tariff as it is
 */
export function withRisenSurplus(
  document: TariffDocument,
  rise: SurplusRise | undefined,
  input: RiseTerms,
): TariffDocument {
  if (rise === undefined) return document;
  const risen = new RisenPrices(document, rise, input);
  const settlements = document.settlements.map((rule) => withRates(rule, risen.named));
  return { ...document, settlements, prices: risen.prices };
}

/**
 * A rate of surplus as the tariff has it, before it rises.
 *
 * @example
 * rateBeforeRises({ prices: {} }, '2.50') //=> "2.50"
 */
export function rateBeforeRises({ prices }: Pick<TariffDocument, 'prices'>, rate: string): string {
  const price = rate.startsWith(RISEN) ? prices?.[rate] : undefined;
  if (price?.is === 'series') return price.values[0]?.rate ?? rate;
  return price?.is === 'product' ? (price.of[0] ?? rate) : rate;
}
