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
export {
  fillUnits,
  lifePeriods,
  makeLifeUnits,
  selfUsed,
  UNIT_COLUMNS,
  type LifeUnits,
  type UnitsBasis,
} from './life-units.ts';
export * from './finance/index.ts';
export { checkQuote, readQuote, shareOf } from './check-quote.ts';
export { dayOneOf, instalmentsIn, loanOf, yearCosts } from './costs.ts';
export { QUOTE_FINDINGS, quoteFinding, type QuoteFindingCode } from './findings.ts';
export { exactPresentValue, measuresOf, rateOf } from './measures.ts';
export { MONTH_NAMES } from './months.ts';
export { grown, moneyGrid, onGrid, outlayOf, percentOf, type Outlay as QuoteOutlay } from './outlay.ts';
export type { DayOne, Quote, QuoteMeasures, QuoteMonth, QuoteYear } from './quote.ts';
export {
  inputOfCase,
  usualCases,
  withSettlement,
  yearStart,
  type CaseChange,
  type QuoteCase,
} from './cases.ts';
