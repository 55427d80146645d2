import { parseDay } from '@unitbook/engine';
import type { RegisterValue } from '../../../packages/meter-files/src/stream.ts';
import type { Random } from '../../support/random.ts';
import { SAMPLES } from './obis-samples.ts';
import { mutated, randomList, randomLog, randomPieces, randomTelegrams } from './random-obis.ts';
import { listsOf, readPieces, telegramsOf, type ReadObis } from './read-obis.ts';

const DECIMAL = /^-?\d+(?:\.\d+)?$/;
const DAY = parseDay('2025-05-01') ?? undefined;
const FIRST = parseDay('1990-01-01') ?? 0;
const LAST = parseDay('2099-12-31') ?? 0;

function valueProblem({ value, day, minute, line, stream }: RegisterValue): string | null {
  if (!DECIMAL.test(value)) return `${stream.register}: "${value}" is no decimal text`;
  if (value.startsWith('-') && stream.quantity !== 'net') return `${stream.register}: ${value} is below 0`;
  if (!Number.isInteger(day) || day < FIRST || day > LAST) return `the day ${String(day)}`;
  if (minute !== null && !(Number.isInteger(minute) && minute >= 0 && minute < 1_440))
    return `the minute ${String(minute)}`;
  return line >= 1 ? null : `the line ${String(line)}`;
}

/** What is wrong with what was read, whatever the text was. */
function problemsOf({ values, findings }: ReadObis): readonly string[] {
  const bare = findings.filter(({ position, found, expected, remedy }) => {
    const isPlaced = position !== undefined && position.line >= 1 && position.column >= 1;
    return !isPlaced || [found, expected, remedy].some((text) => /^$|undefined|NaN/.test(text));
  });
  const silent = values.length === 0 && findings.length === 0 ? ['nothing was read, and nothing said'] : [];
  return [
    ...values.flatMap((value) => valueProblem(value) ?? []),
    ...bare.map(({ code }) => code),
    ...silent,
  ];
}

function randomText(random: Random): string {
  if (random.chance(40)) return random.pick([...SAMPLES.values()]);
  const log = randomLog(random);
  return random.chance(50) ? randomTelegrams(random, log) : randomList(random, log);
}

/**
 * Read one damaged text as telegrams and as a list, whole and in pieces.
 *
 * @returns the text and what is wrong with what the readers made of it; null when nothing is
 */
export function fuzzObis(
  random: Random,
): { readonly text: string; readonly problems: readonly string[] } | null {
  const text = mutated(random, randomText(random));
  const pieces = randomPieces(random, text);
  const day = random.chance(50) ? DAY : undefined;
  const problems = [telegramsOf(day), listsOf(day)].flatMap((make) => {
    const whole = readPieces(make, [text]);
    const cut = readPieces(make, pieces);
    const isSame = JSON.stringify(whole) === JSON.stringify(cut);
    return [...problemsOf(whole), ...(isSame ? [] : ['the pieces give something else than the whole'])];
  });
  return problems.length === 0 ? null : { text, problems };
}
