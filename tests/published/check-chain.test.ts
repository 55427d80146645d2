import { describe, expect, it } from 'vitest';
import { effectsOf, type Effects } from '@unitbook/engine';
import type { PrintedBillDocument } from '@unitbook/engine';
import { checkBase, JUNE, MAY, textOf } from './check-base-month.ts';

// Causes C07, C19, C20 and C22 of the project reference "causes", 2.2 and 2.3 (2026): bills of an invented place.
// The right bills there: May 613 with 99 units billed, June 360 with 365 − 312 = 53 billed: 240 + 50 × 3 + 3 × 4.80 +
// 53 × 0.40 + 6 % of 164.40 − 75 = 360.46. Both leave nothing in the bank.

function follow(bills: readonly PrintedBillDocument[]) {
  const checked = checkBase(bills).bills;
  const effects = effectsOf(checked);
  return { verdicts: checked.map(({ verdict }) => verdict), effects };
}

const laterOf = (effects: Effects | null | undefined): readonly (readonly [number, string])[] =>
  (effects?.bills ?? []).map(({ at, difference }) => [at, textOf(difference)] as const);

const bankOf = (effects: Effects | null | undefined): readonly (readonly [string, string, number | null])[] =>
  (effects?.bank ?? []).map(({ ledger, units, since }) => [ledger, textOf(units), since] as const);

const RIGHT_JUNE: PrintedBillDocument = {
  ...JUNE,
  opening: { credit: '0' },
  closing: { credit: '0' },
  units: { billed: '53' },
  payable: '360',
};

describe('an estimated month and the actual one after it (C07)', () => {
  const { verdicts, effects } = follow([
    {
      ...MAY,
      status: 'estimated',
      readings: {
        import: { previous: '12480', present: '12910' },
        export: { previous: '8310', present: '8310' },
      },
      units: { billed: '395' },
      closing: { credit: '0' },
      payable: '2830',
      paid: { on: '2025-06-12', amount: '2830' },
    },
    {
      ...JUNE,
      status: 'actual',
      readings: {
        import: { previous: '12910', present: '13257' },
        export: { previous: '8310', present: '8900' },
      },
      units: { billed: '0' },
      opening: { credit: '0' },
      closing: { credit: '243' },
      payable: '240',
      paid: { on: '2025-07-12', amount: '240' },
    },
  ]);
  const [may, june] = effects;

  it('dates the mistake to May; June only follows from it', () => {
    expect(verdicts).toEqual(['wrong', 'follows']);
    expect(june).toBeNull();
    // 240 − 360.
    expect(laterOf(may)).toEqual([[1, '-120']]);
  });

  it('finds the owner out Rs 2,097 in cash and holding 243 units', () => {
    // 3,070 against 973.
    expect(textOf(may?.money)).toBe('2097');
    expect(bankOf(may)).toEqual([['credit', '243', 1]]);
    expect([may?.unknown, may?.settledOn]).toEqual([[], null]);
  });

  it('claims no unit again that came back with the actual reading', () => {
    // 12,892 − 12,910 counted too many, 8,588 − 8,310 not counted.
    expect(may?.registers.map(({ register, units, backOn }) => [register, textOf(units), backOn])).toEqual([
      ['import', '-18', 1],
      ['export', '278', 1],
    ]);
  });
});

describe('a register read from its frozen screen (C19)', () => {
  it('follows the units into the next bill, which carries both months', () => {
    const { verdicts, effects } = follow([
      {
        ...MAY,
        readings: { import: { previous: '12480', present: '12480' } },
        units: { billed: '0' },
        closing: { credit: '313' },
        payable: '240',
      },
      {
        // 777 imported, 312 exported, 313 brought forward: 152 billed. 240 + 50 × 3 + 100 × 4.80 + 2 × 6.50 + 60.80 +
        // 6 % of 643 − 75 = 907.38.
        ...JUNE,
        readings: { import: { previous: '12480', present: '13257' } },
        units: { billed: '152' },
        opening: { credit: '313' },
        closing: { credit: '0' },
        payable: '907',
      },
    ]);
    expect(verdicts).toEqual(['wrong', 'follows']);
    // 240 − 613 and 907 − 360: higher slabs are reached at once.
    expect([textOf(effects[0]?.money), laterOf(effects[0])]).toEqual(['174', [[1, '547']]]);
    expect(effects[0]?.bank.map(({ units, since, evenOn }) => [textOf(units), since, evenOn])).toEqual([
      ['0', null, 1],
    ]);
    expect(effects[0]?.registers.map(({ units, backOn }) => [textOf(units), backOn])).toEqual([['412', 1]]);
  });
});

describe('a mistake on a bill that others handed something on to', () => {
  it('is explained from there, and the units that came back are not put down to it', () => {
    const bills = checkBase([
      {
        ...MAY,
        readings: { import: { previous: '12480', present: '12480' } },
        units: { billed: '0' },
        closing: { credit: '313' },
        payable: '240',
      },
      {
        // As under C19 above, with fuel on 777 units: 310.80 in place of 60.80. 907.38 + 250 = 1,157.38.
        ...JUNE,
        readings: { import: { previous: '12480', present: '13257' } },
        units: { import: '777', billed: '152' },
        opening: { credit: '313' },
        closing: { credit: '0' },
        lines: [{ charge: 'fuel', amount: '310.80' }],
        payable: '1157',
      },
    ]).bills;
    const [, june] = bills;
    expect(june?.verdict).toBe('wrong');
    expect(june?.explanations.map(({ attempt }) => attempt.steps.map(({ cause }) => cause.id))).toEqual([
      ['surcharge-on-import'],
    ]);
    expect(textOf(june?.carried?.figures.get('payable'))).toBe('907');
    const effects = effectsOf(bills);
    // May: 240 − 613 and 907 − 360. June of its own: 1,157 − 907. Together 1,397 printed less 973 right.
    expect(effects.map((one) => textOf(one?.money))).toEqual(['174', '250']);
    expect(laterOf(effects[0])).toEqual([[1, '547']]);
  });
});

describe('credit not brought forward (C20)', () => {
  const wrongMay: PrintedBillDocument = {
    ...MAY,
    opening: { credit: '0' },
    closing: { credit: '0' },
    units: { billed: '134' },
    payable: '805',
  };

  it('costs what that bill costs where the next one is right again', () => {
    const { verdicts, effects } = follow([wrongMay, RIGHT_JUNE]);
    expect(verdicts).toEqual(['wrong', 'right']);
    expect([textOf(effects[0]?.money), laterOf(effects[0]), bankOf(effects[0])]).toEqual([
      '192',
      [],
      [['credit', '0', null]],
    ]);
  });

  it('is kept apart from another mistake on the next bill', () => {
    // Fuel on 365 units: 146.00 in place of 21.20. 360.46 + 124.80 = 485.26.
    const { verdicts, effects } = follow([wrongMay, { ...RIGHT_JUNE, payable: '485', sum: '485.26' }]);
    expect(verdicts).toEqual(['wrong', 'wrong']);
    expect(effects.map((one) => textOf(one?.money))).toEqual(['192', '125']);
  });

  it('counts arrears of an unpaid bill once, and the late fee on them', () => {
    // 360.46 + 805 + 1 % of 805 = 1,173.51.
    const june = { ...RIGHT_JUNE, arrears: '805', lateFee: '8.05', sum: '1173.51', payable: '1174' };
    const { effects } = follow([wrongMay, june]);
    expect(effects[1]).toBeNull();
    expect([textOf(effects[0]?.arrears), textOf(effects[0]?.lateFee)]).toEqual(['805', '8.05']);
    expect(textOf(effects[0]?.money)).toBe('200.05');
  });

  it('does not take arrears of a paid bill for something handed on', () => {
    const paid = { ...wrongMay, paid: { on: '2025-06-10', amount: '805' } };
    const june = { ...RIGHT_JUNE, arrears: '805', lateFee: '8.05', sum: '1173.51', payable: '1174' };
    const { effects } = follow([paid, june]);
    expect(effects.map((one) => textOf(one?.money))).toEqual(['192', '814']);
  });
});

describe('credit used twice (C22)', () => {
  const wrongMay: PrintedBillDocument = {
    ...MAY,
    closing: { credit: '0' },
    units: { billed: '64' },
    payable: '421',
  };

  it('is owed by the owner until it is taken back', () => {
    const { effects } = follow([wrongMay]);
    expect([textOf(effects[0]?.money), effects[0]?.settledOn]).toEqual(['-192', null]);
  });

  it('is settled by the bill that takes the same sum back', () => {
    // 360.46 + 192 = 552.46.
    const { effects } = follow([wrongMay, { ...RIGHT_JUNE, adjustment: '192', payable: '552' }]);
    expect(effects[1]).toBeNull();
    expect([textOf(effects[0]?.money), effects[0]?.settledOn, laterOf(effects[0])]).toEqual([
      '0',
      1,
      [[1, '192']],
    ]);
  });

  it('is not settled by another sum', () => {
    const { effects } = follow([wrongMay, { ...RIGHT_JUNE, adjustment: '200', payable: '560' }]);
    expect(effects.map((one) => textOf(one?.money))).toEqual(['-192', '200']);
  });
});

describe('a bank that is off', () => {
  it('is even again with the bill on which the credit is restored', () => {
    // A month with 58 units left over of 35 brought forward, 222 imported and 245 exported; its bill prints none left.
    const readings = [
      { date: '2025-05-01', import: '12480', export: '8310', generation: '15225' },
      { date: '2025-05-31', import: '12702', export: '8555', generation: '15805' },
      { date: '2025-06-30', import: '12902', export: '8655', generation: '16400' },
    ];
    const { bills } = checkBase(
      [
        { ...MAY, units: { billed: '0' }, closing: { credit: '0' }, payable: '240' },
        // 200 − 100 − 58 = 42 billed: 240 + 126 + 16.80 + 7.56 − 63 = 327.36.
        {
          ...JUNE,
          opening: { credit: '58' },
          units: { billed: '42' },
          closing: { credit: '0' },
          payable: '327',
        },
      ],
      { readings },
    );
    const [may] = effectsOf(bills);
    expect(bills.map(({ verdict }) => verdict)).toEqual(['wrong', 'right-but-surprising']);
    expect(bills[1]?.surprises.map(({ id }) => id)).toEqual(['bank-used-up']);
    expect(may?.bank.map(({ units, since, evenOn }) => [textOf(units), since, evenOn])).toEqual([
      ['0', null, 1],
    ]);
    expect(textOf(may?.money)).toBe('0');
  });
});

describe('own readings more often than bills', () => {
  const readings = [
    { date: '2025-05-01', import: '12480', export: '8310', generation: '15225' },
    { date: '2025-05-31', import: '12580', export: '8470', generation: '15725' },
    { date: '2025-06-30', import: '12680', export: '8620', generation: '16225' },
    { date: '2025-07-30', import: '12780', export: '8670', generation: '16725' },
  ];
  const account = { openingCredit: '0' };

  // By hand: 200 taken and 310 given in two months leave 110; then 100 taken, 50 given and 50 of the bank leave 60.
  it.each([
    ['a bill of two of their periods', '2025-06-30'],
    ['a bill whose days are none of theirs', '2025-06-29'],
  ])('are handed on once: %s', (_, day) => {
    const units = { import: '200', export: '310' };
    const [first, second] = checkBase(
      [
        { from: '2025-05-01', to: day, units, opening: { credit: '0' }, closing: { credit: '110' } },
        {
          from: day,
          to: '2025-07-30',
          units: { import: '100', export: '50', billed: '0' },
          opening: { credit: '110' },
          closing: { credit: '60' },
        },
      ],
      { account, readings },
    ).bills;
    expect(first?.compared.filter(({ agrees }) => !agrees)).toEqual([]);
    expect(second?.compared.filter(({ agrees }) => !agrees)).toEqual([]);
    expect(second?.facts.opening).toEqual({ credit: 110_000 });
  });
});
