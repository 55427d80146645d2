import type { Path } from '../quantity/index.ts';
import type { JsonNode } from './json-text.ts';
import type { SourceText } from './source-text.ts';

/** A document that takes part: its id, and its text. */
export interface Origin {
  readonly id: string;
  readonly source: SourceText;
}

interface Placed {
  readonly from: Origin;
  /** Where it stands in the text of its document. */
  readonly offset: number;
  readonly length: number;
}

/** A part of a document that is put together, which knows where it comes from. */
export type Part = ObjectPart | ListPart | PlainPart;

/** An object: a map, so that a key is never more than a key. */
export interface ObjectPart extends Placed {
  readonly kind: 'object';
  readonly entries: ReadonlyMap<string, Part>;
}

/** A list. */
export interface ListPart extends Placed {
  readonly kind: 'list';
  readonly items: readonly Part[];
}

/** A string, number, true, false or null, as the file writes it. */
export interface PlainPart extends Placed {
  readonly kind: 'plain';
  readonly raw: string;
  readonly value: unknown;
}

/** Take a part of a document over with its place. */
export function partOf(node: JsonNode, from: Origin): Part {
  const { offset, length, children = [] } = node;
  if (node.type === 'array')
    return { kind: 'list', from, offset, length, items: children.map((child) => partOf(child, from)) };
  if (node.type === 'object') {
    const entries = children.flatMap(({ children: [key, value] = [] }) =>
      value === undefined ? [] : [[String(key?.value), partOf(value, from)] as const],
    );
    return { kind: 'object', from, offset, length, entries: new Map(entries) };
  }
  const raw = from.source.text.slice(offset, offset + length);
  return { kind: 'plain', from, offset, length, raw, value: node.value };
}

/** The part under a key or at an index. */
export function within(part: Part | undefined, step: string | number): Part | undefined {
  if (part?.kind === 'object') return part.entries.get(String(step));
  return part?.kind === 'list' && typeof step === 'number' ? part.items[step] : undefined;
}

/** The text that a part is; null where it is none. */
export function wordOf(part: Part | undefined): string | null {
  return part?.kind === 'plain' && typeof part.value === 'string' ? part.value : null;
}

/** Whether a part is `null`, which takes out what it stands for. */
export function isNothing(part: Part): boolean {
  return part.kind === 'plain' && part.value === null;
}

/** The part at a path, or the nearest one that holds the place. */
export function nearestPart(root: Part, path: Path): Part {
  let part = root;
  for (const step of path) {
    const next = within(part, step);
    if (next === undefined) break;
    part = next;
  }
  return part;
}

/** A part as JSON text, its plain values as they were written. */
export function written(part: Part, indent = ''): string {
  if (part.kind === 'plain') return part.raw;
  const inner = `${indent}  `;
  const [open, close] = part.kind === 'list' ? '[]' : '{}';
  const lines =
    part.kind === 'list'
      ? part.items.map((item) => inner + written(item, inner))
      : [...part.entries].map(([key, value]) => `${inner}${JSON.stringify(key)}: ${written(value, inner)}`);
  return lines.length === 0
    ? `${open ?? ''}${close ?? ''}`
    : `${open ?? ''}\n${lines.join(',\n')}\n${indent}${close ?? ''}`;
}
