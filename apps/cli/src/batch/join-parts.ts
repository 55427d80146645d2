import type { TariffDocument } from '@unitbook/engine';
import { summaryOf, type BatchSummary } from './summary.ts';
import { addTally, emptyTally } from './tally.ts';
import { isTallyLine, placeOf, readTallyLine, type PartTally } from './tally-line.ts';

/** The parts of a check, put together. */
export interface JoinedParts {
  readonly summary: BatchSummary;
  /** Everything that is wrong with the parts, each in a few words; then the summary is not that of a whole table. */
  readonly problems: readonly string[];
}

const TORN = 'a line that says what the rows of a part came to, but not to its end';
const NO_TALLY = 'no line that says what the rows of a part came to';
const BEHIND = 'lines of a part behind the last one that was done to its end';
const NO_FINDING = 'a line that is no finding';

/** How a line of findings looks at both its ends: to read each of them whole would take longer than to check it. */
const isFinding = (line: string): boolean =>
  (line.startsWith('{"account":') || line.startsWith('{"line":')) && line.endsWith('}');

const distinct = <Value>(values: readonly Value[]): readonly Value[] => [...new Set(values)];

/** So many parts are told of one by one, and of the others only how many they are. */
const MOST_TOLD = 20;

/** Parts that are not there once, or not in their order. */
function numberProblems(indexes: readonly number[], count: number): readonly string[] {
  const name = (index: number): string => `part ${String(index)}/${String(count)}`;
  const times = new Array<number>(count).fill(0);
  for (const index of indexes) times[index - 1] = (times[index - 1] ?? 0) + 1;
  const told = times.flatMap((own, at) => {
    if (own === 1) return [];
    if (own === 0) return [`no ${name(at + 1)}`];
    return [`${name(at + 1)} ${own === 2 ? 'twice' : `${String(own)} times`}`];
  });
  const behind = indexes.flatMap((index, at) => {
    const before = indexes[at - 1] ?? 0;
    return index < before ? [`${name(index)} behind ${name(before)}`] : [];
  });
  const all = [...told, ...behind];
  const rest = all.length - MOST_TOLD;
  return rest > 0 ? [...all.slice(0, MOST_TOLD), `${String(rest)} more of this kind`] : all;
}

/** What is wrong with the parts taken together. */
function partProblems(parts: readonly PartTally[], tariff: string): readonly string[] {
  if (parts.length === 0) return [NO_TALLY];
  const places = parts.flatMap(({ part }) => placeOf(part) ?? []);
  const [count = 0, ...others] = distinct(places.map((place) => place.count));
  const tariffs = distinct(parts.map((part) => part.tariff)).filter((id) => id !== tariff);
  return [
    ...(others.length === 0
      ? numberProblems(
          places.map(({ index }) => index),
          count,
        )
      : [[count, ...others].map((one) => `parts of ${String(one)}`).join(' and ')]),
    ...tariffs.map((id) => `parts checked by the tariff ${id}, beside the tariff ${tariff}`),
    ...(tariffs.length === 0 && distinct(parts.map(({ of }) => of)).length > 1
      ? ['parts of different checks']
      : []),
  ];
}

/**
 * Put the findings of parts together: lines of findings go on as they are, in the order in which they come; what the
 * parts came to is added up.
 *
 * @param lines  of all parts, part by part
 * @param write  takes each line, with its line break
 */
export async function joinParts(
  lines: AsyncIterable<string>,
  write: (line: string) => Promise<void>,
  tariff: Pick<TariffDocument, 'id' | 'supplier' | 'currency'>,
): Promise<JoinedParts> {
  const tally = emptyTally();
  const parts: PartTally[] = [];
  const problems = new Set<string>();
  let isBehind = false;
  for await (const line of lines) {
    if (line === '') continue;
    if (isTallyLine(line)) {
      const part = readTallyLine(line);
      if (part === null) problems.add(TORN);
      else {
        addTally(tally, part.tally);
        parts.push(part);
      }
      isBehind = false;
    } else if (isFinding(line)) {
      await write(`${line}\n`);
      isBehind = true;
    } else problems.add(NO_FINDING);
  }
  // Without any such line all of them are behind: that is told already.
  if (isBehind && parts.length > 0) problems.add(BEHIND);
  for (const problem of partProblems(parts, tariff.id)) problems.add(problem);
  return { summary: summaryOf(tally, tariff), problems: [...problems] };
}
