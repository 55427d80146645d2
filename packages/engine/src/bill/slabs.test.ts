import { describe, expect, it } from 'vitest';
import { lineOf, tariffOf } from '../../../../tests/support/make.ts';
import type { Charge } from '../tariff/index.ts';

const SLABS = [
  { upTo: '50', rate: '3.00' },
  { upTo: '150', rate: '4.80' },
  { upTo: '300', rate: '6.50' },
  { rate: '8.00' },
];

const charge = { id: 'energy', label: 'Energy charge', clause: 'T 4.2', on: 'billed' } as const;

describe('telescopic slabs', () => {
  const tariff = tariffOf([{ ...charge, kind: 'slabs', method: 'telescopic', slabs: SLABS }]);

  it.each([
    ['0', '0'],
    ['1', '3'],
    ['50', '150'],
    ['50.001', '150'], // 150.0048
    ['50.003', '150.01'], // 150.0144
    ['51', '154.8'],
    ['99', '385.2'],
    ['150', '630'],
    ['151', '636.5'],
    ['300', '1605'],
    ['301', '1613'],
    ['412', '2501'],
  ])('charge %s units part by part: %s', (billed, amount) => {
    expect(lineOf(tariff, { billed })).toBe(amount);
  });
});

describe('slabs that charge the whole at the rate reached', () => {
  const tariff = tariffOf([{ ...charge, kind: 'slabs', method: 'whole', slabs: SLABS }]);

  it.each([
    ['0', '0'],
    ['50', '150'],
    ['50.001', '240'], // 50.001 × 4.80 = 240.0048
    ['51', '244.8'],
    ['99', '475.2'],
    ['150', '720'],
    ['151', '981.5'],
    ['300', '1950'],
    ['301', '2408'],
  ])('charge %s units: %s', (billed, amount) => {
    expect(lineOf(tariff, { billed })).toBe(amount);
  });

  it('can be chosen by another quantity than the one charged', () => {
    const byImport = tariffOf([
      { ...charge, kind: 'slabs', method: 'whole', slabs: SLABS, chosenBy: 'import' },
    ]);
    expect(lineOf(byImport, { billed: '99', import: '300' })).toBe('643.5'); // 99 × 6.50
    expect(lineOf(byImport, { billed: '99', import: '301' })).toBe('792'); // 99 × 8.00
  });
});

describe('tables of slabs', () => {
  const tables: Charge = {
    ...charge,
    kind: 'slab-tables',
    tables: [
      { upTo: '200', slabs: [{ upTo: '50', rate: '3.00' }, { rate: '4.00' }] },
      { slabs: [{ upTo: '100', rate: '5.00' }, { rate: '6.00' }] },
    ],
  };

  it.each([
    ['0', '0'],
    ['50', '150'],
    ['51', '154'],
    ['200', '750'],
    ['201', '1106'], // 100 × 5 + 101 × 6
    ['200.001', '1100.01'], // 500 + 100.001 × 6 = 1100.006
  ])('charge %s units by the table it falls into: %s', (billed, amount) => {
    expect(lineOf(tariffOf([tables]), { billed })).toBe(amount);
  });

  it('can be chosen by another quantity than the one charged', () => {
    const byImport = tariffOf([{ ...tables, chosenBy: 'import' }]);
    expect(lineOf(byImport, { billed: '120', import: '200' })).toBe('430'); // 150 + 70 × 4
    expect(lineOf(byImport, { billed: '120', import: '201' })).toBe('620'); // 500 + 20 × 6
  });
});

describe('a rate per unit', () => {
  it('charges every unit', () => {
    const tariff = tariffOf([{ ...charge, kind: 'per-unit', rate: '0.40' }]);
    expect(lineOf(tariff, { billed: '0' })).toBe('0');
    expect(lineOf(tariff, { billed: '99' })).toBe('39.6');
  });

  it.each([
    ['0', '0'],
    ['24', '-36'],
    ['50', '-75'],
    ['51', '-75'],
    ['5000', '-75'],
  ])('gives a subsidy on the first 50 of %s units: %s', (billed, amount) => {
    const tariff = tariffOf([{ ...charge, kind: 'per-unit', rate: '-1.50', firstUnits: '50' }]);
    expect(lineOf(tariff, { billed })).toBe(amount);
  });

  it.each(['import', 'export', 'generation', 'self-consumption', 'total-use'] as const)(
    'can be charged on %s',
    (on) => {
      const tariff = tariffOf([{ ...charge, kind: 'per-unit', on, rate: '0.40' }]);
      expect(lineOf(tariff, { billed: '99', [on]: '412' })).toBe('164.8');
    },
  );
});
