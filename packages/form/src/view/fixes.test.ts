import { readingFinding } from '@unitbook/engine';
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

it('takes the offered readings apart', () => {
  expect(offeredReadings('import 4640.1, export 3151')).toEqual({ import: '4640.1', export: '3151' });
});
