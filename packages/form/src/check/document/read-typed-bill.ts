import {
  isDecimalText,
  parseDay,
  readingFinding,
  readNumberText,
  readPrintedBill,
  type Finding,
  type PrintedBill,
  type PrintedBillDocument,
} from '@unitbook/engine';
import { keptDay, keptNumber } from '../../plant/document/typed-texts.ts';
import { inSentence, type BillField } from './bill-fields.ts';
import { putInBill, textInBill } from './edit-bills.ts';
import { withoutBlanks } from './without-blanks.ts';

/** A printed bill as typed, brought into the form that the engine reads. */
export interface ReadBill {
  /** What can be read is plain, blanks are left out, the rest stands as typed: what a file holds. */
  readonly plain: PrintedBillDocument;
  /** Of that what can be checked; null without its two days. */
  readonly printed: PrintedBill | null;
  /** What stands in the way of the rest, with paths into the bill. */
  readonly findings: readonly Finding[];
}

/**
 * A text of a field as documents write it: plain where it can be read, else as typed.
 *
 * @example
 * plainOf({ path: ['payable'], label: 'To be paid', is: 'number', places: 2 }, 'Rs 1,158/-') //=> "1158"
 * plainOf({ path: ['opening', 'credit'], label: 'Credit', is: 'credit' }, '−58') //=> "58"
 */
export function plainOf({ is, places = 3 }: BillField, typed: string): string {
  const text = typed.trim();
  if (is === 'text') return text;
  if (is === 'day') return keptDay(text);
  const read = readNumberText(text);
  const plain = read.kind === 'comma-unclear' && places < 3 ? read.grouped : keptNumber(text);
  // Some bills print what they owe with a minus; a balance that is handed on is never below nothing.
  return is === 'credit' ? plain.replace(/^-(?=\d)/, '') : plain;
}

/** What stands in the way of reading a number. */
function unreadable({ path, ...field }: BillField, value: string): Finding {
  const read = readNumberText(value);
  switch (read.kind) {
    case 'letter':
      return readingFinding('reading/letter', { path, offer: read.offer }, { value, offer: read.offer });
    case 'comma-unclear':
      return readingFinding('reading/comma-unclear', { path }, { ...read, value });
    case 'number':
    case 'empty':
      return readingFinding('account/number-missing', { path }, { what: inSentence({ path, ...field }) });
    default:
      return readingFinding(`reading/${read.kind}`, { path }, { value });
  }
}

/** Still to type: what goes there. */
function missing(field: BillField): Finding {
  const what = inSentence(field);
  return { ...readingFinding('account/number-missing', { path: field.path }, { what }), remedy: `${what}.` };
}

/** What is to be said of a field before the engine looks at it; null: nothing. */
function toldOf(field: BillField, plain: string): Finding | null {
  const { is, path, isWanted = false } = field;
  if (plain === '') return isWanted ? missing(field) : null;
  if (is === 'day' && parseDay(plain) === null)
    return readingFinding('reading/no-day', { path }, { value: plain });
  if ((is === 'number' || is === 'credit') && !isDecimalText(plain)) return unreadable(field, plain);
  return null;
}

/**
 * Understand a printed bill as people type it: every field by itself, so that one that is wrong does not keep the
 * others from being checked. All that is wrong is told at once.
 *
 * @param fields  every field that it has
 * @param at      its place among the bills, for findings of the engine
 */
export function readTypedBill(
  typed: PrintedBillDocument,
  fields: readonly BillField[],
  at: number,
): ReadBill {
  let plain = typed;
  let usable = typed;
  const findings: Finding[] = [];
  for (const field of fields) {
    const text = textInBill(typed, field.path);
    const own = plainOf(field, text);
    if (own !== text) {
      plain = putInBill(plain, field.path, own);
      usable = putInBill(usable, field.path, own);
    }
    const told = toldOf(field, own);
    if (told === null) continue;
    findings.push(told);
    usable = putInBill(usable, field.path, '');
  }
  const read = readUsable(withoutBlanks(usable), at);
  return {
    plain: withoutBlanks(plain),
    printed: read.printed,
    findings: [...findings, ...read.findings],
  };
}

/** What the engine makes of a bill with its days. */
function readUsable(document: PrintedBillDocument, at: number): Pick<ReadBill, 'printed' | 'findings'> {
  if (document.from === '' || document.to === '') return { printed: null, findings: [] };
  const { value, findings } = readPrintedBill(document, ['bills', at]);
  return { printed: value, findings: findings.map((one) => ({ ...one, path: one.path.slice(2) })) };
}
