import { tariffJsonSchema } from '@unitbook/engine';
import { CHARGE_WORDS, FIELD_WORDS, SECTIONS, type FieldWords, type Section } from './tariff-words.ts';

/** A JSON Schema as far as the tables need it. */
interface Schema {
  readonly type?: string;
  readonly description?: string;
  readonly const?: string;
  readonly enum?: readonly string[];
  readonly pattern?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly additionalProperties?: Schema | false;
  readonly oneOf?: readonly Schema[];
  readonly anyOf?: readonly Schema[];
}

const DECIMAL = ' A decimal number written as text, such as "3.10".';
const ROOT = tariffJsonSchema() as Schema;

/** Where a step leads inside a schema: a key, "*" for any entry of a list or of keys, a number for a variant. */
function inside(schema: Schema | undefined, step: string): Schema | undefined {
  if (step !== '*') return /^\d+$/.test(step) ? variants(schema)[Number(step)] : schema?.properties?.[step];
  const { items, additionalProperties } = schema ?? {};
  return items ?? (additionalProperties === false ? undefined : additionalProperties);
}

const variants = (schema: Schema | undefined): readonly Schema[] => schema?.oneOf ?? schema?.anyOf ?? [];

const schemaAt = (path: string): Schema | undefined =>
  path === '' ? ROOT : path.split('.').reduce<Schema | undefined>(inside, ROOT);

/** The names of the kinds of charges, in the order of the schema. */
function kindsOfCharges(): readonly (readonly [kind: string, schema: Schema])[] {
  return variants(schemaAt('versions.*.charges.*')).map((schema) => [
    schema.properties?.['kind']?.const ?? '',
    schema,
  ]);
}

/** A field of an object, or of each of several variants of one. */
interface Field {
  readonly name: string;
  readonly schema: Schema;
  readonly isNeeded: boolean;
  /** The variants that have it; none where all do. */
  readonly only: readonly string[];
}

/** What tells a variant from the others: its `rule`. */
const nameOf = ({ properties = {} }: Schema): string =>
  [properties['rule']?.const ?? properties['rule']?.enum ?? []].flat().join('`, `');

function fieldsOf(schema: Schema): readonly Field[] {
  const shapes = schema.properties === undefined ? variants(schema) : [schema];
  const names = [...new Set(shapes.flatMap(({ properties = {} }) => Object.keys(properties)))];
  return names.flatMap((name) => {
    const having = shapes.filter(({ properties }) => properties?.[name] !== undefined);
    const [first] = having;
    if (first?.properties?.[name] === undefined) return [];
    const rules = having.flatMap(({ properties }) => properties?.[name] ?? []);
    const values = name === 'rule' ? rules.flatMap((rule) => rule.const ?? rule.enum ?? []) : [];
    const own = first.properties[name];
    return [
      {
        name,
        schema: values.length > 0 ? { type: 'string', enum: values } : own,
        isNeeded: having.every(({ required = [] }) => required.includes(name)),
        only: having.length === shapes.length ? [] : having.map(nameOf),
      },
    ];
  });
}

const quoted = (values: readonly string[]): string => values.map((value) => `\`"${value}"\``).join(', ');

/** The form of a value in words. */
function formOf(schema: Schema): string {
  if (schema.const !== undefined) return quoted([schema.const]);
  if (schema.enum !== undefined)
    return schema.enum.length > 6 ? 'one of the [names](#names)' : quoted(schema.enum);
  const choices = variants(schema);
  if (choices.some(({ const: value }) => value === 'none')) return 'a [rounding](#a-rounding), or `"none"`';
  if (choices.length > 0 || schema.type === 'object') return 'an object';
  if (schema.type === 'array') return 'a list';
  if (schema.type === 'boolean') return '`true` or `false`';
  if (schema.description?.endsWith(DECIMAL.trim()) === true) return 'decimal';
  return schema.pattern === undefined ? 'text' : `text like \`${schema.pattern}\``;
}

/** What the schema says of a field, unless the words of the page say more. */
function meaningOf(schema: Schema, words: FieldWords | undefined): string {
  const own = (schema.description ?? '').replace(DECIMAL, '').replace(/\.$/, '');
  return words?.meaning ?? own;
}

const cell = (text: string): string => text.replaceAll('|', '\\|');

/** Every row that was written, for the test that none is without meaning. */
export interface Row {
  readonly key: string;
  readonly meaning: string;
}

function rowOf(section: string, { name, schema, isNeeded, only }: Field): { row: Row; text: string } {
  const key = `${section}.${name}`;
  const words = FIELD_WORDS[key] ?? FIELD_WORDS[`*.${name}`];
  const meaning = meaningOf(schema, words);
  const form = [words?.form ?? formOf(schema), words?.unit].filter((part) => part !== undefined).join(', ');
  const where = only.length === 0 ? '' : ` (only \`${only.join('`, `')}\`)`;
  const cells = [`\`${name}\``, isNeeded ? 'yes' : 'no', form, `${meaning}${where}`];
  return { row: { key, meaning }, text: `| ${cells.map(cell).join(' | ')} |` };
}

const HEAD = ['| Field | Needed | Form | Meaning |', '|---|---|---|---|'];

interface Written {
  readonly rows: readonly Row[];
  readonly lines: readonly string[];
}

function tableOf(section: string, fields: readonly Field[]): Written {
  const written = fields.map((field) => rowOf(section, field));
  return { rows: written.map(({ row }) => row), lines: [...HEAD, ...written.map(({ text }) => text)] };
}

function sectionOf({ name, title, path, text }: Section): Written {
  const schema = schemaAt(path);
  if (schema === undefined) throw new Error(`The schema has nothing at ${path}.`);
  const { rows, lines } = tableOf(name, fieldsOf(schema));
  return { rows, lines: ['', `## ${title}`, '', ...(text === '' ? [] : [text, '']), ...lines] };
}

/** What every charge has, and what each kind has besides. */
function chargeSections(): readonly Written[] {
  const kinds = kindsOfCharges();
  const fields = kinds.map(([, schema]) => fieldsOf(schema));
  const isCommon = (name: string): boolean =>
    name !== 'kind' && fields.every((own) => own.some((field) => field.name === name));
  const common = tableOf('charge', fields[0]?.filter(({ name }) => isCommon(name)) ?? []);
  const intro =
    'One line of the bill. `kind` names one of the kinds below; every kind has these fields and its own.';
  const own = kinds.map(([kind], index): Written => {
    const { rows, lines } = tableOf(
      kind,
      (fields[index] ?? []).filter(({ name }) => !isCommon(name) && name !== 'kind'),
    );
    return { rows, lines: ['', `### ${kind}`, '', CHARGE_WORDS[kind] ?? '', '', ...lines] };
  });
  return [{ rows: common.rows, lines: ['', '## A charge', '', intro, '', ...common.lines] }, ...own];
}

const INTRO = `# The tariff document

Every field of a tariff file. This page is made from the JSON Schema of the engine: change it there, then run
\`node tests/support/run.mjs tests/support/write-tariff-reference.ts\`. How to write a tariff, step by step:
[writing a tariff](../writing-a-tariff.md).

A *decimal* is a number written as text: digits, one point at most, no grouping and no exponent, such as \`"3.10"\` or
\`"-1.50"\`. Money is in the tariff's currency, with at most 8 decimals. Limits have at most 3. 1 unit is 1 kWh. A
*clause* is a text that begins with the key of one of the sources. Keys that are not listed are errors.`;

function namesSection(): readonly string[] {
  const quantities = schemaAt('versions.*.charges.*.0.on')?.enum ?? [];
  const modes = schemaAt('rounding.line.0.mode')?.enum ?? [];
  return [
    '',
    '## Names',
    '',
    `| Quantities | ${quoted(quantities)} |`,
    '|---|---|',
    `| **Ways to round** | ${quoted(modes)} |`,
    '',
    '`billed` is import less what is set off. The last two quantities are in kW, the others in units.',
    'The half modes, `up` and `down` look at the size of a number: −2.5 half-up is −3. `floor`, `ceiling`, `half-ceiling`',
    'and `half-floor` look at its sign: −2.5 floor is −3, ceiling −2.',
  ];
}

/** The page `docs/reference/tariff.md`, and its rows. */
export function tariffReference(): { readonly text: string; readonly rows: readonly Row[] } {
  const before = SECTIONS.filter(({ isAfterCharges }) => isAfterCharges !== true).map(sectionOf);
  const after = SECTIONS.filter(({ isAfterCharges }) => isAfterCharges === true).map(sectionOf);
  const written = [...before, ...chargeSections(), ...after];
  const lines = [INTRO, ...written.flatMap((one) => one.lines), ...namesSection(), ''];
  return { text: lines.join('\n'), rows: written.flatMap(({ rows }) => rows) };
}
