import * as z from 'zod/mini';
import type { Finding, Path } from '../quantity/index.ts';
import { schemaFindings } from './schema-findings.ts';
import { locate, rawText, readSourceText, type SourceText } from './source-text.ts';

/**
 * A document that was read: its value, or null when it has not the right form; and the same with slips
 * of form set right (`mended`), for the checks of meaning that can go on all the same.
 */
export interface ReadDocument<Value> {
  readonly value: Value | null;
  readonly mended: Value | null;
  readonly source: SourceText;
  readonly findings: readonly Finding[];
}

type Issue = z.core.$ZodIssue;
type Tree = Record<string | number, unknown>;

/** Set one slip right in a copy: numbers as text, unknown keys out, a missing clause filled in. */
function mend(root: Tree, issue: Issue, source: SourceText): void {
  const path = issue.path as Path;
  const parent = path
    .slice(0, -1)
    .reduce<unknown>((value, step) => (value as Tree | undefined)?.[step], root);
  const key = path.at(-1);
  if (issue.code === 'unrecognized_keys') {
    const holder = path.reduce<unknown>((value, step) => (value as Tree | undefined)?.[step], root) as Tree;
    for (const unknown of issue.keys) Reflect.deleteProperty(holder, unknown);
  } else if (typeof parent === 'object' && parent !== null && key !== undefined) {
    const holder = parent as Tree;
    const sources = root['sources'];
    if (typeof holder[key] === 'number') holder[key] = rawText(source, path);
    else if (key === 'clause' && typeof sources === 'object')
      holder[key] = Object.keys(sources ?? {})[0] ?? '';
  }
}

function mended<Value>(
  schema: z.ZodMiniType<Value>,
  issues: readonly Issue[],
  source: SourceText,
): Value | null {
  if (source.root === undefined) return null;
  const copy = JSON.parse(source.text) as Tree;
  for (const issue of issues) mend(copy, issue, source);
  const again = z.safeParse(schema, copy);
  return again.success ? again.data : null;
}

/**
 * Read a JSON document against a schema: every problem of form at once, each with line and column.
 *
 * @param text    the whole file
 * @param schema  what it should be
 */
export function readDocument<Value>(text: string, schema: z.ZodMiniType<Value>): ReadDocument<Value> {
  const { source, findings } = readSourceText(text);
  if (source.root === undefined) return { value: null, mended: null, source, findings };
  const value: unknown = JSON.parse(text);
  const checked = z.safeParse(schema, value);
  if (checked.success) {
    const located = findings.map((finding) => locate(source, finding));
    return {
      value: findings.length === 0 ? checked.data : null,
      mended: checked.data,
      source,
      findings: located,
    };
  }
  const { issues } = checked.error;
  const form = schemaFindings(issues, schema, { value, source });
  const all = [...findings, ...form].map((finding) => locate(source, finding));
  return { value: null, mended: mended(schema, issues, source), source, findings: all };
}

/** Findings in the order of the file they are about. */
export function inFileOrder(findings: readonly Finding[]): readonly Finding[] {
  const key = (finding: Finding): number =>
    (finding.position?.line ?? 0) * 1e6 + (finding.position?.column ?? 0);
  return [...findings].sort((a, b) => key(a) - key(b));
}
