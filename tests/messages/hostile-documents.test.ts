import {
  keepBook,
  readExtendedTariff,
  readHousehold,
  readTariff,
  type BookMonth,
  type Finding,
} from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import demoHousehold from '../../tariffs-examples/households/demo.json?raw';
import { changed, DEMO_TARIFF, goodTariff } from '../support/demo.ts';

/** A document that nobody writes by mistake: it ends in a message, and at once. */
interface Hostile {
  readonly is: string;
  readonly text: () => string;
  /** The first findings, each "line code found". */
  readonly says: readonly string[];
  /** How many problems there are beyond the thousand that are listed; left out: `says` are all. */
  readonly more?: number;
}

/** In milliseconds, on a machine that is busy with other tests: work that grows with the square takes far longer. */
const WITHIN = 4000;

const many = (count: number, make: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => make(index)).join(',');

const SLABS =
  '{ "upTo": "50", "rate": "3.00" },\n            { "upTo": "150", "rate": "4.80" },\n' +
  '            { "upTo": "300", "rate": "6.50" },\n            { "rate": "8.00" }\n';

/** The demo with other slabs in its newer version. */
const withSlabs = (slabs: string): string => changed(DEMO_TARIFF, SLABS, `${slabs}\n`);
const percentOf = (index: number, of: string): string =>
  `{"id":"p${index}","label":"P","kind":"percentage","clause":"TO-2024 cl. 5.2","percent":"1","of":[${of}]}`;

/** The demo with another list of versions. */
function withVersions(versions: string): string {
  const [before = '', rest = ''] = DEMO_TARIFF.split('"versions": [');
  const [, after = ''] = rest.split(/\n {2}\],\n {2}"settlements"/);
  return `${before}"versions": [${versions}],"settlements"${after}`;
}

const versionOf = (charges: string): string =>
  `{"name":"v","from":"2000-01-01","clause":"TO-2024","charges":[${charges}]}`;

/** Charges of which each is a percentage of all above, or of so many. */
const percentages = (count: number, most = count): string =>
  many(count, (index) =>
    percentOf(
      index,
      many(Math.min(index, most), (above) => `"p${above}"`),
    ),
  );

const withSources = (sources: string): string =>
  changed(DEMO_TARIFF, '"NMR-2021": {', `${sources},"NMR-2021": {`);

/** Places of the demo: what a key is put before, and the line. */
const FORBIDDEN_AT = [
  { where: 'the document', before: '"currency": "INR"', line: 8 },
  { where: 'the sources', before: '"TO-2023": {', line: 10 },
  { where: 'a source', before: '"title": "Tariff Order 2023"', line: 11 },
  { where: 'the day rules', before: '"month": {', line: 34 },
  { where: 'a charge', before: '"clause": "TO-2024 cl. 5.2"', line: 168 },
  { where: 'a slab', before: '"rate": "4.80"', line: 140 },
] as const;

const depth = (open: string, close: string): string =>
  `{"a":${open.repeat(100_000)}${close.repeat(100_000)}}`;

const DEEP = 'document/too-large more than 200 brackets within each other';
const VALUES = 'document/too-large more than 100000 values in one document';
const LONG = 'document/too-large more than 10000 characters in one text';

const HOSTILE: readonly Hostile[] = [
  { is: '100,000 lists within each other', text: () => depth('[', ']'), says: [`1 ${DEEP}`] },
  { is: '100,000 lists that nothing closes', text: () => '['.repeat(100_000), says: [`1 ${DEEP}`] },
  { is: '100,000 objects within each other', text: () => depth('{"a":', '}'), says: [`1 ${DEEP}`] },
  {
    is: '50 million characters',
    text: () => `{"a":"${'x'.repeat(50_000_000)}"}`,
    says: ['1 document/too-large more than 4000000 characters'],
  },
  {
    is: '50 million line ends',
    text: () => '\n'.repeat(50_000_000),
    says: ['1 document/too-large more than 4000000 characters'],
  },
  {
    is: 'nothing but 4,000,000 line ends',
    text: () => '\n'.repeat(4_000_000),
    says: ['1 document/not-json the file is not JSON here: the file is empty'],
  },
  { is: 'a list of 1,900,000 numbers', text: () => `[${many(1_900_000, () => '1')}]`, says: [`1 ${VALUES}`] },
  {
    is: 'a text of 3,900,000 characters',
    text: () => `{"a":"${'x'.repeat(3_900_000)}"}`,
    says: [`1 ${LONG}`],
  },
  {
    is: 'a text of 10 million characters',
    text: () => `{"a":"${'x'.repeat(10_000_000)}"}`,
    says: ['1 document/too-large more than 4000000 characters'],
  },
  {
    is: 'a text of 1,900,000 escapes',
    text: () => `{"a":"${'\\n'.repeat(1_900_000)}"}`,
    says: [`1 ${LONG}`],
  },
  {
    is: 'a text of 1,900,000 escapes that does not end',
    text: () => `{"a":"${'\\n'.repeat(1_900_000)}`,
    says: ['1 document/not-json the file is not JSON here: unexpected end of string'],
  },
  {
    is: 'a key of 3,900,000 characters',
    text: () => `{"${'x'.repeat(3_900_000)}":1}`,
    says: [`1 ${LONG}`],
  },
  {
    is: 'a number that no double holds',
    text: () => changed(DEMO_TARIFF, '"divisor": "30"', '"divisor": 1e400'),
    says: ['37 document/number-not-text the number 1e400 without quotation marks'],
  },
  {
    is: 'a number of 10,000 digits',
    text: () => changed(DEMO_TARIFF, '"divisor": "30"', `"divisor": ${'9'.repeat(10_000)}`),
    says: ['37 document/too-large more than 100 characters in one number'],
  },
  {
    is: 'a number of 3,000,000 digits',
    text: () => `{"a":${'9'.repeat(3_000_000)}}`,
    says: ['1 document/too-large more than 100 characters in one number'],
  },
  {
    is: 'a text of 10,000 digits where a number belongs',
    text: () => changed(DEMO_TARIFF, '"divisor": "30"', `"divisor": "${'9'.repeat(10_000)}"`),
    says: [`37 document/not-a-decimal "${'9'.repeat(57)}…"`],
  },
  {
    is: 'a number with 9,000 zeros before a letter',
    text: () => changed(DEMO_TARIFF, '"divisor": "30"', `"divisor": "1.${'0'.repeat(9000)}x"`),
    says: [`37 document/not-a-decimal "1.${'0'.repeat(55)}…"`],
  },
  {
    is: '10,000 versions',
    text: () => withVersions(many(10_000, (index) => `{"name":"v${index}"}`)),
    says: ['48 document/too-large 10000 items in "versions"'],
  },
  {
    is: '10,000 charges, each a percentage of the one above',
    text: () => withVersions(versionOf(many(10_000, (index) => percentOf(index, `"p${index - 1}"`)))),
    says: [
      '1 document/too-large 20002 items in all its lists together',
      '48 document/too-large 10000 items in "charges"',
      '48 document/too-large more than 1000 lines in "charges", once every name in them is written out',
    ],
  },
  {
    is: '201 charges, each a percentage of all above',
    text: () => withVersions(versionOf(percentages(201))),
    says: [
      '1 document/too-large 20303 items in all its lists together',
      '48 document/too-large 201 items in "charges"',
      '48 document/too-large more than 1000 lines in "charges", once every name in them is written out',
    ],
  },
  {
    // One, two, four … 512: 1,023 in ten lines of text.
    is: 'ten prices, each the sum of all above',
    text: () =>
      changed(
        DEMO_TARIFF,
        '"dayRules": {',
        `"prices": {${many(10, (at) => `"p${at}":{"is":"sum","of":[${many(at, (above) => `"p${above}"`)}]}`)}},"dayRules": {`,
      ),
    says: ['33 document/too-large more than 1000 lines in "prices", once every name in them is written out'],
  },
  {
    // Two, four, eight … times: 2,047 lines in 11 of text.
    is: '11 charges, each a percentage of all above',
    text: () => withVersions(versionOf(percentages(11))),
    says: ['48 document/too-large more than 1000 lines in "charges", once every name in them is written out'],
  },
  {
    is: '10,000 charges, each a percentage of all above',
    text: () => withVersions(versionOf(percentages(10_000, 300))),
    says: ['1 document/too-large more than 4000000 characters'],
  },
  {
    is: '96 versions with a charge that is a percentage of 198 lines that are not there',
    text: () =>
      withVersions(
        many(96, () =>
          versionOf(
            percentOf(
              1,
              many(198, (of) => `"q${of}"`),
            ),
          ),
        ),
      ),
    says: ['48 tariff/unknown-line the line "q0"'],
    // And 95 overlaps.
    more: 18_103,
  },
  {
    is: '24,000 slabs',
    text: () => withSlabs(many(24_000, () => '{"rate":"1"}')),
    says: ['1 document/too-large 24025 items in all its lists together'],
  },
  {
    // The first may stand; 18,998 are not above the one before, and the last has a limit.
    is: '19,000 slabs with the same limit',
    text: () => withSlabs(many(19_000, () => '{"upTo":"1","rate":"1"}')),
    says: ['139 tariff/slabs-not-ascending the limit 1 after the limit 1'],
    more: 17_999,
  },
  {
    is: '19,000 slabs with four slips each',
    text: () => withSlabs(many(19_000, () => '{"upTo":1,"clause":1,"x":1}')),
    says: ['139 document/missing-key no "rate"'],
    more: 75_000,
  },
  {
    // And eleven keys that are missing.
    is: '90,000 keys that mean nothing',
    text: () => `{${many(90_000, (index) => `"k${index}":1`)}}`,
    says: ['1 document/missing-key no "format"'],
    more: 89_011,
  },
  {
    // 89,999 of them again, one that is no text, and ten keys that are missing.
    is: '90,000 times one key',
    text: () => `{${many(90_000, () => '"id":1')}}`,
    says: ['1 document/duplicate-key the key "id" stands here a second time'],
    more: 89_010,
  },
  {
    is: '90,000 sources of the wrong kind',
    text: () => withSources(many(90_000, (index) => `"s${index}":1`)),
    says: ['9 document/too-large 90003 names in "sources"'],
  },
  {
    is: '19,000 clauses of none of 100 sources',
    text: () =>
      changed(
        withSources(
          many(97, (index) => `"${'s'.repeat(60)}${index}":{"title":"a","publisher":"a","year":"n.d."}`),
        ),
        SLABS,
        many(19_000, () => '{"upTo":"1","rate":"1","clause":"X"}'),
      ),
    says: ['139 tariff/clause-without-source the clause "X"'],
    more: 36_999,
  },
  {
    is: '19,000 versions of nothing',
    text: () => withVersions(many(19_000, () => '{}')),
    says: ['48 document/too-large 19000 items in "versions"'],
  },
  {
    is: '1,000 versions of nothing',
    text: () => withVersions(many(1000, () => '{}')),
    says: ['48 document/missing-key no "name"'],
    more: 3000,
  },
  {
    is: '1,000 versions of 18 charges of nothing',
    text: () => withVersions(many(1000, () => versionOf(many(18, () => '{"kind":"minimum"}')))),
    says: ['48 document/missing-key no "id"'],
    more: 107_000,
  },
  {
    is: '19,008 bases that are no names',
    text: () =>
      withVersions(
        many(96, () =>
          versionOf(
            percentOf(
              1,
              many(198, () => '{}'),
            ),
          ),
        ),
      ),
    says: ['48 document/missing-key no "line"', '48 document/missing-key no "recomputedOn"'],
    more: 37_016,
  },
  {
    is: 'a name of 9,000 characters',
    text: () => changed(DEMO_TARIFF, '"dayRules": {', `"dayRules": {"${'r'.repeat(9000)}":{},`),
    says: ['33 document/too-large a name of 9000 characters'],
  },
  ...['__proto__', 'constructor', 'prototype'].flatMap((key) => [
    {
      is: `${key} at the outermost level, among 2,000 times another key`,
      text: () => `{${many(2000, () => '"id":1')},"${key}":{"polluted":"yes"}}`,
      says: ['1 document/duplicate-key the key "id" stands here a second time'],
      more: 1000,
    },
    ...FORBIDDEN_AT.map(({ where, before, line }) => ({
      is: `${key} in ${where}`,
      text: () => changed(DEMO_TARIFF, before, `"${key}": { "polluted": "yes" }, ${before}`),
      says: [`${line} document/forbidden-key the key "${key}", which means something to programs themselves`],
    })),
  ]),
];

const DEMO = readHousehold(demoHousehold).value;

/** The book of the demo household by another tariff. */
function keptWith(text: string) {
  const { account, readings } = DEMO;
  if (account === null || readings === null) throw new Error('the demo household cannot be read');
  const kept = keepBook({ account, tariff: goodTariff(text), readings });
  return {
    months: kept.value.months,
    findings: kept.findings.filter(({ severity }) => severity === 'error'),
  };
}

const totalOf = ({ bill }: BookMonth) => [bill.payable.numerator, bill.payable.denominator];

/** What is said of a text, in the order of the file. */
function told(findings: readonly Finding[]): readonly string[] {
  return findings.map(({ code, found, position }) => `${String(position?.line)} ${code} ${found}`);
}

/** How long it takes to read a text, and what is said of it. */
function timed(read: () => readonly Finding[]): { took: number; findings: readonly Finding[] } {
  const start = performance.now();
  const findings = read();
  return { took: performance.now() - start, findings };
}

describe('a tariff of', () => {
  it('10,000 slabs is read and bills a year', () => {
    const slabs = many(10_000, (index) =>
      index < 9999 ? `{"upTo":"${index + 1}","rate":"1.00"}` : '{"rate":"1.00"}',
    );
    const text = withSlabs(slabs);
    const start = performance.now();
    const { months, findings } = keptWith(text);
    expect(performance.now() - start).toBeLessThan(WITHIN);
    expect(findings).toEqual([]);
    // At one rate for all, the slabs come to what a rate per unit does.
    const { months: plain } = keptWith(withSlabs('{ "rate": "1.00" }'));
    expect(months).toHaveLength(12);
    expect(months.map(totalOf)).toEqual(plain.map(totalOf));
  });

  it.each(HOSTILE)('$is', ({ text, says, more }) => {
    const document = text();
    const { took, findings } = timed(() => readTariff(document).findings);
    const all = told(findings);
    expect(all.slice(0, more === undefined ? undefined : says.length)).toEqual(says);
    if (more !== undefined) {
      expect(all.length).toBe(1001);
      expect(findings.at(-1)).toMatchObject({
        code: 'document/more-problems',
        values: { count: String(more) },
      });
    }
    expect(took).toBeLessThan(WITHIN);
    expect({}).not.toHaveProperty('polluted');
  });
});

/** The demo under another id, with another list of versions or none. */
const called = (id: string, text = DEMO_TARIFF): string =>
  changed(text, '"id": "tarumira-domestic"', `"id": "${id}"`);

const extending = (base: string, id: string, more = ''): string =>
  `{"extends":"${base}","id":"${id}","name":"N"${more}}`;

/** A document that extends others: what it is, its text, and the others by id. */
const EXTENDING = [
  {
    is: 'extends itself through seven others',
    text: extending('d1', 'd0'),
    others: (id: string) => extending(`d${(Number.parseInt(id.slice(1), 10) + 1) % 8}`, id),
    says: [`1 tariff/extends-itself ${many(9, (at) => `"d${at % 8}"`).replaceAll(',', ', which extends ')}`],
  },
  {
    is: 'extends one after another without end',
    text: extending('d1', 'd0'),
    others: (id: string) => extending(`d${Number.parseInt(id.slice(1), 10) + 1}`, id),
    says: ['1 tariff/extends-too-deep more than 8 documents, each of which extends the next'],
  },
  {
    is: 'extends eight, each with 10,000 slabs of its own',
    text: extending('d1', 'd0', ',"currency":"XXZ"'),
    others: (id: string) =>
      id === 'd8'
        ? called(id)
        : extending(
            `d${Number.parseInt(id.slice(1), 10) + 1}`,
            id,
            `,"changes":[{"version":"TO-2024","charge":"energy","set":{"slabs":[${many(10_000, (index) => (index < 9999 ? `{"upTo":"${index + 1}","rate":"1"}` : '{"rate":"1"}'))}]}}]`,
          ),
    says: ['1 tariff/unknown-currency the currency "XXZ"'],
  },
  {
    is: 'adds 1,000 charges',
    text: extending(
      'd1',
      'd0',
      `,"changes":[${many(1000, (index) => `{"version":"TO-2024","add":{"id":"c${index}"},"first":true}`)}]`,
    ),
    others: called,
    // With the six of the demo.
    says: [
      '1 document/too-large 1006 items in "charges"',
      '1 document/too-large more than 1000 lines in "charges", once every name in them is written out',
    ],
  },
  {
    is: 'lists 10,000 changes',
    text: extending('d1', 'd0', `,"changes":[${many(10_000, () => '{"version":"TO-2024","set":{}}')}]`),
    others: called,
    says: ['1 document/too-large 10000 items in "changes"'],
  },
  {
    is: 'extends 50 million characters',
    text: extending('d1', 'd0'),
    others: () => ' '.repeat(50_000_000),
    says: ['1 tariff/extends-wrong in the document "d1", line 1, column 1: more than 4000000 characters'],
  },
  {
    is: 'extends 100,000 lists within each other',
    text: extending('d1', 'd0'),
    others: () => '['.repeat(100_000),
    says: [
      '1 tariff/extends-wrong in the document "d1", line 1, column 201: more than 200 brackets within each other',
    ],
  },
] as const;

describe('a tariff that', () => {
  it.each(EXTENDING)('$is', ({ text, others, says }) => {
    const { took, findings } = timed(() => readExtendedTariff(text, { lookUp: (id) => others(id) }).findings);
    expect(told(findings)).toEqual(says);
    expect(took).toBeLessThan(WITHIN);
  });
});
