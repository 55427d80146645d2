import {
  billsLetter,
  billsMemo,
  effectsOf,
  parseDay,
  reportBills,
  type BillLetter,
  type CheckedAccount,
  type CheckInput,
  type DayNumber,
  type DisputeDocument,
  type SheetSection,
} from '@unitbook/engine';
import type { Writing } from '../../writing/writing.ts';

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
  /** The rules for disputes of the place; null: none are known. */
  readonly dispute: DisputeDocument | null;
  readonly writing: Writing;
}

/** A day of a document in words. */
function dayWords(text: string, { day }: Writing): string {
  const number = parseDay(text);
  return number === null ? text : day(number);
}

/** The memo about checked bills, and the letter to the billing office, in the words and numbers of the household. */
export function reportSheets({ input, checked, writing, ...rest }: AskedReport): ReportSheets {
  const { account, tariff } = input;
  const report = reportBills({ account, tariff, checked, effects: effectsOf(checked.bills), ...rest });
  const notation = { ...writing, day: (text: string) => dayWords(text, writing) };
  const holder = account.document.name ?? '';
  return {
    memo: billsMemo(report, notation),
    letter:
      report.findings.length === 0 ? null : billsLetter(report, notation, holder === '' ? {} : { holder }),
  };
}
