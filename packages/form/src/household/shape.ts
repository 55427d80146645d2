import { documentFinding, type Finding, type Path } from '@unitbook/engine';

/** Fields of an object; a name with a question mark may be left out. What is not named is kept and not looked at. */
export type FieldShapes = Readonly<Record<string, Shape>>;

/** What a value has to be: one of some texts (none named: any text), a list, an object, or yes or no. */
export type Shape =
  | readonly string[]
  | 'yes-or-no'
  /** A list of one shape, with at least so many. */
  | { readonly each: Shape; readonly least?: number }
  | { readonly fields: FieldShapes }
  /** An object under any names. */
  | { readonly under: Shape };

type Fields = Readonly<Record<string, unknown>>;

/** Whether a value is an object with fields. */
export const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function wrong(value: unknown, path: Path, expected: string): Finding[] {
  const place = path.join('.') || 'the file';
  if (typeof value === 'number')
    return [documentFinding('document/number-not-text', { path }, { raw: `${place}: ${String(value)}` })];
  const found = value === undefined ? `nothing at ${place}` : `${place}: ${JSON.stringify(value)}`;
  return [documentFinding('document/wrong-value', { path }, { value: found, expected })];
}

function fieldMisfits(value: Fields, fields: FieldShapes, path: Path): Finding[] {
  return Object.entries(fields).flatMap(([name, inner]) => {
    const key = name.replace('?', '');
    const isLeftOut = key !== name && value[key] === undefined;
    return isLeftOut ? [] : misfits(value[key], inner, [...path, key]);
  });
}

function listMisfits(
  value: unknown,
  { each, least = 0 }: { each: Shape; least?: number },
  path: Path,
): Finding[] {
  if (!Array.isArray(value)) return wrong(value, path, 'a list');
  if (value.length < least) return wrong(value, path, `a list of at least ${String(least)}`);
  return value.flatMap((item, index) => misfits(item, each, [...path, index]));
}

/** Everything that is not as it should be, by path. */
export function misfits(value: unknown, shape: Shape, path: Path): Finding[] {
  if (shape === 'yes-or-no') return typeof value === 'boolean' ? [] : wrong(value, path, 'true or false');
  if ('each' in shape) return listMisfits(value, shape, path);
  if ('fields' in shape || 'under' in shape) {
    if (!isFields(value)) return wrong(value, path, 'an object');
    if ('fields' in shape) return fieldMisfits(value, shape.fields, path);
    return Object.entries(value).flatMap(([key, item]) => misfits(item, shape.under, [...path, key]));
  }
  if (typeof value !== 'string') return wrong(value, path, 'a text in quotation marks');
  if (shape.length === 0 || shape.includes(value)) return [];
  return wrong(value, path, shape.map((text) => `"${text}"`).join(', '));
}
