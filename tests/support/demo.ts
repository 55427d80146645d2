import { readAccount, readTariff, type Account, type Tariff } from '@unitbook/engine';
import demoText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';

/** The text of the demo tariff: an invented place, with an invented supplier. */
export const DEMO_TARIFF: string = demoText;

/**
 * Change one place of a text.
 *
 * @throws Error when the place is not there, or there more than once: the test would not test what it says
 */
export function changed(text: string, from: string, to: string): string {
  const parts = text.split(from);
  if (parts.length !== 2) throw new Error(`"${from}" stands ${String(parts.length - 1)} times in the text`);
  return parts.join(to);
}

/** Read a tariff that has nothing wrong with it. */
export function goodTariff(text: string): Tariff {
  const { value, findings } = readTariff(text);
  if (value === null) throw new Error(JSON.stringify(findings, null, 2));
  return value;
}

/** The demo tariff, with one place changed after another. */
export function demoTariff(...changes: readonly (readonly [from: string, to: string])[]): Tariff {
  return goodTariff(changes.reduce((text, [from, to]) => changed(text, from, to), DEMO_TARIFF));
}

/** What a test says of an account; the rest is a house of 4 kW with a plant of 5 kWp. */
export interface AccountParts {
  readonly sanctionedLoad?: string;
  readonly plantCapacity?: string;
  readonly openingCredit?: string;
  readonly digits?: string;
  readonly decimals?: string;
  readonly multiplyingFactor?: string;
  readonly generationMeter?: boolean;
}

/** The text of an account document. */
export function accountText(parts: AccountParts = {}): string {
  const register = { digits: parts.digits ?? '5', decimals: parts.decimals ?? '1' };
  const multiplyingFactor = parts.multiplyingFactor ?? '1';
  const generation = { serial: 'G-1', multiplyingFactor, generation: register };
  return JSON.stringify(
    {
      format: 'unitbook-account-1',
      id: 'TAR-1',
      sanctionedLoad: parts.sanctionedLoad ?? '4',
      plantCapacity: parts.plantCapacity ?? '5',
      openingCredit: parts.openingCredit ?? '0',
      meters: {
        grid: { serial: 'P-1', multiplyingFactor, import: register, export: register },
        ...(parts.generationMeter === false ? {} : { generation }),
      },
    },
    null,
    2,
  );
}

/** An account that can be used, whatever is asked about it. */
export function accountOf(parts: AccountParts = {}): Account {
  const { value, findings } = readAccount(accountText(parts));
  if (value === null) throw new Error(JSON.stringify(findings, null, 2));
  return value;
}
