// `npm run bench:causes`: mistakes are planted into bills of real homes under example tariffs, and looked for.
import { CAUSES } from '@unitbook/engine';
import { makeRandom } from '../support/random.ts';
import { benchAccounts } from './causes/accounts.ts';
import { realHomes } from './causes/homes.ts';
import {
  accused,
  emptyScore,
  fieldOf,
  plantAndFind,
  randomPair,
  type Miss,
  type Score,
} from './causes/score.ts';

const option = (name: string): string | undefined => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? undefined : process.argv[at + 1];
};

const isJson = process.argv.includes('--json');
const isShort = process.argv.includes('--short');
const seed = Number.parseInt(option('seed') ?? String(Date.now() % 1_000_000), 10);
const random = makeRandom(seed);
const PAIRS = isShort ? 40 : 200;
const CLEAN = isShort ? 2000 : 20_000;
/** How many bills of an account each mistake is planted in. */
const PER_ACCOUNT = isShort ? 1 : 2;
/** How often a mistake is tried to be planted in bills where it cannot be made. */
const TRIES = 12;

const started = performance.now();
const { accounts, leftOut } = benchAccounts(realHomes());
const single = emptyScore();
const misses: Miss[] = [];
const byCause = new Map<string, Score>();
for (const cause of CAUSES) {
  const own = emptyScore();
  for (const one of accounts) {
    // Some mistakes can be made in few bills only: in that of a settlement, or of a new meter.
    const places = one.days.slice(2).map((_, at) => at + 1);
    for (let planted = 0; planted < PER_ACCOUNT && places.length > 0;) {
      const [at = 1] = places.splice(random.below(places.length), 1);
      const field = fieldOf(one, at, [cause]);
      if (field !== null && plantAndFind([cause], field, { score: own, misses, random })) planted += 1;
    }
  }
  byCause.set(cause.id, own);
  single.n += own.n;
  single.first += own.first;
  single.tied += own.tied;
  single.missed += own.missed;
}

const pair = emptyScore();
const pairMisses: Miss[] = [];
while (pair.n < PAIRS) {
  const causes = randomPair(random);
  for (let tries = 0; tries < TRIES; tries += 1) {
    const one = random.pick(accounts);
    const field = fieldOf(one, 1 + random.below(Math.max(1, one.days.length - 2)), causes);
    if (field !== null && plantAndFind(causes, field, { score: pair, misses: pairMisses, random })) break;
  }
}

const clean = { n: 0, accused: 0 };
const wrong: string[] = [];
for (let round = 0; clean.n < CLEAN; round += 1) {
  for (const one of accounts) {
    if (clean.n >= CLEAN) break;
    const found = accused(one, CLEAN - clean.n);
    clean.n += found.n;
    clean.accused += found.wrong.length;
    if (round === 0) wrong.push(...found.wrong);
  }
}

const share = ({ n, first, tied }: Score): string =>
  n === 0 ? 'never made' : `${((100 * (first + tied)) / n).toFixed(1)} %`;
if (isJson) console.log(JSON.stringify({ single, pair, clean, seed }));
else {
  console.log(
    `seed ${String(seed)}; ${String(accounts.length)} accounts; ${((performance.now() - started) / 1000).toFixed(1)} s`,
  );
  if (leftOut.length > 0) console.log(`left out: ${leftOut.join('; ')}`);
  console.log('cause                              n  first  tied  missed  found');
  for (const [id, own] of byCause)
    console.log(
      `${id.padEnd(30)} ${[own.n, own.first, own.tied, own.missed].map((value) => String(value).padStart(6)).join(' ')}  ${share(own)}`,
    );
  console.log('single', JSON.stringify(single), share(single));
  console.log('pair  ', JSON.stringify(pair), share(pair));
  console.log('clean ', JSON.stringify(clean));
  for (const { planted, verdict, found, account } of [...misses, ...pairMisses].slice(0, 60))
    console.log(`missed: ${planted} (${account}): ${verdict}; ${found || 'nothing'}`);
  for (const line of wrong.slice(0, 20)) console.log(`accused: ${line}`);
}
