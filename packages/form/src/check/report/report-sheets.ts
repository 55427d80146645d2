import {
  billsLetter,
  billsMemo,
  effectsOf,
  reportBills,
  type BillLetter,
  type CheckedAccount,
  type CheckInput,
  type DayNumber,
  type DisputeDocument,
  type SheetSection,
  type UnreadFigure,
} from '@unitbook/engine';
import type { Writing } from '../../writing/writing.ts';
import { notationOf } from '../view/notation.ts';

/** What is printed: the page as it lies open, the memo, or the letter. */
export type Printed = 'page' | 'memo' | 'letter';

/** The memo about the checked bills, and the letter. */
export interface ReportSheets {
  readonly memo: readonly SheetSection[];
  /** null where no bill is wrong: there is nothing to write about. */
  readonly letter: BillLetter | null;
}

/** What the sheets are made of. */
export interface AskedReport {
  readonly input: CheckInput;
  readonly checked: CheckedAccount;
  /** The day of the report: interest runs up to it. */
  readonly on: DayNumber;
  /** Evidence that is at hand, in the words of the causes. */
  readonly held: readonly string[];
  /** The printed figures that cannot be read, in the order of the bills. */
  readonly unread: readonly (readonly UnreadFigure[])[];
  /** The rules for disputes of the place; null: none are known. */
  readonly dispute: DisputeDocument | null;
  readonly writing: Writing;
}

/** The memo about checked bills, and the letter to the billing office, in the words and numbers of the household. */
export function reportSheets({ input, checked, writing, ...rest }: AskedReport): ReportSheets {
  const { account, tariff } = input;
  const report = reportBills({ account, tariff, checked, effects: effectsOf(checked.bills), ...rest });
  const notation = notationOf(writing);
  const holder = account.document.name ?? '';
  return {
    memo: billsMemo(report, notation),
    letter:
      report.findings.length === 0 ? null : billsLetter(report, notation, holder === '' ? {} : { holder }),
  };
}
