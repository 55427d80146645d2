export {
  STAGES,
  stageAt,
  type Cause,
  type CauseContext,
  type KnownSerials,
  type Sign,
  type Stage,
  type Variant,
} from './cause.ts';
export { CAUSES } from './causes/index.ts';
export { unitLedgers } from './charge-basis.ts';
export { changedCharges, changedTariff, chargeIds } from './changed-tariff.ts';
export {
  thousandths,
  thousandthsOf,
  withShown,
  withUnits,
  type AccountLine,
  type BillFacts,
  type RegisterFacts,
  type SurplusFacts,
} from './facts.ts';
export { FIGURE, groupOf, nameIn, type FigureGroup } from './figure-names.ts';
export {
  agrees,
  compareFigures,
  computedOf,
  differenceIn,
  EXACT,
  type ComparedFigure,
  type Figures,
} from './figures.ts';
export { attribute, type Attribution, type Part } from './attribution.ts';
export {
  searchCauses,
  type Attempt,
  type RunFacts,
  type SearchResult,
  type SearchTerms,
  type Step,
} from './search.ts';
export { CHECK_FINDINGS, checkFinding, type CheckFindingCode } from './findings.ts';
export { quotientOf, readPrintedBill, type PrintedBill } from './printed.ts';
export { printedBillSchema, type PrintedBillDocument } from './printed-document.ts';
export { figureLabel } from './figure-label.ts';
export * from './consistency/index.ts';
export * from './report/index.ts';
export * from './surprises/index.ts';
