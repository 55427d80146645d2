import type { Finding } from '../quantity/index.ts';
import { withChanges, withKeys } from './extend-changes.ts';
import { documentFinding } from './document-findings.ts';
import { extendFinding } from './extend-findings.ts';
import { nearestPart, partOf, within, wordOf, written, type ObjectPart, type Origin } from './extend-tree.ts';
import { inFileOrder } from './read-document.ts';
import { readTariff, type ReadTariff } from './read-tariff.ts';
import { childAt, locate, positionAt, readSourceText, textUnder } from './source-text.ts';
import { tariffLimitFindings } from './tariff-limits.ts';

/** As many documents as can stand behind one, each extended by the one before. */
const MOST_DOCUMENTS = 8;

const ID = /^[a-z0-9-]{1,64}$/;
/** What is merged key by key: to replace one of it as a whole would be to copy the rest. */
const KEYED: ReadonlySet<string> = new Set(['sources', 'dayRules', 'prices', 'measures']);
/** What says how to put a document together, and is no part of it. */
const INSTRUCTIONS: ReadonlySet<string> = new Set(['extends', 'changes']);

/** The documents that one can extend. */
export interface Library {
  /** The text of the document with this id; null where there is none. */
  readonly lookUp: (id: string) => string | null;
  /** Ids that a message can name where another is not found. */
  readonly known?: readonly string[];
}

/** A document put together with those that it extends. */
export interface ExtendedDocument {
  /** The whole document as JSON; null where it could not be put together. */
  readonly text: string | null;
  /** What kept it from that, with line and column in the text that was given. */
  readonly findings: readonly Finding[];
  /** Put a finding about the whole document in its place in the text that was given. */
  readonly place: (finding: Finding) => Finding;
}

interface Resolved {
  readonly part: ObjectPart | null;
  readonly own: Origin;
  readonly findings: readonly Finding[];
}

/** What says by itself which document it is about. */
const SAYS_WHICH: ReadonlySet<string> = new Set([
  'tariff/extends-wrong',
  'tariff/extends-itself',
  'tariff/extends-too-deep',
]);

/** A finding about a part of another document, told where that is extended. */
function ofOther(finding: Finding, other: Pick<Origin, 'id'>): Finding {
  const { position, ...rest } = finding;
  const { code, found, expected, remedy } = rest;
  if (SAYS_WHICH.has(code)) return { ...rest, path: ['extends'] };
  const [line, column] = [String(position?.line ?? 1), String(position?.column ?? 1)];
  const values = { id: other.id, line, column, code, found, expected, remedy };
  return extendFinding('tariff/extends-wrong', { path: ['extends'] }, values);
}

/** The document that another extends, whole; or why there is none. */
function baseOf(
  own: ObjectPart,
  chain: readonly string[],
  library: Library,
): ObjectPart | readonly Finding[] {
  const place = { path: ['extends'] };
  const id = wordOf(within(own, 'extends'));
  if (id === null || !ID.test(id)) {
    const found = id === null ? 'no text' : `"${id.slice(0, 60)}"`;
    return [extendFinding('tariff/extends-no-id', place, { found })];
  }
  if (chain.includes(id)) {
    const names = [...chain, id].map((one) => `"${one}"`).join(', which extends ');
    return [extendFinding('tariff/extends-itself', place, { chain: names })];
  }
  if (chain.length > MOST_DOCUMENTS)
    return [extendFinding('tariff/extends-too-deep', place, { most: String(MOST_DOCUMENTS) })];
  const text = library.lookUp(id);
  if (text === null) {
    const known = (library.known ?? []).join(', ');
    return [extendFinding('tariff/extends-unknown', place, { id, known })];
  }
  const base = resolve(text, [...chain, id], library);
  if (base.part === null) return base.findings.map((finding) => ofOther(finding, { id }));
  const other = wordOf(within(base.part, 'id')) ?? '';
  return other === id ? base.part : [extendFinding('tariff/extends-other-id', place, { id, other })];
}

/** A document cannot be told from the one it extends unless it has a name of its own. */
function nameFindings(own: ObjectPart): readonly Finding[] {
  return ['id', 'name']
    .filter((key) => !own.entries.has(key))
    .map((key) =>
      documentFinding('document/missing-key', { path: [key] }, { key, meaning: `its own ${key}` }),
    );
}

/** The keys of a document in the place of those of the one it extends. */
function merged(base: ObjectPart, own: ObjectPart, findings: Finding[]): ObjectPart {
  const given = [...own.entries].filter(([key]) => !INSTRUCTIONS.has(key));
  const entries = given.map(([key, value]) => {
    const before = base.entries.get(key);
    const isKeyed = KEYED.has(key) && value.kind === 'object' && before?.kind === 'object';
    return [key, isKeyed ? withKeys(before, value, [key], findings) : value] as const;
  });
  const replaced = withKeys(base, { ...own, entries: new Map(entries) }, [], findings);
  const changes = own.entries.get('changes');
  return changes === undefined ? replaced : withChanges(replaced, changes, findings);
}

function resolve(text: string, chain: readonly string[], library: Library): Resolved {
  const { source, findings: ofText } = readSourceText(text);
  const own: Origin = { id: chain.at(-1) ?? '', source };
  const none = (findings: readonly Finding[]): Resolved => ({
    part: null,
    own,
    findings: inFileOrder(findings.map((finding) => locate(source, finding))),
  });
  if (source.root === undefined || ofText.length > 0) return none(ofText);
  const ofSize = tariffLimitFindings(source);
  if (ofSize.length > 0) return none(ofSize);
  const part = partOf(source.root, own);
  if (part.kind !== 'object')
    return none([
      documentFinding(
        'document/wrong-value',
        { path: [] },
        { value: 'no object', expected: 'a tariff document' },
      ),
    ]);
  if (!part.entries.has('extends')) return { part, own, findings: [] };
  const ids = chain.length === 0 ? [wordOf(within(part, 'id')) ?? ''] : chain;
  const base = baseOf(part, ids, library);
  const ofNames = nameFindings(part);
  if (!('kind' in base)) return none([...ofNames, ...base]);
  const findings: Finding[] = [...ofNames];
  const whole = merged(base, part, findings);
  return findings.length === 0 ? { part: whole, own, findings } : none(findings);
}

/**
 * The id of the document that a text extends, for a reader who has to fetch it first.
 *
 * @returns null where it extends none, or is no JSON, or names no id
 * @example
 * extendedId('{ "extends": "utility-domestic" }') //=> "utility-domestic"
 */
export function extendedId(text: string): string | null {
  const id = textUnder(text, 'extends');
  return id !== null && ID.test(id) ? id : null;
}

/**
 * Put a tariff document together with the one that it extends, so that a category of a supplier need not
 * copy another. `"extends"` names the id of the other document; `"id"` and `"name"` have to be its own.
 *
 * - Each further key takes the place of the other's, as a whole.
 * - `sources` and `dayRules` (and `prices` and `measures`) are merged key by key.
 * - `changes` is a list of changes to what comes of that, made one after the other:
 *   `{ "version": NAME, "charge": ID, "set": { … } }` puts keys in the place of a charge's;
 *   `{ "version": NAME, "set": { … } }` and `{ "settlement": FROM, "set": { … } }` do so in a version and in a
 *   settlement; `{ "version": NAME, "remove": ID }` takes a charge out;
 *   `{ "version": NAME, "add": { … }, "after": ID }`, or `"first": true`, puts one in.
 * - `null` in the place of a value takes its key out: of the document, of what is merged, and in `set`.
 *
 * The other document may extend one in turn, up to eight, and none that came before. A name that is not
 * there, of a document, version, charge, settlement or key, is an error that says which are. A document
 * without `"extends"` is passed on as it is.
 *
 * @param text     the JSON file, whole
 * @param library  where other documents are found
 * @returns        the whole document as JSON, for `readTariff`, or the findings; nothing is thrown
 * @example
 * extendDocument('{ "extends": "a", "id": "b", "name": "B" }', { lookUp: () => '{ "id": "a", "name": "A", "currency": "INR" }' }).text.replace(/\s/g, '') //=> "{\"id\":\"b\",\"name\":\"B\",\"currency\":\"INR\"}"
 */
export function extendDocument(text: string, library: Library): ExtendedDocument {
  const { root } = readSourceText(text).source;
  if (root === undefined || childAt(root, 'extends') === undefined)
    return { text, findings: [], place: (finding) => finding };
  const { part, own, findings } = resolve(text, [], library);
  const place = (finding: Finding): Finding => (part === null ? finding : inOwn(finding, part, own));
  return { text: part === null ? null : written(part), findings, place };
}

/** A finding about the whole document, in the place of the text that extends the other. */
function inOwn(finding: Finding, whole: ObjectPart, own: Origin): Finding {
  const { from, offset } = nearestPart(whole, finding.path);
  const position = positionAt(from.source, offset);
  if (finding.code === 'document/more-problems')
    return { ...finding, position: positionAt(own.source, own.source.text.trimEnd().length) };
  if (from === own) return { ...finding, position };
  return locate(own.source, ofOther({ ...finding, position }, from));
}

/**
 * Read a tariff document that may extend another.
 *
 * @param text     the JSON file, whole
 * @param library  where other documents are found
 * @returns        as `readTariff` does; a finding about a part of another document says where it stands there
 * @example
 * readExtendedTariff('{ "extends": "a", "id": "b", "name": "B" }', { lookUp: () => null }).findings[0].code //=> "tariff/extends-unknown"
 */
export function readExtendedTariff(text: string, library: Library): ReadTariff {
  const extended = extendDocument(text, library);
  if (extended.text === text) return readTariff(text);
  const { source } = readSourceText(text);
  if (extended.text === null) return { value: null, findings: extended.findings, source };
  const { value, findings } = readTariff(extended.text);
  return { value, findings: inFileOrder(findings.map(extended.place)), source };
}
