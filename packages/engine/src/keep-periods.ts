import type { Outcome } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import type { PreparedTariff } from './bill/index.ts';
import { startKeeping, type UnitsMonth } from './keeper.ts';
import type { UnitsAccount, UnitsPeriod } from './periods-document.ts';

/** What periods are billed from. */
export interface UnitsInput {
  /** What the settlement goes by besides the units. */
  readonly account: UnitsAccount;
  readonly tariff: Tariff | PreparedTariff;
  readonly periods: readonly UnitsPeriod[];
  /** false: no bills besides those there are; left out: what solar saved, too. */
  readonly withSavings?: boolean;
}

/**
 * Bill periods of which the units are known: from a printed bill, a worked example or interval data.
 *
 * Self-consumption and total use are worked out where generation is given; a channel given in time
 * blocks is summed. What is not given and is needed is an error.
 *
 * @param input  account, tariff and periods; each period begins where the one before ends
 * @returns      the periods up to the first that cannot be billed, and every finding
 * @example
 * keepPeriods({ account: {}, tariff: readTariff('{}').value ?? { document: { settlements: [], rounding: { line: 'none', total: 'none' } }, versions: [], settlements: [] }, periods: [] }).value.length //=> 0
 */
export function keepPeriods({
  account,
  tariff,
  periods,
  withSavings = true,
}: UnitsInput): Outcome<readonly UnitsMonth[]> {
  const started = startKeeping({ account, tariff, withSavings, first: periods[0]?.from });
  const findings = [...started.findings];
  const keeper = started.value;
  if (keeper === null) return { value: [], findings };
  for (const [index, one] of periods.entries()) {
    const before = keeper.kept.length;
    findings.push(...keeper.keep(one, ['periods', index]));
    if (keeper.kept.length === before) break;
  }
  return { value: keeper.kept.map(({ month }) => month), findings };
}
