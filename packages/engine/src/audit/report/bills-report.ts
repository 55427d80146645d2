import type { DayNumber, Finding, Quotient } from '../../quantity/index.ts';
import type { BillFinding, RightBill, UndecidedBill } from './bill-finding.ts';
import type { DisputeDocument, DisputeVersion } from './dispute-schema.ts';
import type { RefundSum } from './refund.ts';

/** The rules for disputes that a report goes by. */
export interface ReportRules {
  readonly document: DisputeDocument;
  /** The version in force on the day of the report. */
  readonly version: DisputeVersion;
}

/** What came of checking the bills of an account. */
export interface BillsReport {
  readonly account: string;
  /** Who makes the bills. */
  readonly supplier: string;
  readonly tariff: { readonly id: string; readonly name: string };
  readonly currency: string;
  /** The day of the report: interest runs up to it. */
  readonly on: DayNumber;
  /** How far an amount could be off and still count as right. */
  readonly tolerance: Quotient;
  /** Bills that are wrong, in whosever favour, in order of time. */
  readonly findings: readonly BillFinding[];
  /** Bills that are right. */
  readonly right: readonly RightBill[];
  /** Bills of which it cannot be said. */
  readonly undecided: readonly UndecidedBill[];
  /** Of all findings, each direction by itself; null where there is none. */
  readonly refund: RefundSum | null;
  /** null where no rules are known. */
  readonly rules: ReportRules | null;
  /** What stands in the way of a figure: a bill that cannot be made, a rate that is not known. */
  readonly problems: readonly Finding[];
}
