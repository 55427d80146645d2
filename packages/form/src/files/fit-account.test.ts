import { parseDay, type AccountDocument, type DayNumber, type ReadingRow } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { emptyHousehold } from '../household/household.ts';
import { without } from '../household/without.ts';
import { fitAccount } from './fit-account.ts';
import type { Offer } from './fit-book.ts';

const { account: ACCOUNT } = emptyHousehold('en-IN');
const offer = (row: Partial<ReadingRow>): Offer => ({
  day: parseDay('2025-05-01') as DayNumber,
  row: { date: '2025-05-01', ...row },
});

function withRates(...ids: readonly string[]): AccountDocument {
  const { grid } = ACCOUNT.meters;
  const rates = ids.map((id) => ({ id }));
  return { ...ACCOUNT, meters: { ...ACCOUNT.meters, grid: { ...grid, import: { ...grid.import, rates } } } };
}

const WHOLE = { import: '4342.1', export: '2935.8', generation: '7318' };

it('says nothing of readings that fit', () => {
  expect(fitAccount([offer(WHOLE)], ACCOUNT)).toEqual({
    offers: [offer(WHOLE)],
    settings: [],
    settingWords: '',
    obstacles: [],
    notes: [],
  });
});

describe('digits and decimals', () => {
  it('offers what the readings need, by what says something in them', () => {
    const rows = [offer({ ...WHOLE, import: '004342.125', export: '123456.70' }), offer(WHOLE)];
    expect(fitAccount(rows, ACCOUNT)).toMatchObject({
      settings: [
        { path: ['meters', 'grid', 'import', 'decimals'], value: '3' },
        { path: ['meters', 'grid', 'export', 'digits'], value: '6' },
      ],
      settingWords: 'import with 3 decimals and export with 6 digits',
    });
  });

  it('asks for no more than a register can have, and cuts decimals behind the third', () => {
    const { offers, settings, notes } = fitAccount([offer({ ...WHOLE, import: '123456789.12399' })], ACCOUNT);
    expect(settings.map(({ value }) => value)).toEqual(['8', '3']);
    expect(offers[0]?.row.import).toBe('123456789.123');
    expect(notes).toEqual(['Decimals behind the third are left out: a register has three at most.']);
  });
});

describe('rates', () => {
  const rates = { import: { 1: '10', 2: '20' } };

  it('leaves rates out where the account counts the total, which is there', () => {
    const { offers, obstacles, notes } = fitAccount([offer({ ...WHOLE, rates })], ACCOUNT);
    expect(offers).toEqual([offer(WHOLE)]);
    expect(obstacles).toEqual([]);
    expect(notes).toEqual([
      'The file has rates of import beside the total. This account counts the total: the rates are left out.',
    ]);
  });

  it('says what to set where there is no total', () => {
    const { obstacles } = fitAccount([offer({ export: '1', generation: '2', rates })], ACCOUNT);
    expect(obstacles).toEqual([
      'The file has the units taken by rate (1 and 2) and no total. Set 2 rates of import in “This account”, ' +
        'under “Meters”, and call them 1 and 2 as the file does. Which rate is which time, the bill or the ' +
        'supplier says.',
    ]);
    const odd = { 'High time': '10', Low: '20' };
    const both = { import: odd, export: odd };
    expect(fitAccount([offer({ generation: '2', rates: both })], ACCOUNT).obstacles).toEqual([
      'The file has the units taken and given by rate (High time and Low) and no total. Set 2 rates of import ' +
        'and export in “This account”, under “Meters”, and call them High time and Low as the file does. The ' +
        'account takes names of letters and digits: look at how the table is read, and call them so there. ' +
        'Which rate is which time, the bill or the supplier says.',
    ]);
    const one = { import: { 1: '10' } };
    expect(fitAccount([offer({ export: '1', generation: '2', rates: one })], ACCOUNT).obstacles).toEqual([
      'The file has the units taken of one rate alone (1), and no total: no bill can be made of one rate. Copy ' +
        'the others, or the total, from the display.',
    ]);
  });

  it('takes rates that the account calls alike, and asks where it calls them otherwise', () => {
    const row = { export: '1', generation: '2', rates };
    expect(fitAccount([offer(row)], withRates('2', '1'))).toMatchObject({
      offers: [offer(row)],
      obstacles: [],
      notes: [],
    });
    expect(fitAccount([offer(row)], withRates('day', 'night')).obstacles).toEqual([
      'The file calls the rates of import 1 and 2; this account calls them day and night. Call them alike in ' +
        '“This account”, under “Meters”.',
    ]);
  });

  it('says that rates stay open where the file has none', () => {
    expect(fitAccount([offer(WHOLE)], withRates('1', '2')).notes).toEqual([
      'This account counts 2 rates of import; the file has the total alone. The rates stay open: copy them from the display.',
    ]);
  });
});

it('leaves generation out where there is no meter for it, and says what the file lacks', () => {
  const meters = without(ACCOUNT.meters, 'generation');
  const row = { import: '1', generation: '2', estimated: ['generation'] } as const;
  const { offers, notes } = fitAccount([offer(row)], { ...ACCOUNT, meters });
  expect(offers).toEqual([offer({ import: '1' })]);
  expect(notes).toEqual([
    'The file has what the plant made; this account has no generation meter: it is left out.',
    'The file has no export: copy it from the display.',
  ]);
  expect(fitAccount([offer({ import: '1' })], ACCOUNT).notes).toEqual([
    'The file has no export and generation: copy them from the display.',
  ]);
});

it('asks for registers as wide as is wanted, of what the file has', () => {
  const { settings } = fitAccount([offer({ import: '0.000' })], ACCOUNT, { digits: 7, decimals: 3 });
  expect(settings).toEqual([
    { path: ['meters', 'grid', 'import', 'digits'], value: '7' },
    { path: ['meters', 'grid', 'import', 'decimals'], value: '3' },
  ]);
});

it('says settings that are alike together', () => {
  const row = { import: '1.125', export: '2.125', generation: '3.25' };
  expect(fitAccount([offer(row)], ACCOUNT).settingWords).toBe(
    'import and export with 3 decimals and generation with 2 decimals',
  );
});

describe('a meter that took the place of another', () => {
  const { grid } = ACCOUNT.meters;
  const later = {
    from: '2025-04-16',
    serial: '',
    multiplyingFactor: '1',
    import: grid.import,
    export: grid.export,
  };
  const account = { ...ACCOUNT, meters: { ...ACCOUNT.meters, grid: { ...grid, later: [later] } } };
  const early = { day: parseDay('2025-04-15') as DayNumber, row: { date: '2025-04-15', ...WHOLE } };

  it('is set where the readings are of it', () => {
    const { settings, notes } = fitAccount([offer({ ...WHOLE, import: '4342.125' })], account);
    expect(settings).toEqual([{ path: ['meters', 'grid', 'later', '0', 'import', 'decimals'], value: '3' }]);
    expect(notes).toEqual([]);
    const before = { ...early, row: { ...early.row, import: '1.125' } };
    expect(fitAccount([before], account).settings[0]?.path).toEqual(['meters', 'grid', 'import', 'decimals']);
  });

  it('is not set where readings are of both', () => {
    const { settings, notes } = fitAccount([early, offer({ ...WHOLE, import: '4342.125' })], account);
    expect(settings).toEqual([]);
    expect(notes).toEqual([
      'A meter was changed between these readings: look whether each fits the meter of its day.',
    ]);
  });
});
