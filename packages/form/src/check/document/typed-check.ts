import type { AccountDocument, PrintedBillDocument, ReadingRow, TariffDocument } from '@unitbook/engine';
import type { Household } from '../../household/household.ts';

/** The form of a check's file that this version reads and writes. */
export const CHECK_FORMAT = 'unitbook-check-1';

/** A printed bill as typed: its texts are kept as they were typed, half typed ones too. */
export interface TypedBill {
  /** Tells it from others as long as the page lies open, whatever is typed. */
  readonly key: string;
  readonly bill: PrintedBillDocument;
}

/** What bills are checked against, where that is not the book: it came with a file. */
export interface CheckGround {
  /** The name of an example, a tariff document, or ''. */
  readonly tariff: string | TariffDocument;
  readonly account: AccountDocument;
  readonly readings: readonly ReadingRow[];
}

/** Everything that was typed on the page. Never changed in place: every edit makes a new one. */
export interface TypedCheck {
  /** null: the book that lies open. */
  readonly ground: CheckGround | null;
  /** In order of their days; those without a day stand last. */
  readonly bills: readonly TypedBill[];
  /** The day on which the plant was connected, as typed; '' where nobody says. */
  readonly connected: string;
  /** Whether the account says what was brought forward into the first period. */
  readonly isOpeningKnown: boolean;
}

/** A bill with nothing typed. */
export const BLANK_BILL: PrintedBillDocument = { from: '', to: '' };

/** A check with one blank bill, against the book. */
export const BLANK_CHECK: TypedCheck = {
  ground: null,
  bills: [{ key: '1', bill: BLANK_BILL }],
  connected: '',
  isOpeningKnown: true,
};

/** What the bills are checked against: what came with them, or else the book. */
export function groundOf({ ground }: TypedCheck, { tariff, account, readings }: Household): CheckGround {
  return ground ?? { tariff, account, readings };
}

/** Whether anything was typed in a value: in a list or an object, in any part of it. */
function holdsText(value: unknown): boolean {
  if (typeof value === 'string') return value.trim() !== '';
  if (typeof value !== 'object' || value === null) return false;
  return Object.values(value).some(holdsText);
}

/**
 * Whether nothing at all was typed of a bill.
 *
 * @example
 * isBlankBill({ from: '', to: '', lines: [] }) //=> true
 */
export function isBlankBill(bill: PrintedBillDocument): boolean {
  return !holdsText(bill);
}
