import type { ReadingRow } from '@unitbook/engine';
import tariffText from './ledger-tariff.json?raw';

/**
 * An invented tariff without a passbook: units given are set off against units taken, what is left goes
 * into a bank of units that pays on 31 March, and a reward for every unit given into a ledger of money.
 */
export const LEDGER_TARIFF: string = tariffText;

/** Three months under it; what they come to is worked out where it is asserted. */
export const LEDGER_READINGS: readonly ReadingRow[] = [
  { date: '2025-02-01', import: '1000', export: '2000', generation: '3000' },
  { date: '2025-03-01', import: '1100', export: '2160', generation: '3250' },
  { date: '2025-04-01', import: '1210', export: '2230', generation: '3450' },
  { date: '2025-05-01', import: '1300', export: '2260', generation: '3600' },
];
