import { energyFinding, readingFinding } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { changeRow } from '../household/edit-household.ts';
import { emptyHousehold } from '../household/household.ts';
import { writingFor } from '../writing/writing.ts';
import { fixesFor, offeredReadings } from './fixes.ts';

const writing = writingFor('en-IN', 'INR');
const household = changeRow(emptyHousehold('en-IN'), 1, { import: '46403', export: '3151' });
const path = ['readings', 1, 'import'];

it('offers the correction first, then to keep it', () => {
  const finding = readingFinding('reading/large-advance', { path, offer: '4640.3' }, { offer: '4640.3' });
  const fixes = fixesFor(finding, household, writing);
  expect(fixes.map(({ label }) => label)).toEqual(['Use 4,640.3', 'It is right, keep it']);
  expect(fixes[0]?.apply(household).readings[1]?.import).toBe('4640.3');
  const kept = fixes[1]?.apply(household) ?? household;
  expect(kept.readings[1]?.confirmed).toEqual(['reading/large-advance:import']);
  const [again] = fixesFor({ ...finding, severity: 'note' }, kept, writing);
  expect(again?.label).toBe('Ask again');
  expect(again?.apply(kept).readings[1]?.confirmed).toEqual([]);
});

it('offers nothing for an error without a correction, nor for a note', () => {
  expect(
    fixesFor(readingFinding('reading/not-a-number', { path }, { value: 'x' }), household, writing),
  ).toEqual([]);
  expect(fixesFor(readingFinding('reading/estimated', { path }), household, writing)).toEqual([]);
});

it('confirms a full scale that was passed, and can ask again', () => {
  const below = readingFinding('reading/below-before', { path }, { top: '99999' });
  const [confirm] = fixesFor(below, household, writing);
  expect(confirm?.label).toBe('It passed 99,999: confirm');
  const kept = confirm?.apply(household) ?? household;
  const passed = readingFinding('reading/rolled-over', { path }, { top: '99999' });
  const [again] = fixesFor(passed, kept, writing);
  expect(again?.apply(kept).readings[1]?.confirmed).toEqual([]);
});

it('keeps a question about the account with the household', () => {
  const finding = readingFinding(
    'account/load-in-watts',
    { path: ['sanctionedLoad'], offer: '3' },
    { offer: '3' },
  );
  const [use, keep] = fixesFor(finding, household, writing);
  expect(use?.apply(household).account.sanctionedLoad).toBe('3');
  expect(keep?.apply(household).account.confirmed).toEqual(['account/load-in-watts:sanctionedLoad']);
});

const texts = (fixes: readonly { label: string }[]): string[] => fixes.map(({ label }) => label);

it('adds the change of the meter that a register below the reading before is of', () => {
  const below = (register: string) =>
    readingFinding('reading/below-before', { path: ['readings', 1, register] }, { top: '99999' });
  const fixes = fixesFor(below('import'), household, writing);
  expect(texts(fixes)).toEqual([
    'It passed 99,999: confirm',
    'The meter was changed',
    'A digit is mistyped: correct it',
  ]);
  const changed = fixes[1]?.apply(household) ?? household;
  expect(changed.account.meters.grid.later).toHaveLength(1);
  expect([fixes[1]?.focus, fixes[2]?.focus]).toEqual(['reading-1-date', 'reading-1-import']);
  expect(fixes[2]?.apply(household)).toBe(household);
  const [, made] = fixesFor(below('generation'), household, writing);
  expect(made?.apply(household).account.meters.generation?.later).toHaveLength(1);
  // While that change waits for its date, no other is begun.
  const [, again] = fixesFor(
    readingFinding('reading/below-before', { path: ['readings', 3, 'import'] }),
    changed,
    writing,
  );
  expect([again?.apply(changed), again?.focus, again?.show]).toEqual([changed, 'reading-1-date', 1]);
});

it('tells that a generation counter began anew, or that it is right, or another meter', () => {
  const began = readingFinding('reading/began-anew', { path: ['readings', 1, 'generation'] });
  const fixes = fixesFor(began, household, writing);
  expect(texts(fixes)).toEqual([
    'It began anew: type its last number',
    'It is right, keep it',
    'The meter was changed',
  ]);
  const anew = fixes[0]?.apply(household);
  expect(anew?.readings.map(({ event }) => event)).toEqual([undefined, 'final', 'first', undefined]);
  expect(anew?.account).toBe(household.account);
});

it('puts a share by days or a photo in the place of an estimate, which is kept', () => {
  const path = ['readings', 1, 'rates', 'import', '1'];
  const estimated = { date: '', rates: { import: { '1': '13300' } }, status: 'estimated' } as const;
  const held = { ...household, readings: [{ date: '' }, estimated] };
  const finding = readingFinding('reading/below-estimate', { path, offer: '12868.5' }, { offer: '12868.5' });
  const [share, photo] = fixesFor(finding, held, writing);
  expect(share?.label).toBe('Use 12,868.5, a share by days');
  const shared = share?.apply(held).readings[1];
  expect(shared?.rates?.import).toEqual({ '1': '12868.5' });
  expect(shared?.edits).toEqual([
    { register: 'import-1', raw: '13300', wasEstimated: true, method: 'by-days' },
  ]);
  expect(photo?.apply(held).readings[1]?.edits?.[0]?.method).toBe('own-reading');
  expect(photo?.focus).toBe('reading-1-rates-import-1');
  const plain = readingFinding('reading/below-estimate', { path }, { offer: '' });
  expect(texts(fixesFor(plain, held, writing))).toEqual(['Type what a photo of that day shows']);
});

it('adds the readings that a change of the account lacks', () => {
  const values = { meter: 'two-way', day: '2025-04-16' };
  const [add] = fixesFor(
    readingFinding('reading/meter-changed', { path: ['readings', 1] }, values),
    household,
    writing,
  );
  expect(add?.apply(household).readings.slice(1, 3)).toEqual([
    { date: '2025-04-16', event: 'final', import: '', export: '' },
    { date: '2025-04-16', event: 'first', import: '', export: '' },
  ]);
});

it.each([
  [
    'final',
    'reading/final-without-first',
    'Type the first numbers of the new meter',
    ['final', 'first', undefined],
  ],
  [
    'first',
    'reading/first-without-final',
    'Type the last numbers of the old meter',
    ['final', 'first', undefined],
  ],
] as const)('adds what is missing beside a %s reading', (event, code, label, events) => {
  const readings = [{ date: '2025-04-16', event, generation: '5' }, { date: '' }];
  const held = { ...household, readings };
  const finding = readingFinding(code, { path: ['readings', 0, 'event'] }, { meter: 'generation' });
  const [add] = fixesFor(finding, held, writing);
  expect(add?.label).toBe(label);
  const rows = add?.apply(held).readings ?? [];
  expect(rows.map((row) => row.event)).toEqual(events);
  expect(rows.map(({ date }) => date).slice(0, 2)).toEqual(['2025-04-16', '2025-04-16']);
});

it('takes out a rate that the account does not know', () => {
  const held = { ...household, readings: [{ date: '', import: '1', rates: { import: { '3': '5' } } }] };
  const path = ['readings', 0, 'rates', 'import', '3'];
  const [out] = fixesFor(readingFinding('reading/unknown-rate', { path }, { rate: '3' }), held, writing);
  expect(out?.apply(held).readings).toEqual([{ date: '', import: '1' }]);
});

it('answers a question about a rate under the key of the rate, and uses its offer there', () => {
  const path = ['readings', 1, 'rates', 'import', '2'];
  const finding = readingFinding('reading/large-advance', { path, offer: '4.5' }, { offer: '4.5' });
  const [use, keep] = fixesFor(finding, household, writing);
  expect(use?.apply(household).readings[1]?.rates).toEqual({ import: { '2': '4.5' } });
  expect(keep?.apply(household).readings[1]?.confirmed).toEqual(['reading/large-advance:import-2']);
});

it('swaps the rates of import and export with their totals', () => {
  const row = { date: '', import: '1', export: '2', rates: { import: { '1': '3' }, export: { '1': '4' } } };
  const held = { ...household, readings: [row] };
  const finding = readingFinding('reading/registers-swapped', { path: ['readings', 0, 'import'] });
  const [swap] = fixesFor(finding, held, writing);
  const swapped = {
    date: '',
    import: '2',
    export: '1',
    rates: { import: { '1': '4' }, export: { '1': '3' } },
  };
  expect(swap?.apply(held).readings).toEqual([swapped]);
});

it('leads to the blocks of the rates in the account', () => {
  const finding = energyFinding('energy/rate-without-block', { path: ['readings', 1] }, {});
  const [lead] = fixesFor(finding, household, writing);
  expect(lead?.focus).toBe('account-meters-grid-import-rates-0-block');
  expect(lead?.opens).toEqual(['account', 'meters', 'rates-meters-grid']);
});

it('takes the offered readings apart', () => {
  expect(offeredReadings('import rate 1 300, import rate T2 4640.1, export 5')).toEqual({
    'import-1': '300',
    'import-T2': '4640.1',
    export: '5',
  });
  expect(offeredReadings('import 4640.1, export 3151')).toEqual({ import: '4640.1', export: '3151' });
});
