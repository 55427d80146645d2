import { wholeNumber } from './digits.ts';
import type { Position } from './elements.ts';
import { quoted, type Field, type Fields } from './fields.ts';
import type { Tell } from './log.ts';

/** The elements of a ReadingType that are read. What it costs and on which phase is not needed. */
export const TYPE_FIELDS = [
  'accumulationBehaviour',
  'commodity',
  'consumptionTier',
  'dataQualifier',
  'defaultQuality',
  'flowDirection',
  'intervalLength',
  'kind',
  'powerOfTenMultiplier',
  'tou',
  'uom',
] as const;

type TypeField = (typeof TYPE_FIELDS)[number];

/** A ReadingType as it stands in the feed. */
export interface ReadingType {
  readonly at: Position;
  readonly fields: Fields;
}

/** The numbers of a ReadingType, NaN where it gives none, each with the place where it stands or should. */
export type TypeNumbers = Readonly<Record<TypeField, { readonly number: number; readonly at: Position }>>;

function numberIn({ text, twice }: Field): number | null {
  const number = wholeNumber(text);
  if (twice !== null) return null;
  return typeof number === 'number' ? number : number === 'empty' ? NaN : null;
}

/**
 * The numbers of a ReadingType.
 *
 * @returns null where one of them cannot be read, which is told
 */
export function typeNumbers({ at, fields }: ReadingType, tell: Tell): TypeNumbers | null {
  let faults = 0;
  const entries = TYPE_FIELDS.map((name) => {
    const field = fields.get(name);
    if (field === undefined) return [name, { number: NaN, at }] as const;
    const number = numberIn(field);
    if (number === null) {
      faults += 1;
      const value = field.twice === null ? `"${quoted(field.text)}"` : 'two numbers';
      tell('espi/type-field', field.twice ?? field.at, { field: name, value });
    }
    return [name, { number: number ?? NaN, at: field.at }] as const;
  });
  return faults === 0 ? (Object.fromEntries(entries) as TypeNumbers) : null;
}

/** Whether two types say the same, blanks aside. */
export function isSameType(one: ReadingType, other: ReadingType): boolean {
  return TYPE_FIELDS.every(
    (name) => one.fields.get(name)?.text.trim() === other.fields.get(name)?.text.trim(),
  );
}
