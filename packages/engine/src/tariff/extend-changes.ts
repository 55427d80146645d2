import type { Finding, Path } from '../quantity/index.ts';
import { extendFinding } from './extend-findings.ts';
import { isNothing, within, wordOf, type ListPart, type ObjectPart, type Part } from './extend-tree.ts';

/** Where problems are gathered; paths are those of the document that says the change. */
type Findings = Finding[];

/** As many names as a message lists. */
const MOST_NAMES = 30;

const shortened = (text: string): string => (text.length > 60 ? `${text.slice(0, 57)}…` : text);

function listOf(names: Iterable<string>): string {
  const all = [...names];
  const listed = all.slice(0, MOST_NAMES).map((name) => `"${shortened(name)}"`);
  const left = all.length - listed.length;
  return [...listed, ...(left > 0 ? [`${left} more`] : [])].join(', ') || 'none';
}

/** Put keys in the place of others, or beside them; `null` takes one out. */
export function withKeys(part: ObjectPart, set: ObjectPart, path: Path, findings: Findings): ObjectPart {
  const entries = new Map(part.entries);
  for (const [key, value] of set.entries) {
    if (!isNothing(value)) entries.set(key, value);
    else if (!entries.delete(key)) {
      const values = { key, known: listOf(part.entries.keys()) };
      findings.push(extendFinding('tariff/extends-nothing-there', { path: [...path, key] }, values));
    }
  }
  return { ...set, entries };
}

/** What a change is about: a version or a settlement, by the name it goes by. */
interface Named {
  readonly list: 'versions' | 'settlements' | 'charges';
  readonly what: 'version' | 'settlement' | 'charge';
  readonly by: 'name' | 'from' | 'id';
}

const VERSION: Named = { list: 'versions', what: 'version', by: 'name' };
const SETTLEMENT: Named = { list: 'settlements', what: 'settlement', by: 'from' };
const CHARGE: Named = { list: 'charges', what: 'charge', by: 'id' };

/** One change, while it is made. */
interface Change {
  readonly entries: ReadonlyMap<string, Part>;
  readonly path: Path;
  readonly findings: Findings;
}

function itemsOf(holder: ObjectPart, list: string): ListPart | null {
  const part = within(holder, list);
  return part?.kind === 'list' ? part : null;
}

/** Where the item stands that a change names under a key; null, with a finding, where there is none. */
function indexOf(holder: ObjectPart, named: Named, key: string, change: Change): number | null {
  const name = wordOf(change.entries.get(key)) ?? '';
  const names = (itemsOf(holder, named.list)?.items ?? []).map((item) => wordOf(within(item, named.by)));
  const at = names.indexOf(name);
  if (at !== -1) return at;
  const known = listOf(names.filter((one) => one !== null));
  const values = { what: named.what, name, known };
  change.findings.push(extendFinding('tariff/extends-unknown-name', { path: [...change.path, key] }, values));
  return null;
}

/** Change the items of a list; what is then wrong with the list as a whole stands where `by` does. */
function withItems(
  holder: ObjectPart,
  list: string,
  make: (items: Part[]) => void,
  by: Part = holder,
): ObjectPart {
  const part = itemsOf(holder, list);
  if (part === null) return holder;
  const items = [...part.items];
  make(items);
  const { from, offset, length } = by === holder ? part : by;
  return {
    ...holder,
    entries: new Map(holder.entries).set(list, { kind: 'list', from, offset, length, items }),
  };
}

/** Change the item that is named under a key; nothing where there is none. */
function withItem(
  holder: ObjectPart,
  named: Named,
  change: Change,
  make: (item: ObjectPart) => ObjectPart,
): ObjectPart {
  const at = indexOf(holder, named, named.what, change);
  return withItems(holder, named.list, (items) => {
    const item = at === null ? undefined : items[at];
    if (at !== null && item?.kind === 'object') items[at] = make(item);
  });
}

/** The keys of a change in each of its forms, in the order of the alphabet, and what it does. */
const FORMS: Readonly<Record<string, (document: ObjectPart, change: Change) => ObjectPart>> = {
  'set version': (document, change) =>
    withItem(document, VERSION, change, (version) => keysSet(version, change)),
  'charge set version': (document, change) =>
    withItem(document, VERSION, change, (version) =>
      withItem(version, CHARGE, change, (charge) => keysSet(charge, change)),
    ),
  'remove version': (document, change) =>
    withItem(document, VERSION, change, (version) => {
      const at = indexOf(version, CHARGE, 'remove', change);
      return at === null ? version : withItems(version, 'charges', (items) => void items.splice(at, 1));
    }),
  'add after version': (document, change) =>
    withItem(document, VERSION, change, (version) => {
      const at = indexOf(version, CHARGE, 'after', change);
      return at === null ? version : added(version, at + 1, change);
    }),
  'add first version': (document, change) =>
    withItem(document, VERSION, change, (version) => added(version, 0, change)),
  'set settlement': (document, change) =>
    withItem(document, SETTLEMENT, change, (settlement) => keysSet(settlement, change)),
};

function keysSet(item: ObjectPart, { entries, path, findings }: Change): ObjectPart {
  const set = entries.get('set');
  return set?.kind === 'object' ? withKeys(item, set, [...path, 'set'], findings) : item;
}

function added(version: ObjectPart, at: number, { entries }: Change): ObjectPart {
  const charge = entries.get('add');
  if (charge === undefined) return version;
  return withItems(version, 'charges', (items) => void items.splice(at, 0, charge), charge);
}

/** Whether a value is of the kind that its key wants. */
function isOfKind([key, part]: readonly [string, Part]): boolean {
  if (key === 'set' || key === 'add') return part.kind === 'object';
  if (key === 'first') return part.kind === 'plain' && part.value === true;
  return wordOf(part) !== null;
}

function formOf(part: Part): ((document: ObjectPart, change: Change) => ObjectPart) | null {
  if (part.kind !== 'object' || ![...part.entries].every(isOfKind)) return null;
  const keys = [...part.entries.keys()].sort().join(' ');
  return Object.hasOwn(FORMS, keys) ? (FORMS[keys] ?? null) : null;
}

function rawOf({ from, offset, length }: Part): string {
  return shortened(from.source.text.slice(offset, offset + length).replace(/\s+/g, ' '));
}

/**
 * Make the changes that a document lists, one after the other, so that a later one finds what an earlier
 * one did.
 *
 * @param document  what is changed
 * @param changes   the list under "changes"
 * @param findings  where problems are put; their paths are those of the list
 */
export function withChanges(document: ObjectPart, changes: Part, findings: Finding[]): ObjectPart {
  if (changes.kind !== 'list') {
    findings.push(
      extendFinding('tariff/extends-no-change', { path: ['changes'] }, { found: rawOf(changes) }),
    );
    return document;
  }
  return changes.items.reduce<ObjectPart>((before, item, index) => {
    const path = ['changes', index];
    const form = formOf(item);
    if (form !== null && item.kind === 'object')
      return form(before, { entries: item.entries, path, findings });
    findings.push(extendFinding('tariff/extends-no-change', { path }, { found: rawOf(item) }));
    return before;
  }, document);
}
