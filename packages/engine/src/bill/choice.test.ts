import { describe, expect, it } from 'vitest';
import { billOf, periodOf, tariffOf, valueOf } from '../../../../tests/support/make.ts';
import { explainFigure, type Charge, type Notation } from '../index.ts';

const NOTATION: Notation = { number: (text) => text, money: (text) => text, moneyPlaces: 2 };

/** Two tables, for up to 500 units in 60 days and for more; 61 days make 500 × 61/60 = 1525/3 = 508.33. */
const TABLES: Charge = {
  id: 'energy',
  label: 'Energy',
  clause: 'T 7',
  kind: 'slab-tables',
  on: 'billed',
  scaledBy: 'two-months',
  tables: [
    { upTo: '500', slabs: [{ upTo: '100', rate: '2.00' }, { rate: '3.00' }] },
    { slabs: [{ upTo: '100', rate: '4.00' }, { rate: '5.00' }] },
  ],
};
const TARIFF = tariffOf([TABLES], {
  dayRules: { 'two-months': { rule: 'days-over', clause: 'T 8', divisor: '60' } },
});
const SIXTY_ONE = periodOf('2025-01-01', '2025-03-03');

function energy(billed: string) {
  const [line] = billOf(TARIFF, { billed, period: SIXTY_ONE }).lines;
  if (line === undefined) throw new Error('no line');
  return line.figure;
}

describe('rates that a total chose', () => {
  it('say which limit was reached, as stated and as scaled', () => {
    const { choice } = energy('508');
    expect(choice?.by.id).toBe('billed');
    expect([choice?.above, choice?.upTo?.text, choice?.upTo?.name]).toEqual([
      null,
      '1525/3',
      'up to (500 × 61/60)',
    ]);
    const above = energy('509').choice;
    expect([above?.above?.text, above?.above?.name, above?.upTo]).toEqual([
      '1525/3',
      'above (500 × 61/60)',
      null,
    ]);
  });

  it('are told in words, with the day factor and its clause behind each scaled part', () => {
    // 100 × 61/60 = 305/3 at 4.00 = 406.67 (about); 509 − 305/3 = 1222/3 at 5.00: together 2443.33.
    expect(valueOf(energy('509'))).toBe('2443.33');
    const told = explainFigure(energy('509'), NOTATION);
    expect(told.formula).toMatch(
      /; chosen by 509 units, above 1525\/3 \(about 508.33\) units \(500 × 61\/60\)$/,
    );
    const [first] = told.inputs;
    expect(first?.label).toBe('Energy, up to 101.67');
    const units = first?.inputs[0];
    expect(units?.formula).toBe(
      'the part of 509 units above 0 units, up to 305/3 (about 101.67) units (100 × 61/60)',
    );
    expect(units?.inputs.map(({ label, value, clause }) => [label, value, clause])).toEqual([
      ['billed', '509 units', ''],
      ['Day factor "two-months"', '61/60 (about 1.0167)', 'T 8'],
    ]);
  });

  it('are told of whole slabs, bands and steps alike', () => {
    const tariff = tariffOf([
      {
        id: 'whole',
        label: 'W',
        clause: 'T 7',
        kind: 'slabs',
        on: 'billed',
        method: 'whole',
        slabs: [{ upTo: '50', rate: '1' }, { rate: '2' }],
      },
      {
        id: 'step',
        label: 'S',
        clause: 'T 7',
        kind: 'fixed',
        chosenBy: 'import',
        steps: [{ upTo: '9', amount: '1' }, { amount: '2' }],
      },
      {
        id: 'rate',
        label: 'R',
        clause: 'T 7',
        kind: 'percentage',
        of: ['whole'],
        chosenBy: 'import',
        steps: [{ upTo: '9', percent: '1' }, { percent: '2' }],
      },
      { id: 'plain', label: 'P', clause: 'T 7', kind: 'per-unit', on: 'billed', rate: '1' },
    ]);
    const { lines } = billOf(tariff, { billed: '51', import: '9' });
    const choices = lines.map(({ figure: { choice } }) => [
      choice?.by.id,
      choice?.above?.text,
      choice?.upTo?.text,
    ]);
    expect(choices).toEqual([
      ['billed', '50', undefined],
      ['import', undefined, '9'],
      ['import', undefined, '9'],
      [undefined, undefined, undefined],
    ]);
  });
});
