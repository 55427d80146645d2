import { describe, expect, it } from 'vitest';
import { dayOf } from '../../../../../tests/support/make.ts';
import { givenFigure, NumberTooLarge } from '../../quantity/index.ts';
import type { InterestRule } from './dispute-schema.ts';
import { timesPart } from './exact.ts';
import type { LimitCheck } from './limitation.ts';
import { interestRuleWords, timeLimitWords } from './refund-words.ts';
import { clauseWords, heldWords, insideSentence, sizeWords } from './report-words.ts';
import { inRow } from '../in-row.ts';
import { stepWords } from './step-words.ts';

const NOTATION = {
  number: (text: string) => text,
  money: (text: string) => `Rs ${text}`,
  moneyPlaces: 2,
  day: (text: string) => `day ${text}`,
};

describe('interest in words', () => {
  const simple: InterestRule = {
    kind: 'simple',
    clause: 'SC 8.5',
    on: 'sum',
    dayCount: 'calendar',
    rounding: { step: '0.01', mode: 'half-up' },
    roundedAt: 'sum',
    rates: [],
  };

  it.each<[InterestRule | null, string]>([
    [null, 'Whether interest is due is not known here.'],
    [{ kind: 'none', clause: 'X 1' }, 'No interest is due on a refund (X 1).'],
    [
      simple,
      'Simple interest on the sum before it was rounded, days over those of the calendar year, rounded to Rs 0.01 for all bills together (SC 8.5).',
    ],
  ])('%j', (rule, words) => {
    expect(interestRuleWords(rule, NOTATION)).toBe(words);
  });
});

it.each<[Partial<LimitCheck>, string]>([
  [
    {},
    'By SC 8.6, counted as 24 months from the day it was paid, day 2023-06-18, it can be claimed until day 2025-06-18.',
  ],
  [
    { isInTime: false, isAssumed: true, from: 'period-end' },
    'By SC 8.6, counted as 24 months from the end of the period, day 2023-06-18, since the day of the rule is not known, the time to claim it ended on day 2025-06-18.',
  ],
])('tells whether a claim is in time: %j', (more, words) => {
  const check: LimitCheck = {
    clause: 'SC 8.6',
    months: '24',
    from: 'paid',
    since: dayOf('2023-06-18'),
    isAssumed: false,
    last: dayOf('2025-06-18'),
    isInTime: true,
  };
  expect(timeLimitWords({ ...check, ...more }, NOTATION)).toBe(words);
});

it('tells of a step whom to write to, and each time with its clause', () => {
  const limit = { of: 'the answer', unit: 'months', from: 'the complaint', clause: 'SC 2' } as const;
  const step = { id: 'forum', name: 'Forum', body: 'The forum', clause: 'SC 1' };
  expect(stepWords(step, NOTATION)).toBe('Forum: The forum (SC 1)');
  const limits = ['0', '1', '2'].map((within) => ({ ...limit, within }));
  expect(stepWords({ ...step, limits }, NOTATION)).toBe(
    'Forum: The forum (SC 1): the answer on the day of the complaint (SC 2); the answer within 1 month of the complaint (SC 2); the answer within 2 months of the complaint (SC 2)',
  );
});

describe('what is held', () => {
  const bill = {
    number: '17',
    period: { from: dayOf('2025-04-01'), to: dayOf('2025-05-01') },
    days: 30,
    issued: null,
    due: null,
  };
  const figure = (label: string, unit: 'kWh' | 'money', numerator: number) =>
    givenFigure({ id: 'x', label, unit, numerator, denominator: 1, clause: 'bill' });

  it('is named so that it can stand among enclosures', () => {
    expect(heldWords({ kind: 'bill', bill }, NOTATION)).toBe('Bill 17 from day 2025-04-01 to day 2025-05-01');
    const closing = [figure('Credit carried forward', 'kWh', 58)];
    expect(heldWords({ kind: 'bill-before', bill, closing, readings: [] }, NOTATION)).toBe(
      'The bill before, from day 2025-04-01 to day 2025-05-01: credit carried forward 58 units',
    );
    const amount = figure('Paid', 'money', 180);
    expect(heldWords({ kind: 'payment', of: 'bill-before', on: dayOf('2025-05-12'), amount }, NOTATION)).toBe(
      'Payment of Rs 180.00 for the bill before on day 2025-05-12',
    );
    expect(heldWords({ kind: 'stated', what: 'a photo of the nameplate' }, NOTATION)).toBe(
      'A photo of the nameplate',
    );
  });
});

it('writes clauses with as much of their source as is known', () => {
  expect(clauseWords({ clause: 'A 1', source: null, from: null }, NOTATION)).toBe('A 1');
  const source = { title: 'Order', publisher: 'Commission', year: '2024' };
  expect(clauseWords({ clause: 'A 1', source, from: '2024-04-01' }, NOTATION)).toBe(
    'A 1 (Order, Commission, 2024; in force from day 2024-04-01)',
  );
});

it('puts words together', () => {
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(inRow)).toEqual(['', 'a', 'a and b', 'a, b and c']);
  expect(['Nothing is left', 'TO-2023 is applied', 'A slab'].map(insideSentence)).toEqual([
    'nothing is left',
    'TO-2023 is applied',
    'A slab',
  ]);
  expect(sizeWords({ numerator: -373, denominator: 1 }, NOTATION)).toBe('Rs 373.00');
});

it('multiplies exactly, and refuses what cannot be held', () => {
  expect(timesPart({ numerator: 9007199254740991, denominator: 3 }, 10, 7)).toEqual({
    numerator: 90071992547409910n,
    denominator: 21,
  });
  expect(() => timesPart({ numerator: 1, denominator: 9007199254740881 }, 1, 2)).toThrow(NumberTooLarge);
});
