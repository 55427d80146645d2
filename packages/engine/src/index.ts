export * from './quantity/index.ts';
export * from './tariff/index.ts';
export * from './readings/index.ts';
export * from './energy/index.ts';
export * from './settlement/index.ts';
export * from './bill/index.ts';
export * from './savings/index.ts';
export { keepBook, type Book, type BookInput, type BookMonth } from './book.ts';
export { estimateCosts, type Compared, type EstimateCost, type EstimatedMonth } from './estimate-cost.ts';
export {
  casesJsonSchema,
  readCases,
  type CasesDocument,
  type ReadCases,
  type WorkedCase,
} from './cases-document.ts';
export { checkCase, type CheckedCase, type FigureCheck } from './check-cases.ts';
export { checkedCasesDocument, type CheckedCasesDocument } from './checked-document.ts';
export { clockOf, keepIntervals, type IntervalsInput } from './keep-intervals.ts';
export { keepGroup, type GroupAccount, type GroupInput, type KeptGroup } from './keep-group.ts';
export { keepPeriods, type UnitsInput } from './keep-periods.ts';
export type { UnitsMonth } from './keeper.ts';
export type { SettledMonth } from './month.ts';
export { workedOut } from './worked-out.ts';
export type { UnitsAccount, UnitsPeriod } from './periods-document.ts';
export { bookDocument, type BookDocument, type FigureDocument } from './book-document.ts';
export { readHousehold, type Household, type ReadHousehold } from './household.ts';
export { describeFinding, ENGINE_FINDINGS } from './describe-finding.ts';
export type { PlainUse } from './plain-use.ts';
export { tariffCliffs, SCANNED_UNITS, type Cliff, type CliffMonth, type Cliffs } from './tariff-cliffs.ts';
export {
  coveredMonths,
  tariffYear,
  OPEN_MONTHS,
  type MissingQuantity,
  type TariffYear,
  type YearMonth,
} from './tariff-year.ts';
export { amountsOf, type Amounts, type AmountsColumn } from './bill-amounts.ts';
export type { AmountsInput, AmountsResult } from './amounts-types.ts';
export type { Raises } from './amounts-raises.ts';
export * from './quote/index.ts';
export { quoteBounds, type QuoteBounds } from './quote-bounds.ts';
export { prepareAgain, prepareQuote, type PreparedQuote, type PrepareOptions } from './quote-prepare.ts';
export { workOutQuote } from './quote-work-out.ts';
export { compareTariffs, type CompareOptions, type TariffResult } from './quote-tariffs.ts';
export { workOutCase, workOutCases, type CaseResult } from './quote-cases.ts';
export { quoteSizes, type SizePoint, type SizeRange, type Sizes } from './quote-sizes.ts';
export { quoteBatterySizes, type BatterySizes } from './quote-battery-sizes.ts';
export { quoteBilledUnits, quoteKeptUnits, type KeptUnits } from './quote-billed.ts';
export {
  quoteGround,
  type Arrangement,
  type QuoteGround,
  type QuoteOrder,
  type SurplusTerms,
} from './quote-surplus-terms.ts';
export { printedSizes, usualSizes } from './quote-usual-sizes.ts';
export { BLOCK, quoteDrawer, type QuoteDrawer } from './quote-draws.ts';
export { checkPromise, type PromiseActual } from './quote-promise.ts';
export { quoteResultDocument, type QuoteResultDocument, type ToldOfQuote } from './quote-document-result.ts';
export {
  leftAfterInstalment,
  netInMonth,
  priceWithLoan,
  projectionText,
  quoteTables,
  savingOfAddedUnits,
  type QuoteResult,
  type QuoteTables,
} from './quote-tables.ts';
export { quoteFacts } from './quote-facts.ts';
export * from './audit/index.ts';
export { alternativesOf, type Alternative } from './check-alternatives.ts';
export {
  checkBill,
  type BillExplanation,
  type BillTerms,
  type CheckedBill,
  type CheckOptions,
  type Confidence,
  type Decider,
  type Verdict,
} from './check-bill.ts';
export { effectsOf, type Effects } from './check-chain.ts';
export { readCheck, type CheckDocument, type CheckFile, type ReadCheck } from './check-document.ts';
export { checkAccountBills, type CheckedAccount, type CheckInput } from './check-account.ts';
export {
  checkResultDocument,
  reportBills,
  type CheckResultDocument,
  type ReportInput,
} from './check-report.ts';
export { runBill, type BillRun, type RunBasis } from './check-run.ts';
export {
  batchChecker,
  batchColumn,
  columnNames,
  isResultFigure,
  type BatchChecker,
  type BatchColumn,
  type BatchNames,
  type BatchRows,
  type BatchTerms,
  type ColumnNames,
  type PrintedColumn,
  type TakeRow,
} from './check-batch.ts';
