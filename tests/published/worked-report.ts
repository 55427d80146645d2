import type { WorkedResult } from './worked-cases.ts';

const isReproduced = ({ problems }: WorkedResult): boolean => problems.length === 0;

/** How many worked cases came out as they should. */
export function workedReproduced(results: readonly WorkedResult[]): number {
  return results.filter(isReproduced).length;
}

function sourceWords({ one: { source, kind } }: WorkedResult): string {
  return source === undefined ? kind : `${kind}; ${source.title}, ${source.publisher}, ${source.year}`;
}

function caseLines(result: WorkedResult): string[] {
  const { country, folder, one, problems } = result;
  const word = problems.length === 0 ? 'reproduced' : 'DIFFERS   ';
  const head = `${word}  ${country}/${folder} ${one.id}  ${one.title} (${sourceWords(result)})`;
  return [head, ...problems.map((problem) => `            ${problem}`)];
}

type Group = readonly [string, readonly WorkedResult[]];

/** Results by a word each may have several of, in the order of the words. */
function groupsBy(
  results: readonly WorkedResult[],
  wordsOf: (result: WorkedResult) => readonly string[],
): readonly Group[] {
  const groups = new Map<string, WorkedResult[]>();
  for (const result of results) {
    for (const word of new Set(wordsOf(result))) groups.set(word, [...(groups.get(word) ?? []), result]);
  }
  return [...groups].sort(([a], [b]) => (a < b ? -1 : 1));
}

const rulesOf = ({ one }: WorkedResult): readonly string[] => one.rules ?? [];

function countWords(results: readonly WorkedResult[]): string {
  return `${workedReproduced(results)} of ${results.length}`;
}

/** How many there are of something; of those that are not all reproduced, how many are. */
function shortCount(results: readonly WorkedResult[]): string {
  return workedReproduced(results) === results.length ? String(results.length) : countWords(results);
}

/** One row for each country, one for each rule, each with its cases and where they come from. */
function tableLines(results: readonly WorkedResult[]): string[] {
  const rows = (groups: readonly Group[], more: (group: readonly WorkedResult[]) => readonly Group[]) =>
    groups.map(([word, group]) => {
      const parts = more(group).map(([part, own]) => `${part} ${shortCount(own)}`);
      return `${word.padEnd(22)}${countWords(group).padEnd(14)}${parts.join(', ')}`;
    });
  const byCountry = groupsBy(results, ({ country }) => [country]);
  const byRule = groupsBy(results, rulesOf);
  return [
    `${'Country'.padEnd(22)}${'Reproduced'.padEnd(14)}Rules`,
    ...rows(byCountry, (group) => groupsBy(group, rulesOf)),
    '',
    `${'Rule'.padEnd(22)}${'Reproduced'.padEnd(14)}Countries`,
    ...rows(byRule, (group) => groupsBy(group, ({ country }) => [country])),
  ];
}

/** The report as people read it: a line for each case, the tables, then the count. */
export function workedText(results: readonly WorkedResult[]): string {
  const count = `${countWords(results)} worked cases of tariffs-examples reproduced`;
  return [...results.flatMap(caseLines), '', ...tableLines(results), '', count].join('\n');
}

/** The report for programs, as a plain object. */
export function workedDocument(results: readonly WorkedResult[]) {
  return {
    total: results.length,
    reproduced: workedReproduced(results),
    cases: results.map((result) => ({
      id: result.one.id,
      country: result.country,
      tariff: result.tariff.tariff.document.id,
      kind: result.one.kind,
      rules: rulesOf(result),
      ok: isReproduced(result),
    })),
  };
}
