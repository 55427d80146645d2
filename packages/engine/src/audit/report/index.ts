export type {
  BillFinding,
  BillReference,
  Favour,
  FindingCause,
  FindingConfidence,
  FindingDecider,
  FindingEvidence,
  FindingExplanation,
  FindingLine,
  FindingStatus,
  HandedOn,
  HeldEvidence,
  LaterEffects,
  Recommendation,
  RightBill,
  SupplierReply,
  UndecidedBill,
  UnreadFigure,
} from './bill-finding.ts';
export type { BillsReport, ReportRules } from './bills-report.ts';
export type { CheckedParts, FindingTerms } from './checked-parts.ts';
export { DISPUTE_FINDINGS, disputeFinding, type DisputeFindingCode } from './dispute-findings.ts';
export { disputeVersionOn, readDispute } from './dispute-document.ts';
export {
  disputeJsonSchema,
  type ClaimLimit,
  type DisputeDocument,
  type DisputeStep,
  type DisputeVersion,
  type InterestRule,
  type SimpleInterest,
} from './dispute-schema.ts';
export {
  explanationParts,
  explanationRows,
  type ExplanationParts,
  type ExplanationRow,
} from './explanation-rows.ts';
export { billReference } from './finding-lines.ts';
export { figureUnit } from './figure-unit.ts';
export { findingSentences } from './finding-sentences.ts';
export { simpleInterest, type InterestStretch } from './interest.ts';
export { billsLetter, type BillLetter, type LetterTerms } from './letter.ts';
export { checkLimit, monthsLater, type LimitCheck, type LimitDays } from './limitation.ts';
export { makeFinding } from './make-finding.ts';
export { billsMemo } from './memo.ts';
export { nearestCauses, nearestWords, type NearestCauses } from './nearest.ts';
export { refundOf, sumRefunds, type BillRefund, type RefundInput, type RefundSum } from './refund.ts';
export type { ReportNotation } from './report-words.ts';
export { reportDocument } from './report-document.ts';
export type { SheetPart, SheetSection } from './sheet.ts';
export type { ClauseReference } from './source-of-clause.ts';
export { LOCAL_RULES_CAUTION, stepWords } from './step-words.ts';
