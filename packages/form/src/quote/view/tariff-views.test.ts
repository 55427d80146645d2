import type { Quote, TariffResult } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { writingFor } from '../../writing/writing.ts';
import { chartCsv } from '../charts/table.ts';
import { quoteWriting } from './quote-writing.ts';
import { tariffTable } from './tariff-views.ts';

const writing = quoteWriting(writingFor('en-IN', 'INR'), { locale: 'en-IN', grid: 100 });

const quoteOf = (grid: number, years: readonly number[], payback: number | null): Quote => {
  const [before = 0, after = 0, saving = 0] = years;
  return {
    grid,
    currency: 'INR',
    input: { document: { locale: 'en-IN' } },
    years: [{ before, after, saving }],
    measures: { simple: { first: payback, last: payback } },
  } as unknown as Quote;
};

const own = quoteOf(100, [38_931_60, 3_336_72, 36_673_88], 4.597);
const result = (more: Partial<TariffResult>): TariffResult => ({
  id: 'other',
  name: 'Other',
  quote: quoteOf(1000, [46_726_005, 6_804_900, 41_000_100], null),
  findings: [],
  unknownCharges: [],
  ...more,
});
const table = (...others: readonly TariffResult[]) => tariffTable(own, { name: 'Own', others }, writing);
const shown = (at: number, others: readonly TariffResult[]): string =>
  (table(...others).lines[at] ?? []).map((cell) => (typeof cell === 'string' ? cell : cell.text)).join(' | ');

it('gives each tariff in its own parts of a coin, on the page and in a sheet', () => {
  expect(shown(0, [])).toBe('Own | 38,931.60 | 3,336.72 | 36,673.88 | 4.6 years');
  expect(shown(1, [result({})])).toBe('Other | 46,726.005 | 6,804.90 | 41,000.10 | not within the life');
  expect(chartCsv(table(result({})))).toBe(
    'Tariff,Bills before,Bills after,Saving,Payback\n' +
      'Own,38931.6,3336.72,36673.88,4.60\n' +
      'Other,46726.005,6804.9,41000.1,not within the life\n',
  );
});

it('says why a tariff is not compared, and which rises it does not have', () => {
  const findings = [{ severity: 'error', found: 'a tariff with time blocks (day, night)' }];
  const others = [
    result({ quote: null, findings: findings as unknown as TariffResult['findings'] }),
    result({ quote: { ...own, currency: 'EUR' }, unknownCharges: ['fuel', 'levy'] }),
    result({ quote: null }),
  ];
  expect(shown(1, others)).toBe('Other | not compared | – | – | –');
  expect(shown(2, others)).toBe('Other | not compared | – | – | –');
  expect(table(...others).notes).toEqual([
    'Other is not compared: a tariff with time blocks (day, night).',
    'Other is not compared: its bills are in EUR.',
    'Other has no charge fuel, levy: what rises there by the quote does not count.',
    'Other is not compared: it cannot be billed.',
  ]);
});
