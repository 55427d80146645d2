import {
  figureLabel,
  inForceDuring,
  parseDay,
  type Charge,
  type PrintedBillDocument,
  type Register,
  type Tariff,
  type TariffDocument,
} from '@unitbook/engine';
import { keptDay } from '../../plant/document/typed-texts.ts';
import type { BillField, BillGroup } from './bill-fields.ts';

/** What a bill can print hangs on its tariff and its meters. */
export interface BillForm {
  readonly bill: PrintedBillDocument;
  /** null while no tariff lies open. */
  readonly tariff: Tariff | null;
  /** None while the account cannot be read. */
  readonly registers: readonly Register[];
}

/** Amounts of money have coins. */
export const MONEY = { is: 'number', places: 2 } as const;
const NO_TARIFF = { versions: [], settlements: [] } as unknown as TariffDocument;

/** What a figure is called, in the words of the tariff where it has some. */
export const labelOf = (name: string, { tariff }: BillForm): string =>
  figureLabel(name, tariff?.document ?? NO_TARIFF);

const HEAD: readonly BillField[] = [
  { path: ['number'], label: 'Bill number', is: 'text' },
  { path: ['account'], label: 'Account number', is: 'text' },
  { path: ['category'], label: 'Category', hint: 'such as D-1', is: 'text' },
  { path: ['load'], label: 'Sanctioned load, kW', is: 'number', places: 3, figure: 'load' },
  { path: ['serials', 'grid'], label: 'Number of the two-way meter', is: 'text' },
  { path: ['serials', 'generation'], label: 'Number of the generation meter', is: 'text' },
  { path: ['factor'], label: 'Multiplying factor', is: 'number', places: 3, figure: 'factor' },
  { path: ['issued'], label: 'Day of the bill', is: 'day' },
];

const DATES: readonly BillField[] = [
  {
    path: ['from'],
    label: 'Reading before, day',
    hint: 'the previous reading date',
    is: 'day',
    isWanted: true,
  },
  { path: ['to'], label: 'Reading now, day', hint: 'the present reading date', is: 'day', isWanted: true },
  { path: ['days'], label: 'Days', is: 'number', places: 0, figure: 'days' },
];

/** Registers of which nothing is known yet: those of a house with a plant. */
const USUAL = ['import', 'export', 'generation'] as const;

function readingFields(form: BillForm): readonly BillField[] {
  const known = form.registers.map(({ key, decimals }) => ({ key, places: decimals }));
  const registers = known.length > 0 ? known : USUAL.map((key) => ({ key, places: 3 }));
  return registers.flatMap(({ key, places }) =>
    (['previous', 'present'] as const).map((end): BillField => {
      const figure = `reading.${key}.${end}`;
      return { path: ['readings', key, end], label: labelOf(figure, form), is: 'number', places, figure };
    }),
  );
}

/** Units of a bill: of each channel, of each block where the tariff has some, and what is billed. */
function unitFields(form: BillForm): readonly BillField[] {
  const blocks = form.tariff?.document.timeBlocks?.blocks ?? [];
  const names = [
    ...USUAL,
    ...(['import', 'export'] as const).flatMap((channel) => blocks.map(({ id }) => `${channel}@${id}`)),
    'billed',
  ];
  const places = Math.max(0, ...form.registers.map(({ decimals }) => decimals));
  return names.map((name): BillField => {
    const figure = `units.${name}`;
    return {
      path: ['units', name],
      label: labelOf(figure, form),
      is: 'number',
      places: form.registers.length === 0 ? 3 : places,
      figure,
    };
  });
}

/** The balances that a bill hands on: of unit netting, or of each ledger. */
function creditFields(form: BillForm): readonly BillField[] {
  const rules = form.tariff?.document.settlements ?? [];
  const ledgers = rules.flatMap((rule) => (rule.scheme === 'ledgers' ? (rule.ledgers ?? []) : []));
  const ids = [...new Set(ledgers.map(({ id }) => id))];
  const isNetting = ids.length === 0 || rules.some(({ scheme }) => scheme === 'unit-netting');
  const all = isNetting ? ['credit', ...ids] : ids;
  return all.flatMap((id) =>
    (['opening', 'closing'] as const).map((end): BillField => {
      const figure = `${end}.${id}`;
      return { path: [end, id], label: labelOf(figure, form), is: 'credit', places: 2, figure };
    }),
  );
}

/** The charges of a bill: of the versions in force in its period, or of all while that is not typed. */
export function chargesOf({ bill, tariff }: BillForm): readonly Charge[] {
  const [from, to] = [parseDay(keptDay(bill.from)), parseDay(keptDay(bill.to))];
  const versions = tariff?.versions ?? [];
  const inForce = from === null || to === null ? [] : inForceDuring(versions, { from, to });
  const charges = (inForce.length > 0 ? inForce : versions).flatMap(({ item }) => item.charges);
  return charges.filter(({ id }, at) => charges.findIndex((other) => other.id === id) === at);
}

/** What a slab of the energy charge prints. */
export function slabFields(at: number): readonly BillField[] {
  const what = `Part ${String(at + 1)}`;
  return [
    { path: ['slabs', at, 'units'], label: `${what}: units`, is: 'number', places: 2 },
    { path: ['slabs', at, 'rate'], label: `${what}: rate`, is: 'number', places: 4 },
    { path: ['slabs', at, 'amount'], label: `${what}: amount`, ...MONEY },
  ];
}

const ACCOUNT: readonly BillField[] = [
  { path: ['arrears'], label: 'Arrears', ...MONEY, figure: 'arrears' },
  { path: ['lateFee'], label: 'Late fee', ...MONEY, figure: 'late-fee' },
  { path: ['adjustment'], label: 'Adjustment', ...MONEY, figure: 'adjustment' },
  { path: ['sum'], label: 'Sum of the lines', ...MONEY, figure: 'sum' },
  { path: ['rounding'], label: 'Rounding', ...MONEY, figure: 'rounding' },
  { path: ['payable'], label: 'To be paid', ...MONEY, figure: 'payable' },
];

const PAID: readonly BillField[] = [
  { path: ['due'], label: 'To be paid until', is: 'day' },
  { path: ['paid', 'on'], label: 'Paid on', hint: 'from your receipt', is: 'day' },
  { path: ['paid', 'amount'], label: 'Amount that was paid', ...MONEY },
];

/** The parts of a bill in the order of paper, all but its charges and slabs. */
export function billGroups(form: BillForm): readonly BillGroup[] {
  return [
    { key: 'head', title: 'Account and meter', fields: HEAD },
    { key: 'dates', title: 'Reading dates', fields: DATES },
    { key: 'readings', title: 'Readings', fields: readingFields(form) },
    { key: 'units', title: 'Units', fields: unitFields(form) },
    { key: 'credit', title: 'Credit', fields: creditFields(form) },
    { key: 'account', title: 'Account and total', fields: ACCOUNT },
    { key: 'paid', title: 'Payment', fields: PAID },
  ];
}
