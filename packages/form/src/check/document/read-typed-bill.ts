import {
  checkFinding,
  isDecimalText,
  parseDay,
  readingFinding,
  readNumberText,
  readPrintedBill,
  type Finding,
  type Path,
  type PrintedBill,
  type PrintedBillDocument,
} from '@unitbook/engine';
import { keptDay, keptNumber } from '../../plant/document/typed-texts.ts';
import { inSentence, type BillField } from './bill-fields.ts';
import { putInBill, textInBill } from './edit-bills.ts';
import { typedPath, withoutBlanks } from './without-blanks.ts';

/** A printed bill as typed, brought into the form that the engine reads. */
export interface ReadBill {
  /** What can be read is plain, blanks are left out, the rest stands as typed: what a file holds. */
  readonly plain: PrintedBillDocument;
  /** Of that what can be checked; null without its two days. */
  readonly printed: PrintedBill | null;
  /** What stands in the way of the rest, with paths into the bill as typed. */
  readonly findings: readonly Finding[];
  /** The way into the bill as typed, of a way into what is checked. */
  readonly placeOf: (path: Path) => Path;
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

/** Still to type: what goes there. */
function missing(field: BillField): Finding {
  const what = inSentence(field);
  return { ...readingFinding('account/number-missing', { path: field.path }, { what }), remedy: `${what}.` };
}

/** What stands in the way of reading a number: only of a reading is it said to look at the meter. */
function unreadable(field: BillField, value: string): Finding {
  const { path } = field;
  const read = readNumberText(value);
  switch (read.kind) {
    case 'letter':
      return readingFinding('reading/letter', { path, offer: read.offer }, { value, offer: read.offer });
    case 'comma-unclear':
      return readingFinding('reading/comma-unclear', { path }, { ...read, value });
    case 'number':
    case 'empty':
      return missing(field);
    default:
      if (path[0] === 'readings') return readingFinding(`reading/${read.kind}`, { path }, { value });
      return checkFinding('check/not-a-number', { path }, { value, what: inSentence(field) });
  }
}

/** A day that cannot be read: of a reading it says where to look. */
function noDay({ path }: BillField, value: string): Finding {
  return path[0] === 'from' || path[0] === 'to'
    ? readingFinding('reading/no-day', { path }, { value })
    : checkFinding('check/no-such-day', { path }, { value });
}

/** What is to be said of a field before the engine looks at it; null: nothing. */
function toldOf(field: BillField, plain: string): Finding | null {
  const { is, isWanted = false } = field;
  if (plain === '') return isWanted ? missing(field) : null;
  if (is === 'day' && parseDay(plain) === null) return noDay(field, plain);
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
  const read = readUsable(usable, fields, at);
  return {
    plain: withoutBlanks(plain),
    printed: read.printed,
    findings: [...findings, ...read.findings],
    placeOf: (path) => typedPath(path, read.usable),
  };
}

interface Used extends Pick<ReadBill, 'printed' | 'findings'> {
  /** What is left of the bill as typed: what was refused is blank. */
  readonly usable: PrintedBillDocument;
}

/** What the engine makes of a bill with its days: without the fields that it refuses, where there are some. */
function readUsable(usable: PrintedBillDocument, fields: readonly BillField[], at: number): Used {
  if (usable.from === '' || usable.to === '') return { printed: null, findings: [], usable };
  const read = (bill: PrintedBillDocument) => readPrintedBill(withoutBlanks(bill), ['bills', at]);
  const first = read(usable);
  const findings = first.findings.map((one) => {
    const path = typedPath(one.path.slice(2), usable);
    return named({ ...one, path }, fields);
  });
  if (first.value !== null) return { printed: first.value, findings, usable };
  const left = findings.reduce((bill, { path }) => putInBill(bill, path, ''), usable);
  // Days that end before they begin leave nothing to check.
  const printed = left.from === '' || left.to === '' ? null : read(left).value;
  return { printed, findings, usable: left };
}

/** A finding about a number with the field's label in the place of its name in documents. */
function named(finding: Finding, fields: readonly BillField[]): Finding {
  const { code, path, values } = finding;
  const field = fields.find((one) => one.path.join('.') === path.join('.'));
  if (code !== 'check/number-too-fine' || field === undefined) return finding;
  return checkFinding(code, { path }, { ...values, what: inSentence(field) });
}
