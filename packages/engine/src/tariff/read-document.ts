import * as z from 'zod/mini';
import type { Finding, Path } from '../quantity/index.ts';
import { documentFinding } from './document-findings.ts';
import { firstFindings, MOST_FINDINGS } from './many-findings.ts';
import { schemaFindings } from './schema-findings.ts';
import { hasForbiddenKey, locate, rawText, readSourceText, type SourceText } from './source-text.ts';

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
  // A document with more slips than are listed is not read any further.
  if (issues.length > MOST_FINDINGS) return null;
  const copy = JSON.parse(source.text) as Tree;
  for (const issue of issues) mend(copy, issue, source);
  const again = z.safeParse(schema, copy);
  return again.success ? again.data : null;
}

/**
 * What zod says of a value; null where it finds more than it can hold. It gathers its problems by passing
 * them as arguments, and an engine takes only so many of those: 65,536 in one browser, about twice as many
 * in others.
 */
function checkedBy<Value>(
  schema: z.ZodMiniType<Value>,
  value: unknown,
): z.core.util.SafeParseResult<Value> | null {
  try {
    return z.safeParse(schema, value);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

const TOO_MANY_PROBLEMS = { found: 'more problems of form than can be counted', most: 'some thousand' };

/**
 * Read a JSON document against a schema: every problem of form at once, each with line and column; of
 * more than a thousand the first, and how many more there are.
 *
 * @param text    the whole file
 * @param schema  what it should be
 * @param before  what is looked for first: where it finds anything, the form is not checked
 */
export function readDocument<Value>(
  text: string,
  schema: z.ZodMiniType<Value>,
  before: (source: SourceText) => readonly Finding[] = () => [],
): ReadDocument<Value> {
  const { source, findings } = readSourceText(text);
  const refused = (all: readonly Finding[]): ReadDocument<Value> => ({
    value: null,
    mended: null,
    source,
    findings: firstFindings(all).map((finding) => locate(source, finding)),
  });
  if (source.root === undefined || hasForbiddenKey(findings)) return refused(findings);
  const first = before(source);
  if (first.length > 0) return refused([...findings, ...first]);
  const value: unknown = JSON.parse(text);
  const checked = checkedBy(schema, value);
  if (checked === null)
    return refused([...findings, documentFinding('document/too-large', { path: [] }, TOO_MANY_PROBLEMS)]);
  if (checked.success) {
    const whole = findings.length === 0 ? checked.data : null;
    return { ...refused(findings), value: whole, mended: checked.data };
  }
  const { issues } = checked.error;
  const form = schemaFindings(issues, schema, { value, source });
  return { ...refused([...findings, ...form]), mended: mended(schema, issues, source) };
}

const isRest = ({ code }: Finding): boolean => code === 'document/more-problems';

/** Findings in the order of the file they are about; what counts those that are not listed comes last. */
export function inFileOrder(findings: readonly Finding[]): readonly Finding[] {
  const start = { line: 0, column: 0 };
  return [...findings].sort((one, other) => {
    const [a, b] = [one.position ?? start, other.position ?? start];
    const rest = (isRest(one) ? 1 : 0) - (isRest(other) ? 1 : 0);
    return rest || a.line - b.line || a.column - b.column;
  });
}
