import type { Finding, Path } from '../quantity/index.ts';
import type { AccountDocument } from './account-document.ts';
import { readingFinding } from './findings.ts';
import { readNumberText } from './number-text.ts';

interface NumberField {
  readonly what: string;
  readonly path: readonly string[];
  /** What a blank counts as, which is said; null where a number has to be there. */
  readonly blank: string | null;
}

const NUMBER_FIELDS: readonly NumberField[] = [
  { what: 'the sanctioned load', path: ['sanctionedLoad'], blank: null },
  { what: 'the plant capacity', path: ['plantCapacity'], blank: null },
  { what: 'the opening credit', path: ['openingCredit'], blank: '0' },
  { what: 'the multiplying factor', path: ['meters', 'grid', 'multiplyingFactor'], blank: '1' },
  { what: 'the multiplying factor', path: ['meters', 'generation', 'multiplyingFactor'], blank: '1' },
];

type Branch = Readonly<Record<string, unknown>>;

function at(value: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>((branch, key) => (branch as Branch | undefined)?.[key], value);
}

/** A copy with one value replaced. */
function put(value: unknown, path: readonly string[], text: string): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return text;
  const branch = value as Branch;
  return { ...branch, [key]: put(branch[key], rest, text) };
}

/** What stands in the way of reading a number. */
function unreadable(field: NumberField, typed: string): Finding {
  const path: Path = field.path;
  const read = readNumberText(typed);
  switch (read.kind) {
    case 'number':
    case 'empty':
      return readingFinding('account/number-missing', { path }, { what: field.what });
    case 'letter':
      return readingFinding(
        'reading/letter',
        { path, offer: read.offer },
        { value: typed, offer: read.offer },
      );
    case 'comma-unclear':
      return readingFinding('reading/comma-unclear', { path }, { ...read, value: typed });
    default:
      return readingFinding(`reading/${read.kind}`, { path }, { value: typed });
  }
}

/** An account document with its numbers as plain decimals. */
export interface PlainAccount {
  readonly document: AccountDocument;
  readonly findings: readonly Finding[];
  /** The numbers as plain decimals by path joined with points; null where one could not be read. */
  readonly read: Readonly<Record<string, string | null>>;
}

/**
 * Read the numbers of an account as people type them: "3 kW", "3,3", "1,16,444". A blank multiplying
 * factor counts as 1 and a blank credit as 0, and a note says so.
 */
export function plainAccount(typed: AccountDocument): PlainAccount {
  let document = typed;
  const findings: Finding[] = [];
  const read: Record<string, string | null> = {};
  for (const field of NUMBER_FIELDS) {
    const value = at(typed, field.path);
    if (typeof value !== 'string') continue;
    const counts = value.trim() === '' ? field.blank : null;
    const number = readNumberText(counts ?? value);
    read[field.path.join('.')] = number.kind === 'number' ? number.text : null;
    if (number.kind === 'number') document = put(document, field.path, number.text) as AccountDocument;
    else findings.push(unreadable(field, value));
    if (counts !== null) {
      findings.push(readingFinding('account/blank', { path: field.path }, { what: field.what, counts }));
    }
  }
  return { document, findings, read };
}
