import type { Finding } from '../quantity/index.ts';
import type { ExactFactor } from '../bill/index.ts';
import {
  compared,
  dividedBy,
  exactDecimal,
  exactParts,
  lessExact,
  printedPlaces,
  roundedText,
} from './exact-decimals.ts';
import { quoteFinding } from './findings.ts';
import type { FlyerDocument } from './flyer-document.ts';
import type { FlyerGround } from './flyer-ground.ts';
import { amountText, moneyText } from './money-text.ts';
import type { Quote } from './quote.ts';

/** The prices that a flyer reckons with: its own, else those of the quote. */
interface Prices {
  readonly whole: ExactFactor;
  readonly subsidy: ExactFactor;
  readonly net: ExactFactor;
}

function pricesOf({ price, netPrice }: FlyerDocument, { outlay, grid }: Quote): Prices {
  const whole = price === undefined ? exactParts(outlay.price, grid) : exactDecimal(price);
  const subsidy = exactParts(outlay.subsidy, grid);
  return { whole, subsidy, net: netPrice === undefined ? lessExact(whole, subsidy) : exactDecimal(netPrice) };
}

/** Whether the payback of a flyer is a price over its saving, to the digits it is printed with. */
function isPlainPayback({ claimedPayback, claimedSaving }: FlyerDocument, price: ExactFactor): boolean {
  if (claimedPayback === undefined || claimedSaving === undefined) return false;
  const years = dividedBy(price, exactDecimal(claimedSaving));
  if (years === null) return false;
  const printed = roundedText(years, printedPlaces(claimedPayback));
  return compared(exactDecimal(printed), exactDecimal(claimedPayback)) === 0;
}

function withoutUpkeep({ flyer, quote }: FlyerGround, { whole, net }: Prices): readonly Finding[] {
  const price = [net, whole].find((one) => isPlainPayback(flyer, one));
  if (price === undefined) return [];
  const { years, currency } = quote;
  const values = {
    payback: flyer.claimedPayback ?? '',
    price: moneyText(price, currency),
    saving: flyer.claimedSaving ?? '',
    cost: amountText(
      quote,
      years.reduce((sum, { cost }) => sum + cost, 0),
    ),
    years: String(years.length),
  };
  return [quoteFinding('quote/flyer-no-upkeep', { path: ['claimedPayback'] }, values)];
}

/** A net price that is named, or else one that the payback was worked out with. */
function withSubsidy({ flyer, quote }: FlyerGround, { whole, subsidy, net }: Prices): readonly Finding[] {
  if (quote.outlay.subsidy <= 0) return [];
  const isNamed = flyer.netPrice !== undefined;
  const isAssumed = isNamed
    ? compared(net, lessExact(whole, subsidy)) === 0
    : isPlainPayback(flyer, net) && !isPlainPayback(flyer, whole);
  if (!isAssumed) return [];
  const text = (value: ExactFactor): string => moneyText(value, quote.currency);
  const values = { net: text(net), price: text(whole), subsidy: text(subsidy) };
  const path = [isNamed ? 'netPrice' : 'claimedPayback'];
  return [quoteFinding('quote/flyer-subsidy-assumed', { path }, values)];
}

/**
 * What is asked about the price and the payback that a flyer claims: nothing taken off for upkeep, a subsidy taken
 * for received.
 *
 * A payback is compared to the digits it is printed with, rounded half-up; prices exactly. Prices that the flyer does
 * not name are those of the quote.
 */
export function priceFlags(ground: FlyerGround): readonly Finding[] {
  const prices = pricesOf(ground.flyer, ground.quote);
  return [...withoutUpkeep(ground, prices), ...withSubsidy(ground, prices)];
}
