import { parseDay, type DayNumber, type PrintedBillDocument } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import type { Surprise } from '@unitbook/engine';
import { checkBase, JUNE, MAY, textOf, type BaseTerms } from './check-base-month.ts';

// S1 to S11 of the project reference "causes", 2.6 (2026), with its base month (2.1) and the scenarios it names there
// (project reference "scenarios", 6.2, 2026): bills of an invented place. S8 and S10 are tested beside their source.

const dayOf = (text: string): DayNumber => {
  const day = parseDay(text);
  if (day === null) throw new Error(`${text} is no day`);
  return day;
};

const surprisesOf = (bills: readonly PrintedBillDocument[], terms: BaseTerms = {}) => {
  const { verdict, surprises } = checkBase(bills, terms).bills.at(-1) ?? {};
  return { verdict, surprises: surprises ?? [], ids: (surprises ?? []).map(({ id }) => id) };
};

const figuresOf = ({ figures }: Surprise): Readonly<Record<string, string>> =>
  Object.fromEntries(Object.entries(figures).map(([name, value]) => [name, textOf(value)]));

const RIGHT_MAY: PrintedBillDocument = {
  ...MAY,
  units: { import: '412', export: '278', generation: '580', billed: '99' },
  payable: '613',
};

describe('own use taken for missing export (S1)', () => {
  it('finds nothing lost', () => {
    const { verdict, surprises } = surprisesOf([RIGHT_MAY]);
    expect(verdict).toBe('right-but-surprising');
    expect(surprises.map(({ what }) => what)).toEqual([
      '580 made, 278 exported, 302 used at home: nothing lost',
    ]);
  });

  it('says nothing where the bill does not print both, or more went out than stayed', () => {
    const { verdict } = surprisesOf([{ ...MAY, units: { billed: '99' }, payable: '613' }]);
    expect(verdict).toBe('right');
    // 580 made, 310 exported, 270 at home; 412 − 310 − 35 = 67 billed: 240 + 150 + 81.60 + 26.80 + 13.90 − 75 = 437.30.
    const readings = [
      { date: '2025-05-01', import: '12480', export: '8310', generation: '15225' },
      { date: '2025-05-31', import: '12892', export: '8620', generation: '15805' },
    ];
    const units = { export: '310', generation: '580', billed: '67' };
    expect(surprisesOf([{ ...MAY, units, payable: '437' }], { readings })).toMatchObject({
      verdict: 'right',
      ids: [],
    });
  });
});

describe('an app (S2)', () => {
  const bare: PrintedBillDocument = { ...MAY, units: { billed: '99' }, payable: '613' };
  const generation = { numerator: 601, denominator: 1 };

  it('counts other days than the bill', () => {
    const period = { from: dayOf('2025-05-17'), to: dayOf('2025-06-17') };
    const { surprises } = surprisesOf([bare], { app: [{ period, generation }] });
    expect(surprises.map(({ what }) => what)).toEqual([
      'the app counts 601 from 2025-05-17 to 2025-06-16, and the meter 580 from 2025-05-01 to 2025-05-30: not the same days, so that neither says anything of the other',
    ]);
  });

  it('of other years says nothing', () => {
    const period = { from: dayOf('2024-05-01'), to: dayOf('2024-05-31') };
    expect(surprisesOf([bare], { app: [{ period, generation }] }).ids).toEqual([]);
  });
});

describe('charges that stay (S3)', () => {
  // 180 imported, 310 exported: nothing billed, the fixed charge of 4 × 60 stays. Reference "causes", C02.
  const readings = [
    { date: '2025-05-01', import: '1000', export: '1000', generation: '2000' },
    { date: '2025-05-31', import: '1180', export: '1310', generation: '2500' },
    { date: '2025-06-30', import: '1360', export: '1620', generation: '3000' },
  ];
  const zero = { units: { billed: '0' }, lines: [{ charge: 'fixed', amount: '240.00' }], payable: '240' };

  it('are told of with their clause', () => {
    const { verdict, surprises } = surprisesOf([{ ...MAY, ...zero }], { readings });
    expect(verdict).toBe('right-but-surprising');
    expect(surprises.map(({ what, clause }) => [what, clause])).toEqual([
      ['INR 240 with no unit billed: Fixed charge 240 stays whatever is billed', 'TO-2024 cl. 4.1'],
    ]);
  });

  it('surprise once', () => {
    const both = [
      { ...MAY, ...zero },
      { ...JUNE, ...zero },
    ];
    expect(surprisesOf(both, { readings })).toMatchObject({ verdict: 'right', ids: [] });
  });
});

describe('a July that costs more than the one before (S4, S5)', () => {
  // Scenario 6.2, July: 286 in, 236 out, 380 made and 344.00; then 476 in, 218 out, 352 made and 1,680.12.
  const account = { plantCapacity: '4', openingCredit: '0' };
  const readings = [
    { date: '2024-07-01', import: '1000', export: '1000', generation: '2000' },
    { date: '2024-08-01', import: '1286', export: '1236', generation: '2380' },
    { date: '2025-07-01', import: '5286', export: '4236', generation: '6880' },
    { date: '2025-08-01', import: '5762', export: '4454', generation: '7232' },
  ];
  const july: PrintedBillDocument = {
    from: '2025-07-01',
    to: '2025-08-01',
    units: { billed: '258' },
    payable: '1680',
  };

  it('is put down to use and to generation, in money', () => {
    const { verdict, surprises } = surprisesOf([july], { account, readings });
    expect(verdict).toBe('right-but-surprising');
    expect(surprises.map(({ what }) => what)).toEqual([
      '610 used, and 430 in the same month a year before: 180 more, which takes INR 344 to 1476',
      '352 made, and 380 in the same month a year before: 28 less, which takes INR 1476 to 1680.12',
    ]);
    expect(surprises.map((one) => figuresOf(one)['effect'])).toEqual(['1132', '204.12']);
  });

  it('is not looked into where the month costs less', () => {
    const cheaper = readings.map((one) =>
      one.date === '2025-08-01' ? { ...one, import: '5486', export: '4416' } : one,
    );
    // 200 − 180 = 20 billed: 240 + 60 + 8 + 3.60 − 30 = 281.60.
    const bill = { ...july, units: { billed: '20' }, payable: '282' };
    expect(surprisesOf([bill], { account, readings: cheaper })).toMatchObject({ verdict: 'right', ids: [] });
  });
});

describe('a bank used up (S6)', () => {
  // 180 in, 310 out, and 20 brought forward: 150 carried. Then 300 in, 60 out: 90 billed.
  const account = { openingCredit: '20' };
  const readings = [
    { date: '2025-05-01', import: '1000', export: '1000', generation: '2000' },
    { date: '2025-05-31', import: '1180', export: '1310', generation: '2500' },
    { date: '2025-06-30', import: '1480', export: '1370', generation: '2700' },
  ];
  // 240 + 150 + 40 × 4.80 + 36 + 6 % of 342 − 75 = 563.52.
  const june: PrintedBillDocument = { ...JUNE, units: { billed: '90' }, payable: '564' };

  it('is told with what it held', () => {
    const { verdict, surprises } = surprisesOf([june], { account, readings });
    expect(verdict).toBe('right-but-surprising');
    expect(surprises.map(({ what }) => what)).toEqual([
      'the 150 units brought forward are used up: 90 are billed after a month with none',
    ]);
  });
});

describe('the settlement of a year (S7, S11)', () => {
  // Scenario 6.2, table 1, March: 360 brought forward, 283 in, 338 out, 545 made: 415 left, × 2.60 = 1,079.00.
  const account = { openingCredit: '360' };
  const readings = [
    { date: '2026-03-01', import: '1000', export: '1000', generation: '2000' },
    { date: '2026-04-01', import: '1283', export: '1338', generation: '2545' },
    { date: '2026-05-01', import: '1483', export: '1538', generation: '3000' },
  ];
  const march: PrintedBillDocument = {
    from: '2026-03-01',
    to: '2026-04-01',
    units: { import: '283', export: '338', billed: '0' },
    opening: { credit: '360' },
    closing: { credit: '0' },
    payable: '240',
  };

  it('brings the bank to 0 by its clause, and pays the rate of surplus', () => {
    const { verdict, surprises } = surprisesOf([march], { account, readings });
    expect(verdict).toBe('right-but-surprising');
    expect(surprises.map(({ id, what, clause }) => [id, what, clause])).toEqual([
      [
        'settlement-reset',
        'the settlement in the period to 2026-03-31 brings the bank to 0: 415 are paid in the next bill at 2.60',
        'NMR-2021 r. 7.3',
      ],
      [
        'surplus-units',
        '415 units of the year found no use at home: each further unit earns INR 2.60 and takes nothing off the bill',
        'NMR-2021 r. 7.3',
      ],
    ]);
  });

  it('answers the question where the credit is gone', () => {
    const [checked] = checkBase([march], { account, readings }).bills;
    expect(checked?.findings).toEqual([]);
  });

  it('does not answer it in another month', () => {
    const april = { ...march, from: '2025-05-01', to: '2025-05-31' };
    const [checked] = checkBase([april], {
      account,
      readings: readings
        .slice(0, 2)
        .map((one, at) => ({ ...one, date: at === 0 ? '2025-05-01' : '2025-05-31' })),
    }).bills;
    expect(checked?.verdict).toBe('wrong');
    expect(checked?.findings.map(({ code }) => code)).toEqual(['check/credit-gone']);
  });
});

describe('a plant connected inside the period (S9)', () => {
  const bare: PrintedBillDocument = { ...MAY, units: { billed: '99' }, payable: '613' };

  it('earns nothing before that day', () => {
    const { surprises } = surprisesOf([bare], { connected: dayOf('2025-05-10') });
    expect(surprises.map(({ what }) => what)).toEqual([
      'connected on 2025-05-10: what was given in the 9 days before that earns nothing',
    ]);
  });

  it('says nothing of a plant connected on the first day', () => {
    expect(surprisesOf([bare], { connected: dayOf('2025-05-01') }).ids).toEqual([]);
  });
});

describe('a bill that is not right', () => {
  it('is told of its own total first, and stays wrong whatever surprises', () => {
    const lines = [
      { charge: 'fixed', amount: '240.00' },
      { charge: 'energy', amount: '385.20' },
    ];
    const bill = { ...RIGHT_MAY, days: '31', lines, sum: '1625.20', payable: '1625' };
    const [checked] = checkBase([bill]).bills;
    expect(checked?.verdict).toBe('wrong');
    expect(checked?.findings.map(({ code }) => code)).toEqual([
      'check/lines-off-sum',
      'check/days-off-dates',
    ]);
    expect(checked?.surprises.map(({ id }) => id)).toEqual(['own-use']);
  });

  it('needs no readings of its own account', () => {
    const bill = { from: '2020-05-01', to: '2020-05-31', lines: [{ charge: 'fixed', amount: '240' }] };
    expect(checkBase([bill], { readings: [] }).findings).toEqual([]);
  });

  it('is told of it where no right bill can be made', () => {
    const bill = {
      from: '2020-05-01',
      to: '2020-05-31',
      lines: [{ charge: 'fixed', amount: '240' }],
      sum: '250',
    };
    const [checked] = checkBase([bill], { readings: [] }).bills;
    expect([checked?.verdict, checked?.right]).toEqual(['cannot-tell', null]);
    expect(checked?.findings.map(({ code }) => code)).toEqual([
      'check/lines-off-sum',
      'settlement/no-rule-in-force',
    ]);
  });

  it('cannot be set beside a right one in another currency', () => {
    const [checked] = checkBase([{ ...RIGHT_MAY, currency: 'EUR' }]).bills;
    expect([checked?.verdict, checked?.findings.map(({ code }) => code)]).toEqual([
      'cannot-tell',
      ['check/other-currency'],
    ]);
  });
});
