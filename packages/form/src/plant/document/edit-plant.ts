import type { DiaryDeed, Path, PlantDocument } from '@unitbook/engine';
import type { Household } from '../../household/household.ts';
import { putAt } from './plant-texts.ts';
import { keptNumber } from './typed-texts.ts';

type Expected = NonNullable<PlantDocument['expected']>;
type DiaryEntry = NonNullable<PlantDocument['diary']>[number];
type Capacity = PlantDocument['capacity'][number];

/** What the plant is judged by; '' for nothing yet. */
export type ExpectedKind = '' | 'monthly' | 'irradiation' | 'last-years';

/** The plant of a household: as typed, or what the account says of it. */
export function plantOf({ plant, account }: Household): PlantDocument {
  return plant ?? { format: 'unitbook-plant-1', capacity: [{ kWp: keptNumber(account.plantCapacity) }] };
}

const blankYear = (): string[] => Array.from({ length: 12 }, () => '');

/** What goes by a kind before anything is typed for it. */
export function blankExpected(kind: ExpectedKind): Expected | undefined {
  switch (kind) {
    case '':
      return undefined;
    case 'monthly':
      return { monthly: blankYear() };
    case 'irradiation':
      return { irradiation: blankYear(), unit: 'kWh/m2/day', performanceRatio: '', source: '' };
    case 'last-years':
      return { lastYears: true };
  }
}

/** What a plant document goes by. */
export function kindOf({ expected }: PlantDocument): ExpectedKind {
  if (expected === undefined) return '';
  if (expected.monthly !== undefined) return 'monthly';
  return expected.irradiation === undefined ? 'last-years' : 'irradiation';
}

/** A list with an item put in at a place. */
function inserted<Item>(list: readonly Item[], at: number, item: Item): Item[] {
  return [...list.slice(0, at), item, ...list.slice(at)];
}

const withDiary = (plant: PlantDocument, diary: DiaryEntry[]): PlantDocument =>
  putAt(plant, ['diary'], diary.length === 0 ? undefined : diary);

/** A diary with one more entry, as the last. */
export function addEntry(plant: PlantDocument, date: string, did: DiaryDeed): PlantDocument {
  return withDiary(plant, [...(plant.diary ?? []), { date, did }]);
}

/** A plant document with a later size, still to be typed. */
export function addCapacity(plant: PlantDocument): PlantDocument {
  return { ...plant, capacity: [...plant.capacity, { from: '', kWp: '' }] };
}

/** What was taken out of a list of the document, with the way back. */
export interface Taken {
  readonly plant: PlantDocument;
  readonly putBack: (plant: PlantDocument) => PlantDocument;
}

/** Take an entry out of the diary. @returns null where there is none */
export function takeEntry(plant: PlantDocument, at: number): Taken | null {
  const { diary = [] } = plant;
  const entry = diary[at];
  if (entry === undefined) return null;
  const rest = diary.filter((_, place) => place !== at);
  return {
    plant: withDiary(plant, rest),
    putBack: (held) => withDiary(held, inserted(held.diary ?? [], at, entry)),
  };
}

/** Take a later size out. @returns null where there is none, and for the first */
export function takeCapacity(plant: PlantDocument, at: number): Taken | null {
  const one: Capacity | undefined = plant.capacity[at];
  if (one === undefined || at === 0) return null;
  return {
    plant: { ...plant, capacity: plant.capacity.filter((_, place) => place !== at) },
    putBack: (held) => ({ ...held, capacity: inserted(held.capacity, at, one) }),
  };
}

/** How many inverters there are, and of which kind; nothing said of either takes both out. */
export function setInverters(plant: PlantDocument, n: string, kind: 'string' | 'module' | ''): PlantDocument {
  const isNone = n === '' && kind === '';
  return putAt(plant, ['inverters'], isNone ? undefined : { n, kind: kind === '' ? 'string' : kind });
}

/** One value for some months of a table, from a month on, as pasted from a list. */
export function fillMonths(
  plant: PlantDocument,
  table: 'monthly' | 'irradiation',
  from: number,
  texts: readonly string[],
): PlantDocument {
  const held = plant.expected?.[table] ?? blankYear();
  const filled = held.map((text, month) => keptNumber(texts[month - from] ?? text));
  return putAt(plant, ['expected', table], filled);
}

/** The cells of a list that was copied from a sheet: by tabs, line ends or semicolons. */
export function pastedCells(text: string): readonly string[] {
  return text
    .split(/[\t\r\n;]+/)
    .map((cell) => cell.trim())
    .filter((cell) => cell !== '');
}

/** The id of the input of a text. */
export const fieldIdOf = (path: Path): string => `plant-${path.join('-')}`;
