import type { Finding, Path } from '../quantity/index.ts';
import { documentFinding } from './document-findings.ts';
import type { JsonNode } from './json-text.ts';
import { childAt, type SourceText } from './source-text.ts';

/**
 * Larger than any tariff, and small enough that one at every limit is read and billed in a second or so:
 * the items of some lists, of all lists together (versions, charges, slabs, steps, bases …), the names of
 * sources and day rules, the characters of a name, and the lines of a version (and of quantities and prices),
 * each with those that it names and those that they name in turn: so often does each stand in a derivation.
 */
const TARIFF_LIMITS = {
  versions: 1000,
  settlements: 1000,
  charges: 200,
  of: 200,
  changes: 1000,
  items: 20_000,
  names: 100,
  name: 64,
  unfolded: 1000,
} as const;

const OF_LISTS: ReadonlySet<string> = new Set(['versions', 'settlements', 'charges', 'of', 'changes']);
const OF_NAMES: ReadonlySet<string> = new Set(['sources', 'dayRules']);

function tooLarge(path: Path, found: string, most: number): Finding {
  return documentFinding('document/too-large', { path }, { found, most: String(most) });
}

/** A list that is longer than its key allows. */
function listFindings(key: string, items: number, path: Path): Finding[] {
  if (!OF_LISTS.has(key)) return [];
  const most = TARIFF_LIMITS[key as 'versions' | 'settlements' | 'charges' | 'of' | 'changes'];
  return items > most ? [tooLarge(path, `${items} items in "${key}"`, most)] : [];
}

/** Names are repeated in messages about others, so that many long ones would be many times as much text. */
function nameFindings(key: string, node: JsonNode, path: Path): Finding[] {
  const most = TARIFF_LIMITS.name;
  const children = node.children ?? [];
  if (key === 'id' && typeof node.value === 'string' && node.value.length > most)
    return [tooLarge(path, `a name of ${node.value.length} characters`, most)];
  if (!OF_NAMES.has(key) || node.type !== 'object') return [];
  if (children.length > TARIFF_LIMITS.names)
    return [tooLarge(path, `${children.length} names in "${key}"`, TARIFF_LIMITS.names)];
  return children.flatMap(({ children: [name] = [] }) => {
    const text = String(name?.value);
    return text.length > most ? [tooLarge([...path, text], `a name of ${text.length} characters`, most)] : [];
  });
}

/** Keys whose texts name nothing. */
const WORDS: ReadonlySet<unknown> = new Set(['id', 'label', 'clause', 'kind', 'is']);

/** How many lines the names in a part come to. */
function linesNamed(node: JsonNode, counts: ReadonlyMap<unknown, number>): number {
  if (node.type === 'string') return counts.get(node.value) ?? 0;
  if (node.type === 'property' && WORDS.has(node.children?.[0]?.value)) return 0;
  const children = node.type === 'property' ? (node.children ?? []).slice(1) : (node.children ?? []);
  return children.reduce((sum, child) => sum + linesNamed(child, counts), 0);
}

/** The lines of a list or map, each counted once, and again wherever another below it names it. */
function unfoldedLines({ type, children = [] }: JsonNode): number {
  const counts = new Map<unknown, number>();
  return children.reduce((sum, child) => {
    const [name, line = child] = type === 'object' ? (child.children ?? []) : [childAt(child, 'id'), child];
    const count = 1 + linesNamed(line, counts);
    counts.set(name?.value, count);
    return sum + count;
  }, 0);
}

const UNFOLDED: ReadonlySet<string> = new Set(['charges', 'quantities', 'prices', 'measures']);

/** Percentages of percentages of percentages: a few lines of text can come to more than there is room for. */
function unfoldedFindings(key: string, node: JsonNode, path: Path): Finding[] {
  const most = TARIFF_LIMITS.unfolded;
  if (!UNFOLDED.has(key) || unfoldedLines(node) <= most) return [];
  const found = `more than ${most} lines in "${key}", once every name in them is written out`;
  return [tooLarge(path, found, most)];
}

/** The items of all lists in a part; findings about it are added to a list. */
function check(node: JsonNode, path: Path, findings: Finding[]): number {
  const key = path.at(-1);
  const children = node.children ?? [];
  if (typeof key === 'string') {
    findings.push(...nameFindings(key, node, path));
    if (node.type === 'array') findings.push(...listFindings(key, children.length, path));
    findings.push(...unfoldedFindings(key, node, path));
  }
  if (node.type === 'array') {
    return children.reduce((sum, child, index) => sum + 1 + check(child, [...path, index], findings), 0);
  }
  return children.reduce((sum, { children: [name, value] = [] }) => {
    return value === undefined ? sum : sum + check(value, [...path, String(name?.value)], findings);
  }, 0);
}

/**
 * Check that a tariff is no larger than tariffs are, before anything is done with it that takes longer the
 * larger it is.
 *
 * @param source  the document as it was read, of any form
 * @returns       what is too large, by `TARIFF_LIMITS`
 */
export function tariffLimitFindings({ root }: SourceText): readonly Finding[] {
  if (root === undefined) return [];
  const findings: Finding[] = [];
  const items = check(root, [], findings);
  if (items > TARIFF_LIMITS.items)
    findings.push(tooLarge([], `${items} items in all its lists together`, TARIFF_LIMITS.items));
  return findings;
}
