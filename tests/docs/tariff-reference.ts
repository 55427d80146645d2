import { tariffJsonSchema } from '@unitbook/engine';
import { EXAMPLES } from './tariff-examples.ts';
import { PAGES, type ReferencePage, type Section } from './tariff-sections.ts';
import { FIELD_WORDS, KIND_WORDS } from './tariff-words.ts';
import { formOf, meaningOf, variants, type Schema } from './schema-words.ts';

const ROOT = tariffJsonSchema() as Schema;

/** Where a step leads inside a schema: a key, "*" for any entry of a list or of keys, a number for a variant. */
function inside(schema: Schema | undefined, step: string): Schema | undefined {
  if (step !== '*') return /^\d+$/.test(step) ? variants(schema)[Number(step)] : schema?.properties?.[step];
  const { items, additionalProperties } = schema ?? {};
  return items ?? (additionalProperties === false ? undefined : additionalProperties);
}

const schemaAt = (path: string): Schema | undefined =>
  path === '' ? ROOT : path.split('.').reduce<Schema | undefined>(inside, ROOT);

/** A field of an object, or of each of several variants of one. */
interface Field {
  readonly name: string;
  readonly schema: Schema;
  readonly isNeeded: boolean;
  /** The variants that have it; none where all do. */
  readonly only: readonly string[];
}

/** The values that tell a variant from the others: those of its `rule`, `kind`, `is` … */
const valuesOf = ({ properties = {} }: Schema, key: string): readonly string[] =>
  [properties[key]?.const ?? properties[key]?.enum ?? []].flat().map(String);

/** The key by which variants are told apart; a place where only one can stand has none. */
const tellingKey = (shapes: readonly Schema[]): string =>
  shapes.length < 2
    ? ''
    : (['rule', 'kind', 'scheme', 'is', 'by'].find((key) =>
        shapes.every((shape) => valuesOf(shape, key).length > 0),
      ) ?? '');

function fieldsOf(schema: Schema): readonly Field[] {
  const shapes = schema.properties === undefined ? variants(schema) : [schema];
  const telling = tellingKey(shapes);
  const names = [...new Set(shapes.flatMap(({ properties = {} }) => Object.keys(properties)))];
  return names.flatMap((name) => {
    const having = shapes.filter(({ properties }) => properties?.[name] !== undefined);
    const own = having[0]?.properties?.[name];
    if (own === undefined) return [];
    const all =
      name === telling ? { type: 'string', enum: having.flatMap((one) => valuesOf(one, name)) } : own;
    const values = having.map((one) => valuesOf(one, telling).join('`, `'));
    return [
      {
        name,
        schema: all,
        isNeeded: having.every(({ required = [] }) => required.includes(name)),
        only: having.length === shapes.length ? [] : values,
      },
    ];
  });
}

const cell = (text: string): string => text.replaceAll('|', '\\|');

/** Every row that was written, for the test that none is without meaning. */
interface Row {
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

/** The table of an object, and an example below it. */
function tableOf(section: string, fields: readonly Field[]): Written {
  const written = fields.map((field) => rowOf(section, field));
  const examples = (EXAMPLES[section] ?? []).flatMap(([place, json]) => [
    '',
    `\`\`\`json ${place}`,
    json,
    '```',
  ]);
  const table = written.length === 0 ? [] : [...HEAD, ...written.map(({ text }) => text)];
  return { rows: written.map(({ row }) => row), lines: [...table, ...examples] };
}

function plainSection({ name, title, path, text }: Section, schema: Schema): Written {
  const { rows, lines } = tableOf(name, fieldsOf(schema));
  if (path !== '' && rows.length === 0) throw new Error(`Nothing stands at ${path}.`);
  return { rows, lines: ['', `## ${title}`, '', ...(text === '' ? [] : [text, '']), ...lines] };
}

/** What every variant has, and what each has besides. */
function kindsSection(section: Section & { kinds: string }, schema: Schema): readonly Written[] {
  const { name, title, text, kinds } = section;
  const shapes = variants(schema);
  const fields = shapes.map(fieldsOf);
  const isCommon = (field: string): boolean =>
    field !== kinds && fields.every((own) => own.some((one) => one.name === field));
  const common = tableOf(name, fields[0]?.filter((field) => isCommon(field.name)) ?? []);
  const own = shapes.map((shape, index): Written => {
    const values = valuesOf(shape, kinds);
    const key = section.prefix === undefined ? (values[0] ?? '') : `${section.prefix}-${values[0] ?? ''}`;
    const more = (fields[index] ?? []).filter((field) => !isCommon(field.name) && field.name !== kinds);
    const { rows, lines } = tableOf(key, more);
    const words = KIND_WORDS[key];
    if (words === undefined) throw new Error(`No words for ${key}`);
    return { rows, lines: ['', `### ${values.join(', ')}`, '', words, '', ...lines] };
  });
  return [{ rows: common.rows, lines: ['', `## ${title}`, '', text, '', ...common.lines] }, ...own];
}

function sectionOf(section: Section): readonly Written[] {
  const schema = schemaAt(section.path);
  if (schema === undefined) throw new Error(`The schema has nothing at ${section.path}.`);
  const { kinds } = section;
  return kinds === undefined ? [plainSection(section, schema)] : kindsSection({ ...section, kinds }, schema);
}

/** A page of the reference of tariffs, and its rows. */
interface Reference {
  readonly name: string;
  readonly text: string;
  readonly rows: readonly Row[];
}

function pageOf({ name, intro, sections, end }: ReferencePage): Reference {
  const written = sections.flatMap(sectionOf);
  const lines = [intro, ...written.flatMap((one) => one.lines), ...end, ''];
  return {
    name,
    text: lines.join('\n').replace(/\n{3,}/g, '\n\n'),
    rows: written.flatMap(({ rows }) => rows),
  };
}

/** The pages `docs/reference/tariff*.md`. */
export function tariffReference(): readonly Reference[] {
  return PAGES.map(pageOf);
}
