import {
  isDecimalText,
  quoteFinding,
  readFlyer,
  readingFinding,
  readNumberText,
  type Finding,
  type FlyerDocument,
} from '@unitbook/engine';
import { keptNumber } from '../../plant/document/typed-texts.ts';
import { FLYER_FIELDS, type FlyerField } from './flyer-fields.ts';
import { flyerText } from './flyer-file.ts';

/** A flyer as typed, brought into the form that the engine reads. */
export interface TypedFlyer {
  /** What can be read is plain, blank lines are left out, the rest stands as typed: what a file holds. */
  readonly plain: FlyerDocument;
  /** Of that what can be checked. */
  readonly usable: FlyerDocument;
  /** What stands in the way of the others, with paths into the flyer. */
  readonly findings: readonly Finding[];
}

/** "44,160" can only be grouped where a flyer prints no third decimal. */
function plainNumber({ places }: FlyerField, text: string): string {
  const read = readNumberText(text);
  return read.kind === 'comma-unclear' && places < 3 ? read.grouped : keptNumber(text);
}

/** What stands in the way of reading a number. */
function unreadable({ claim, label }: FlyerField, value: string): Finding {
  const path = [claim];
  const read = readNumberText(value);
  switch (read.kind) {
    case 'number':
    case 'empty':
      return readingFinding('account/number-missing', { path }, { what: label });
    case 'letter':
      return readingFinding('reading/letter', { path, offer: read.offer }, { value, offer: read.offer });
    case 'comma-unclear':
      return readingFinding('reading/comma-unclear', { path }, { ...read, value });
    default:
      return quoteFinding(
        'quote/number-out-of-range',
        { path },
        { value, what: label.charAt(0).toLowerCase() + label.slice(1), range: 'a number, such as 1234.5' },
      );
  }
}

const without = (flyer: FlyerDocument, keys: ReadonlySet<string>): FlyerDocument =>
  Object.fromEntries(Object.entries(flyer).filter(([key]) => !keys.has(key))) as FlyerDocument;

/**
 * Understand a flyer as people type it: every line by itself, so that one that is wrong does not keep the others
 * from being checked. All that is wrong is told at once.
 *
 * @example
 * readTypedFlyer({ format: 'unitbook-flyer-1', claimedSaving: 'Rs 44,160/-' }).plain.claimedSaving //=> "44160"
 */
export function readTypedFlyer(typed: FlyerDocument): TypedFlyer {
  const numbers = FLYER_FIELDS.map((field) => {
    const text = (typed[field.claim] ?? '').trim();
    return { field, text, plain: plainNumber(field, text) };
  });
  const blank = new Set<string>(numbers.flatMap(({ field, text }) => (text === '' ? [field.claim] : [])));
  if ((typed.words ?? '').trim() === '') blank.add('words');
  const texts = Object.fromEntries(numbers.map(({ field, plain }) => [field.claim, plain]));
  const plain = without({ ...typed, ...texts }, blank);
  const unread = numbers
    .filter((one) => one.text !== '' && !isDecimalText(one.plain))
    .map(({ field, text }) => unreadable(field, text));
  const readable = without(plain, new Set(unread.map(({ path }) => String(path[0]))));
  const wrong = readFlyer(flyerText(readable)).findings.filter(({ severity }) => severity === 'error');
  return {
    plain,
    usable: without(readable, new Set(wrong.map(({ path }) => String(path[0])))),
    findings: [...unread, ...wrong],
  };
}
