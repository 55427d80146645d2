import type { TariffDocument } from '../tariff/index.ts';
import { nameIn } from './figure-names.ts';

const PLAIN: Readonly<Record<string, string>> = {
  days: 'Days',
  factor: 'Multiplying factor',
  load: 'Sanctioned load',
  arrears: 'Arrears',
  'late-fee': 'Late fee',
  adjustment: 'Adjustment',
  sum: 'Sum of the lines',
  rounding: 'Rounding',
  payable: 'To be paid',
  'line.surplus': 'Surplus paid',
  'opening.credit': 'Credit brought forward',
  'closing.credit': 'Credit carried forward',
  'units.import': 'Units taken',
  'units.export': 'Units given',
  'units.generation': 'Units made',
  'units.billed': 'Units billed',
  'units.self-consumption': 'Units used straight from the roof',
  'units.total-use': 'Units used in all',
};

const CHANNELS: Readonly<Record<string, string>> = {
  import: 'Import',
  export: 'Export',
  generation: 'Generation',
};

/** "Import register, rate 1", "Export register". */
function registerLabel(key: string): string {
  const [channel = '', rate] = key.split('-');
  const words = `${CHANNELS[channel] ?? channel} register`;
  return rate === undefined ? words : `${words}, rate ${rate}`;
}

/** "Import register, now", of "import.present" */
function readingLabel(end: string): string {
  const [key = '', when = ''] = end.split('.');
  return `${registerLabel(key)}, ${when === 'previous' ? 'before' : 'now'}`;
}

/** "Units taken, peak hours" */
function unitsLabel(name: string, { timeBlocks, measures }: TariffDocument): string {
  const [channel = '', block] = name.split('@');
  if (block === undefined) return measures?.[name]?.label ?? `Units: ${name}`;
  const blockLabel = timeBlocks?.blocks.find(({ id }) => id === block)?.label ?? block;
  return `${PLAIN[`units.${channel}`] ?? channel}, ${blockLabel.toLowerCase()}`;
}

function ledgerLabel(id: string, end: string, { settlements }: TariffDocument): string {
  const ledgers = settlements.flatMap((rule) => (rule.scheme === 'ledgers' ? (rule.ledgers ?? []) : []));
  const label = ledgers.find((ledger) => ledger.id === id)?.label ?? id;
  return `${label}, ${end === 'opening' ? 'brought' : 'carried'} forward`;
}

function chargeLabel(id: string, { versions }: TariffDocument): string {
  const charges = versions.flatMap(({ charges: own }) => own);
  return charges.findLast((charge) => charge.id === id)?.label ?? id;
}

/**
 * What a figure of a bill is called, in the words of the tariff where it has some.
 *
 * @example
 * figureLabel('reading.import.present', { versions: [], settlements: [] }) //=> "Import register, now"
 */
export function figureLabel(name: string, tariff: TariffDocument): string {
  const plain = PLAIN[name];
  if (plain !== undefined) return plain;
  const [group = ''] = name.split('.');
  const id = nameIn(name);
  switch (group) {
    case 'reading':
      return readingLabel(id);
    case 'units':
      return unitsLabel(id, tariff);
    case 'line':
      return chargeLabel(id, tariff);
    case 'opening':
    case 'closing':
      return ledgerLabel(id, group, tariff);
    default:
      return name;
  }
}
