import { makeRandom, type Random } from '../../support/random.ts';
import { fuzzEspi } from './fuzz-espi.ts';
import { fuzzNem, nemProblems } from './fuzz-nem.ts';
import { fuzzObis } from './fuzz-obis.ts';
import { fuzzTable } from './fuzz-table.ts';

/** A reader under damaged files: what is wrong with what it made of one, nothing if all is well. */
type Fuzz = (random: Random) => readonly string[];

const READERS: Readonly<Record<string, Fuzz>> = {
  'NEM12 and NEM13': (random) => nemProblems(fuzzNem(random), random),
  ESPI: fuzzEspi,
  'tables of any header': (random) => fuzzTable(random),
  'telegrams and OBIS lists': (random) => fuzzObis(random)?.problems ?? [],
};

/** The longest that a reader may sit on one file, read several times over. */
const SECONDS = 2;
const SHOWN = 5;

interface Outcome {
  readonly name: string;
  readonly files: number;
  readonly slowest: number;
  readonly problems: readonly string[];
}

function tryOnce(fuzz: Fuzz, random: Random): readonly string[] {
  try {
    return fuzz(random);
  } catch (error) {
    return [`throws ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`];
  }
}

/** Read so many damaged files; every one has a seed of its own, so that it can be read again alone. */
function fuzzReader(name: string, fuzz: Fuzz, files: number, seed: number): Outcome {
  const problems: string[] = [];
  let slowest = 0;
  for (let file = 0; file < files; file += 1) {
    const own = (seed + file) >>> 0;
    const begun = performance.now();
    const found = tryOnce(fuzz, makeRandom(own));
    const took = (performance.now() - begun) / 1000;
    slowest = Math.max(slowest, took);
    if (took > SECONDS) problems.push(`seed ${String(own)}: took ${took.toFixed(1)} s`);
    for (const problem of found) problems.push(`seed ${String(own)}: ${problem.slice(0, 600)}`);
  }
  return { name, files, slowest, problems };
}

const numberAfter = (word: string, otherwise: number): number => {
  const at = process.argv.indexOf(word);
  const text = at < 0 ? undefined : process.argv[at + 1];
  return text === undefined ? otherwise : Number.parseInt(text, 10);
};

const files = numberAfter('--files', 100_000);
const seed = numberAfter('--seed', Math.floor(performance.timeOrigin) >>> 0);
const only = process.argv.indexOf('--only');
const word = only < 0 ? '' : (process.argv[only + 1] ?? '').toLowerCase();
const chosen = Object.entries(READERS).filter(([name]) => name.toLowerCase().includes(word));
const each = Math.ceil(files / chosen.length);
console.log(`seed ${String(seed)}: ${String(each)} damaged files for each reader`);
let failed = 0;
for (const [name, fuzz] of chosen) {
  const { problems, slowest } = fuzzReader(name, fuzz, each, seed);
  console.log(
    `${name}: ${String(each)} files, ${String(problems.length)} problems, slowest ${(slowest * 1000).toFixed(0)} ms`,
  );
  for (const problem of problems.slice(0, SHOWN)) console.log(`  ${problem}`);
  failed += problems.length;
}
process.exitCode = failed === 0 ? 0 : 1;
