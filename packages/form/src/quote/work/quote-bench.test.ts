import { readFileSync } from 'node:fs';
import {
  BLOCK,
  readTariff,
  workOutQuote,
  prepareQuote,
  checkQuote,
  type QuoteDocument,
} from '@unitbook/engine';
import { expect, it } from 'vitest';
import { putAt } from '../document/edit-quote.ts';
import { drawBlocks, type DrawNews } from './draw-blocks.ts';
import { DrawThread } from './draw-thread.ts';
import { sizeRange } from './later-work.ts';
import { QuoteBench } from './quote-bench.ts';

const text = (path: string): string =>
  readFileSync(new URL(`../../../../../tariffs-examples/${path}`, import.meta.url), 'utf8');
const demo = JSON.parse(text('quotes/rooftop-4-kilowatt.json')) as QuoteDocument;
const { value: tariff } = readTariff(text('tarumira/taresco-domestic/tariff.json'));
if (tariff === null) throw new Error('The tariff cannot be read.');

const anew = (document: QuoteDocument) => {
  const input = checkQuote(document).value;
  const prepared = input === null ? null : prepareQuote(input, tariff).value;
  return prepared === null ? null : workOutQuote(prepared);
};

it('gives by what was prepared before exactly what is worked out anew', () => {
  const bench = new QuoteBench();
  bench.workOut(demo, tariff, null);
  const changes: readonly (readonly [readonly string[], string])[] = [
    [['selfUse', 'share'], '20'],
    [['discountRate'], '6.5'],
    [['use', 'months', '05'], '700'],
    [['escalation', 'charges', 'energy'], '3'],
    [['degradation', 'later'], '1'],
  ];
  let document = demo;
  for (const [path, value] of changes) {
    document = putAt(document, path, value);
    const { quote } = bench.workOut(document, tariff, null);
    expect(quote?.years).toEqual(anew(document)?.years);
    expect(quote?.months).toEqual(anew(document)?.months);
    expect(quote?.measures).toEqual(anew(document)?.measures);
  }
});

it.each([
  // Table 4 of the scenario, in hundredths.
  [3000, 3_160_727],
  [3500, 3_434_423],
  [4000, 3_667_388],
  [5000, 4_021_420],
])('tries a plant of %i W', (watts, saving) => {
  expect(new QuoteBench().workOut(demo, tariff, watts).quote?.years[0]?.saving).toBe(saving);
});

it('says what keeps a quote from being worked out', () => {
  const { quote, findings } = new QuoteBench().workOut(putAt(demo, ['plant', 'kWp'], '0'), tariff, null);
  expect(quote).toBe(null);
  expect(findings.map(({ code }) => code)).toEqual(['quote/number-out-of-range']);
  expect(new QuoteBench().workOut(demo, null, null).quote).toBe(null);
});

const job = { id: 7, document: demo, tariff: tariff.document, watts: null, draws: 2 * BLOCK };

it('tells of each block of draws, then of all', () => {
  const news = [...drawBlocks(job)];
  expect(news.map(({ kind }) => kind)).toEqual(['drawn', 'drawn', 'done']);
  const last = news.at(-1);
  expect(last?.kind === 'done' ? last.summary.count : 0).toBe(200);
});

it('says why there can be no draws', () => {
  const [news] = [...drawBlocks({ ...job, document: putAt(demo, ['plant', 'kWp'], '0') })];
  expect(news?.kind).toBe('failed');
});

it('draws between everything else where there is no worker, and the same', async () => {
  const heard: DrawNews[] = [];
  await new Promise<void>((resolve) => {
    const thread = new DrawThread(
      (news) => {
        heard.push(news);
        if (news.kind === 'done') resolve();
      },
      () => null,
    );
    expect(thread.isApart).toBe(false);
    thread.draw(job);
  });
  expect(heard).toEqual([...drawBlocks(job)]);
});

it('gives up where another quote takes the place of one before', async () => {
  const heard: DrawNews[] = [];
  const thread = new DrawThread(
    (news) => heard.push(news),
    () => null,
  );
  thread.draw(job);
  thread.stop();
  await new Promise((resolve) => setTimeout(resolve, 100));
  expect(heard).toEqual([]);
});

it.each([
  [4000, { from: 500, step: 500, count: 16 }],
  [1000, { from: 200, step: 200, count: 10 }],
  [100, { from: 100, step: 100, count: 4 }],
])('looks at sizes up to twice %i W, in round steps', (watts, range) => {
  expect(sizeRange(watts)).toEqual(range);
});
