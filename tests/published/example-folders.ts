import { readCases, readExtendedTariff, textUnder, type CasesDocument, type Tariff } from '@unitbook/engine';

const read = {
  tariff: import.meta.glob<string>('../../tariffs-examples/*/*/tariff.json', {
    query: '?raw',
    import: 'default',
    eager: true,
  }),
  cases: import.meta.glob<string>('../../tariffs-examples/*/*/cases.json', {
    query: '?raw',
    import: 'default',
    eager: true,
  }),
  source: import.meta.glob<string>('../../tariffs-examples/*/*/SOURCE.md', {
    query: '?raw',
    import: 'default',
    eager: true,
  }),
};
/** Every file two folders down: one that is none of the three is found, too. */
const all = Object.keys(import.meta.glob('../../tariffs-examples/*/*/*'));

/** A folder of the examples with the texts of its files; null for one that is not there. */
export interface ExampleFolder {
  readonly country: string;
  readonly name: string;
  readonly tariff: string | null;
  readonly cases: string | null;
  readonly source: string | null;
  /** Files that a folder of a tariff has no place for. */
  readonly others: readonly string[];
}

function folderOf(path: string): ExampleFolder {
  const [country = '', name = ''] = path.split('/').slice(-2);
  return {
    country,
    name,
    tariff: read.tariff[`${path}/tariff.json`] ?? null,
    cases: read.cases[`${path}/cases.json`] ?? null,
    source: read.source[`${path}/SOURCE.md`] ?? null,
    others: all
      .filter((file) => file.startsWith(`${path}/`))
      .map((file) => file.slice(path.length + 1))
      .filter((file) => !['tariff.json', 'cases.json', 'SOURCE.md'].includes(file)),
  };
}

/** Every folder of a tariff, in the order of their names. */
export const EXAMPLE_FOLDERS: readonly ExampleFolder[] = [
  ...new Set(all.map((file) => file.replace(/\/[^/]*$/, ''))),
]
  .sort()
  .map(folderOf);

const byId = new Map(EXAMPLE_FOLDERS.map(({ tariff }) => [textUnder(tariff ?? '', 'id'), tariff]));

/** A folder that was read: its tariff and its cases, each null where it is wrong, and what is wrong. */
export interface ReadFolder {
  readonly folder: ExampleFolder;
  readonly tariff: Tariff | null;
  readonly cases: CasesDocument | null;
  readonly problems: readonly string[];
}

/** Read the tariff and the cases of a folder. */
export function readFolder(folder: ExampleFolder): ReadFolder {
  const tariff = readExtendedTariff(folder.tariff ?? '', { lookUp: (id) => byId.get(id) ?? null });
  const cases = readCases(folder.cases ?? '');
  const problems = Object.entries({ 'tariff.json': tariff, 'cases.json': cases }).flatMap(
    ([file, { findings }]) =>
      findings.map(({ position, found, expected }) => {
        const line = position === undefined ? '' : `:${position.line}`;
        return `${folder.country}/${folder.name}/${file}${line}: ${found}, not ${expected}`;
      }),
  );
  return { folder, tariff: tariff.value, cases: cases.value, problems };
}
