import { describe, expect, it } from 'vitest';
import { THIRTY_DAYS } from '../../../../tests/support/make.ts';
import { netMoves, routesOf, type Netting } from './netting.ts';
import type { Operand, SettleContext } from './settle-context.ts';

const netting = (parts: Partial<Netting> = {}): Netting => ({
  is: 'netting',
  id: 'net',
  label: 'Net',
  clause: 'T 1',
  supply: ['export'],
  demand: ['import'],
  routes: 'any',
  ...parts,
});

/** What was set off and what was used on each route, for whole units. */
function moved(one: Netting, units: readonly number[]): readonly (readonly [setOff: number, used: number])[] {
  const operands = units.map((_, at): Operand => ({ at, whole: 0, scale: 1, text: '' }));
  const context: SettleContext = {
    values: Float64Array.from(units),
    given: [],
    period: THIRTY_DAYS,
    past: [],
    account: { since: null, settlementDay: null },
  };
  return netMoves(one, routesOf(one), { operands, context }).map(({ setOff, used }) => [setOff, used]);
}

const WHOLE = { step: '1', mode: 'down' } as const;
const worth = (text: string, rounding: Netting['rounding'] = { step: '0.001', mode: 'half-up' }) =>
  netting({ routes: [{ from: 'export', to: 'import', worth: text }], rounding });

describe('units set off', () => {
  it.each([
    ['less than wanted', 4, 5, 4],
    ['as much', 5, 5, 5],
    ['more', 6, 5, 5],
    ['none', 0, 5, 0],
    ['and none wanted', 6, 0, 0],
  ])('are what is there and wanted: %s', (_, given, taken, setOff) => {
    expect(moved(netting(), [given, taken])).toEqual([[setOff, setOff]]);
  });

  it('come from the supply in its order, and go to the demand in its order', () => {
    const one = netting({ supply: ['bank', 'export'], demand: ['peak', 'off'] });
    // 10 of the bank and 2 of the export to the peak; 3 of the export off it.
    expect(moved(one, [10, 5, 12, 4])).toEqual([
      [10, 10],
      [2, 2],
      [0, 0],
      [3, 3],
    ]);
  });

  it('are limited in all', () => {
    const one = netting({ demand: ['peak', 'off'], most: 'cap' });
    expect(moved(one, [20, 5, 9, 7])).toEqual([
      [5, 5],
      [2, 2],
    ]);
    expect(moved(one, [20, 5, 9, 0])).toEqual([
      [0, 0],
      [0, 0],
    ]);
    // A limit that falls below 0 allows nothing.
    expect(moved(one, [20, 5, 9, -3])).toEqual([
      [0, 0],
      [0, 0],
    ]);
  });

  it('are refused where there is less than nothing', () => {
    expect(() => moved(netting(), [-1, 5])).toThrow('settlement/below-nothing');
    expect(() => moved(netting(), [1, -5])).toThrow('settlement/below-nothing');
  });
});

describe('routes', () => {
  const blocks = { supply: ['export@a', 'export@b', 'bank'], demand: ['import@a', 'import@b'] };
  const pairs = (routes: Netting['routes']) =>
    routesOf(netting({ ...blocks, routes })).map(({ from, to }) => `${String(from)}${String(to)}`);

  it('lead inside a block, there first, or anywhere', () => {
    expect(pairs('same-block')).toEqual(['00', '11']);
    expect(pairs('same-block-first')).toEqual(['00', '11', '10', '20', '01', '21']);
    expect(pairs('any')).toEqual(['00', '10', '20', '01', '11', '21']);
    expect(pairs([{ from: 'bank', to: 'import@b' }])).toEqual(['21']);
  });
});

describe('units that are worth more or less than one', () => {
  it('are used up where all of their worth is set off', () => {
    expect(moved(worth('80'), [10_000, 9_000])).toEqual([[8_000, 10_000]]);
    expect(moved(worth('150'), [10_000, 20_000])).toEqual([[15_000, 10_000]]);
  });

  it('are used as far as their worth is wanted', () => {
    // 4 at 80 % take 5; 4 at 150 % take 2.667.
    expect(moved(worth('80'), [10_000, 4_000])).toEqual([[4_000, 5_000]]);
    expect(moved(worth('150'), [10_000, 4_000])).toEqual([[4_000, 2_667]]);
  });

  it('are rounded as the rule says', () => {
    // 80 % of 7.9 are 6.32: 6 whole units, which take 7.5, so 8 whole units, of the 7.9 there are. 3 take 3.75, so 4.
    expect(moved(worth('80', WHOLE), [7_900, 9_000])).toEqual([[6_000, 7_900]]);
    expect(moved(worth('80', WHOLE), [7_900, 3_000])).toEqual([[3_000, 4_000]]);
  });

  it('stay where they are too few to set off anything', () => {
    // 80 % of 0.9 are 0.72, which is no whole unit.
    expect(moved(worth('80', WHOLE), [900, 5_000])).toEqual([[0, 0]]);
    expect(moved(worth('80', WHOLE), [900, 0])).toEqual([[0, 0]]);
  });

  it('are never used beyond what there is', () => {
    // 66.67 % of 0.003 are 0.002 after rounding, which would take 0.003 again; of 0.002 they are 0.001.
    expect(moved(worth('66.67'), [3, 9])).toEqual([[2, 3]]);
    expect(moved(worth('66.67'), [2, 9])).toEqual([[1, 2]]);
    expect(moved(worth('50', { step: '0.001', mode: 'up' }), [1, 9])).toEqual([[1, 1]]);
  });
});
