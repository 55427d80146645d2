import { prepareTariff, readTariff, type Finding, type PreparedTariff } from '@unitbook/engine';
import type { Household } from '../household/household.ts';
import type { TariffChoice } from '../tariff-choice.ts';

/** The tariff of a household, as far as it is open. */
export type TariffView =
  | { readonly kind: 'none' }
  | { readonly kind: 'opening' }
  | { readonly kind: 'open'; readonly tariff: PreparedTariff }
  | { readonly kind: 'unknown'; readonly id: string }
  | { readonly kind: 'failed'; readonly reason: string }
  | { readonly kind: 'wrong'; readonly findings: readonly Finding[] };

/** A tariff file that was opened and not taken. */
export interface RefusedTariff {
  readonly name: string;
  readonly findings: readonly Finding[];
}

/** Read a tariff text and bring it into the form that bills are made from. */
export function openTariffText(text: string): TariffView {
  const { value, findings } = readTariff(text);
  return value === null ? { kind: 'wrong', findings } : { kind: 'open', tariff: prepareTariff(value) };
}

/**
 * Open the tariff that a household names or carries.
 *
 * @param tariff   an example's name, or a document
 * @param choices  the examples
 */
export async function openTariff(
  tariff: Household['tariff'],
  choices: readonly TariffChoice[],
): Promise<TariffView> {
  if (typeof tariff !== 'string') return openTariffText(JSON.stringify(tariff, null, 2));
  if (tariff === '') return { kind: 'none' };
  const choice = choices.find(({ id }) => id === tariff);
  if (choice === undefined) return { kind: 'unknown', id: tariff };
  try {
    return openTariffText(await choice.load());
  } catch (error) {
    return { kind: 'failed', reason: error instanceof Error ? error.message : String(error) };
  }
}
