import type { Path, PlantDocument } from '@unitbook/engine';

/** A text of a plant document: where it stands, and what it is in words. */
export interface PlantText {
  readonly path: Path;
  readonly text: string;
  readonly what: string;
}

/** The months in words, January first. */
export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

const ofMonths = (texts: readonly string[] | undefined, path: Path, what: string): readonly PlantText[] =>
  (texts ?? []).map((text, month) => ({
    path: [...path, month],
    text,
    what: `${what} ${MONTHS[month] ?? ''}`,
  }));

const one = (text: string | undefined, path: Path, what: string): readonly PlantText[] =>
  text === undefined ? [] : [{ path, text, what }];

/** Every number of a plant document that is there, typed or still blank. */
export function numberTexts(document: PlantDocument): readonly PlantText[] {
  const { capacity, inverters, expected, uncertainty } = document;
  return [
    ...capacity.flatMap(({ kWp }, at) => one(kWp, ['capacity', at, 'kWp'], 'the plant size in kWp')),
    ...one(inverters?.n, ['inverters', 'n'], 'how many inverters there are'),
    ...ofMonths(expected?.monthly, ['expected', 'monthly'], 'the units of'),
    ...ofMonths(expected?.irradiation, ['expected', 'irradiation'], 'the irradiation of'),
    ...one(expected?.performanceRatio, ['expected', 'performanceRatio'], 'the performance ratio'),
    ...one(uncertainty?.yearToYear, ['uncertainty', 'yearToYear'], 'the difference from year to year'),
  ];
}

/** Every day of a plant document that is there, typed or still blank. */
export function dayTexts({ capacity, diary = [] }: PlantDocument): readonly PlantText[] {
  return [
    ...capacity.flatMap(({ from }, at) => one(from, ['capacity', at, 'from'], 'the first day of this size')),
    ...diary.flatMap(({ date, through }, at) => [
      ...one(date, ['diary', at, 'date'], 'the day'),
      ...one(through, ['diary', at, 'through'], 'the last day'),
    ]),
  ];
}

type Branch = Readonly<Record<string | number, unknown>>;

function put(branch: unknown, path: Path, value: unknown): unknown {
  const [key = '', ...rest] = path;
  const next = (held: unknown): unknown => (rest.length > 0 ? put(held, rest, value) : value);
  if (Array.isArray(branch)) return branch.map((item: unknown, at) => (at === key ? next(item) : item));
  const fields = (branch ?? {}) as Branch;
  const set = next(fields[key]);
  if (set !== undefined) return { ...fields, [key]: set };
  return Object.fromEntries(Object.entries(fields).filter(([known]) => known !== key));
}

/**
 * A plant document with one value replaced; nothing is changed in place.
 *
 * @param path   the way to it; an item of a list by its place
 * @param value  undefined takes a field out
 * @example
 * putAt({ format: 'unitbook-plant-1', capacity: [{ kWp: '3' }] }, ['capacity', 0, 'kWp'], '5').capacity[0].kWp //=> "5"
 */
export function putAt(document: PlantDocument, path: Path, value: unknown): PlantDocument {
  return put(document, path, value) as PlantDocument;
}
