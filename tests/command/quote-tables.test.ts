import { describe, expect, it } from 'vitest';
import type { QuoteResultDocument } from '@unitbook/engine';
import { run } from '../../apps/cli/src/run.ts';
import { sessionIo } from './session-io.ts';

const FILES = [
  '--quote',
  'tariffs-examples/quotes/rooftop-4-kilowatt.json',
  '--tariff',
  'tariffs-examples/tarumira/taresco-domestic/tariff.json',
];

async function print(...words: readonly string[]): Promise<string> {
  const { io, printed } = sessionIo(new Map(), '');
  expect(await run(['quote', ...FILES, ...words], io)).toBe(0);
  return printed.out;
}

const table = async (name: string): Promise<readonly string[]> =>
  (await print('--csv', name, '--draws', name === 'band' ? '100' : '0')).split('\r\n');

describe('unitbook quote --csv', () => {
  it('ends every line in CR LF', async () => {
    const text = await print('--csv', 'years', '--draws', '0');
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(text.endsWith('\r\n')).toBe(true);
  });

  // The figures are those of tests/command/quote.md, worked out there.
  it('prints months', async () => {
    const [head, first, ...rest] = await table('months');
    expect(head).toBe(
      'from,to,isFilled,use,generation,selfUse,import,export,billed,bank,before,after,surplus',
    );
    expect(first).toBe('2025-04-01,2025-05-01,no,520,510,194,326,316,10,0,3939.9,260.8,0');
    expect(rest.at(-2)).toBe('2026-03-01,2026-04-01,no,490,545,207,283,338,0,0,3673.5,240,1079');
    expect(rest.length).toBe(12);
  });

  it('prints years, the inverter in the eleventh', async () => {
    const rows = await table('years');
    expect(rows.length).toBe(27);
    expect(rows[11]?.split(',').slice(6)).toEqual([
      '47654.5',
      '4801.14',
      '590.2',
      '43443.56',
      '3552.59',
      '32000',
      '35552.59',
      '7890.97',
      '0',
      '213138.73',
    ]);
  });

  it('prints cases and sizes', async () => {
    const cases = await table('cases');
    expect(
      cases
        .find((row) => row.startsWith('use-less'))
        ?.split(',')
        .slice(2, 6),
    ).toEqual(['29966.8', '5.6921', '7.8024', '624068.56']);
    const sizes = await table('sizes');
    // A heading and forty sizes. 1 kWp costs 216,000 ÷ 4 = 54,000, all of it subsidy; 1.2 kWp 64,800, of which 10,800.
    expect(sizes.filter((row) => row !== '')).toHaveLength(41);
    expect(
      [1, 5, 6].map((at) => sizes[at]?.split(',').filter((_, column) => [0, 7].includes(column))),
    ).toEqual([
      ['0.2', '0'],
      ['1', '0'],
      ['1.2', '10800'],
    ]);
    expect(sizes.filter((row) => row.split(',')[1] === 'yes').map((row) => row.split(',')[5])).toEqual([
      '36673.88',
    ]);
  });

  it('prints the band, which begins at the net price', async () => {
    const rows = await table('band');
    expect(rows[1]).toBe('0,-162000.00,-162000.00,-162000.00');
    expect(rows.length).toBe(28);
  });
});

describe('unitbook quote --json', () => {
  it('has the answer, the loan and every table, and no number outside quotation marks but places in files', async () => {
    const numbers: string[] = [];
    const document = JSON.parse(await print('--json', '--draws', '100'), (key, value: unknown) => {
      if (typeof value === 'number') numbers.push(key);
      return value;
    }) as QuoteResultDocument;
    expect(numbers.filter((key) => key !== 'line' && key !== 'column')).toEqual([]);
    expect([document.format, document.tariff]).toEqual(['unitbook-quote-result-1', 'tarumira-domestic']);
    expect(document.comesTo).toMatchObject({
      saving: '36673.88',
      lifeNet: '838507.01',
      netPresentValue: '240574.8',
      countOfRates: 'one',
      smallestBill: '240',
    });
    expect(document.dayOne.cash).toBe('96000');
    // 34,273.88 ÷ 12 − 2,520.22 = 335.93666…
    expect(document.loan).toMatchObject({ instalment: '2520.22', leftInMonth: '100781/300' });
    expect([document.months.length, document.years.length, document.sizes.length]).toEqual([12, 25, 40]);
    // From 4.4 kWp on all twelve bills are the fixed charge, 240.00: 4.6 is the first size that lowers none.
    expect(document.onlySurplusFrom).toBe('4.6');
    expect(document.draws?.count).toBe('100');
  });

  it('draws the same from the same seed', async () => {
    const [one, other] = [await print('--json', '--draws', '200'), await print('--json', '--draws', '200')];
    expect(one).toBe(other);
  });
});
