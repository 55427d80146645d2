import { isDecimalText, type FigureUnit } from '../quantity/index.ts';
import { QUANTITIES, quantityUnits, type TariffDocument } from '../tariff/index.ts';

/**
 * The quantities every tariff can name, in the order of the quantity vector, and `one`, which fixed
 * amounts are charged on. Those that a document adds stand behind them.
 */
export const QUANTITY_ORDER = [...QUANTITIES, 'one'] as const;

/** A quantity of a bill: one of the list, or one that the document gives a name. */
export type QuantityName = string;

/** Place of `one`, which a fixed amount is charged on. */
export const ONE: number = QUANTITY_ORDER.indexOf('one');

/** `one` in thousandths, as quantities are counted. */
export const ONE_THOUSANDTHS = 1000;

/** The balance of a money ledger stands in the vector under this name. */
export function ledgerName(ledger: string): string {
  return `ledger:${ledger}`;
}

/** The quantities that the lines of one version name. */
export interface NamedQuantities {
  readonly names: readonly string[];
  /** What each is counted in. */
  readonly units: readonly FigureUnit[];
}

const WHOLE: readonly FigureUnit[] = ['kW', 'kVA', 'class', 'money'];

/** Whether a quantity runs over the days of a period, so that parts of it have their share. */
export function isEnergy({ units }: NamedQuantities, index: number): boolean {
  return !WHOLE.includes(units[index] ?? 'kWh') && index !== ONE;
}

/** A list of quantities that grows as lines name new ones. */
export class QuantityList implements NamedQuantities {
  readonly names: string[] = [...QUANTITY_ORDER];
  readonly units: FigureUnit[];
  private readonly known: ReadonlyMap<string, { readonly unit: FigureUnit }>;

  constructor(document: TariffDocument) {
    const units = document.settlements.flatMap((rule) => [...quantityUnits(document, rule)]);
    this.known = new Map(units);
    this.units = this.names.map((name) => this.unitOf(name));
  }

  private unitOf(name: string): FigureUnit {
    if (name.startsWith('ledger:')) return 'money';
    return this.known.get(name)?.unit ?? 'kWh';
  }

  /** Place of a quantity in the vector. */
  indexOf(name: string): number {
    if (isDecimalText(name)) throw new RangeError(`"${name}" is no quantity`);
    const at = this.names.indexOf(name);
    if (at >= 0) return at;
    this.units.push(this.unitOf(name));
    return this.names.push(name) - 1;
  }
}
