import { parseDay, type Finding, type Outcome, type Path, type Period } from './quantity/index.ts';
import type { QuantityChange } from './bill/index.ts';
import { periodFinding } from './period-findings.ts';
import type { UnitsPeriod } from './periods-document.ts';
import { readQuantities, type NameReading } from './read-units.ts';

/** Units that can change from one day to the next: energy is counted, not set. */
const CHANGEABLE = ['kW', 'kVA', 'class'];

type Change = NonNullable<UnitsPeriod['changes']>[number];

function dayFindings(
  { from }: Change,
  before: string,
  period: Period | null,
  path: Path,
): readonly Finding[] {
  const day = parseDay(from);
  const isInside = day !== null && period !== null && day > period.from && day < period.to;
  if ((period === null || isInside) && from > before) return [];
  return [periodFinding('period/change-outside', { path: [...path, 'from'] }, { from })];
}

/** Powers and classes that changed inside a period, in order of time. */
export function readChanges(
  { changes = [] }: UnitsPeriod,
  period: Period | null,
  reading: NameReading,
  path: Path,
): Outcome<readonly QuantityChange[]> {
  const findings: Finding[] = [];
  const value = changes.flatMap((change, index): QuantityChange[] => {
    const at = [...path, 'changes', index];
    findings.push(...dayFindings(change, changes[index - 1]?.from ?? '', period, at));
    const read = readQuantities(change.quantities, reading, [...at, 'quantities']);
    findings.push(...read.findings);
    for (const [name, { unit }] of Object.entries(read.given)) {
      if (CHANGEABLE.includes(unit)) continue;
      findings.push(
        periodFinding('period/not-changeable', { path: [...at, 'quantities', name] }, { name, unit }),
      );
    }
    const from = parseDay(change.from);
    return from === null ? [] : [{ from, quantities: read.given }];
  });
  return { value, findings };
}
