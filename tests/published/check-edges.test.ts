import { describe, expect, it } from 'vitest';
import {
  figureLabel,
  quotientOf,
  readPrintedBill,
  readTariff,
  reportBills,
  parseDay,
  type CheckInput,
  type DayNumber,
  type PrintedBillDocument,
} from '@unitbook/engine';
import tariffText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { checkBase, JUNE, MAY, textOf, type BaseTerms } from './check-base-month.ts';

// The base month of the project reference "causes", 2.1 (2026): May 612.912, so 613 with 99 billed; June 360.46, so 360.
const MAY_RIGHT: PrintedBillDocument = {
  ...MAY,
  units: { billed: '99' },
  lines: [{ charge: 'energy', amount: '385.20' }],
  payable: '613',
};

const check = (bills: readonly PrintedBillDocument[], terms: BaseTerms = {}) => checkBase(bills, terms).bills;

describe('arrears', () => {
  const follow = (paid: string, june: Partial<PrintedBillDocument>) =>
    check([
      { ...MAY_RIGHT, paid: { on: '2025-06-12', amount: paid } },
      { ...JUNE, units: { billed: '53' }, ...june },
    ])[1];

  it.each([
    // 613 − 113 = 500 are left; 360.46 + 500 = 860.46.
    ['113', '500', '860'],
    // Nothing was paid: 360.46 + 613 = 973.46.
    ['0', '613', '973'],
  ])('are no mistake where so much was left unpaid: %s paid, %s asked for', (paid, arrears, payable) => {
    expect(follow(paid, { arrears, payable })?.verdict).toMatch(/^right/);
  });

  it('are wrong by what they ask for too much', () => {
    const june = follow('113', { arrears: '600', payable: '960' });
    expect([june?.verdict, textOf(june?.difference)]).toEqual(['wrong', '100']);
  });

  it('speak for what was paid being asked for again only where all was paid', () => {
    const signs = (paid: string) =>
      follow(paid, { arrears: '613', payable: '973' })?.explanations.flatMap(({ attempt }) =>
        attempt.signs.map(({ speaks }) => speaks),
      );
    expect(signs('613')).toEqual(['for']);
    expect(signs('600')).toEqual(['against']);
  });
});

describe('a payment', () => {
  const codes = (amount: string) =>
    readPrintedBill({ ...MAY, paid: { on: '2025-06-12', amount } }, []).findings.map(({ code }) => code);

  it('has as many digits as any amount, and is not below 0', () => {
    expect(codes('0')).toEqual([]);
    expect(codes('546.00000000000000000000')).toEqual(['check/number-too-fine']);
    expect(codes('546000000000000000000')).toEqual(['check/number-too-fine']);
    expect(codes('-0.01')).toEqual(['check/paid-below-zero']);
  });
});

it('lines of one charge whose sum cannot be held are told of', () => {
  const lines = ['1.00000001', '999999999999'].map((amount) => ({ charge: 'fuel', amount }));
  const { findings } = readPrintedBill({ ...MAY, lines }, []);
  expect(findings.map(({ code, path }) => [code, path])).toEqual([
    ['check/number-too-fine', ['lines', 1, 'amount']],
  ]);
});

describe('a tolerance', () => {
  const wrong = (tolerance: string, bill: Partial<PrintedBillDocument>) => {
    const { bills } = checkBase([{ ...MAY, ...bill }], { options: { tolerance: quotientOf(tolerance) } });
    return bills[0]?.compared.filter(({ agrees }) => !agrees).map(({ name }) => name);
  };

  it('is of money, and of nothing that was counted', () => {
    const bill = { days: '28', load: '6', units: { import: '413', billed: '98' }, payable: '608' };
    expect(wrong('5', bill)).toEqual(['days', 'load', 'units.import', 'units.billed']);
    expect(wrong('4.99', bill)).toContain('payable');
  });
});

describe('what is to be paid, where it agrees', () => {
  const input = (bill: Partial<PrintedBillDocument>, tolerance: string) => {
    const checked = checkBase([{ ...MAY_RIGHT, ...bill }], { options: { tolerance: quotientOf(tolerance) } });
    const account = { document: { id: 'A', meters: { grid: { serial: 'PB' } } } } as CheckInput['account'];
    const tariff = readTariff(tariffText).value;
    if (tariff === null) throw new Error('the example cannot be read');
    const on = parseDay('2025-08-01') as DayNumber;
    return reportBills({ account, tariff, checked, on, dispute: null, effects: [null] }).findings[0];
  };

  it('makes no claim of money for a line that is wrong', () => {
    const finding = input({ lines: [{ charge: 'energy', amount: '405.20' }], payable: '614' }, '1');
    expect([textOf(finding?.difference), finding?.favour]).toEqual(['0', 'none']);
    expect(finding?.refund === null ? '0' : textOf(finding?.refund.withdraw)).toBe('0');
    expect(finding?.recommendations.map(({ id }) => id)).not.toContain('pay-back');
  });
});

describe('the factor on the bill', () => {
  it('is that of the grid meter, and multiplies nothing that the plant made', () => {
    // Readings of the generation meter 428 apart; at a factor of 20 they would make 8,560 in 30 days.
    const [may] = check([
      {
        ...MAY,
        factor: '20',
        readings: { generation: { previous: '15225', present: '15805' } },
        units: { generation: '580' },
      },
    ]);
    expect(may?.findings.map(({ code }) => code)).toEqual([]);
  });
});

describe('a line of another year', () => {
  it('is one that the tariff does not have now', () => {
    const document = JSON.parse(tariffText) as { versions: { charges: object[] }[] };
    const [old] = document.versions;
    old?.charges.push({ ...old.charges[0], id: 'rent', label: 'Meter rent' });
    const bill = { ...MAY_RIGHT, lines: [...(MAY_RIGHT.lines ?? []), { charge: 'rent', amount: '15.00' }] };
    const [may] = check([{ ...bill, payable: '628' }], { tariff: JSON.stringify(document) });
    expect(may?.findings.map(({ code }) => code)).toContain('check/unknown-line');
    expect(may?.explanations.map(({ attempt }) => attempt.steps.map(({ cause }) => cause.id))).toEqual([
      ['charge-not-in-tariff'],
    ]);
  });
});

describe('names of figures', () => {
  const documentOf = (text: string) => {
    const { value } = readTariff(text);
    if (value === null) throw new Error('the example cannot be read');
    return value.document;
  };

  it('may have dots of their own', () => {
    const tariff = documentOf(tariffText);
    expect(figureLabel('line.Fuel adj. charge', tariff)).toBe('Fuel adj. charge');
    expect(figureLabel('line.energy.old', tariff)).toBe('energy.old');
    expect(figureLabel('reading.import.present', tariff)).toBe('Import register, now');
  });
});
