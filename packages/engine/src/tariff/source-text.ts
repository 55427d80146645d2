import type { Finding, Path } from '../quantity/index.ts';
import { documentFinding } from './document-findings.ts';
import { readJson, type JsonNode } from './json-text.ts';

/** A JSON text with the places of its parts. */
export interface SourceText {
  readonly text: string;
  readonly root: JsonNode | undefined;
}

/** Line and column of an offset, both from 1. */
function positionAt(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset).split('\n');
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 };
}

/** The part of an object under a key, or of an array at an index. Of a key that stands twice, the last. */
function childAt({ type, children = [] }: JsonNode, step: string | number): JsonNode | undefined {
  if (type === 'array') return typeof step === 'number' ? children[step] : undefined;
  return children.findLast((property) => property.children?.[0]?.value === step)?.children?.[1];
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

/**
 * Say at which line and column a finding stands.
 *
 * @param source   the text it is about
 * @param finding  with a path into it
 */
export function locate(source: SourceText, finding: Finding): Finding {
  if (finding.position !== undefined || source.root === undefined) return finding;
  return { ...finding, position: positionAt(source.text, nearestNode(source.root, finding.path).offset) };
}

/** The text of the value at a path, as the file writes it. */
export function rawText(source: SourceText, path: Path): string {
  if (source.root === undefined) return '';
  const node = nearestNode(source.root, path);
  return source.text.slice(node.offset, node.offset + node.length);
}

function duplicateKeys(node: JsonNode, path: Path): Finding[] {
  const seen = new Set<string>();
  return (node.children ?? []).flatMap((child, index) => {
    if (node.type === 'array') return duplicateKeys(child, [...path, index]);
    const [keyNode, valueNode] = child.children ?? [];
    if (node.type !== 'object' || keyNode === undefined || valueNode === undefined) return [];
    const key = String(keyNode.value);
    const again = seen.has(key)
      ? [documentFinding('document/duplicate-key', { path: [...path, key] }, { key })]
      : [];
    seen.add(key);
    return [...again, ...duplicateKeys(valueNode, [...path, key])];
  });
}

/**
 * Read a JSON text, keeping the place of each part.
 *
 * @param text  the whole file
 * @returns     the parts, and findings for text that is no JSON and for keys that stand twice
 */
export function readSourceText(text: string): { source: SourceText; findings: readonly Finding[] } {
  const read = readJson(text);
  if ('type' in read) return { source: { text, root: read }, findings: duplicateKeys(read, []) };
  const finding = documentFinding('document/not-json', { path: [] }, { problem: read.problem });
  return {
    source: { text, root: undefined },
    findings: [{ ...finding, position: positionAt(text, read.offset) }],
  };
}
