import {
  decimalPlaces,
  isDecimalText,
  quoteFinding,
  readingFinding,
  readNumberText,
  type Finding,
  type QuoteDocument,
} from '@unitbook/engine';
import { keptDay, keptNumber } from '../../plant/document/typed-texts.ts';
import { putAt, textAt, valueAt } from './edit-quote.ts';
import type { QuoteField } from './quote-fields.ts';

/** A quote as typed, brought into the form that the engine reads, and what stands in the way. */
export interface TypedQuote {
  readonly document: QuoteDocument;
  readonly findings: readonly Finding[];
  /** Paths of texts that could not be read: what else is said of them says nothing new. */
  readonly unread: ReadonlySet<string>;
}

const keyOf = ({ path }: Pick<Finding, 'path'>): string => path.join('.');

/** What a field is called in the middle of a sentence. */
function calledOf({ what, label }: QuoteField): string {
  return what ?? label.charAt(0).toLowerCase() + label.slice(1);
}

/** Still to type: what goes there. */
function missing(field: QuoteField): Finding {
  const what = calledOf(field);
  return { ...readingFinding('account/number-missing', { path: field.path }, { what }), remedy: `${what}.` };
}

/** What stands in the way of reading a number. */
function unreadable(field: QuoteField, value: string): Finding {
  const { path } = field;
  const read = readNumberText(value);
  switch (read.kind) {
    case 'number':
    case 'empty':
      return missing(field);
    case 'letter':
      return readingFinding('reading/letter', { path, offer: read.offer }, { value, offer: read.offer });
    case 'comma-unclear':
      return readingFinding('reading/comma-unclear', { path }, { ...read, value });
    default:
      return readingFinding(`reading/${read.kind}`, { path }, { value });
  }
}

/** Whether a number has more decimals than anything of its kind. */
function isTooFine({ is, places }: QuoteField, plain: string): boolean {
  return is === 'number' && places !== undefined && isDecimalText(plain) && decimalPlaces(plain) > places;
}

function tooFine(field: QuoteField, value: string): Finding {
  const { path, places = 0 } = field;
  const range = places === 0 ? 'a whole number' : `a number with up to ${String(places)} decimals`;
  return quoteFinding('quote/number-out-of-range', { path }, { value, what: calledOf(field), range });
}

/** What is to be said of a field before the engine looks at it; null: nothing. */
function toldOf(field: QuoteField, plain: string): Finding | null {
  if (plain === '') return missing(field);
  if (field.is === 'number' && !isDecimalText(plain)) return unreadable(field, plain);
  if (isTooFine(field, plain)) return tooFine(field, plain);
  // Of a day that cannot be read the engine says what is wrong.
  return null;
}

const plainText = ({ is }: QuoteField, text: string): string =>
  is === 'number' ? keptNumber(text) : is === 'day' ? keptDay(text) : text;

/** A text may stay blank unless it is wanted; a number and a day only where that is said. */
const mayStayBlank = ({ is, mayBeBlank, isWanted }: QuoteField): boolean =>
  mayBeBlank === true || (isWanted !== true && (is === 'text' || is === 'words'));

/**
 * Understand a quote as people type it. What is blank and may be is left out; everything else that cannot be
 * read is told, all at once.
 *
 * @param typed   of the right shape, its texts as typed
 * @param fields  every field of it
 */
export function readTypedQuote(typed: QuoteDocument, fields: readonly QuoteField[]): TypedQuote {
  let document = typed;
  const findings: Finding[] = [];
  for (const field of fields) {
    const { path, mayBeBlank } = field;
    const text = textAt(typed, path).trim();
    const plain = plainText(field, text);
    if (plain === '' && mayStayBlank(field)) {
      if (valueAt(typed, path) !== undefined && mayBeBlank === true) document = blanked(document, field);
      continue;
    }
    const told = toldOf(field, plain);
    // Nothing comes of the quote then; a whole number lets the engine look at the rest of it.
    const read = isTooFine(field, plain) ? (plain.split('.')[0] ?? '') : plain;
    if (read !== textAt(typed, path)) document = putAt(document, path, read);
    if (told !== null) findings.push(told);
  }
  return { document, findings, unread: new Set(findings.map(keyOf)) };
}

/** Sources and reasons that the engine wants said stay, blank; anything else that is blank is left out. */
const STAYS = new Set(['use.source', 'generation.source', 'escalation.basis', 'subsidy.source']);

function blanked(document: QuoteDocument, { path }: QuoteField): QuoteDocument {
  return putAt(document, path, STAYS.has(path.join('.')) ? '' : undefined);
}
