import { checkAccount, keepBook, type TariffDocument } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { passbookOf } from '../support/passbook.ts';
import { chargeOneByOne } from './charge-one-by-one.ts';
import { checkBill, checkEnergy, checkPassbook } from './check-month.ts';
import { plainText } from './figure-text.ts';
import { readPrepared, tariffText } from './load-tariffs.ts';
import { measuredHomes, type MeasuredHome } from './measured-homes.ts';

const DEMO = tariffText('tarumira-domestic');

/** The demo tariff with its change of rates and its settlement inside the measured months. */
const CHANGED = DEMO.replace('"through": "2024-03-31"', '"through": "2025-08-14"')
  .replace('"from": "2024-04-01"', '"from": "2025-08-15"')
  .replace('"on": "03-31"', '"on": "08-31"');

/** The readings of 2016 and 2017 are older than the demo tariff: their years are moved, the rest is as read. */
const BILLINGS = [
  { name: 'the demo tariff, nine years later (rates of 2024)', text: DEMO, years: 9 },
  { name: 'the demo tariff, seven years later (rates of 2023)', text: DEMO, years: 7 },
  { name: 'rates and settlement that change inside the measured months', text: CHANGED, years: 9 },
] as const;

/** Every register shows three decimals. Load and plant are not published: generous ones. */
function bookOf(home: MeasuredHome, text: string) {
  const register = { digits: '5', decimals: '3' } as const;
  const meter = { serial: home.name, multiplyingFactor: '1' };
  const { value: account } = checkAccount({
    format: 'unitbook-account-1',
    id: home.name,
    sanctionedLoad: '10',
    plantCapacity: '10',
    openingCredit: '0',
    meters: {
      grid: { ...meter, import: register, export: register },
      generation: { ...meter, generation: register },
    },
  });
  if (account === null) throw new Error('the account cannot be used');
  return keepBook({ account, tariff: readPrepared(text), readings: home.readings });
}

describe.each(BILLINGS)('measured homes under $name', ({ text: tariff, years }) => {
  const document = JSON.parse(tariff) as TariffDocument;

  it.each(measuredHomes(years))('$name: every cycle balances and bills', (home) => {
    const { value: book, findings } = bookOf(home, tariff);
    expect(findings.filter((finding) => finding.severity === 'error')).toEqual([]);
    expect(book.months).toHaveLength(home.readings.length - 1);
    book.months.forEach((month, index) => {
      checkEnergy(month, home, index);
      checkPassbook(month);
      checkBill(month, document);
      const before = book.months[index - 1];
      if (before !== undefined)
        expect(plainText(passbookOf(month).opening)).toBe(plainText(passbookOf(before).closing));
    });
  });
});

describe('the measured registers', () => {
  it('are those of four homes, 35 cycles in all; only the first has no export register', () => {
    const homes = measuredHomes(0);
    expect(homes.map(({ name, hasExport, readings }) => [name, hasExport, readings.length - 1])).toEqual([
      ['DE_KN_residential1', false, 9],
      ['DE_KN_residential3', true, 9],
      ['DE_KN_residential4', true, 9],
      ['DE_KN_residential6', true, 8],
    ]);
  });

  it('exercise the settlement and the change of rates inside the year', () => {
    const months = measuredHomes(9).flatMap((home) => bookOf(home, CHANGED).value.months);
    expect(months.map(passbookOf).some(({ isClosed, paid }) => isClosed && plainText(paid) !== '0')).toBe(
      true,
    );
    expect(months.some(({ bill }) => bill.lines.some(({ figure }) => figure.id === 'surplus'))).toBe(true);
    expect(months.some(({ bill }) => new Set(bill.lines.map(({ version }) => version)).size > 1)).toBe(true);
  });
});

describe('the loop that charges unit by unit', () => {
  const slabs = [{ upTo: '50', rate: '3.00' }, { upTo: '150', rate: '4.80' }, { rate: '6.50' }];

  it('charges the base month, 99 units in 30 days, as worked out by hand', () => {
    expect(chargeOneByOne('99', [{ slabs, days: 30 }])).toEqual(['385.20']);
  });

  it('scales limits beyond 33 days: 170 units in 38 days', () => {
    expect(chargeOneByOne('170', [{ slabs, days: 38 }])).toEqual(['702.00']);
  });
});
