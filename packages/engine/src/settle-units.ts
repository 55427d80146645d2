import {
  givenFigure,
  parseDay,
  periodDays,
  type Figure,
  type Outcome,
  type Path,
  type Period,
} from './quantity/index.ts';
import type { EnergyPeriod } from './energy/index.ts';
import type { PreparedTariff, QuantityChange } from './bill/index.ts';
import { settleMonth, type Carried, type MonthResult } from './month.ts';
import { periodFinding } from './period-findings.ts';
import type { UnitsAccount } from './periods-document.ts';
import { workOut, type Given, type NameReading } from './read-units.ts';

/** What all periods of an account have in common. */
export interface Keeping {
  readonly prepared: PreparedTariff;
  readonly account: UnitsAccount;
  readonly reading: NameReading;
  /** Quantities of the account. */
  readonly facts: Given;
  /** Time blocks of the tariff. */
  readonly blocks: readonly string[];
  readonly withSavings: boolean;
}

/** One period with its units, and what the one before handed on. */
export interface UnitsStep {
  readonly period: Period;
  readonly given: Given;
  readonly changes: readonly QuantityChange[];
  readonly carried: Carried;
  readonly path: Path;
}

const none = (name: string, label: string): Figure =>
  givenFigure({ id: name, label, unit: 'kWh', numerator: 0, denominator: 1000, clause: 'not given' });

/** The energy of a period from what is given; a channel that is not given is 0, and is listed as missing. */
function energyOf(given: Given, period: Period): EnergyPeriod {
  return {
    period,
    days: periodDays(period),
    isEstimated: false,
    import: given['import'] ?? none('import', 'Units taken from the grid'),
    export: given['export'] ?? none('export', 'Units given to the grid'),
    generation: given['generation'] ?? null,
    selfConsumption: given['self-consumption'] ?? null,
    totalUse: given['total-use'] ?? null,
  };
}

/** Settle and bill one period of which the units are known. */
export function settleUnits(keeping: Keeping, step: UnitsStep): Outcome<MonthResult | null> {
  const { prepared, account, facts, blocks, withSavings } = keeping;
  const { period, changes, carried, path } = step;
  const given = { ...facts, ...step.given };
  const differing = workOut(given, blocks);
  if (differing.length > 0) {
    const findings = differing.map(({ name, ...values }) =>
      periodFinding('period/does-not-add-up', { path: [...path, 'quantities'] }, { name, ...values }),
    );
    return { value: null, findings };
  }
  const power = (name: string): number | null => (given[name]?.numerator as number | undefined) ?? null;
  return settleMonth({
    prepared,
    account: {
      sanctionedLoad: power('sanctioned-load'),
      plantCapacity: power('plant-capacity'),
      since: account.since === undefined ? null : parseDay(account.since),
      settlementDay: account.settlementDay ?? null,
    },
    energy: energyOf(given, period),
    missing: (['import', 'export'] as const).filter((channel) => given[channel] === undefined),
    more: given,
    carried,
    changes,
    withSavings,
    path,
  });
}
