import { expect, it } from 'vitest';
import { exactText, type Quotient } from '../../quantity/index.ts';
import { explanationRows, type ExplanationParts } from './explanation-rows.ts';

const hundredths = (numerator: number): Quotient => ({ numerator, denominator: 100 });

const rowsOf = (parts: ExplanationParts): readonly string[] =>
  explanationRows(parts).map(({ is, label, amount }) => {
    const { numerator, denominator } = amount;
    return `${is}: ${label} ${exactText(numerator, denominator)}`;
  });

it('sums up what bills before add, each cause, and rounding', () => {
  const causes = [
    { name: 'Credit lost', amount: hundredths(22970) },
    { name: 'Surcharge on import', amount: hundredths(8640) },
  ];
  // 120 + 229.70 + 86.40 − 0.10 = 436
  expect(rowsOf({ addedBefore: hundredths(12000), causes, rounding: hundredths(-10) })).toEqual([
    'before: Added by the bills before 120',
    'cause: Credit lost 229.7',
    'cause: Surcharge on import 86.4',
    'rounding: Rounding of the total -0.1',
    'together: Together 436',
  ]);
});

it('leaves out what adds nothing, but no cause', () => {
  const causes = [{ name: 'Days miscounted', amount: hundredths(0) }];
  expect(rowsOf({ addedBefore: null, causes, rounding: hundredths(0) })).toEqual([
    'cause: Days miscounted 0',
    'together: Together 0',
  ]);
});

it('has no rows where the bill does not print what is to be paid', () => {
  expect(
    rowsOf({ addedBefore: null, causes: [{ name: 'Credit lost', amount: null }], rounding: null }),
  ).toEqual([]);
});
