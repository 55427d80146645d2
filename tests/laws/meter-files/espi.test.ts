import { describe, expect, it } from 'vitest';
import { makeRandom } from '../../support/random.ts';
import { fuzzEspi } from './fuzz-espi.ts';
import { printEntries, printFeed, readFeed, type ReadFeed } from './print-espi.ts';
import { pieces, randomEntries, randomFeed, shuffled } from './random-espi.ts';

const RUNS = 300;
const seeds = Array.from({ length: RUNS }, (_, index) => index);

/** What a feed says, its streams in order of their names. */
const content = ({ localTime, streams }: Pick<ReadFeed, 'localTime' | 'streams'>): unknown => ({
  localTime,
  streams: [...streams].sort((one, other) =>
    JSON.stringify(one.stream) < JSON.stringify(other.stream) ? -1 : 1,
  ),
});

/** Questions that are asked of every feed with net energy. */
const ASKED = ['espi/net', 'espi/net-beside-flows'];
const unexpected = ({ findings }: ReadFeed): unknown =>
  findings.filter(({ code }) => !ASKED.includes(code)).map(({ code, found }) => [code, found]);

describe('an ESPI feed', () => {
  it('that is printed, in any order of entries, is read as what it was made of', () => {
    for (const seed of seeds) {
      const random = makeRandom(seed);
      const feed = randomFeed(random);
      const read = readFeed([printFeed(shuffled(printEntries(feed), random))]);
      expect(content(read)).toEqual(content(feed));
      expect(unexpected(read)).toEqual([]);
    }
  });

  it('that was read, printed and read again says the same', () => {
    for (const seed of seeds) {
      const random = makeRandom(seed + 10_000);
      const once = readFeed([printFeed(randomEntries(random))]);
      const twice = readFeed([printFeed(printEntries(once))]);
      expect(content(twice)).toEqual(content(once));
      expect(readFeed([printFeed(printEntries(twice))])).toEqual(twice);
    }
  });

  it('says the same in pieces that end anywhere', () => {
    for (const seed of seeds) {
      const random = makeRandom(seed + 20_000);
      const text = printFeed(randomEntries(random)).replaceAll('\n', random.pick(['\n', '\r\n', '\r']));
      expect(readFeed(pieces(text, random))).toEqual(readFeed([text]));
    }
  });

  it('that is spoilt gives whole numbers and findings with a place, and never stops the reader', () => {
    for (const seed of seeds) expect([seed, ...fuzzEspi(makeRandom(seed + 30_000))]).toEqual([seed]);
  });
});
