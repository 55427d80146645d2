import {
  subtractQuotients,
  givenFigure,
  NumberTooLarge,
  renamedFigure,
  type Figure,
  type Finding,
  type Outcome,
  type Path,
} from '../quantity/index.ts';
import {
  billFinding,
  billPeriod,
  type Bill,
  type BillQuantities,
  type PreparedTariff,
} from '../bill/index.ts';
import type { EnergyPeriod } from '../energy/index.ts';
import type { Account } from '../readings/index.ts';
import type { PassbookEntry, SurplusPayment } from '../settlement/index.ts';

/** A month's bills and what solar saved in it. */
export interface MonthBills {
  /** The bill of the household as it is. */
  readonly bill: Bill;
  /** The same tariff with the whole use taken from the grid; null where total use is not known. */
  readonly withoutSolar: Bill | null;
  readonly savings: Savings | null;
}

/** What solar saved, exactly: `saving = fromSelfConsumption + fromExport`. */
export interface Savings {
  /** Payable without solar less payable with it. */
  readonly saving: Figure;
  /** Payable without solar less payable with the plant but no credit for export. */
  readonly fromSelfConsumption: Figure;
  /** Payable with no credit for export less payable: set-off, credit brought forward and surplus paid. */
  readonly fromExport: Figure;
  /** The bill with the plant but no credit for export. */
  readonly withoutExport: Bill;
}

/** What a month is billed from. */
export interface MonthInput {
  readonly account: Account;
  readonly entry: PassbookEntry;
  readonly payments: readonly SurplusPayment[];
  readonly path: Path;
}

const NONE: readonly never[] = [];

function power(id: 'sanctioned-load' | 'plant-capacity', watts: number): Figure {
  const label = id === 'sanctioned-load' ? 'Sanctioned load' : 'Plant capacity';
  return givenFigure({ id, label, unit: 'kW', numerator: watts, denominator: 1000, clause: 'account' });
}

const noUnits = (id: string, label: string): Figure =>
  givenFigure({ id, label, unit: 'kWh', numerator: 0, denominator: 1000, clause: '' });

function known(energy: EnergyPeriod): BillQuantities {
  const { generation, selfConsumption, totalUse } = energy;
  return {
    ...(generation === null ? {} : { generation }),
    ...(selfConsumption === null ? {} : { 'self-consumption': selfConsumption }),
    ...(totalUse === null ? {} : { 'total-use': totalUse }),
  };
}

function withSolar({ account, entry }: MonthInput): BillQuantities {
  return {
    billed: entry.billed,
    import: entry.imported,
    export: entry.exported,
    ...known(entry.energy),
    'sanctioned-load': power('sanctioned-load', account.sanctionedLoad),
    'plant-capacity': power('plant-capacity', account.plantCapacity),
  };
}

/** The plant as it is, but nothing given to the grid counts. */
function withoutExport(input: MonthInput): BillQuantities {
  const words = { id: 'billed', label: 'Units billed if export did not count' };
  const billed = renamedFigure(input.entry.imported, words);
  return { ...withSolar(input), billed, export: noUnits('export', 'Units given to the grid') };
}

/** No plant: the whole use is taken from the grid. */
function withoutSolar(totalUse: Figure, account: Account): BillQuantities {
  return {
    billed: renamedFigure(totalUse, { id: 'billed', label: 'Units billed without solar' }),
    import: renamedFigure(totalUse, { id: 'import', label: 'Units taken from the grid, without solar' }),
    export: noUnits('export', 'Units given to the grid'),
    generation: noUnits('generation', 'Units the plant made'),
    'self-consumption': noUnits('self-consumption', 'Units used straight from the roof'),
    'total-use': totalUse,
    'sanctioned-load': power('sanctioned-load', account.sanctionedLoad),
    'plant-capacity': power('plant-capacity', 0),
  };
}

/** One payable less another. */
function less(id: string, label: string, first: Figure, second: Figure): Figure {
  const { numerator, denominator } = subtractQuotients(first, second);
  return {
    id,
    label,
    unit: 'money',
    numerator,
    denominator,
    operation: 'difference',
    inputs: [first, second],
    parameters: NONE,
    rounding: null,
    clause: '',
  };
}

function savingsOf(bill: Bill, without: Bill, noExport: Bill): Savings {
  return {
    saving: less('saving', 'What solar saved', without.payable, bill.payable),
    fromSelfConsumption: less('saving-self', 'Saved by own use', without.payable, noExport.payable),
    fromExport: less('saving-export', 'Saved by export', noExport.payable, bill.payable),
    withoutExport: noExport,
  };
}

/**
 * Bill a month, and beside it the bill without solar and what lies between the two.
 *
 * Savings compare payable amounts, so that they are what the household really keeps. They are null, and
 * so is the bill without solar, where total use is not known.
 */
export function billMonth(prepared: PreparedTariff, input: MonthInput): Outcome<MonthBills | null> {
  const { account, entry, payments, path } = input;
  const { period, totalUse } = entry.energy;
  const billed = billPeriod(prepared, { period, quantities: withSolar(input), payments, path });
  if (billed.value === null) return { value: null, findings: billed.findings };
  if (totalUse === null)
    return { value: { bill: billed.value, withoutSolar: null, savings: null }, findings: billed.findings };
  const without = billPeriod(prepared, {
    period,
    quantities: withoutSolar(totalUse, account),
    payments: NONE,
    path,
  });
  const noExport = billPeriod(prepared, { period, quantities: withoutExport(input), payments: NONE, path });
  const findings: readonly Finding[] = [...billed.findings, ...without.findings, ...noExport.findings];
  if (without.value === null || noExport.value === null) {
    return { value: { bill: billed.value, withoutSolar: null, savings: null }, findings };
  }
  const bills = { bill: billed.value, withoutSolar: without.value };
  try {
    return { value: { ...bills, savings: savingsOf(billed.value, without.value, noExport.value) }, findings };
  } catch (error) {
    if (!(error instanceof NumberTooLarge)) throw error;
    const finding = billFinding('bill/too-large', { path }, { charge: 'What solar saved' });
    return { value: { ...bills, savings: null }, findings: [...findings, finding] };
  }
}
