import {
  checkAccountBills,
  exactText,
  readAccount,
  readPrintedBill,
  readTariff,
  type CheckedAccount,
  type CheckInput,
  type CheckOptions,
  type PrintedBillDocument,
  type Quotient,
  type ReadingRow,
} from '@unitbook/engine';
import tariffText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';

const register = { digits: '5', decimals: '0' };

/** The account of the base month of the project reference "causes", 2.1 (2026): 4 kW, 5 kWp, 35 units of credit. */
const BASE_ACCOUNT = {
  format: 'unitbook-account-1',
  id: 'TAR-40-00001',
  sanctionedLoad: '4',
  plantCapacity: '5',
  openingCredit: '35',
  meters: {
    grid: { serial: 'PB-77120', multiplyingFactor: '1', import: register, export: register },
    generation: { serial: 'GN-40316', multiplyingFactor: '1', generation: register },
  },
};

/** The base month, here from 1 to 31 May 2025, 30 days, and the month after it as under C07 of the same reference. */
const BASE_READINGS: readonly ReadingRow[] = [
  { date: '2025-05-01', import: '12480', export: '8310', generation: '15225' },
  { date: '2025-05-31', import: '12892', export: '8588', generation: '15805' },
  { date: '2025-06-30', import: '13257', export: '8900', generation: '16400' },
];

/** The days of both months, for printed bills. */
export const MAY = { from: '2025-05-01', to: '2025-05-31' } as const;
export const JUNE = { from: '2025-05-31', to: '2025-06-30' } as const;

/** What a test checks its bills with, where it is not the base month. */
export interface BaseTerms extends Partial<Pick<CheckInput, 'connected' | 'app'>> {
  readonly account?: object;
  readonly readings?: readonly ReadingRow[];
  /** A tariff as text, where it is not that of the base month. */
  readonly tariff?: string;
  readonly options?: CheckOptions;
}

/** Check printed bills of the base account. */
export function checkBase(
  bills: readonly PrintedBillDocument[],
  {
    account: changes = {},
    readings = BASE_READINGS,
    tariff: text = tariffText,
    options,
    ...more
  }: BaseTerms = {},
): CheckedAccount {
  const account = readAccount(JSON.stringify({ ...BASE_ACCOUNT, ...changes })).value;
  const tariff = readTariff(text).value;
  if (account === null || tariff === null) throw new Error('the example cannot be read');
  const read = bills.map((bill, at) => readPrintedBill(bill, ['bills', at]));
  const findings = read.flatMap((one) => one.findings);
  if (findings.length > 0) throw new Error(`a bill cannot be read: ${findings[0]?.found ?? ''}`);
  const printed = read.flatMap(({ value }) => value ?? []);
  return checkAccountBills({ account, tariff, readings, bills: printed, ...more }, options);
}

/** An exact value as text; "none" where there is none. */
export const textOf = (value: Quotient | null | undefined): string =>
  value == null ? 'none' : exactText(value.numerator, value.denominator);
