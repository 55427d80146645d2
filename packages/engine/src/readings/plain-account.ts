import type { Finding, Path } from '../quantity/index.ts';
import type { AccountDocument } from './account-document.ts';
import { readingFinding } from './findings.ts';
import { readNumberText } from './number-text.ts';

/** A number of an account document: what it is, and where it stands. */
export interface NumberField {
  readonly what: string;
  readonly path: readonly string[];
  /** What a blank counts as, which is said; null where a number has to be there. */
  readonly blank: string | null;
}

const FACTOR = { what: 'the multiplying factor', blank: '1' } as const;

const NUMBER_FIELDS: readonly NumberField[] = [
  { what: 'the sanctioned load', path: ['sanctionedLoad'], blank: null },
  { what: 'the plant capacity', path: ['plantCapacity'], blank: null },
  { what: 'the opening credit', path: ['openingCredit'], blank: '0' },
  { what: 'the capacity of the battery', path: ['batteryCapacity'], blank: null },
  { ...FACTOR, path: ['meters', 'grid', 'multiplyingFactor'] },
  { ...FACTOR, path: ['meters', 'generation', 'multiplyingFactor'] },
];

/** Factors of meters that came later. */
export function laterFactors({ meters }: AccountDocument): readonly NumberField[] {
  return (['grid', 'generation'] as const).flatMap((meter) =>
    (meters[meter]?.later ?? []).map((_, index) => ({
      ...FACTOR,
      path: ['meters', meter, 'later', String(index), 'multiplyingFactor'],
    })),
  );
}

type Branch = Readonly<Record<string, unknown>>;

function at(value: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>((branch, key) => (branch as Branch | undefined)?.[key], value);
}

/** A number of a document as it stands there; '' where there is none. */
export function textAt(document: AccountDocument, path: readonly string[]): string {
  const text = at(document, path);
  return typeof text === 'string' ? text : '';
}

/** A path with its indexes as numbers. */
export function indexed(path: readonly (string | number)[]): Path {
  return path.map((key) => (typeof key === 'string' && /^\d+$/.test(key) ? Number.parseInt(key, 10) : key));
}

/** A copy with one value replaced. */
function put(value: unknown, path: readonly string[], text: string): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return text;
  if (Array.isArray(value)) {
    return value.map((one: unknown, index) => (String(index) === key ? put(one, rest, text) : one));
  }
  const branch = value as Branch;
  return { ...branch, [key]: put(branch[key], rest, text) };
}

/** What stands in the way of reading a number. */
function unreadable(field: NumberField, typed: string): Finding {
  const path = indexed(field.path);
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
  for (const field of [...NUMBER_FIELDS, ...laterFactors(typed)]) {
    const value = at(typed, field.path);
    if (typeof value !== 'string') continue;
    const counts = value.trim() === '' ? field.blank : null;
    const number = readNumberText(counts ?? value);
    read[field.path.join('.')] = number.kind === 'number' ? number.text : null;
    if (number.kind === 'number') document = put(document, field.path, number.text) as AccountDocument;
    else findings.push(unreadable(field, value));
    if (counts !== null) {
      findings.push(
        readingFinding('account/blank', { path: indexed(field.path) }, { what: field.what, counts }),
      );
    }
  }
  return { document, findings, read };
}
