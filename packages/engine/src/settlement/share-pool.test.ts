import { describe, expect, it } from 'vitest';
import { figureOf, valueOf } from '../../../../tests/support/make.ts';
import { unexplained } from '../../../../tests/support/recompute.ts';
import { givenFigure, type Figure } from '../quantity/index.ts';
import type { SharingRule } from '../tariff/index.ts';
import type { PoolMember } from './check-members.ts';
import { sharePool, type SharedPool } from './share-pool.ts';

const common = { clause: 'T 9', of: 'export', decimals: '0', unused: 'stays-with-member' } as const;
const EQUAL: SharingRule = { ...common, by: 'equal', remainder: 'largest-remainder' };
const PERCENTAGE: SharingRule = { ...common, by: 'percentage', remainder: 'largest-remainder' };
const CAPACITY: SharingRule = { ...common, by: 'capacity', remainder: 'largest-remainder' };
const PRIORITY: SharingRule = { ...common, by: 'priority', remainder: 'kept-in-pool' };

const PATH = ['members'];
const PLACES = ['largest-remainder', 'host', 'first-named', 'kept-in-pool'] as const;

function share(rule: SharingRule, pool: Figure | number, members: readonly PoolMember[]): SharedPool {
  const { value, findings } = sharePool(rule, pool, members, PATH);
  if (value === null) throw new Error(JSON.stringify(findings, null, 2));
  return value;
}

/** The shares in order, then what stays in the pool, as exact text. */
function units(rule: SharingRule, pool: Figure | number, members: readonly PoolMember[]): readonly string[] {
  const { shares, keptInPool } = share(rule, pool, members);
  return [...shares.map(({ figure }) => figure), keptInPool].map(valueOf);
}

const needs = (...all: readonly number[]): readonly PoolMember[] =>
  all.map((need, index) => ({ id: 'ABCDE'.charAt(index), need }));

describe('published shares', () => {
  const flats: readonly PoolMember[] = Array.from({ length: 80 }, (_, index) => ({
    id: `F${index + 1}`,
    isHost: index === 79,
  }));

  // "Community Solar for Housing Societies: how virtual net metering works", Vermson, n.d.: 100 kW make
  // 11,700 units a month for 80 equal flats, "~146" each; 11700 ÷ 80 = 146.25.
  it('give each of 80 flats 146.25 of 11,700 units where units have decimals', () => {
    const each = units({ ...EQUAL, decimals: '2' }, 11_700_000, flats);
    expect(each).toEqual([...flats.map(() => '146.25'), '0']);
  });

  // The same case in whole units: 80 × 146 = 11,680, so that 20 units are still to be allotted.
  it.each([
    ['largest-remainder', [...Array<string>(20).fill('147'), ...Array<string>(60).fill('146'), '0']],
    ['host', [...Array<string>(79).fill('146'), '166', '0']],
    ['first-named', ['166', ...Array<string>(79).fill('146'), '0']],
    ['kept-in-pool', [...Array<string>(80).fill('146'), '20']],
  ] as const)('allot the 20 units that whole credits of 146 leave: %s', (remainder, expected) => {
    expect(units({ ...EQUAL, remainder }, 11_700_000, flats)).toEqual(expected);
  });

  // Constructed, by hand: 10,001 units at 33.3, 33.3 and 33.4 % are 3330.333, 3330.333 and 3340.334.
  it.each([
    ['largest-remainder', ['3330', '3330', '3341', '0']],
    ['host', ['3330', '3331', '3340', '0']],
    ['first-named', ['3331', '3330', '3340', '0']],
    ['kept-in-pool', ['3330', '3330', '3340', '1']],
  ] as const)('place the 1 unit that 33.3, 33.3 and 33.4 % of 10,001 leave: %s', (remainder, expected) => {
    const members = [
      { id: 'A', percent: '33.3' },
      { id: 'B', percent: '33.3', isHost: true },
      { id: 'C', percent: '33.4' },
    ];
    expect(units({ ...PERCENTAGE, remainder }, 10_001_000, members)).toEqual(expected);
  });

  // "Export Meter Reading", definition in a supply contract, Law Insider, n.d.: where two private meters
  // share one settlement meter, the first gets M3 × M1 ÷ (M1 + M2). The readings are ours:
  // 380 × 300 ÷ 400 = 285 and 380 × 100 ÷ 400 = 95.
  it('split one settlement meter by the ratio of two private meters', () => {
    const meters = [
      { id: 'M1', capacity: '300' },
      { id: 'M2', capacity: '100' },
    ];
    expect(units({ ...CAPACITY, decimals: '3' }, 380_000, meters)).toEqual(['285', '95', '0']);
  });
});

describe('sharing by priority', () => {
  it.each([
    ['fills the first before the next', 100_000, [60_000, 30_000, 50_000], ['60', '30', '10', '0']],
    ['stops where the pool ends', 40_000, [60_000, 30_000], ['40', '0', '0']],
    ['keeps what no member needs', 100_000, [60_000, 30_000], ['60', '30', '10']],
    ['passes over a member without need', 50_000, [0, 30_000], ['0', '30', '20']],
    ['gives whole units only', 50_500, [20_700, 40_000], ['20', '30', '0.5']],
    ['gives nothing of an empty pool', 0, [10_000], ['0', '0']],
  ] as const)('%s', (_, pool, all, expected) => {
    expect(units(PRIORITY, pool, needs(...all))).toEqual(expected);
  });

  it.each([
    ['host', ['60', '45', '0.5']],
    ['first-named', ['75', '30', '0.5']],
  ] as const)('gives whole units that no member needs to the place stated: %s', (remainder, expected) => {
    const [first, second] = needs(60_000, 30_000);
    const members = [first, { ...second, isHost: true }] as readonly PoolMember[];
    expect(units({ ...PRIORITY, remainder }, 105_500, members)).toEqual(expected);
  });

  it('takes the order named, not the size of the need', () => {
    expect(units(PRIORITY, 10_000, needs(4000, 9000))).toEqual(['4', '6', '0']);
    expect(units(PRIORITY, 10_000, needs(9000, 4000))).toEqual(['9', '1', '0']);
  });
});

describe('units that a member does not need', () => {
  const members = [
    { id: 'A', percent: '50', need: 20_700 },
    { id: 'B', percent: '50', need: 90_000 },
  ];

  it('stay with it, or return to the pool, and are not shared a second time', () => {
    expect(units(PERCENTAGE, 100_000, members)).toEqual(['50', '50', '0']);
    expect(units({ ...PERCENTAGE, unused: 'returns-to-pool' }, 100_000, members)).toEqual(['20', '50', '30']);
  });

  it('return also where they were left over', () => {
    const rule: SharingRule = { ...PERCENTAGE, remainder: 'first-named', unused: 'returns-to-pool' };
    // 21.5 each: 21, and the unit left over to the first, who needs 20.7
    expect(units(rule, 43_000, members)).toEqual(['20', '21', '2']);
  });
});

describe('what is finer than a shared unit', () => {
  // 11.7 units over two: 5 each and one left over, and 0.7 that is no whole unit
  it.each([
    ['largest-remainder', ['6', '5', '0.7']],
    ['host', ['5', '6', '0.7']],
    ['first-named', ['6', '5', '0.7']],
    ['kept-in-pool', ['5', '5', '1.7']],
  ] as const)('stays in the pool: %s', (remainder, expected) => {
    expect(units({ ...EQUAL, remainder }, 11_700, [{ id: 'A' }, { id: 'B', isHost: true }])).toEqual(
      expected,
    );
  });

  it('counts for the exact share: 25 % and 75 % of 2.5 units', () => {
    const members = [
      { id: 'A', percent: '25' },
      { id: 'B', percent: '75' },
    ];
    // 0.625 and 1.875: the one unit left over is nearer to the 0.875
    expect(units(PERCENTAGE, 2500, members)).toEqual(['0', '2', '0.5']);
    expect(units({ ...PERCENTAGE, decimals: '3' }, 2500, members)).toEqual(['0.625', '1.875', '0']);
  });
});

describe('a share as a figure', () => {
  it('tells the percentage, what was cut down and what was added', () => {
    const members = [
      { id: 'A', percent: '33.3' },
      { id: 'B', percent: '66.7' },
    ];
    const { shares, keptInPool } = share(PERCENTAGE, figureOf('export', '10001'), members);
    // 3330.333 and 6670.667
    const [first, second] = shares.map(({ figure }) => figure);
    expect(first).toMatchObject({
      id: 'share',
      label: 'Share of A',
      operation: 'share',
      clause: 'T 9',
      inputs: [{ id: 'export' }],
      parameters: [{ name: 'percent', text: '33.3', unit: 'percent', clause: 'group' }],
      rounding: { step: '1', mode: 'down', clause: 'T 9' },
    });
    expect(second).toMatchObject({
      id: 'share',
      label: 'Share of B',
      operation: 'sum',
      inputs: [
        { id: 'share-before', operation: 'share', numerator: 6_670_000 },
        { id: 'remainder', label: 'Of the units left over, by largest remainder', numerator: 1000 },
      ],
    });
    expect(keptInPool).toMatchObject({ id: 'kept-in-pool', operation: 'difference', clause: 'T 9' });
  });

  const members: readonly PoolMember[] = [
    { id: 'A', percent: '12.5', capacity: '3.3', need: 7777, isHost: true },
    { id: 'B', percent: '47.25', capacity: '5', need: 2500 },
    { id: 'C', percent: '40.25', capacity: '1.7', need: 0 },
  ];

  it.each(
    (['percentage', 'capacity', 'equal', 'priority'] as const).flatMap((by) =>
      PLACES.flatMap((remainder) =>
        (['returns-to-pool', 'stays-with-member'] as const).map((unused) => [by, remainder, unused] as const),
      ),
    ),
  )('follows from what it shows: %s, %s, %s', (by, remainder, unused) => {
    const place = by === 'priority' && remainder === 'largest-remainder' ? 'kept-in-pool' : remainder;
    const rule = { clause: 'T 9', of: 'export', by, decimals: '1', remainder: place, unused } as SharingRule;
    const { shares, keptInPool } = share(rule, 33_333, members);
    const figures = [...shares.map(({ figure }) => figure), keptInPool];
    expect(figures.flatMap(unexplained)).toEqual([]);
    expect(figures.map(({ clause }) => clause)).toEqual(['T 9', 'T 9', 'T 9', 'T 9']);
  });

  it('does not grow with every member named before', () => {
    const size = (figure: Figure): number => figure.inputs.reduce((sum, input) => sum + size(input), 1);
    const many = Array.from({ length: 60 }, (_, index) => ({ id: `M${index}`, need: 1000 }));
    const { shares } = share(PRIORITY, 1_000_000, many);
    expect(size((shares.at(-1) as { figure: Figure }).figure)).toBe(5);
  });
});

describe('a pool', () => {
  const exact = (numerator: number, denominator: number): Figure =>
    givenFigure({ id: 'pool', label: 'Pool', unit: 'kWh', numerator, denominator, clause: '' });

  it('may be a figure on any denominator that comes to whole watt-hours', () => {
    expect(units(EQUAL, exact(21, 2), [{ id: 'A' }])).toEqual(['10', '0.5']);
  });

  it.each([
    ['below 0', -1, '-1 Wh'],
    ['of half a watt-hour', 0.5, '0.5 Wh'],
    ['below 0, as a figure', exact(-1, 1000), '-0.001 kWh'],
    ['of a third of a unit', exact(1, 3), '1/3 kWh'],
  ])('cannot be shared %s', (_, pool, found) => {
    expect(() => sharePool(EQUAL, pool, [{ id: 'A' }], PATH)).toThrow(
      new RangeError(`a pool is counted in whole watt-hours of 0 or more, found ${found}`),
    );
  });

  it.each([-1, 0.5, Number.NaN])('cannot be shared by a need of %s watt-hours', (need) => {
    expect(() => sharePool(PRIORITY, 1000, [{ id: 'A', need }], PATH)).toThrow(
      new RangeError(`a need is counted in whole watt-hours of 0 or more, found ${need} Wh`),
    );
  });

  it('of the largest size is shared to the watt-hour', () => {
    const members = [
      { id: 'A', percent: '33.33333333' },
      { id: 'B', percent: '66.66666667' },
    ];
    const { shares, keptInPool } = share({ ...PERCENTAGE, decimals: '3' }, 9_007_199_254_740_991, members);
    const all = [...shares.map(({ figure }) => figure), keptInPool].map(({ numerator }) => BigInt(numerator));
    expect(all.reduce((sum, one) => sum + one, 0n)).toBe(9_007_199_254_740_991n);
    expect(shares.flatMap(({ figure }) => unexplained(figure))).toEqual([]);
  });
});

describe('members that cannot share', () => {
  it('are all told at once, and nothing is shared', () => {
    const rule: SharingRule = { ...PERCENTAGE, remainder: 'host', unused: 'returns-to-pool' };
    const members = [
      { id: 'A', percent: '-5' },
      { id: 'A', need: 5 },
      { id: 'B', percent: '50', capacity: '0' },
    ];
    const { value, findings } = sharePool(rule, 1000, members, PATH);
    expect(value).toBeNull();
    expect(findings.map(({ code, path }) => [code.replace('settlement/share-', ''), path.join('.')])).toEqual(
      [
        ['percent-out-of-range', 'members.0.percent'],
        ['same-member', 'members.1'],
        ['capacity-not-above-zero', 'members.2.capacity'],
        ['need-unknown', 'members.0'],
        ['basis-missing', 'members.1.percent'],
        ['need-unknown', 'members.2'],
        ['no-host', 'members'],
      ],
    );
  });

  it.each(['-0.1', '100.1', '33.333333333', '1e2', '', '123456789012345678'])(
    'have no part of "%s" %',
    (percent) => {
      const { findings } = sharePool(PERCENTAGE, 1000, [{ id: 'A', percent }], PATH);
      expect(findings.map(({ code }) => code)).toEqual(['settlement/share-percent-out-of-range']);
    },
  );

  it.each(['0', '0.000', '-3', '3.3333', '1000000.001', '3 kW'])('have no capacity of "%s"', (capacity) => {
    const { findings } = sharePool(CAPACITY, 1000, [{ id: 'A', capacity }], PATH);
    expect(findings.map(({ code }) => code)).toEqual(['settlement/share-capacity-not-above-zero']);
  });

  it('may have 0 % of the pool, or the whole', () => {
    const members = [
      { id: 'A', percent: '0' },
      { id: 'B', percent: '100.00' },
    ];
    expect(units(PERCENTAGE, 7000, members)).toEqual(['0', '7', '0']);
  });

  it('need not come to 100 % where the rule does not look at percentages and not all have one', () => {
    expect(units(EQUAL, 4000, [{ id: 'A', percent: '7' }, { id: 'B' }])).toEqual(['2', '2', '0']);
  });
});
