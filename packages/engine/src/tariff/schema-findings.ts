import * as z from 'zod/mini';
import type { Finding, Path } from '../quantity/index.ts';
import { documentFinding } from './document-findings.ts';
import { MOST_FINDINGS, restOf } from './many-findings.ts';
import { rawText, type SourceText } from './source-text.ts';

type Issue = z.core.$ZodIssue;

/** What zod keeps of a schema, as far as messages need it. */
interface Definition {
  readonly type: string;
  readonly shape?: Readonly<Record<string, z.core.$ZodType>>;
  readonly element?: z.core.$ZodType;
  readonly innerType?: z.core.$ZodType;
  readonly valueType?: z.core.$ZodType;
  readonly options?: readonly z.core.$ZodType[];
  readonly values?: readonly unknown[];
  readonly entries?: Readonly<Record<string, unknown>>;
}

/** A document under check: its value, its text and the schema of what it should be. */
interface Checked {
  readonly value: unknown;
  readonly source: SourceText;
  readonly schema: z.core.$ZodType;
}

const definitionOf = (schema: z.core.$ZodType): Definition => schema._zod.def;

/** The description of a schema, also where it is optional. */
function meaningOf(schema: z.core.$ZodType | undefined): string | undefined {
  if (schema === undefined) return undefined;
  const { innerType } = definitionOf(schema);
  return (
    z.globalRegistry.get(schema)?.description ?? (innerType === undefined ? undefined : meaningOf(innerType))
  );
}

/** Whether an object's fixed keys, such as `kind`, agree with a schema's. */
function agrees(schema: z.core.$ZodType, value: Readonly<Record<string, unknown>>): boolean {
  const { type, shape = {} } = definitionOf(schema);
  return (
    type === 'object' &&
    Object.entries(shape).every(([key, property]) => {
      const { type: kind, values = [], entries = {} } = definitionOf(property);
      if (kind === 'enum' && key === 'is') return Object.values(entries).includes(value[key]);
      return kind !== 'literal' || values.includes(value[key]);
    })
  );
}

/** The schema itself: what is optional unwrapped, of a choice the variant that fits the value. */
function resolved(schema: z.core.$ZodType | undefined, value: unknown): z.core.$ZodType | undefined {
  if (schema === undefined) return undefined;
  const { innerType, options } = definitionOf(schema);
  if (innerType !== undefined) return resolved(innerType, value);
  if (options === undefined || typeof value !== 'object' || value === null) return schema;
  return options.find((option) => agrees(option, value as Record<string, unknown>));
}

/** Follow a value down its schema, so that messages can tell what is allowed at its place. */
function schemaAt(path: Path, checked: Checked): z.core.$ZodType | undefined {
  let { value } = checked;
  let schema = resolved(checked.schema, value);
  for (const step of path) {
    const { shape, element, valueType }: Partial<Definition> =
      schema === undefined ? {} : definitionOf(schema);
    const own = shape !== undefined && Object.hasOwn(shape, step) ? shape[step] : undefined;
    const next = typeof step === 'number' ? element : (own ?? valueType);
    value = (value as Record<string | number, unknown> | undefined)?.[step];
    if (step === path.at(-1) && value === undefined) return next;
    schema = resolved(next, value);
  }
  return schema;
}

function valueAt(document: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) => (value as Record<string | number, unknown> | undefined)?.[step],
    document,
  );
}

function unknownKeys(issue: Issue & { code: 'unrecognized_keys' }, checked: Checked): Finding[] {
  const schema = schemaAt(issue.path as Path, checked);
  const allowed = Object.keys((schema && definitionOf(schema).shape) ?? {}).join(', ');
  return issue.keys.map((key) =>
    documentFinding('document/unknown-key', { path: [...(issue.path as Path), key] }, { key, allowed }),
  );
}

const KINDS: Readonly<Record<string, string>> = {
  string: 'a text',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object with keys',
  record: 'an object with keys',
};

/** What was expected, in words, from zod's issue. */
function expectation(issue: Issue): string {
  if (issue.code === 'invalid_value')
    return `one of ${issue.values.map((value) => JSON.stringify(value)).join(', ')}`;
  if (issue.code === 'invalid_union' && 'options' in issue) {
    return `one of ${(issue.options as string[]).map((option) => `"${option}"`).join(', ')}`;
  }
  if (issue.code === 'invalid_format') return '';
  if (issue.code === 'too_small') return 'at least one';
  return 'expected' in issue ? (KINDS[issue.expected] ?? issue.expected) : 'another kind of value';
}

/** The problems of the variant of a choice that the value comes nearest to: those deepest inside it. */
function nearestVariant(issue: Issue): readonly Issue[] {
  if (issue.code !== 'invalid_union') return [];
  const depth = (issues: readonly Issue[]): number => Math.max(0, ...issues.map(({ path }) => path.length));
  const variants = [...issue.errors].sort((a, b) => depth(b) - depth(a));
  const [nearest = []] = variants;
  if (depth(nearest) === 0) return [];
  return nearest.map((inner) => ({ ...inner, path: [...issue.path, ...inner.path] }));
}

function findingFor(issue: Issue, checked: Checked): Finding[] {
  const path = issue.path as Path;
  if (issue.code === 'unrecognized_keys') return unknownKeys(issue, checked);
  const inside = nearestVariant(issue);
  if (inside.length > 0) return inside.flatMap((one) => findingFor(one, checked));
  const value = valueAt(checked.value, path);
  if (value === undefined && path.length > 0) {
    const key = String(path.at(-1));
    const meaning = meaningOf(schemaAt(path, checked)) ?? expectation(issue);
    return [documentFinding('document/missing-key', { path }, { key, meaning })];
  }
  if (
    typeof value === 'number' &&
    path.length > 0 &&
    issue.code === 'invalid_type' &&
    issue.expected === 'string'
  ) {
    return [documentFinding('document/number-not-text', { path }, { raw: rawText(checked.source, path) })];
  }
  if (issue.message === 'decimal') {
    return [documentFinding('document/not-a-decimal', { path }, { value: shortened(String(value)) })];
  }
  const expected = [meaningOf(schemaAt(path, checked)), expectation(issue)].filter((text) => text).join('; ');
  return [
    documentFinding(
      'document/wrong-value',
      { path },
      { value: shortened(rawText(checked.source, path)), expected },
    ),
  ];
}

function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

/** How many problems an issue of zod's is. */
function problemsIn(issue: Issue): number {
  if (issue.code === 'unrecognized_keys') return issue.keys.length;
  return nearestVariant(issue).reduce((sum, inner) => sum + problemsIn(inner), 0) || 1;
}

/**
 * The findings for what a schema refuses, each in the document's own words.
 *
 * @param issues  zod's
 * @param schema  the one that refused
 * @param value   what the issues are about
 * @param source  its text, for numbers as they were written
 * @returns       at least the first `MOST_FINDINGS`, where there are more; then one that counts the rest
 */
export function schemaFindings(
  issues: readonly Issue[],
  schema: z.ZodMiniType,
  { value, source }: { readonly value: unknown; readonly source: SourceText },
): Finding[] {
  const checked = { value, source, schema };
  const findings: Finding[] = [];
  let at = 0;
  for (; at < issues.length && findings.length < MOST_FINDINGS; at += 1) {
    // One by one: what is passed as arguments all at once must not be too many.
    for (const finding of findingFor(issues[at] as Issue, checked)) findings.push(finding);
  }
  const left = issues.slice(at).reduce((sum, issue) => sum + problemsIn(issue), 0);
  return [...findings, ...restOf(left)];
}
