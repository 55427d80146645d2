import { describe, expect, it } from 'vitest';
import { changed, DEMO_TARIFF, demoTariff } from '../../../../tests/support/demo.ts';
import { periodOf, THIRTY_DAYS } from '../../../../tests/support/make.ts';
import { dayText } from '../quantity/index.ts';
import { inForceDuring, isOpenEnded, readTariff } from './index.ts';

/** The codes that are found once some places of the demo tariff are changed. */
function found(...changes: readonly (readonly [from: string, to: string])[]) {
  const text = changes.reduce((before, [from, to]) => changed(before, from, to), DEMO_TARIFF);
  const { value, findings } = readTariff(text);
  expect(value === null).toBe(findings.length > 0);
  return findings.map(({ code, position }) => `${String(position?.line)} ${code}`);
}

const THROUGH = '"through": "2024-03-31"';

describe('a tariff', () => {
  it('is read with its dated parts in order of time', () => {
    const { versions, settlements } = demoTariff();
    expect(versions.map(({ item, period }) => [item.name, dayText(period.from)])).toEqual([
      ['TO-2023', '2023-04-01'],
      ['TO-2024', '2024-04-01'],
    ]);
    expect(dayText((versions[0] as (typeof versions)[number]).period.to)).toBe('2024-04-01');
    expect(versions.map(({ period }) => isOpenEnded(period))).toEqual([false, true]);
    expect(settlements.map(({ period }) => isOpenEnded(period))).toEqual([true]);
  });

  it('may list its versions in any order', () => {
    const document = JSON.parse(DEMO_TARIFF) as { versions: unknown[] };
    document.versions.reverse();
    const { value, findings } = readTariff(JSON.stringify(document));
    expect(findings).toEqual([]);
    expect(value?.versions.map(({ item }) => item.name)).toEqual(['TO-2023', 'TO-2024']);
  });

  it('is in force on the first and on the last day of a version', () => {
    const { versions } = demoTariff();
    const names = (from: string, to: string) =>
      inForceDuring(versions, periodOf(from, to)).map(({ item }) => item.name);
    expect(names('2024-03-31', '2024-04-01')).toEqual(['TO-2023']);
    expect(names('2024-04-01', '2024-04-02')).toEqual(['TO-2024']);
    expect(names('2024-03-31', '2024-04-02')).toEqual(['TO-2023', 'TO-2024']);
    expect(names('2023-03-31', '2023-04-01')).toEqual([]);
    expect(inForceDuring(versions, THIRTY_DAYS)).toHaveLength(1);
  });

  it('is refused with everything that is wrong, in the order of the file', () => {
    expect(
      found(
        ['"currency": "INR"', '"currency": "INX"'],
        ['"divisor": "30"', '"divisor": 30'],
        [THROUGH, '"through": "2024-03-30"'],
        ['"upTo": "150", "rate": "4.80"', '"upTo": "40", "rate": "4.80"'],
        ['"TO-2024 cl. 5.1"', '"TO-2025 cl. 5.1"'],
        ['"TO-2024 cl. 5.2",', '"TO-2024 cl. 5.2",\n          "note": "x",'],
      ),
    ).toEqual([
      '8 tariff/unknown-currency',
      '37 document/number-not-text',
      '119 tariff/gap',
      '140 tariff/slabs-not-ascending',
      '160 tariff/clause-without-source',
      '169 document/unknown-key',
    ]);
  });

  it('is refused with what can be said of its meaning where its form is wrong, too', () => {
    expect(found(['"divisor": "30"', '"divisor": 30'], ['"currency": "INR"', '"currency": "INX"'])).toEqual([
      '8 tariff/unknown-currency',
      '37 document/number-not-text',
    ]);
  });

  it.each(['', '[]', '5', 'null', '"tariff"', '{', '{}'])('is never made of %s', (text) => {
    const { value, findings } = readTariff(text);
    expect(value).toBeNull();
    expect(findings.length > 0).toBe(true);
    for (const { position } of findings) expect(position).toBeDefined();
  });
});

describe('limits', () => {
  it('may ascend by the smallest step, whatever zeros they are written with', () => {
    expect(found(['"upTo": "150", "rate": "4.80"', '"upTo": "50.001", "rate": "4.80"'])).toEqual([]);
    expect(found(['"upTo": "150", "rate": "4.80"', '"upTo": "150.0000", "rate": "4.80"'])).toEqual([]);
  });

  it('are refused on the limit before and one step below it', () => {
    expect(found(['"upTo": "300", "rate": "6.50"', '"upTo": "150", "rate": "6.50"'])).toEqual([
      '141 tariff/slabs-not-ascending',
    ]);
    expect(found(['"upTo": "300", "rate": "6.50"', '"upTo": "149.999", "rate": "6.50"'])).toEqual([
      '141 tariff/slabs-not-ascending',
    ]);
  });

  it.each<[string, readonly [string, string]]>([
    ['a limit', ['"upTo": "300", "rate": "6.50"', '"upTo": "99999999999999", "rate": "6.50"']],
    ['a rate', ['"rate": "60.00"', '"rate": "99999999999999999999"']],
    ['a divisor', ['"divisor": "30"', '"divisor": "99999999999999999999"']],
    ['a span of days', ['"unscaledThrough": "33"', '"unscaledThrough": "99999999999999999999"']],
    ['a step', ['"total": { "step": "1"', '"total": { "step": "99999999999999999999"']],
    [
      'the first units',
      [
        '"clause": "TO-2024 cl. 5.1"',
        '"clause": "TO-2024 cl. 5.1",\n          "firstUnits": "99999999999999999999", "scaledBy": "month"',
      ],
    ],
    ['the rate of surplus', ['"rate": "2.60"', '"rate": "99999999999999999999"']],
  ])('are refused, not thrown at anybody, where %s is too large to count', (_, change) => {
    expect(found(change)).toHaveLength(1);
  });
});

describe('day rules and caps', () => {
  const limits = (step: string): [string, string] => [
    '"unscaledThrough": "33"',
    `"unscaledThrough": "33",\n      "limits": { "step": "${step}", "mode": "half-up" }`,
  ];
  const cap = (percent: string): [string, string] => [
    '"carry": {',
    `"cap": { "clause": "NMR-2021 r. 7.9", "percent": "${percent}", "of": "import", "excess": "carried" },\n      "carry": {`,
  ];

  it('round limits to steps of a watt-hour at the finest', () => {
    expect(found(limits('0.001'))).toEqual([]);
    expect(found(limits('0.0005'))).toEqual(['40 tariff/finer-than-grid']);
  });

  it('have a span that does not end before it begins', () => {
    expect(found(['"unscaledFrom": "27"', '"unscaledFrom": "33"'])).toEqual([]);
    expect(found(['"unscaledFrom": "27"', '"unscaledFrom": "34"'])).toHaveLength(1);
  });

  it('have a span of whole days that can be counted', () => {
    expect(found(['"unscaledFrom": "27"', '"unscaledFrom": "27.5"'])).toEqual(['38 tariff/finer-than-grid']);
    expect(found(['"unscaledThrough": "33"', '"unscaledThrough": "33.0"'])).toEqual([]);
    expect(found(['"unscaledFrom": "27"', `"unscaledFrom": "${'9'.repeat(30)}"`])).toHaveLength(1);
  });

  it('have no share below 0', () => {
    expect(found(cap('90'))).toEqual([]);
    expect(found(cap('-90'))).toHaveLength(1);
  });

  it('have no share finer than a rate can be', () => {
    expect(found(cap('90.123456789'))).toHaveLength(1);
  });
});

describe('gaps and overlaps', () => {
  const between = (change: readonly [string, string]) => {
    const { findings } = readTariff(changed(DEMO_TARIFF, change[0], change[1]));
    return findings.map(({ code, values }) => [code, values['from'], values['through']]);
  };

  it('name their first and last day', () => {
    expect(between([THROUGH, '"through": "2024-03-30"'])).toEqual([
      ['tariff/gap', '2024-03-31', '2024-03-31'],
    ]);
    expect(between([THROUGH, '"through": "2024-02-28"'])).toEqual([
      ['tariff/gap', '2024-02-29', '2024-03-31'],
    ]);
    expect(between([THROUGH, '"through": "2024-04-01"'])).toEqual([
      ['tariff/overlap', '2024-04-01', '2024-04-01'],
    ]);
  });

  it('do not name the end of time where both versions are still in force', () => {
    const { findings } = readTariff(changed(DEMO_TARIFF, `${THROUGH},\n      `, ''));
    expect(findings.map(({ code }) => code)).toEqual(['tariff/overlap']);
    expect(findings.map(({ found: words }) => words).join()).toMatch(/from 2024-04-01/);
    expect(findings.map(({ found: words }) => words).join()).not.toMatch(/9999/);
  });

  it('are found between settlement rules, too', () => {
    const document = JSON.parse(DEMO_TARIFF) as { settlements: Record<string, unknown>[] };
    const [rule] = document.settlements;
    document.settlements = [
      { ...rule, through: '2024-12-31' },
      { ...rule, from: '2025-02-01' },
    ];
    const { findings } = readTariff(JSON.stringify(document));
    expect(findings.map(({ code, found: words, remedy }) => [code, words, remedy])).toEqual([
      [
        'tariff/gap',
        'no settlement rule in force from 2025-01-01 through 2025-01-31',
        'Correct the dates of the settlement from 2021-04-01 or the settlement from 2025-02-01, or add what was in force between.',
      ],
    ]);
  });
});
