import { exactText, type Finding } from '../quantity/index.ts';
import { compared, exactDecimal, exactParts } from './exact-decimals.ts';
import { timesFactor } from './factors.ts';
import { quoteFinding } from './findings.ts';
import { firstYear, savingLimits } from './first-year.ts';
import { commonRate, isAllAt, unitsReckoned, type FlyerGround } from './flyer-ground.ts';
import { amountText } from './money-text.ts';
import { promisingWords, quotedWords, saysZeroBill } from './promising-words.ts';

/** What surplus brings counts with the bills: a flyer that reckons as the quote does is not asked. */
function aboveBills({ flyer, quote, facts }: FlyerGround): readonly Finding[] {
  const { claimedSaving: saving } = flyer;
  if (saving === undefined) return [];
  const { surplus } = firstYear(quote);
  const { bills } = savingLimits(quote, facts);
  if (compared(exactDecimal(saving), exactParts(bills + surplus, quote.grid)) <= 0) return [];
  const values = {
    saving,
    bills: amountText(quote, bills),
    surplus: surplus > 0 ? amountText(quote, surplus) : '',
  };
  return [quoteFinding('quote/flyer-saving-above-bills', { path: ['claimedSaving'] }, values)];
}

function atTopRate(ground: FlyerGround): readonly Finding[] {
  const { flyer, quote, facts } = ground;
  const { topRate } = facts;
  if (topRate === null) return [];
  const { claimedRate } = flyer;
  const isClaimed =
    claimedRate !== undefined && compared(exactDecimal(claimedRate), exactDecimal(topRate)) === 0;
  const isSaving = isAllAt(ground, topRate);
  if (!isClaimed && !isSaving) return [];
  const { numerator, denominator } = unitsReckoned(ground);
  const values = {
    made: exactText(numerator, Number.parseInt(denominator.toString(), 10)),
    rate: topRate,
    saving: amountText(quote, firstYear(quote).saving),
  };
  const path = [isSaving ? 'claimedSaving' : 'claimedRate'];
  return [quoteFinding('quote/flyer-top-rate', { path }, values)];
}

function withoutFixed({ flyer, quote, facts }: FlyerGround): readonly Finding[] {
  const { claimedSaving: saving, monthlyBillAfter: bill, words = '' } = flyer;
  const { grid, measures } = quote;
  const { fixed, most, basis } = savingLimits(quote, facts);
  if (fixed <= 0) return [];
  const can = exactParts(most + firstYear(quote).surplus, grid);
  const isSaved = saving !== undefined && compared(exactDecimal(saving), can) > 0;
  const twelve = timesFactor(exactDecimal(bill ?? '0'), exactDecimal('12'));
  const isBelow = bill !== undefined && compared(twelve, exactParts(fixed, grid)) < 0;
  if (!isSaved && !isBelow) return [];
  const values = {
    saving: isSaved ? saving : '',
    bill: isBelow ? bill : '',
    words: quotedWords(promisingWords(words).filter(saysZeroBill)),
    fixed: amountText(quote, fixed),
    basis,
    smallest: amountText(quote, measures.smallestBill),
  };
  const path = [isSaved ? 'claimedSaving' : 'monthlyBillAfter'];
  return [quoteFinding('quote/flyer-fixed-charges', { path }, values)];
}

/** Whether a rate for every unit is more than what surplus brings, where there is surplus at all. */
function isAbovePaid({ quote, facts }: FlyerGround, rate: string): boolean {
  const { surplus, generation, use } = firstYear(quote);
  // What is made beyond the use of the year is surplus under every rule of netting.
  const left = Math.max(0, generation - use);
  const paid = facts.surplusRate ?? null;
  if (paid !== null) return surplus + left > 0 && compared(exactDecimal(rate), exactDecimal(paid)) > 0;
  const worth = timesFactor(exactDecimal(rate), exactParts(left, 1000));
  return compared(worth, exactParts(surplus, quote.grid)) > 0;
}

function atRetail(ground: FlyerGround): readonly Finding[] {
  const { flyer, quote, facts } = ground;
  const rate = commonRate(ground);
  if (rate === null || !isAbovePaid(ground, rate)) return [];
  const surplus = amountText(quote, firstYear(quote).surplus);
  const path = [flyer.claimedRate === undefined ? 'claimedSaving' : 'claimedRate'];
  const paid = facts.surplusRate ?? '';
  return [quoteFinding('quote/flyer-surplus-at-retail', { path }, { rate, surplus, paid })];
}

/**
 * What is asked about the saving and the bills that a flyer claims: above the whole bill, every unit at the highest
 * rate, fixed charges left out, surplus at the price of a unit bought.
 *
 * All comparisons are exact. A flyer may count what surplus brings by the quote, so that one that reckons as the
 * quote does is not asked. "Zero bill" is told with the fixed charges where those are asked about.
 */
export function billFlags(ground: FlyerGround): readonly Finding[] {
  return [...aboveBills(ground), ...atTopRate(ground), ...withoutFixed(ground), ...atRetail(ground)];
}
