import { describe, expect, it } from 'vitest';
import { energyOf, figureOf, periodOf, valueOf } from '../../../../tests/support/make.ts';
import type { EnergyPeriod, UnitsRule } from '../energy/index.ts';
import type { Figure } from '../quantity/index.ts';
import type { UnitNettingRule } from '../tariff/index.ts';
import { settlePeriod, type PassbookEntry } from './settle-period.ts';

const WHOLE_UNITS: UnitsRule = { clause: 'T 1', decimals: '0', rounding: 'down', roundedAt: 'reading' };

/** As in the demo tariff: carried as units, left over units of 31 March paid in the next bill. */
const YEARLY: UnitNettingRule = {
  from: '2020-01-01',
  scheme: 'unit-netting',
  clause: 'T 7.1',
  carry: { clause: 'T 7.2' },
  close: { clause: 'T 7.3', on: '03-31', surplus: 'paid', rate: '2.60', inBill: 'next' },
};

const PATH = ['readings', 1];
const MARCH = periodOf('2025-03-01', '2025-04-01');

function settle(energy: EnergyPeriod, opening = '0', rule: UnitNettingRule = YEARLY): PassbookEntry {
  const options = { rule, opening: figureOf('opening', opening), unitsRule: WHOLE_UNITS, path: PATH };
  const { value, findings } = settlePeriod(energy, options);
  expect(findings).toEqual([]);
  return value as PassbookEntry;
}

/** The columns of a passbook entry that units move to. */
function columns(entry: PassbookEntry) {
  const { setOff, creditUsed, billed, paid, lapsed, closing } = entry;
  const values = Object.entries({ setOff, creditUsed, billed, paid, lapsed, closing });
  return Object.fromEntries(values.map(([name, figure]) => [name, valueOf(figure)]));
}

describe('setting off units', () => {
  it('bills import less export less the credit brought forward', () => {
    expect(columns(settle(energyOf({ import: '412', export: '278' }), '35'))).toEqual({
      setOff: '313',
      creditUsed: '35',
      billed: '99',
      paid: '0',
      lapsed: '0',
      closing: '0',
    });
  });

  it.each([
    ['nothing at all', '0', '0', '0', { setOff: '0', creditUsed: '0', billed: '0', closing: '0' }],
    ['no export', '100', '0', '0', { setOff: '0', creditUsed: '0', billed: '100', closing: '0' }],
    ['no import', '0', '10', '5', { setOff: '0', creditUsed: '0', billed: '0', closing: '15' }],
    ['exactly equal', '100', '100', '0', { setOff: '100', creditUsed: '0', billed: '0', closing: '0' }],
    ['one unit short', '101', '100', '0', { setOff: '100', creditUsed: '0', billed: '1', closing: '0' }],
    ['one unit over', '100', '101', '0', { setOff: '100', creditUsed: '0', billed: '0', closing: '1' }],
    [
      'part of the credit',
      '100',
      '60',
      '50',
      { setOff: '100', creditUsed: '40', billed: '0', closing: '10' },
    ],
    ['exactly the credit', '100', '60', '40', { setOff: '100', creditUsed: '40', billed: '0', closing: '0' }],
    ['credit untouched', '60', '60', '40', { setOff: '60', creditUsed: '0', billed: '0', closing: '40' }],
    [
      'decimals',
      '10.5',
      '3.25',
      '1.001',
      { setOff: '4.251', creditUsed: '1.001', billed: '6.249', closing: '0' },
    ],
  ])('bills and carries what is right for %s', (_, taken, given, opening, expected) => {
    expect(columns(settle(energyOf({ import: taken, export: given }), opening))).toEqual({
      paid: '0',
      lapsed: '0',
      ...expected,
    });
  });

  it('tells by which rule each figure came about', () => {
    const entry = settle(energyOf({ import: '412', export: '278' }), '35');
    const clause = (figure: Figure): string => figure.clause;
    expect([entry.setOff, entry.creditUsed, entry.billed, entry.closing].map(clause)).toEqual([
      'T 7.1',
      'T 7.1',
      'T 7.1',
      'T 7.2',
    ]);
  });
});

describe('a cap on the set-off', () => {
  const capped = (excess: 'carried' | 'lapses', of: 'import' | 'generation' | 'total-use' = 'import') => ({
    ...YEARLY,
    cap: { clause: 'T 7.4', percent: '90', of, excess },
  });

  it('leaves 10 % of the import to be billed and carries the rest on', () => {
    const energy = energyOf({ import: '400', export: '420' });
    expect(columns(settle(energy, '0', capped('carried')))).toEqual({
      setOff: '360',
      creditUsed: '0',
      billed: '40',
      paid: '0',
      lapsed: '0',
      closing: '60',
    });
  });

  it('makes what it cut off lapse, and only that', () => {
    const energy = energyOf({ import: '400', export: '420' });
    expect(columns(settle(energy, '0', capped('lapses')))).toMatchObject({
      setOff: '360',
      billed: '40',
      lapsed: '40',
      closing: '20',
    });
  });

  it('cuts off nothing below it and exactly on it', () => {
    const below = settle(energyOf({ import: '400', export: '359' }), '0', capped('lapses'));
    const onIt = settle(energyOf({ import: '400', export: '360' }), '0', capped('lapses'));
    const past = settle(energyOf({ import: '400', export: '361' }), '0', capped('lapses'));
    expect([below, onIt, past].map((entry) => valueOf(entry.billed))).toEqual(['41', '40', '40']);
    expect([below, onIt, past].map((entry) => valueOf(entry.lapsed))).toEqual(['0', '0', '1']);
  });

  it('is rounded as units are counted: 90 % of 401 is 360', () => {
    const entry = settle(energyOf({ import: '401', export: '420' }), '0', capped('carried'));
    expect(valueOf(entry.billed)).toBe('41');
    expect(entry.setOff.inputs.at(-1)?.rounding).toEqual({
      step: '1',
      mode: 'down',
      clause: 'T 1',
      numerator: 401_000 * 90,
      denominator: 100_000,
    });
  });

  it('counts the credit brought forward, too', () => {
    const entry = settle(energyOf({ import: '400', export: '300' }), '100', capped('carried'));
    expect(columns(entry)).toMatchObject({ setOff: '360', creditUsed: '60', billed: '40', closing: '40' });
  });

  it('can be a share of the generation or of the total use', () => {
    const energy = energyOf({ import: '400', export: '420', generation: '300' });
    expect(valueOf(settle(energy, '0', capped('carried', 'generation')).setOff)).toBe('270');
    const used = energyOf({ import: '400', export: '420', generation: '430' });
    expect(valueOf(settle(used, '0', capped('carried', 'total-use')).setOff)).toBe('369');
  });

  it('on a use that is not known settles nothing, and says so where the reading stands', () => {
    const rule = capped('carried', 'total-use');
    const options = { rule, opening: figureOf('opening', '0'), unitsRule: WHOLE_UNITS, path: PATH };
    const { value, findings } = settlePeriod(energyOf({ import: '400', export: '420' }), options);
    expect(value).toBeNull();
    expect(findings.map(({ code, path, values }) => [code, path, values])).toEqual([
      ['settlement/quantity-unknown', PATH, { quantity: 'total-use' }],
    ]);
  });

  it('tells at the close of the year by which clause units lapse', () => {
    const rule: UnitNettingRule = {
      ...capped('carried'),
      close: { clause: 'T 7.3', on: '03-31', surplus: 'lapses' },
    };
    const entry = settle(energyOf({ import: '400', export: '420' }, MARCH), '0', rule);
    expect([valueOf(entry.lapsed), entry.lapsed.clause]).toEqual(['60', 'T 7.3']);
  });
});

describe('closing the bank', () => {
  it('pays for what is left over in the month that holds the day', () => {
    const entry = settle(energyOf({ import: '100', export: '740' }, MARCH));
    expect(entry.isClosed).toBe(true);
    expect(columns(entry)).toMatchObject({
      setOff: '100',
      billed: '0',
      paid: '640',
      lapsed: '0',
      closing: '0',
    });
    expect(entry.payment).toMatchObject({
      rate: '2.60',
      clause: 'T 7.3',
      label: 'Surplus units paid',
      inBill: 'next',
      units: { id: 'paid', numerator: 640_000, denominator: 1000 },
    });
  });

  it('pays for the credit brought forward, too', () => {
    const entry = settle(energyOf({ import: '100', export: '40' }, MARCH), '75');
    expect(columns(entry)).toMatchObject({ creditUsed: '60', paid: '15', closing: '0' });
  });

  it('pays nothing where nothing is left over', () => {
    const entry = settle(energyOf({ import: '100', export: '100' }, MARCH));
    expect([entry.isClosed, entry.payment, valueOf(entry.paid)]).toEqual([true, null, '0']);
  });

  it('carries on in every other month', () => {
    const entry = settle(energyOf({ import: '100', export: '740' }));
    expect([entry.isClosed, entry.payment, valueOf(entry.closing)]).toEqual([false, null, '640']);
  });

  it('lets units lapse where the rule says so', () => {
    const rule: UnitNettingRule = { ...YEARLY, close: { clause: 'T 7.3', on: '03-31', surplus: 'lapses' } };
    const entry = settle(energyOf({ import: '100', export: '740' }, MARCH), '0', rule);
    expect(columns(entry)).toMatchObject({ paid: '0', lapsed: '640', closing: '0' });
    expect([entry.payment, entry.lapsed.clause]).toEqual([null, 'T 7.3']);
  });

  it('closes with every period where nothing is carried: 240 given, 180 taken, 60 paid', () => {
    const close = {
      clause: 'T 7.3',
      on: 'every-period',
      surplus: 'paid',
      rate: '2.25',
      inBill: 'same',
    } as const;
    const rule: UnitNettingRule = { from: '2020-01-01', scheme: 'unit-netting', clause: 'T 7.1', close };
    const entry = settle(energyOf({ import: '180', export: '240' }), '0', rule);
    expect(columns(entry)).toMatchObject({ setOff: '180', billed: '0', paid: '60', closing: '0' });
    expect(entry.payment).toMatchObject({ rate: '2.25', inBill: 'same' });
  });
});
