import type { Finding, Path } from '../quantity/index.ts';
import { tariffFinding } from './findings.ts';
import { quantityUnits } from './known-quantities.ts';
import type { QuantityUnit } from './quantity-schema.ts';
import type { Charge, TariffDocument } from './schema.ts';

/** Units that parts of a period have their share of. */
const SHARED: readonly (QuantityUnit | undefined)[] = ['kWh', 'kVAh', 'count'];

/** The unit of a quantity by its name. */
export type UnitOf = (name: string) => QuantityUnit | undefined;

/** Whether a charge is stated for a whole period: an amount, a power or limits, but no plain rate per unit. */
function isForWholePeriod(charge: Charge, unitOf: UnitOf): boolean {
  switch (charge.kind) {
    case 'percentage':
      return (
        charge.steps !== undefined &&
        charge.chosenBy !== undefined &&
        SHARED.includes(unitOf(charge.chosenBy))
      );
    case 'credit':
      return false;
    case 'per-unit':
      return charge.firstUnits !== undefined || !SHARED.includes(unitOf(charge.on));
    case 'slabs':
      return charge.slabs.length > 1 || !SHARED.includes(unitOf(charge.on));
    default:
      return true;
  }
}

/** Whether each part of a period that is split would bear a charge in full. */
export function isBorneInFull(charge: Charge, unitOf: UnitOf): boolean {
  return isForWholePeriod(charge, unitOf) && !('scaledBy' in charge && charge.scaledBy !== undefined);
}

/** Where a period is split at a change, each part would bear in full what no day rule scales. */
export function splitUnscaled(charge: Charge, document: TariffDocument, path: Path): Finding[] {
  const { versionChange, versions, seasons } = document;
  if (versionChange.rule !== 'split-by-days') return [];
  if (versions.length < 2 && seasons === undefined) return [];
  const units = new Map(document.settlements.flatMap((rule) => [...quantityUnits(document, rule)]));
  if (!isBorneInFull(charge, (name) => units.get(name)?.unit ?? 'kWh')) return [];
  return [tariffFinding('tariff/split-unscaled', { path }, { id: charge.id })];
}
