import { readFileSync } from 'node:fs';
import {
  compareTariffs,
  readTariff,
  workOutQuote,
  prepareQuote,
  checkQuote,
  type QuoteDocument,
  type QuoteProfile,
} from '@unitbook/engine';
import { expect, it } from 'vitest';
import { putAt } from '../document/edit-quote.ts';
import { LaterWork, NOTHING_LATER } from './later-work.ts';
import { QuoteBench } from './quote-bench.ts';

const text = (path: string): string =>
  readFileSync(new URL(`../../../../../tariffs-examples/${path}`, import.meta.url), 'utf8');
const demo = JSON.parse(text('quotes/rooftop-4-kilowatt.json')) as QuoteDocument;
const { value: tariff } = readTariff(text('tarumira/taresco-domestic/tariff.json'));
if (tariff === null) throw new Error('The tariff cannot be read.');
const basis = { tariff, profile: null };

const anew = (document: QuoteDocument, profile: QuoteProfile | null = null) => {
  const input = checkQuote(document).value;
  const prepared = input === null ? null : prepareQuote(input, tariff, undefined, { profile }).value;
  return prepared === null ? null : workOutQuote(prepared);
};

it('gives by what was prepared before exactly what is worked out anew', () => {
  const bench = new QuoteBench();
  bench.workOut(demo, basis, null);
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
    const { quote } = bench.workOut(document, basis, null);
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
  expect(new QuoteBench().workOut(demo, basis, watts).quote?.years[0]?.saving).toBe(saving);
});

it('says what keeps a quote from being worked out', () => {
  const { quote, findings } = new QuoteBench().workOut(putAt(demo, ['plant', 'kWp'], '0'), basis, null);
  expect(quote).toBe(null);
  expect(findings.map(({ code }) => code)).toEqual(['quote/number-out-of-range']);
  expect(new QuoteBench().workOut(demo, null, null).quote).toBe(null);
});

/** The hours of 2025 but for the first ten days of March: 200 Wh used in each, 1,500 made from 8 to 16 h. */
function hours(): QuoteProfile {
  const first = 20_089 * 1440;
  const all = Array.from({ length: 8760 }, (_, at) => at).filter((at) => at < 59 * 24 || at >= 69 * 24);
  return {
    minutes: 60,
    starts: Int32Array.from(all, (at) => first + at * 60),
    use: Float64Array.from(all, () => 200),
    generation: Float64Array.from(all, (at) => (at % 24 >= 8 && at % 24 < 16 ? 1500 : 0)),
  };
}

it('gives by intervals, too, exactly what is worked out anew, and says of them the same', () => {
  const bench = new QuoteBench();
  const profile = hours();
  const changes: readonly (readonly [readonly string[], unknown])[] = [
    [['discountRate'], '6.5'],
    [['selfUse', 'share'], '20'],
    [['use', 'months', '05'], '700'],
    [['battery'], { capacity: '5', power: '2.5', efficiency: '90', cost: '60000' }],
    [['years'], '20'],
    [['tariff'], { id: 'another' }],
    [['selfUse', 'share'], '0'],
    [['use', 'months', '06'], '0'],
  ];
  let document = demo;
  for (const [path, value] of changes) {
    document = putAt(document, path, value);
    const { quote, findings } = bench.workOut(document, { tariff, profile }, null);
    const input = checkQuote(document);
    const own = input.value === null ? null : prepareQuote(input.value, tariff, undefined, { profile });
    expect(quote?.years).toEqual(anew(document, profile)?.years);
    expect(quote?.battery).toEqual(anew(document, profile)?.battery);
    const said = [...input.findings, ...(own?.findings ?? [])].map(({ code, found }) => `${code} ${found}`);
    expect(findings.map(({ code, found }) => `${code} ${found}`).sort()).toEqual(said.sort());
    expect(said.join()).toContain('quote/profile-month-in-part');
  }
});

it('goes by the share again once the intervals are taken out', () => {
  const bench = new QuoteBench();
  const [by, without] = [hours(), null].map(
    (profile) => bench.workOut(demo, { tariff, profile }, null).quote,
  );
  expect([by?.ownUse, without?.ownUse]).toEqual(['profile', 'share']);
  // 38 % of each month, rounded to whole units:
  // 194 + 192 + 160 + 144 + 152 + 163 + 175 + 167 + 171 + 182 + 190 + 207 = 2,097, where 38 % of 5,520 are 2,097.6.
  expect(without?.years[0]?.selfUse).toBe(2_097_000);
  expect(by?.years[0]?.selfUse).not.toBe(2_097_000);
});

it('works cases and other tariffs out by the intervals', () => {
  const profile = hours();
  const document = putAt(demo, ['uncertainty'], undefined);
  const { quote, prepared } = new QuoteBench().workOut(document, { tariff, profile }, null);
  if (quote === null || prepared === null) throw new Error('The demo cannot be worked out.');
  const { value: shop } = readTariff(text('tarumira/taresco-shop/tariff.json'));
  if (shop === null) throw new Error('The other tariff cannot be read.');
  let results = NOTHING_LATER;
  const work = new LaterWork((now) => {
    results = now;
  });
  work.start({ quote, prepared, document, tariff, watts: null, profile, others: [shop] });
  work.finish();
  expect(results.cases?.map((one) => one.quote?.ownUse)).toEqual(results.cases?.map(() => 'profile'));
  expect(results.tariffs).toEqual(compareTariffs(prepared.input, [shop], { profile }));
  // As without intervals: units given and taken are netted by the month.
  expect(results.tariffs?.[0]?.quote?.years[0]?.before).toBe(46_726_00);
  work.close();
});

it('prepares the bills anew for another settlement day', () => {
  const { value: chosen } = readTariff(text('tarumira/taresco-chosen-day/tariff.json'));
  if (chosen === null) throw new Error('The tariff cannot be read.');
  const bare = ['tariff', 'policies', 'uncertainty'].reduce(
    (held, key) => putAt(held, [key], undefined),
    demo,
  );
  const own = putAt(bare, ['escalation', 'charges'], {});
  const bench = new QuoteBench();
  const paidIn = (day: string | undefined): readonly number[] => {
    const { quote } = bench.workOut(
      putAt(own, ['settlementDay'], day),
      { tariff: chosen, profile: null },
      null,
    );
    return (quote?.months ?? []).flatMap(({ surplus }, at) => (surplus === 0 ? [] : [at + 1, surplus]));
  };
  // September, month 6: 20 units are banked, at 2.50. In March the whole bank of the year, 415: 1,037.50.
  expect(paidIn('09-30')).toEqual([6, 50_00]);
  expect(paidIn('03-31')).toEqual([12, 1_037_50]);
  const { findings } = bench.workOut(own, { tariff: chosen, profile: null }, null);
  expect(findings.map(({ code }) => code)).toContain('quote/settlement-day-needed');
});
