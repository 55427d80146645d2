import type { PrintedBillDocument, ReadingRow } from '@unitbook/engine';

// Two acceptance scenarios, in an invented place (2025), section 6.1: a household with 3 kW and 3.3 kWp, and two bills.

const register = { digits: '5', decimals: '1' };
/** The account, as a document. */
export const ACCOUNT = {
  format: 'unitbook-account-1',
  id: 'TAR-30-00417',
  sanctionedLoad: '3',
  plantCapacity: '3.3',
  openingCredit: '0',
  meters: {
    grid: { serial: 'PB-77120', multiplyingFactor: '1', import: register, export: register },
    generation: { serial: 'GN-40316', multiplyingFactor: '1', generation: register },
  },
};
/** Its own readings. */
export const READINGS: readonly ReadingRow[] = [
  { date: '2025-04-01', import: '4120.6', export: '2655.2', generation: '6890.4' },
  { date: '2025-05-01', import: '4342.1', export: '2935.8', generation: '7318.0' },
  { date: '2025-06-01', import: '4640.3', export: '3151.0', generation: '7689.7' },
];
/** The bill of April, which is right. */
export const APRIL: PrintedBillDocument = {
  from: '2025-04-01',
  to: '2025-05-01',
  units: { billed: '0' },
  closing: { credit: '58' },
  payable: '180',
  paid: { on: '2025-05-12', amount: '180' },
};
/** The bill of May: credit lost, and the fuel surcharge on all that was taken. */
export const MAY: PrintedBillDocument = {
  from: '2025-05-01',
  to: '2025-06-01',
  opening: { credit: '0' },
  units: { billed: '82' },
  lines: [
    { charge: 'fixed', amount: '180.00' },
    { charge: 'energy', amount: '303.60' },
    { charge: 'fuel', amount: '119.20' },
    { charge: 'tax', amount: '18.22' },
    { charge: 'subsidy', amount: '-75.00' },
  ],
  sum: '546.02',
  payable: '546',
  paid: { on: '2025-06-18', amount: '546' },
};
