import { describe, expect, it } from 'vitest';
import { accountOf, type AccountParts } from '../../../../tests/support/demo.ts';
import { dayOf } from '../../../../tests/support/make.ts';
import { dayText } from '../quantity/index.ts';
import { readReadings, readReadingsDocument, type ReadReadingsOptions } from './read-readings.ts';
import type { ReadingRow } from './reading.ts';

const GRID_ONLY: AccountParts = { generationMeter: false };

function read(
  rows: readonly ReadingRow[],
  parts: AccountParts = GRID_ONLY,
  options: ReadReadingsOptions = {},
) {
  const { value, findings } = readReadings(rows, accountOf(parts), options);
  return {
    pairs: value,
    periods: value.map(({ period }) => `${dayText(period.from)} ${dayText(period.to)}`),
    told: findings.map(({ code, severity, path }) => [code, severity, path.slice(1).join('.')]),
  };
}

const row = (date: string, taken: string, given = '0', more: Partial<ReadingRow> = {}): ReadingRow => ({
  date,
  import: taken,
  export: given,
  ...more,
});

/** Two readings thirty days apart. */
const two = (from: string, to: string, more: Partial<ReadingRow> = {}): readonly ReadingRow[] => [
  row('2025-04-01', from),
  row('2025-05-01', to, '0', more),
];

describe('pairs of readings', () => {
  it('are made of each reading and the one before', () => {
    const rows = [row('2025-04-01', '100'), row('2025-05-01', '200'), row('2025-06-01', '300')];
    expect(read(rows)).toMatchObject({
      periods: ['2025-04-01 2025-05-01', '2025-05-01 2025-06-01'],
      told: [],
    });
  });

  it('stop at the first reading that cannot be used, while findings about later ones are listed', () => {
    const rows = [
      row('2025-04-01', '100'),
      row('2025-05-01', '200'),
      row('2025-06-01', 'abc'),
      row('2025-07-01', '400'),
      row('2025-08-01', '500', '-3'),
    ];
    expect(read(rows)).toMatchObject({
      periods: ['2025-04-01 2025-05-01'],
      told: [
        ['reading/not-a-number', 'error', '2.import'],
        ['reading/negative', 'error', '4.export'],
      ],
    });
  });

  it('stop at a step back', () => {
    const rows = [row('2025-04-01', '4521'), row('2025-05-01', '4498'), row('2025-06-01', '4600')];
    expect(read(rows)).toMatchObject({ periods: [], told: [['reading/below-before', 'error', '1.import']] });
  });

  it('stop at a day in the future, and not at today', () => {
    const rows = two('100', '200');
    expect(read(rows, GRID_ONLY, { today: dayOf('2025-05-01') }).periods).toHaveLength(1);
    expect(read(rows, GRID_ONLY, { today: dayOf('2025-04-30') })).toMatchObject({
      periods: [],
      told: [['reading/day-in-future', 'error', '1.date']],
    });
  });

  it('stop at any error, also one that is not about a register', () => {
    expect(read(two('100', '200', { printedDays: 'x' }))).toMatchObject({
      periods: [],
      told: [['reading/printed-days', 'error', '1.printedDays']],
    });
    expect(read(two('100', '200', { generation: '5' }))).toMatchObject({
      periods: [],
      told: [['reading/extra-register', 'error', '1.generation']],
    });
  });

  it('need two readings', () => {
    expect(read([]).told).toEqual([['reading/none', 'error', '']]);
    expect(read([row('2025-04-01', '100')]).told).toEqual([['reading/none', 'error', '']]);
  });

  it('are asked about outside 20 to 70 days', () => {
    const days = (to: string): readonly string[] =>
      read([row('2025-04-01', '100'), row(to, '120', '5')]).told.map(([code]) => String(code));
    expect(days('2025-04-20')).toEqual(['reading/days-unusual']);
    expect(days('2025-04-21')).toEqual([]);
    expect(days('2025-06-10')).toEqual([]);
    expect(days('2025-06-11')).toEqual(['reading/days-unusual']);
  });

  it('are compared with the days that the bill prints', () => {
    expect(read(two('100', '200', { printedDays: '30' })).told).toEqual([]);
    expect(read(two('100', '200', { printedDays: ' 31 ' })).told).toEqual([
      ['reading/days-differ', 'question', '1.date'],
    ]);
  });
});

describe('a counter that passes its full scale', () => {
  it.each([
    ['5', '0', '99950', '00120'],
    ['5', '1', '99999.5', '00012.3'],
    ['6', '0', '999950', '000120'],
    ['7', '0', '9999950', '0000120'],
    ['5', '0', '99870', '00212'],
  ])('is noticed with %s digits and %s decimals: %s → %s', (digits, decimals, from, to) => {
    const { pairs, told } = read(two(from, to), { ...GRID_ONLY, digits, decimals });
    expect(told).toEqual([['reading/rolled-over', 'note', '1.import']]);
    expect(pairs.map((pair) => pair.rolledOver)).toEqual([['import']]);
  });

  it('is not taken for granted at exactly 90 % of the full scale, and is one unit past it', () => {
    // 100 kW for 30 days can take 72 000 units; 90 000 → 500 would be 10 500.
    const parts = { ...GRID_ONLY, sanctionedLoad: '100', multiplyingFactor: '2', decimals: '0' };
    expect(read(two('90000', '500'), parts).told).toEqual([['reading/below-before', 'error', '1.import']]);
    expect(read(two('90001', '500'), parts).told).toEqual([['reading/rolled-over', 'note', '1.import']]);
  });

  it('is taken up to what the connection can pass, 2880 units for 4 kW in 30 days, and no further', () => {
    expect(read(two('97500', '380')).told).toEqual([['reading/rolled-over', 'note', '1.import']]);
    expect(read(two('97500', '380.1')).told).toEqual([['reading/below-before', 'error', '1.import']]);
  });

  it('is taken up to what the plant can make, 1125 units for 5 kWp in 30 days, and no further', () => {
    const exported = (to: string) =>
      read([row('2025-04-01', '10', '99000'), row('2025-05-01', '20', to)]).told.map(([code]) => code);
    expect(exported('125')).toEqual(['reading/rolled-over']);
    expect(exported('125.1')).toEqual(['reading/below-before']);
  });

  it('is believed where whoever read the meter says so', () => {
    const { pairs, told } = read(two('4521', '4498', { confirmed: ['reading/below-before:import'] }));
    expect(told).toEqual([['reading/rolled-over', 'note', '1.import']]);
    expect(pairs.map((pair) => pair.rolledOver)).toEqual([['import']]);
  });
});

describe('an advance that is very large', () => {
  it('is asked about above 50 units a day and kW: 6000 for 4 kW in 30 days', () => {
    expect(read(two('100', '6100')).told).toEqual([]);
    expect(read(two('100', '6100.1')).told).toEqual([['reading/large-advance', 'question', '1.import']]);
  });

  it('is asked about above 7.5 units a day and kWp: 1125 for 5 kWp in 30 days', () => {
    const told = (to: string) => read([row('2025-04-01', '0', '50'), row('2025-05-01', '20', to)]).told;
    expect(told('1175')).toEqual([]);
    expect(told('1175.1')).toEqual([['reading/large-advance', 'question', '1.export']]);
  });

  it('stays a note once it is answered, and the period is billed', () => {
    const { periods, told } = read(two('100', '6100.1', { confirmed: ['reading/large-advance:import'] }));
    expect(told).toEqual([['reading/large-advance', 'note', '1.import']]);
    expect(periods).toHaveLength(1);
  });
});

describe('questions that were answered', () => {
  it.each<[string, Partial<ReadingRow>, string]>([
    ['reading/days-differ:date', { printedDays: '31' }, '150'],
    ['reading/same-as-before:import', {}, '100'],
    ['reading/screen-test:import', {}, '88888'],
  ])('become notes: %s', (key, more, to) => {
    const from = to === '88888' ? '88800' : '100';
    const asked = read(two(from, to, more)).told.map(([, severity]) => severity);
    const answered = read(two(from, to, { ...more, confirmed: [key] })).told.map(([, severity]) => severity);
    expect([asked, answered]).toEqual([['question'], ['note']]);
  });

  it('become notes for the date only where the date was answered', () => {
    const told = (from: string, confirmed: readonly string[]) =>
      read([row(from, '100'), row('1/5/2025', '150', '5', { confirmed })]).told.filter(
        ([code]) => code === 'reading/day-or-month',
      );
    expect(told('2025-04-25', ['reading/day-or-month:date'])).toEqual([
      ['reading/day-or-month', 'note', '1.date'],
    ]);
    expect(told('2025-04-25', ['reading/day-or-month:import'])).toEqual([
      ['reading/day-or-month', 'question', '1.date'],
    ]);
    // 20 to 70 days since the reading before: day first is taken, and only noted.
    expect(told('2025-04-11', [])).toEqual([['reading/day-or-month', 'note', '1.date']]);
    expect(told('2025-02-20', [])).toEqual([['reading/day-or-month', 'note', '1.date']]);
    expect(told('2025-04-12', [])).toEqual([['reading/day-or-month', 'question', '1.date']]);
    expect(told('2025-02-19', [])).toEqual([['reading/day-or-month', 'question', '1.date']]);
  });
});

describe('a readings document', () => {
  it('is read into its rows', () => {
    const text = JSON.stringify({ format: 'unitbook-readings-1', readings: two('100', '200') });
    expect(readReadingsDocument(text)).toEqual({ value: two('100', '200'), findings: [] });
  });

  it('has no rows where its form is wrong', () => {
    const text =
      '{\n  "format": "unitbook-readings-1",\n  "readings": [{ "date": "2025-04-01", "import": 5 }]\n}';
    const { value, findings } = readReadingsDocument(text);
    expect(value).toBeNull();
    expect(findings.map(({ code, position }) => [code, position])).toEqual([
      ['document/number-not-text', { line: 3, column: 50 }],
    ]);
  });
});
