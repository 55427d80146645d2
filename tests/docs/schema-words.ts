import type { FieldWords } from './field-words.ts';

/** A JSON Schema as far as the tables need it. */
export interface Schema {
  readonly type?: string;
  readonly description?: string;
  readonly const?: string | boolean;
  readonly enum?: readonly string[];
  readonly pattern?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly additionalProperties?: Schema | false;
  readonly oneOf?: readonly Schema[];
  readonly anyOf?: readonly Schema[];
}

/** What the engine says of the form at the end of a description, and how a table says it. */
const FORMS: readonly (readonly [ending: string, form: string])[] = [
  [
    ' A decimal number written as text, such as "3.10", or the name of one of the prices.',
    'decimal or a price',
  ],
  [
    ' The name of a quantity, or a decimal number written as text, such as "3.10".',
    'a quantity or a decimal',
  ],
  [' A decimal number written as text, such as "3.10".', 'decimal'],
  [' A whole number as text, such as "12".', 'whole number'],
  [', as yyyy-mm-dd', 'day as `yyyy-mm-dd`'],
  [', as mm-dd', 'day as `mm-dd`'],
  [', as HH:MM', 'time as `HH:MM`'],
];

/** Patterns of names. */
const PATTERNS: Readonly<Record<string, string>> = {
  '^[a-z][a-z0-9-]*$': 'a name',
  '^[a-z][a-z0-9-]*(\\.[a-z][a-z0-9-]*)?(@[a-z][a-z0-9-]*)?$': 'a quantity',
  '^\\d{2}:\\d{2}$': 'time as `HH:MM`',
};

export const variants = (schema: Schema | undefined): readonly Schema[] =>
  schema?.oneOf ?? schema?.anyOf ?? [];

export const quoted = (values: readonly string[]): string =>
  values.map((value) => `\`"${value}"\``).join(', ');

function listForm({ items = {} }: Schema): string {
  const form = formOf(items);
  return /^(?:a name|a quantity|a quantity or a decimal|decimal or a price|day as .*)$/.test(form)
    ? `a list: each ${form}`
    : 'a list';
}

/** The form of a value in words. */
export function formOf(schema: Schema): string {
  if (typeof schema.const === 'boolean') return `\`${String(schema.const)}\``;
  if (schema.const !== undefined) return quoted([schema.const]);
  if (schema.enum !== undefined)
    return schema.enum.length > 6 ? 'one of the [names](tariff.md#names)' : quoted(schema.enum);
  const choices = variants(schema);
  if (choices.some(({ const: value }) => value === 'none'))
    return 'a [rounding](tariff.md#a-rounding), or `"none"`';
  if (schema.properties?.['mode'] !== undefined) return 'a [rounding](tariff.md#a-rounding)';
  if (choices.length > 0 || schema.type === 'object') return 'an object';
  if (schema.type === 'array') return listForm(schema);
  if (schema.type === 'boolean') return '`true` or `false`';
  const told = FORMS.find(([ending]) => schema.description?.endsWith(ending));
  if (told !== undefined) return told[1];
  return schema.pattern === undefined
    ? 'text'
    : (PATTERNS[schema.pattern] ?? `text like \`${schema.pattern}\``);
}

/** What the schema says of a field, unless the words of the page say more. */
export function meaningOf({ description = '' }: Schema, words: FieldWords | undefined): string {
  if (words?.meaning !== undefined) return words.meaning;
  const [ending = ''] = FORMS.find(([end]) => description.endsWith(end)) ?? [];
  return description.slice(0, description.length - ending.length).replace(/\.$/, '');
}
