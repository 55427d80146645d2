import {
  checkAccountBills,
  exactText,
  readAccount,
  readPrintedBill,
  readTariff,
  type CheckedBill,
  type CheckOptions,
  type DayNumber,
  type PrintedBillDocument,
  type ReadingRow,
} from '@unitbook/engine';
import shopText from '../../tariffs-examples/tarumira/taresco-shop/tariff.json?raw';
import domesticText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';

/** A tariff of the reference: its text, and what its lines come to for so many units billed, in coins. */
export interface ReferenceTariff {
  readonly text: string;
  /** kW. */
  readonly load: string;
  readonly factor: string;
  readonly lines: (billed: number, imported: number) => Readonly<Record<string, number>>;
}

/** Limits and rates in coins of "Why a net-metered bill is wrong" (project reference, 2025), clause 4.2. */
const SLABS: readonly (readonly [number, number, number])[] = [
  [0, 50, 300],
  [50, 150, 480],
  [150, 300, 650],
  [300, Infinity, 800],
];

const energyOf = (units: number): number =>
  SLABS.reduce((sum, [from, to, rate]) => sum + Math.max(0, Math.min(units, to) - from) * rate, 0);

/** Six percent of coins, half up. */
const tax = (energy: number): number => Math.floor((energy * 6 + 50) / 100);

/** D-1 with 4 kW: fixed 4 × 60, fuel 0.40, tax 6 % of energy, subsidy 1.50 on the first 50. */
export const DOMESTIC: ReferenceTariff = {
  text: domesticText,
  load: '4',
  factor: '1',
  lines: (billed) => ({
    fixed: 24_000,
    energy: energyOf(billed),
    fuel: billed * 40,
    tax: tax(energyOf(billed)),
    subsidy: -150 * Math.min(50, billed),
  }),
};

/** C-1 with 12 kW: fixed 12 × 110, energy 7.00, fuel 0.40, tax 6 %. The reference counts tenths, and cuts nothing. */
export const SHOP: ReferenceTariff = {
  text: JSON.stringify({
    ...(JSON.parse(shopText) as Record<string, unknown>),
    units: { clause: 'NMR-2021 r. 7.1', decimals: '1', rounding: 'down', roundedAt: 'difference' },
  }),
  load: '12',
  factor: '20',
  lines: (billed) => ({
    fixed: 132_000,
    energy: billed * 700,
    fuel: billed * 40,
    tax: tax(billed * 700),
  }),
};

/** A version of the domestic tariff whose charges are changed. */
export function domesticWith(
  change: (charge: Record<string, unknown>) => Record<string, unknown>,
  more: readonly Record<string, unknown>[] = [],
): string {
  const tariff = JSON.parse(domesticText) as { versions: { charges: Record<string, unknown>[] }[] };
  const versions = tariff.versions.map((version) => ({
    ...version,
    charges: [...version.charges.map(change), ...more],
  }));
  return JSON.stringify({ ...tariff, versions });
}

/** What a utility prints of one of these bills. */
export interface Paper {
  readonly from?: string;
  readonly to?: string;
  /** Both ends by register. */
  readonly readings: Readonly<Record<string, readonly [string, string]>>;
  readonly imported: number;
  readonly exported: number;
  readonly generation?: number;
  readonly opening: number;
  readonly status?: 'actual' | 'estimated';
  readonly serial?: string;
  readonly factor?: string;
}

const decimal = (numerator: number, denominator: number): string => exactText(numerator, denominator);
const coins = (amount: number): string => decimal(amount, 100);
const unitsText = (units: number): string => decimal(Math.round(units * 10), 10);

/** Billed and carried forward: clause 7.1 of the reference. */
function netted({ imported, exported, opening }: Paper): { billed: number; closing: number } {
  const net = imported - exported - opening;
  return { billed: Math.max(0, net), closing: Math.max(0, -net) };
}

/** A bill with everything that a utility prints, worked out here by the rules of the reference, not by the engine. */
export function printed(paper: Paper, tariff: ReferenceTariff): PrintedBillDocument {
  const { from = '2025-05-01', to = '2025-05-31', imported, exported, generation, opening } = paper;
  const { billed, closing } = netted(paper);
  const lines = tariff.lines(billed, imported);
  const sum = Object.values(lines).reduce((total, amount) => total + amount, 0);
  const payable = Math.floor((sum + 50) / 100) * 100;
  return {
    from,
    to,
    readings: Object.fromEntries(
      Object.entries(paper.readings).map(([key, [previous, present]]) => [key, { previous, present }]),
    ),
    units: {
      import: unitsText(imported),
      export: unitsText(exported),
      ...(generation === undefined ? {} : { generation: unitsText(generation) }),
      billed: unitsText(billed),
    },
    opening: { credit: unitsText(opening) },
    closing: { credit: unitsText(closing) },
    lines: Object.entries(lines).map(([charge, amount]) => ({ charge, amount: coins(amount) })),
    sum: coins(sum),
    payable: coins(payable),
    ...(paper.status === undefined ? {} : { status: paper.status }),
    ...(paper.serial === undefined ? {} : { serials: { grid: paper.serial } }),
    ...(paper.factor === undefined ? {} : { factor: paper.factor }),
  };
}

const REGISTER = { digits: '5', decimals: '1' };

/** The account of the examples: a two-way meter and a generation meter. */
export function accountOf(
  { load, factor }: Pick<ReferenceTariff, 'load' | 'factor'>,
  { opening = '0', later }: { readonly opening?: string; readonly later?: string } = {},
): Record<string, unknown> {
  const meter = { multiplyingFactor: factor, import: REGISTER, export: REGISTER };
  return {
    format: 'unitbook-account-1',
    id: 'TAR-30-00417',
    sanctionedLoad: load,
    plantCapacity: '5',
    openingCredit: opening,
    meters: {
      grid: {
        serial: 'PB-77120',
        ...meter,
        ...(later === undefined ? {} : { later: [{ from: later, serial: 'PB-90001', ...meter }] }),
      },
      generation: { serial: 'GN-40316', multiplyingFactor: '1', generation: REGISTER },
    },
  };
}

/** What bills are checked against. */
export interface Known {
  readonly tariff: string;
  readonly account: Record<string, unknown>;
  readonly readings: readonly ReadingRow[];
  readonly connected?: DayNumber | null;
}

/** Check printed bills of an account. */
export function checkBills(
  { tariff: text, account: document, readings, connected = null }: Known,
  bills: readonly PrintedBillDocument[],
  options: CheckOptions = {},
): readonly CheckedBill[] {
  const account = readAccount(JSON.stringify(document));
  const tariff = readTariff(text);
  if (account.value === null || tariff.value === null)
    throw new Error(JSON.stringify([account.findings, tariff.findings]));
  const read = bills.map((bill, at) => readPrintedBill(bill, ['bills', at]).value);
  const input = { account: account.value, tariff: tariff.value, readings, connected };
  const checked = checkAccountBills({ ...input, bills: read.filter((bill) => bill !== null) }, options);
  // Without own readings the account has none to be made of: those of the bills are taken.
  const errors = readings.length === 0 ? [] : checked.findings.filter(({ severity }) => severity === 'error');
  if (errors.length > 0) throw new Error(JSON.stringify(errors));
  return checked.bills;
}

/** An exact figure as text. */
export const text = (
  value: { readonly numerator: number | bigint; readonly denominator: number } | null | undefined,
): string => (value == null ? 'none' : exactText(value.numerator, value.denominator));
