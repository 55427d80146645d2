import { expect, it } from 'vitest';
import quoteText from '../../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import tariffText from '../../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { compareTariffs, readQuote, readTariff, type QuoteInput, type Tariff } from './index.ts';

function tariffOf(text: string): Tariff {
  const { value } = readTariff(text);
  if (value === null) throw new Error('the tariff cannot be read');
  return value;
}

function input(): QuoteInput {
  const { value } = readQuote(quoteText);
  if (value === null) throw new Error('the quote cannot be read');
  return value;
}

it('a quote under a tariff whose fixed charge is twice as high: the bills rise, the saving stays', () => {
  const dear = tariffOf(tariffText.replaceAll('"rate": "60.00"', '"rate": "120.00"'));
  const [own, other] = compareTariffs(input(), [tariffOf(tariffText), dear]);
  // 12 × 4 kW × 60.00 = 2,880.00 more before and after; no bill is at the minimum.
  expect([own?.quote?.years[0]?.before, own?.quote?.years[0]?.after]).toEqual([3_893_160, 333_672]);
  expect([other?.quote?.years[0]?.before, other?.quote?.years[0]?.after]).toEqual([4_181_160, 621_672]);
  expect(other?.quote?.years[0]?.saving).toBe(own?.quote?.years[0]?.saving);
});

it('says which rises a tariff has no charge for, and why it cannot be billed', () => {
  const renamed = tariffOf(tariffText.replaceAll('"id": "fuel"', '"id": "adjustment"'));
  const [other] = compareTariffs(input(), [renamed]);
  expect(other?.unknownCharges).toEqual(['fuel']);
  expect(other?.quote?.years[0]?.before).toBe(3_893_160);
  const late = tariffOf(
    tariffText.replace('"from": "2021-04-01",\n      "scheme"', '"from": "2040-04-01",\n      "scheme"'),
  );
  const [none] = compareTariffs(input(), [late]);
  expect(none?.quote).toBeNull();
  expect(none?.findings.map(({ code }) => code)).toContain('settlement/no-rule-in-force');
});
