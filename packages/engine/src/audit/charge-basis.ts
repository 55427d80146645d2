import { parseDay } from '../quantity/index.ts';
import type { Charge, TariffDocument, TariffVersion } from '../tariff/index.ts';
import type { BillFacts } from './facts.ts';

/**
 * The units taken of which a quantity is what netting left; null: it is not what netting left of units taken.
 *
 * @example
 * grossOf('billed') //=> "import"
 * grossOf('net.import@peak') //=> "import@peak"
 * grossOf('total-use') //=> null
 */
export function grossOf(quantity: string): string | null {
  return quantity === 'billed' ? 'import' : (/^[^.]+\.(import.*)$/.exec(quantity)?.[1] ?? null);
}

/** A charge for units at one rate or in slabs. */
type UnitCharge = Extract<Charge, { kind: 'per-unit' | 'slabs' | 'slab-tables' }>;

/** Whether a charge is for units, at one rate or in slabs. */
export function isUnitCharge(charge: Charge): charge is UnitCharge {
  return charge.kind === 'per-unit' || charge.kind === 'slabs' || charge.kind === 'slab-tables';
}

/** Whether a charge makes the bill smaller: a subsidy, a rebate, a payment for units given. */
export function isNegative(charge: Charge): boolean {
  const numbers = 'steps' in charge ? (charge.steps ?? []) : [];
  const own = [
    'rate' in charge ? charge.rate : undefined,
    'amount' in charge ? charge.amount : undefined,
    'percent' in charge ? charge.percent : undefined,
    ...numbers.map((step) => ('amount' in step ? step.amount : step.percent)),
  ];
  return own.some((text) => text?.startsWith('-') === true);
}

/**
 * The charge that prices units netted: the first one for them, in slabs or at one rate.
 *
 * @returns null where the version has none
 */
export function energyCharge(charges: readonly Charge[]): UnitCharge | null {
  return charges.filter(isUnitCharge).find(({ on }) => grossOf(on) !== null) ?? null;
}

/** The versions of the charges in force on any day of the period, in the order of the document. */
export function versionsDuring({
  tariff,
  period,
}: Pick<BillFacts, 'tariff' | 'period'>): readonly TariffVersion[] {
  return tariff.versions.filter(({ from, through }) => {
    const first = parseDay(from) ?? period.to;
    const last = through === undefined ? null : parseDay(through);
    return first < period.to && (last === null || last >= period.from);
  });
}

/** Whether a quantity is of units given. */
const isOfExport = (quantity: string): boolean => quantity.startsWith('export');

/** Whether units given are set off against units taken, over the billing period or inside time blocks. */
export function netsUnits({ settlements }: Pick<TariffDocument, 'settlements'>): boolean {
  return settlements.some(
    (rule) =>
      rule.scheme === 'unit-netting' ||
      (rule.quantities ?? []).some((one) => one.is === 'netting' && one.supply.some(isOfExport)),
  );
}

/** Of the balances brought forward, those of units: of unit netting, and ledgers that are not of money. */
export function unitLedgers({ tariff, opening }: Pick<BillFacts, 'tariff' | 'opening'>): readonly string[] {
  const money = tariff.settlements.flatMap((rule) =>
    rule.scheme === 'unit-netting'
      ? []
      : (rule.ledgers ?? []).filter(({ unit }) => unit === 'money').map(({ id }) => id),
  );
  return Object.keys(opening).filter((id) => !money.includes(id));
}
