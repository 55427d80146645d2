import type { Finding, Path } from '../quantity/index.ts';
import { documentFinding } from './document-findings.ts';
import { readJson, type JsonNode, type JsonProblem } from './json-text.ts';
import { firstFindings } from './many-findings.ts';

/** A JSON text with the places of its parts. */
export interface SourceText {
  readonly text: string;
  readonly root: JsonNode | undefined;
  /** The offset at which each line begins. */
  readonly lineStarts: readonly number[];
}

function lineStartsOf(text: string): readonly number[] {
  const starts = [0];
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return starts;
}

/** Line and column of an offset, both from 1. */
export function positionAt(
  { lineStarts }: Pick<SourceText, 'lineStarts'>,
  offset: number,
): { line: number; column: number } {
  let [low, high] = [0, lineStarts.length];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if ((lineStarts[middle] ?? 0) <= offset) low = middle;
    else high = middle;
  }
  return { line: low + 1, column: offset - (lineStarts[low] ?? 0) + 1 };
}

/** The values of an object by key, kept: a thousand findings can be about an object with as many keys. */
const KEPT = new WeakMap<JsonNode, ReadonlyMap<unknown, JsonNode | undefined>>();

function valuesByKey(node: JsonNode): ReadonlyMap<unknown, JsonNode | undefined> {
  const kept = KEPT.get(node);
  if (kept !== undefined) return kept;
  const made = new Map((node.children ?? []).map(({ children = [] }) => [children[0]?.value, children[1]]));
  KEPT.set(node, made);
  return made;
}

/** The part of an object under a key, or of an array at an index. Of a key that stands twice, the last. */
export function childAt(node: JsonNode, step: string | number): JsonNode | undefined {
  if (node.type === 'array') return typeof step === 'number' ? node.children?.[step] : undefined;
  return node.type === 'object' ? valuesByKey(node).get(step) : undefined;
}

/** The node at a path, or the nearest one that holds the place. */
function nearestNode(root: JsonNode, path: Path): JsonNode {
  let node = root;
  for (const step of path) {
    const child = childAt(node, step);
    if (child === undefined) break;
    node = child;
  }
  return node;
}

/** Where a finding stands: what counts those that are not listed, at the end. */
function offsetOf(root: JsonNode, { code, path }: Finding): number {
  return code === 'document/more-problems' ? root.offset + root.length : nearestNode(root, path).offset;
}

/**
 * Say at which line and column a finding stands.
 *
 * @param source   the text it is about
 * @param finding  with a path into it
 */
export function locate(source: SourceText, finding: Finding): Finding {
  if (finding.position !== undefined || source.root === undefined) return finding;
  return { ...finding, position: positionAt(source, offsetOf(source.root, finding)) };
}

/** The text of the value at a path, as the file writes it. */
export function rawText(source: SourceText, path: Path): string {
  if (source.root === undefined) return '';
  const node = nearestNode(source.root, path);
  return source.text.slice(node.offset, node.offset + node.length);
}

/** Names that programs give to what every object has: under one of them a value is not only a value. */
const FORBIDDEN: readonly string[] = ['__proto__', 'constructor', 'prototype'];

const isForbidden = ({ code }: Finding): boolean => code === 'document/forbidden-key';

/** Findings about the keys of a part and of all parts in it, added to a list. */
function checkKeys(node: JsonNode, path: Path, findings: Finding[]): void {
  const seen = new Set<string>();
  (node.children ?? []).forEach((child, index) => {
    if (node.type === 'array') {
      checkKeys(child, [...path, index], findings);
      return;
    }
    const [keyNode, valueNode] = child.children ?? [];
    if (keyNode === undefined || valueNode === undefined) return;
    const key = String(keyNode.value);
    const at = [...path, key];
    if (FORBIDDEN.includes(key))
      findings.push(documentFinding('document/forbidden-key', { path: at }, { key }));
    if (seen.has(key)) findings.push(documentFinding('document/duplicate-key', { path: at }, { key }));
    seen.add(key);
    checkKeys(valueNode, at, findings);
  });
}

function unreadable({ problem, most }: JsonProblem): Finding {
  return most === undefined
    ? documentFinding('document/not-json', { path: [] }, { problem })
    : documentFinding('document/too-large', { path: [] }, { found: problem, most });
}

/**
 * Read a JSON text, keeping the place of each part.
 *
 * @param text  the whole file
 * @returns     the parts, and findings for text that is no JSON or larger than is read, for keys that
 *              stand twice and for keys that no document can have
 */
export function readSourceText(text: string): { source: SourceText; findings: readonly Finding[] } {
  const read = readJson(text);
  if ('type' in read) {
    const all: Finding[] = [];
    checkKeys(read, [], all);
    // Those that nothing else is read after come first, so that a long list does not leave them out.
    const findings = firstFindings([...all.filter(isForbidden), ...all.filter((one) => !isForbidden(one))]);
    return { source: { text, root: read, lineStarts: lineStartsOf(text) }, findings };
  }
  const lineStarts = lineStartsOf(text.slice(0, read.offset));
  return {
    source: { text, root: undefined, lineStarts },
    findings: [{ ...unreadable(read), position: positionAt({ lineStarts }, read.offset) }],
  };
}

/** Whether a document holds a key that nothing may look up: nothing else of it is then read. */
export function hasForbiddenKey(findings: readonly Finding[]): boolean {
  return findings.some(isForbidden);
}

/**
 * The text that stands under a key of the outermost object, for a reader who has to know what a document
 * is before it is read.
 *
 * @returns null where there is none, or the document cannot be read
 * @example
 * textUnder('{ "format": "unitbook-tariff-1" }', 'format') //=> "unitbook-tariff-1"
 */
export function textUnder(text: string, key: string): string | null {
  const read = readJson(text);
  const value = 'problem' in read ? undefined : childAt(read, key)?.value;
  return typeof value === 'string' ? value : null;
}
