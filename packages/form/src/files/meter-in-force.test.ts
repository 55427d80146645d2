import { expect, it } from 'vitest';
import { emptyHousehold } from '../household/household.ts';
import { otherMeters, registerOf } from './meter-in-force.ts';

const { account: ACCOUNT } = emptyHousehold('en-IN');
const { grid } = ACCOUNT.meters;
const withSerial = (serial: string): typeof ACCOUNT => ({
  ...ACCOUNT,
  meters: { ...ACCOUNT.meters, grid: { ...grid, serial } },
});

it('knows a meter by its serial number, however it is written', () => {
  expect(otherMeters(['K8EG-004'], withSerial('k8eg 004'))).toEqual([]);
  expect(otherMeters(['004'], withSerial('K8EG004'))).toEqual([]);
  expect(otherMeters(['K8EG005', 'K8EG005'], withSerial('K8EG004'))).toEqual(['K8EG005']);
});

it('says nothing where the file or the account names no meter', () => {
  expect(otherMeters([''], withSerial('K8EG004'))).toEqual([]);
  expect(otherMeters(['K8EG005'], withSerial(' '))).toEqual([]);
});

it('takes no readings for readings of one meter', () => {
  const later = [{ ...grid, from: '2025-04-16' }];
  const account = { ...ACCOUNT, meters: { ...ACCOUNT.meters, grid: { ...grid, later } } };
  expect(registerOf([], account, 'import').isChanged).toBe(false);
});
