import * as z from 'zod/mini';
import type { Finding, Path } from '../quantity/index.ts';
import { documentFinding } from './document-findings.ts';
import { rawText, type SourceText } from './source-text.ts';

type Issue = z.core.$ZodIssue;

interface SchemaNode {
  readonly description?: string;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly additionalProperties?: SchemaNode | boolean;
  readonly items?: SchemaNode;
  readonly oneOf?: readonly SchemaNode[];
  readonly anyOf?: readonly SchemaNode[];
  readonly const?: unknown;
  readonly type?: string;
}

/** A document under check: its value, its text and the JSON Schema of what it should be. */
interface Checked {
  readonly value: unknown;
  readonly source: SourceText;
  readonly schema: SchemaNode;
}

/** Follow a value down the JSON Schema, so that messages can list the keys allowed at its place. */
function schemaAt(path: Path, checked: Checked): SchemaNode | undefined {
  let node: SchemaNode | undefined = checked.schema;
  let value: unknown = checked.value;
  for (const step of path) {
    node = typeof step === 'number' ? node?.items : (node?.properties?.[step] ?? open(node));
    value = (value as Record<string | number, unknown> | undefined)?.[step];
    node = chooseVariant(node, value);
  }
  return node;
}

function open(node: SchemaNode | undefined): SchemaNode | undefined {
  return typeof node?.additionalProperties === 'object' ? node.additionalProperties : undefined;
}

/** The variant of a choice whose fixed keys (such as `kind`) agree with the value. */
function chooseVariant(node: SchemaNode | undefined, value: unknown): SchemaNode | undefined {
  const variants = node?.oneOf ?? node?.anyOf;
  if (variants === undefined || typeof value !== 'object' || value === null) return node;
  return variants.find(
    (variant) =>
      variant.type === 'object' &&
      Object.entries(variant.properties ?? {}).every(
        ([key, property]) =>
          property.const === undefined || property.const === (value as Record<string, unknown>)[key],
      ),
  );
}

function valueAt(document: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) => (value as Record<string | number, unknown> | undefined)?.[step],
    document,
  );
}

function unknownKeys(issue: Issue & { code: 'unrecognized_keys' }, checked: Checked): Finding[] {
  const node = schemaAt(issue.path as Path, checked);
  const allowed = Object.keys(node?.properties ?? {}).join(', ');
  return issue.keys.map((key) =>
    documentFinding('document/unknown-key', { path: [...(issue.path as Path), key] }, { key, allowed }),
  );
}

/** What was expected, in words, from zod's issue. */
function expectation(issue: Issue): string {
  if (issue.code === 'invalid_value')
    return `one of ${issue.values.map((value) => JSON.stringify(value)).join(', ')}`;
  if (issue.code === 'invalid_union' && 'options' in issue) {
    return `one of ${(issue.options as string[]).map((option) => `"${option}"`).join(', ')}`;
  }
  if (issue.code === 'invalid_format' && 'pattern' in issue)
    return `a text of the form ${issue.pattern ?? ''}`;
  if (issue.code === 'too_small') return 'at least one';
  return 'expected' in issue ? String(issue.expected) : 'another kind of value';
}

function findingFor(issue: Issue, checked: Checked): Finding[] {
  const path = issue.path as Path;
  if (issue.code === 'unrecognized_keys') return unknownKeys(issue, checked);
  const value = valueAt(checked.value, path);
  if (value === undefined && path.length > 0) {
    const key = String(path.at(-1));
    const meaning = schemaAt(path, checked)?.description ?? expectation(issue);
    return [documentFinding('document/missing-key', { path }, { key, meaning })];
  }
  if (typeof value === 'number') {
    return [documentFinding('document/number-not-text', { path }, { raw: rawText(checked.source, path) })];
  }
  if (issue.message === 'decimal') {
    return [documentFinding('document/not-a-decimal', { path }, { value: String(value) })];
  }
  const expected = [schemaAt(path, checked)?.description, expectation(issue)]
    .filter((text) => text)
    .join('; ');
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

/**
 * The findings for what a schema refuses, each in the document's own words.
 *
 * @param issues  zod's
 * @param schema  the one that refused
 * @param value   what the issues are about
 * @param source  its text, for numbers as they were written
 */
export function schemaFindings(
  issues: readonly Issue[],
  schema: z.ZodMiniType,
  { value, source }: { readonly value: unknown; readonly source: SourceText },
): Finding[] {
  const checked = { value, source, schema: z.toJSONSchema(schema) as SchemaNode };
  return issues.flatMap((issue) => findingFor(issue, checked));
}
