import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TariffDocument, UnitsMonth, UnitsPeriod } from '@unitbook/engine';
import { valueOf } from '../../support/make.ts';
import { fractionText } from '../../twins/fraction.ts';
import { priceOf } from '../../twins/twin-price.ts';
import { documentOf, periodsOf } from '../random-scheme.ts';
import { accountOf, kept, schemeYear } from './scheme-year.ts';

/** The document with the number of a period in place of every price that it names. */
function writtenOut(document: TariffDocument, period: UnitsPeriod): TariffDocument {
  const { prices = {}, ...rest } = document;
  const text = JSON.stringify(rest, (key: string, value: unknown) =>
    key === 'rate' && typeof value === 'string' && value in prices
      ? fractionText(priceOf(document, value, period))
      : value,
  );
  return JSON.parse(text) as TariffDocument;
}

const amounts = ({ bill, ledgers }: UnitsMonth) => ({
  lines: bill.lines.map(({ figure, counts }) => [figure.id, valueOf(figure), counts]),
  payable: valueOf(bill.payable),
  ledgers: ledgers.map(({ id, paid, closing }) => [id, valueOf(paid), valueOf(closing)]),
});

describe('a price by its name', () => {
  it('bills what its number bills, written out for the period', () => {
    fc.assert(
      fc.property(schemeYear, (one) => {
        const document = documentOf(one.spec);
        for (const period of periodsOf(one.spec, one.months)) {
          const numbers = writtenOut(document, period);
          expect(JSON.stringify(numbers)).not.toContain('"rate":"base"');
          const named = kept(document, [period], accountOf(one)).map(amounts);
          expect(kept(numbers, [period], accountOf(one)).map(amounts)).toEqual(named);
        }
      }),
      { numRuns: 15 },
    );
  });
});
