export { quoteSchema, type QuoteDocument } from './document/quote-document.ts';
export { MONTH_KEYS, type MonthKey } from './document/fields.ts';
export {
  lossFactor,
  nearestDouble,
  percentFactor,
  timesFactor,
  timesRounded,
  yearFactors,
  type YearFactors,
} from './factors.ts';
export type { MonthlyUnits, QuoteInput, Share } from './quote-input.ts';
export { makeLifeUnits, unitColumns, UNIT_COLUMNS, WIDTH, type LifeUnits } from './life-columns.ts';
export { lifePeriods } from './life-periods.ts';
export { fillUnits, type UnitsBasis } from './life-units.ts';
export { batteryOf, type Battery } from './own-use/battery.ts';
export { dispatch, emptyBattery, type Dispatched, type DispatchTerms } from './own-use/dispatch.ts';
export { shareSteps } from './own-use/largest-remainder.ts';
export { roundedUnits, type OwnUse } from './own-use/own-use.ts';
export type { PeriodShape } from './own-use/period-shape.ts';
export { ownUseOf, type OwnUseTerms } from './own-use/own-use-of.ts';
export { ownUseShares, type OwnUseShares, type UsedUnits } from './own-use/own-use-shares.ts';
export type { QuoteProfile, ReadProfile } from './own-use/profile.ts';
export { emptyMonths, readProfile } from './own-use/read-profile.ts';
export { selfUsed } from './own-use/share-use.ts';
export * from './finance/index.ts';
export { checkQuote, readQuote, shareOf } from './check-quote.ts';
export { dayOneOf, grown, instalmentsIn, loanOf, upkeepFactors, yearCosts, type YearCosts } from './costs.ts';
export { QUOTE_FINDINGS, quoteFinding, type QuoteFindingCode } from './findings.ts';
export { exactPresentValue, measuresOf, rateOf } from './measures.ts';
export { bySize, moneyGrid, onGrid, outlayOf, percentOf, type Outlay as QuoteOutlay } from './outlay.ts';
export type {
  BatteryResult,
  DayOne,
  Quote,
  OwnUseBasis,
  QuoteMeasures,
  QuoteMonth,
  QuoteYear,
} from './quote.ts';
export {
  chargesThatRise,
  inputOfCase,
  usualCases,
  withSettlement,
  yearStart,
  type CaseChange,
  type QuoteCase,
} from './cases.ts';
export { drawSource, drawTerms, makeDraw, type Draw, type DrawSource, type DrawTerms } from './draw-terms.ts';
export { fillDrawnUnits, type DrawBasis } from './draw-units.ts';
export {
  joinDraws,
  summariseDraws,
  type Band,
  type DrawResults,
  type DrawSummary,
  type Exceeded,
} from './draw-summary.ts';
export {
  generationBand,
  monthAfter,
  PROMISE_CAUSES,
  type CausePart,
  type GenerationBand,
  type PeriodMoney,
  type PeriodUnits,
  type PromiseCause,
  type PromisedPeriod,
  type PromiseReport,
  type RestatedPayback,
  type WeatherVerdict,
} from './promise.ts';
export { lowGeneration, type LowGeneration } from './low-generation.ts';
export { quoteWarnings } from './warnings.ts';
export { LONGEST_WITHOUT_REPLACEMENT, MOST_OF_USE, MOST_RISE } from './warning-limits.ts';
export type { QuoteFacts } from './first-year.ts';
export {
  FLYER_CLAIMS,
  flyerSchema,
  readFlyer,
  type FlyerClaim,
  type FlyerDocument,
} from './flyer-document.ts';
export { checkFlyer, type FlyerCheck } from './flyer.ts';
export type { FlyerFacts } from './flyer-ground.ts';
export type { FlyerLine } from './flyer-lines.ts';
export { byRuleOfThumb, RULE_OF_THUMB, type ThumbEstimate, type ThumbRule } from './rule-of-thumb.ts';
export { combinedMargin, type Margins } from './carbon.ts';
export { CARBON_FACTORS, type CarbonFactor } from './carbon-factors.ts';
export { rateFactors } from './rate-factors.ts';
export { rateBeforeRises, withRisenSurplus } from './risen-surplus.ts';
export { usualBatteries, withBatteryOf } from './sized-battery.ts';
export { isOfUnitsTaken } from './unit-charges.ts';
