import { EXAMPLE_FOLDERS, readFolder, type ReadFolder } from '../published/example-folders.ts';

/** Where the figures of a case are from, in the words of the page. */
const KINDS: Readonly<Record<string, string>> = {
  published: 'published',
  constructed: 'by hand',
  invented: 'invented',
  'from-memory': 'from memory',
};

const ORDER = Object.keys(KINDS);

const inWords = (folder: string): string =>
  folder === 'usa'
    ? 'USA'
    : folder
        .split('-')
        .map((word) => word.charAt(0).toUpperCase() + word.slice(1))
        .join(' ');

const cell = (text: string): string => text.replaceAll('|', '\\|');

const distinct = (texts: readonly string[]): string[] => [...new Set(texts)];

const rulesOf = ({ cases }: ReadFolder): readonly string[] =>
  distinct((cases?.cases ?? []).flatMap(({ rules = [] }) => rules)).sort();

const pathOf = ({ folder }: ReadFolder): string => `../tariffs-examples/${folder.country}/${folder.name}`;

/** "3 published, 1 by hand" */
function casesText({ cases }: ReadFolder): string {
  const kinds = (cases?.cases ?? []).map(({ kind }) => kind);
  return ORDER.flatMap((kind) => {
    const count = kinds.filter((one) => one === kind).length;
    return count === 0 ? [] : [`${String(count)} ${KINDS[kind] ?? kind}`];
  }).join(', ');
}

function row(one: ReadFolder): string {
  const { country, name } = one.folder;
  const title = one.tariff?.document.name ?? name;
  const cells = [
    inWords(country),
    `[${cell(title)}](${pathOf(one)}/tariff.json)`,
    rulesOf(one).join(', '),
    `[${casesText(one)}](${pathOf(one)}/cases.json)`,
  ];
  return `| ${cells.join(' | ')} |`;
}

/** Each rule with the tariffs that show it. */
function index(all: readonly ReadFolder[]): readonly string[] {
  const rules = distinct(all.flatMap(rulesOf)).sort();
  return rules.map((rule) => {
    const links = all
      .filter((one) => rulesOf(one).includes(rule))
      .map((one) => `[${one.folder.name}](${pathOf(one)}/tariff.json)`);
    return `| ${rule} | ${links.join(', ')} |`;
  });
}

/** The page `docs/tariffs.md`, made from the folders of the examples. */
export function tariffList(): string {
  const all = EXAMPLE_FOLDERS.map(readFolder);
  const wrong = all.flatMap(({ problems }) => problems);
  if (wrong.length > 0) throw new Error(`Folders that cannot be read:\n${wrong.join('\n')}`);
  const count = all.reduce((sum, { cases }) => sum + (cases?.cases.length ?? 0), 0);
  return `# Example tariffs

${String(all.length)} tariffs with ${String(count)} worked cases, to copy from and to compare with. Each folder has a \`tariff.json\`, a \`cases.json\` and
a \`SOURCE.md\` that says where its figures are from, and what is left out. They show how rules are written. They are
not kept up to date: do not pay a bill by them.

Figures of a case are *published* (read in the source), *by hand* (worked out from a published rule), *invented*
(Tarumira is no real place), or *from memory* (not read again). No figure was taken from what this program prints.
How to write one: [any settlement scheme](writing-a-tariff-3.md). The files: [cases](reference/cases.md).

This page is made from the folders: \`node tests/support/run.mjs tests/support/write-tariff-list.ts\`.

## By what they show

| What | Tariffs |
|---|---|
${index(all).join('\n')}

## By country

| Country | Tariff | Shows | Cases |
|---|---|---|---|
${all.map(row).join('\n')}
`;
}
