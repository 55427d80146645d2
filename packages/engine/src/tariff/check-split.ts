import type { Finding, Path } from '../quantity/index.ts';
import { tariffFinding } from './findings.ts';
import type { Charge, TariffDocument } from './schema.ts';

/** Whether a charge is stated for a whole period: an amount, a power or limits, but no plain rate per unit. */
function isForWholePeriod(charge: Charge): boolean {
  switch (charge.kind) {
    case 'percentage':
    case 'credit':
      return false;
    case 'per-unit':
      return charge.firstUnits !== undefined;
    case 'slabs':
      return charge.slabs.length > 1;
    default:
      return true;
  }
}

/** Whether each part of a period that is split would bear a charge in full. */
export function isBorneInFull(charge: Charge): boolean {
  return isForWholePeriod(charge) && !('scaledBy' in charge && charge.scaledBy !== undefined);
}

/** Where a period is split at a change, each part would bear in full what no day rule scales. */
export function splitUnscaled(
  charge: Charge,
  { versionChange, versions, seasons }: TariffDocument,
  path: Path,
): Finding[] {
  if (versionChange.rule !== 'split-by-days') return [];
  if ((versions.length < 2 && seasons === undefined) || !isBorneInFull(charge)) return [];
  return [tariffFinding('tariff/split-unscaled', { path }, { id: charge.id })];
}
