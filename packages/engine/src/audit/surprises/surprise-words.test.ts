import { expect, it } from 'vitest';
import { dayOf } from '../../../../../tests/support/make.ts';
import { quotientOf } from '../printed.ts';
import { dayPart, decimalPart, moneyPart, numberPart, said, told } from './surprise.ts';
import { surpriseWords } from './surprise-words.ts';

const NOTATION = {
  number: (text: string) => `#${text}`,
  money: (text: string) => `Rs ${text}`,
  moneyPlaces: 2,
  day: () => '1 May',
};

const parts = told(
  said`${moneyPart(quotientOf('1180'), 'INR')} on ${dayPart(dayOf('2025-05-01'))}: ${numberPart(quotientOf('1458'))} units, ${decimalPart('0.60')}`,
);

it('says a surprise as the household writes it: no code of a currency, no ISO date', () => {
  expect(surpriseWords(parts, NOTATION)).toBe('Rs 1180.00 on 1 May: #1458 units, #0.6');
});

it('says the same in plain text for programs', () => {
  expect(parts.what).toBe('INR 1180 on 2025-05-01: 1458 units, 0.60');
});
