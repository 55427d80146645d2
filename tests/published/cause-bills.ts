import {
  checkAccountBills,
  exactText,
  readAccount,
  readPrintedBill,
  readTariff,
  type Cause,
  type CauseContext,
  type CheckedBill,
  type PrintedBillDocument,
  type RunBasis,
  type Tariff,
} from '@unitbook/engine';
import domesticText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import shopText from '../../tariffs-examples/tarumira/taresco-shop/tariff.json?raw';

/** The tariff D-1 of the examples, as a text. */
export const DOMESTIC: string = domesticText;
/** The tariff C-1 of the examples, as a text. */
export const SHOP: string = shopText;

/** An account and the bills that were printed for it; whatever is left out is that of the base month. */
export interface Case {
  readonly tariff?: string;
  readonly others?: readonly string[];
  readonly load?: string;
  readonly opening?: string;
  readonly bills: readonly PrintedBillDocument[];
}

function tariffOf(text: string): Tariff {
  const { value, findings } = readTariff(text);
  if (value === null) throw new Error(`a tariff of the test cannot be read: ${findings[0]?.found ?? ''}`);
  return value;
}

const register = { digits: '5', decimals: '0' };

function accountOf({ load = '4', opening = '35' }: Case) {
  const account = readAccount(
    JSON.stringify({
      format: 'unitbook-account-1',
      id: 'base-month',
      sanctionedLoad: load,
      plantCapacity: '5',
      openingCredit: opening,
      meters: {
        grid: { serial: 'G-1', multiplyingFactor: '1', import: register, export: register },
        generation: { serial: 'M-1', multiplyingFactor: '1', generation: register },
      },
    }),
  ).value;
  if (account === null) throw new Error('the account of the test cannot be read');
  return account;
}

/**
 * Check the bills of a case.
 *
 * @param causes  left out: every cause there is
 * @returns       every bill, in order
 */
export function checkCase(one: Case, causes?: readonly Cause[]): readonly CheckedBill[] {
  const bills = one.bills.map((bill, at) => {
    const { value, findings } = readPrintedBill(bill, ['bills', at]);
    if (value === null) throw new Error(`a bill of the test cannot be read: ${findings[0]?.found ?? ''}`);
    return value;
  });
  return checkAccountBills(
    {
      account: accountOf(one),
      tariff: tariffOf(one.tariff ?? DOMESTIC),
      otherTariffs: (one.others ?? []).map(tariffOf),
      readings: [],
      bills,
    },
    causes === undefined ? {} : { causes },
  ).bills;
}

/** The last bill of a case. */
export function checkLast(one: Case, causes?: readonly Cause[]): CheckedBill {
  const last = checkCase(one, causes).at(-1);
  if (last === undefined) throw new Error('the case has no bill');
  return last;
}

/** A quotient as a text; "none" where there is none. */
export function textOf(
  value: { readonly numerator: number | bigint; readonly denominator: number } | null | undefined,
): string {
  return value == null ? 'none' : exactText(value.numerator, value.denominator);
}

/** The ids of the causes of each explanation, joined. */
export function explainedBy({ explanations }: CheckedBill): readonly string[] {
  return explanations.map(({ attempt }) => attempt.steps.map(({ cause }) => cause.id).join(' + '));
}

/** What was printed of a base month: units and credit as they should be, unless told otherwise. */
export interface Paper {
  readonly from?: string;
  readonly to?: string;
  readonly units?: Readonly<Record<string, string>>;
  readonly opening?: string;
  readonly billed: string;
  readonly lines: Readonly<Record<string, string>>;
  readonly sum: string;
  readonly payable: string;
}

/** A bill of the base month: 30 days of May 2025, 412 taken, 278 given, 580 made, 35 brought forward. */
export function paper({ billed, lines, sum, payable, ...rest }: Paper): PrintedBillDocument {
  const { from = '2025-05-01', to = '2025-05-31', opening = '35' } = rest;
  const { units = { import: '412', export: '278', generation: '580' } } = rest;
  return {
    from,
    to,
    units: { ...units, billed },
    opening: { credit: opening },
    lines: Object.entries(lines).map(([charge, amount]) => ({ charge, amount })),
    sum,
    payable,
  };
}

const NOTHING = { ledgers: {}, past: [], payments: [] };

/** An account of its first period, with nothing brought forward. */
export const FROM_NOTHING: RunBasis = {
  account: {},
  carried: {
    credit: {
      kind: 'given',
      id: 'opening',
      label: 'Credit brought forward',
      unit: 'kWh',
      numerator: 0,
      denominator: 1000,
      clause: 'test',
    } as unknown as RunBasis['carried']['credit'],
    payment: null,
    chains: { actual: NOTHING, withoutExport: NOTHING, withoutSolar: NOTHING },
  },
};

/** Nothing is known besides the facts of the bill. */
export const NOTHING_KNOWN: CauseContext = {
  printed: new Map(),
  status: null,
  before: null,
  printedBefore: null,
  closingBefore: null,
  otherTariffs: [],
  connected: null,
  paidBefore: undefined,
  serials: {},
};
