import { describe, expect, it } from 'vitest';
import { DEMO_TARIFF } from '../../../../tests/support/demo.ts';
import { extendDocument, extendedId, readExtendedTariff } from './extend-document.ts';
import { readTariff } from './read-tariff.ts';

type Tree = Readonly<Record<string, unknown>>;

const library = (texts: Readonly<Record<string, unknown>>) => ({
  lookUp: (id: string): string | null => {
    const text = texts[id];
    if (text === undefined) return null;
    return typeof text === 'string' ? text : JSON.stringify(text);
  },
});

const OWN = { format: 'unitbook-tariff-1', extends: 'tarumira-domestic', id: 'own', name: 'Own' };
const DEMO = library({ 'tarumira-domestic': DEMO_TARIFF });

/** What becomes of the demo when a document extends it. */
function extended(more: Tree): Tree {
  const { text, findings } = extendDocument(JSON.stringify({ ...OWN, ...more }), DEMO);
  expect(findings).toEqual([]);
  expect(readTariff(text ?? '').findings).toEqual([]);
  return JSON.parse(text ?? '') as Tree;
}

const demo = JSON.parse(DEMO_TARIFF) as Tree;

/** The demo, with what a test changes by hand in a copy of it. */
function demoWith(change: (copy: never) => void): Tree {
  const copy = JSON.parse(DEMO_TARIFF) as Tree;
  change(copy as never);
  return { ...copy, id: 'own', name: 'Own' };
}

interface Copy {
  versions: { through?: string; charges: Record<string, unknown>[] }[];
  settlements: Record<string, unknown>[];
  sources: Record<string, unknown>;
  invented?: boolean;
}

describe('a document that extends another', () => {
  it('is that document under its own id and name', () => {
    expect(extended({})).toEqual({ ...demo, id: 'own', name: 'Own' });
  });

  it('has its own keys as a whole', () => {
    const units = { clause: 'TO-2024 cl. 9', decimals: '2', rounding: 'half-up', roundedAt: 'reading' };
    expect(extended({ units })).toEqual({ ...demo, id: 'own', name: 'Own', units });
  });

  it('has the sources of both', () => {
    const source = { title: 'Tariff Order 2025', publisher: 'Commission (invented)', year: '2025' };
    const expected = demoWith((copy: Copy) => {
      copy.sources['TO-2025'] = source;
      copy.sources['TO-2024'] = { ...source, year: '2024' };
    });
    expect(extended({ sources: { 'TO-2025': source, 'TO-2024': { ...source, year: '2024' } } })).toEqual(
      expected,
    );
  });

  it('changes, takes out and adds charges, one change after the other', () => {
    const added = {
      id: 'meter',
      label: 'Meter rent',
      kind: 'fixed',
      clause: 'TO-2024 cl. 8',
      amount: '30.00',
      scaledBy: 'month',
    };
    const expected = demoWith((copy: Copy) => {
      const charges = copy.versions[1]?.charges ?? [];
      const [fixed, energy, minimum, , tax, subsidy] = charges;
      charges.splice(
        0,
        6,
        { ...added, id: 'first' },
        { ...fixed, rate: '75.00', scaledBy: 'month' },
        { ...energy },
        { ...minimum },
        { ...tax, percent: '9' },
        { ...added, amount: '40.00' },
        { ...subsidy },
      );
    });
    const version = 'TO-2024';
    const changes = [
      { version, charge: 'fixed', set: { rate: '75.00', scaledBy: null } },
      { version, charge: 'fixed', set: { scaledBy: 'month' } },
      { version, remove: 'fuel' },
      { version, charge: 'tax', set: { percent: '9' } },
      { version, add: added, after: 'tax' },
      { version, charge: 'meter', set: { amount: '40.00' } },
      { version, add: { ...added, id: 'first' }, first: true },
    ];
    expect(extended({ changes })).toEqual(expected);
  });

  it('changes a version and a settlement', () => {
    const set = { through: '2030-03-31' };
    const expected = demoWith((copy: Copy) => {
      for (const item of [copy.versions[1], copy.settlements[0]]) Object.assign(item ?? {}, set);
    });
    const from = String((demo['settlements'] as { from: string }[])[0]?.from);
    expect(
      extended({
        changes: [
          { version: 'TO-2024', set },
          { settlement: from, set },
        ],
      }),
    ).toEqual(expected);
  });

  it('takes a key out where it says null', () => {
    const expected = demoWith((copy: Copy) => {
      delete copy.invented;
    });
    expect(extended({ invented: null })).toEqual(expected);
  });

  it('keeps numbers as they were written, so that what is said of them is true', () => {
    const base = { id: 'base', name: 'B', divisor: 0 };
    const { text } = extendDocument('{"extends":"base","id":"own","name":"O"}', {
      lookUp: () => JSON.stringify(base).replace(':0', ':3.10'),
    });
    expect(text).toContain('"divisor": 3.10');
  });

  it('may extend one that extends another, up to eight', () => {
    const chain = (count: number) =>
      Object.fromEntries(
        Array.from({ length: count }, (_, index) => [
          `d${index + 1}`,
          {
            id: `d${index + 1}`,
            name: 'D',
            ...(index + 1 < count ? { extends: `d${index + 2}` } : { deep: 'yes' }),
          },
        ]),
      );
    const start = JSON.stringify({ id: 'd0', name: 'D', extends: 'd1' });
    expect(extendDocument(start, library(chain(8))).text).toContain('"deep": "yes"');
    const { text, findings } = extendDocument(start, library(chain(9)));
    expect(text).toBeNull();
    expect(findings.map(({ found }) => found)).toEqual([
      'more than 8 documents, each of which extends the next',
    ]);
  });

  it('is passed on as it is where it extends none', () => {
    const { text, findings } = extendDocument(DEMO_TARIFF, DEMO);
    expect([text, findings]).toEqual([DEMO_TARIFF, []]);
    expect(readExtendedTariff('{', DEMO).findings).toEqual(readTariff('{').findings);
    expect(readExtendedTariff(DEMO_TARIFF, DEMO).value?.document.id).toBe('tarumira-domestic');
  });
});

describe('what is found in a document that extends another', () => {
  const own = (more: string): string =>
    `{\n  "extends": "tarumira-domestic",\n  "id": "own",\n  "name": "Own"${more}\n}`;
  const told = (text: string, texts = DEMO) =>
    readExtendedTariff(text, texts).findings.map(
      ({ code, path, position, found }) =>
        `${String(position?.line)}:${String(position?.column)} ${code} ${path.join('.')} ${found}`,
    );

  it('stands at its own line where it is its own', () => {
    const change =
      ',\n  "changes": [\n    { "version": "TO-2024", "charge": "fixed", "set": { "rate": 75 } }\n  ]';
    expect(told(own(change))).toEqual([
      '6:65 document/number-not-text versions.1.charges.0.rate the number 75 without quotation marks',
    ]);
    expect(told(own(',\n  "currency": "XXZ"'))).toEqual([
      '5:15 tariff/unknown-currency currency the currency "XXZ"',
    ]);
  });

  it('stands at "extends", with the place there, where it is the other one\'s', () => {
    const base = library({ 'tarumira-domestic': DEMO_TARIFF.replace('"divisor": "30"', '"divisor": 30') });
    expect(told(own(''), base)).toEqual([
      '2:14 tariff/extends-wrong extends in the document "tarumira-domestic", line 37, column 18: ' +
        'the number 30 without quotation marks',
    ]);
  });

  it('is all of it, in the order of the file', () => {
    const change =
      ',\n  "changes": [\n    { "version": "TO-2025", "set": {} },\n    { "version": "TO-2024", "remove": "fuell" }\n  ]';
    expect(told(own(change)).map((one) => one.slice(0, 4))).toEqual(['6:18', '7:39']);
  });

  it('is one finding where a document is read without the one it extends', () => {
    expect(readTariff(own('')).findings.map(({ code }) => code)).toEqual(['document/extends-another']);
  });

  it.each(['__proto__', 'constructor', 'prototype'])('is the key %s, here and there', (key) => {
    const bad = own(`,\n  "sources": { "${key}": { "polluted": "yes" } }`);
    expect(told(bad)[0]).toMatch(/^5:\d+ document\/forbidden-key /);
    const base = library({ 'tarumira-domestic': bad.replace('"own"', '"tarumira-domestic"') });
    expect(told(own(''), base)[0]).toMatch(/^2:14 tariff\/extends-wrong .*which means something to programs/);
    expect({}).not.toHaveProperty('polluted');
  });
});

it('tells which document a text extends', () => {
  expect(extendedId('{"extends":"a-1"}')).toBe('a-1');
  expect(['{"extends":"../a"}', '{"extends":1}', '{}', '[', '["extends"]'].map(extendedId)).toEqual([
    null,
    null,
    null,
    null,
    null,
  ]);
});
