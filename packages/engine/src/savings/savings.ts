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
  type QuantityChange,
} from '../bill/index.ts';
import type { EnergyPeriod } from '../energy/index.ts';
import type { PassbookEntry, SurplusPayment } from '../settlement/index.ts';
import { powerFigures, type AccountPowers } from './power-figure.ts';

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
  readonly account: AccountPowers;
  readonly entry: PassbookEntry;
  readonly payments: readonly SurplusPayment[];
  /** Quantities besides those of the energy, such as a demand that was measured; left out: none. */
  readonly more?: BillQuantities;
  /** Powers and the like that changed inside the period; left out: none. */
  readonly changes?: readonly QuantityChange[];
  readonly path: Path;
  /** false: no bills besides the one there is; left out: what solar saved, too. */
  readonly withSavings?: boolean;
}

const NONE: readonly never[] = [];

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

function withSolar({ account, entry, more }: MonthInput): BillQuantities {
  return {
    ...more,
    billed: entry.billed,
    import: entry.imported,
    export: entry.exported,
    ...known(entry.energy),
    ...powerFigures(account),
  };
}

/** The plant as it is, but nothing given to the grid counts. */
function withoutExport(input: MonthInput): BillQuantities {
  const words = { id: 'billed', label: 'Units billed if export did not count' };
  const billed = renamedFigure(input.entry.imported, words);
  return { ...withSolar(input), billed, export: noUnits('export', 'Units given to the grid') };
}

/** No plant: the whole use is taken from the grid. */
function withoutSolar(totalUse: Figure, { account, more }: MonthInput): BillQuantities {
  return {
    ...more,
    billed: renamedFigure(totalUse, { id: 'billed', label: 'Units billed without solar' }),
    import: renamedFigure(totalUse, { id: 'import', label: 'Units taken from the grid, without solar' }),
    export: noUnits('export', 'Units given to the grid'),
    generation: noUnits('generation', 'Units the plant made'),
    'self-consumption': noUnits('self-consumption', 'Units used straight from the roof'),
    'total-use': totalUse,
    ...powerFigures({ ...account, plantCapacity: 0 }),
  };
}

/** Changes of the account where there is no plant. */
export function changesWithoutPlant(changes: readonly QuantityChange[]): readonly QuantityChange[] {
  return changes.map(({ from, quantities }) => {
    const others = Object.entries(quantities).filter(([name]) => name !== 'plant-capacity');
    return { from, quantities: Object.fromEntries(others) };
  });
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

/** What lies between three bills of a period: as it is, without solar, and with export that counts for nothing. */
export function savingsOf(bill: Bill, without: Bill, noExport: Bill): Savings {
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
  const { entry, payments, changes = NONE, path } = input;
  const { period, totalUse } = entry.energy;
  const billed = billPeriod(prepared, { period, quantities: withSolar(input), payments, changes, path });
  if (billed.value === null) return { value: null, findings: billed.findings };
  if (totalUse === null || input.withSavings === false || prepared.isSavingUnclear)
    return { value: { bill: billed.value, withoutSolar: null, savings: null }, findings: billed.findings };
  const without = billPeriod(prepared, {
    period,
    quantities: withoutSolar(totalUse, input),
    payments: NONE,
    changes: changesWithoutPlant(changes),
    path,
  });
  const noExport = billPeriod(prepared, {
    period,
    quantities: withoutExport(input),
    payments: NONE,
    changes,
    path,
  });
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
