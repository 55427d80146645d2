import type { Charge, SettlementRule, TariffDocument } from '../tariff/index.ts';
import type { Sign, Variant } from './cause.ts';
import type { BillFacts } from './facts.ts';

type Changes = Map<string, TariffDocument | null>;

const KNOWN = new WeakMap<TariffDocument, Changes>();
/** Changes with a number of their own bill, such as a limit worked out from it, would grow with the bills. */
const MOST_KNOWN = 500;

/**
 * A tariff as a mistake applies it: made once for each tariff, so that what is prepared of it is prepared once.
 *
 * @param key     names the change
 * @param change  null: the mistake cannot be made under this tariff
 */
export function changedTariff(
  document: TariffDocument,
  key: string,
  change: (document: TariffDocument) => TariffDocument | null,
): TariffDocument | null {
  const known: Changes = KNOWN.get(document) ?? new Map<string, TariffDocument | null>();
  KNOWN.set(document, known);
  const made = known.get(key);
  if (made !== undefined) return made;
  const fresh = change(document);
  const [oldest] = known.keys();
  if (known.size >= MOST_KNOWN && oldest !== undefined) known.delete(oldest);
  known.set(key, fresh);
  return fresh;
}

/**
 * A tariff with the list of charges of every version changed.
 *
 * @param change  the list that takes its place; the same one where it stays
 * @returns       null where no list changed
 */
export function changedVersions(
  document: TariffDocument,
  change: (charges: readonly Charge[]) => readonly Charge[],
): TariffDocument | null {
  const versions = document.versions.map((version) => {
    const charges = change(version.charges);
    return charges === version.charges ? version : { ...version, charges: [...charges] };
  });
  const isSame = versions.every((version, at) => version === document.versions[at]);
  return isSame ? null : { ...document, versions };
}

/**
 * A tariff with some of its charges changed in every version.
 *
 * @param change  the charge that takes its place, or none; the same one where it stays
 * @returns       null where no charge changed
 */
export function changedCharges(
  document: TariffDocument,
  change: (charge: Charge, charges: readonly Charge[]) => Charge | null,
): TariffDocument | null {
  return changedVersions(document, (charges) => {
    const own = charges.map((charge) => change(charge, charges));
    return own.every((charge, at) => charge === charges[at]) ? charges : own.filter((one) => one !== null);
  });
}

/**
 * A tariff with its settlement rules changed.
 *
 * @param change  the rule that takes its place; the same one where it stays
 * @returns       null where no rule changed
 */
export function changedSettlements(
  document: TariffDocument,
  change: (rule: SettlementRule) => SettlementRule,
): TariffDocument | null {
  const settlements = document.settlements.map(change);
  const isChanged = settlements.some((rule, at) => rule !== document.settlements[at]);
  return isChanged ? { ...document, settlements } : null;
}

/** A mistake in applying the tariff, in words. */
export interface TariffMistake {
  /** The id of the cause: with `id` it names the change. */
  readonly cause: string;
  readonly id: string;
  readonly what: string;
  readonly fitted?: readonly string[];
  readonly signs?: readonly Sign[];
}

/**
 * The variant of a cause that applies the tariff otherwise.
 *
 * @param change  must follow from the tariff and the words alone: it is made once for them
 * @returns       none where the mistake cannot be made under this tariff
 */
export function tariffVariant(
  facts: BillFacts,
  { cause, ...words }: TariffMistake,
  change: (document: TariffDocument) => TariffDocument | null,
): readonly Variant[] {
  const tariff = changedTariff(facts.tariff, `${cause} ${words.id}`, change);
  return tariff === null ? [] : [{ ...words, facts: { ...facts, tariff } }];
}

/** The variant of a cause that changes charges: see {@link tariffVariant} and {@link changedCharges}. */
export function chargeVariant(
  facts: BillFacts,
  words: TariffMistake,
  change: (charge: Charge, charges: readonly Charge[]) => Charge | null,
): readonly Variant[] {
  return tariffVariant(facts, words, (document) => changedCharges(document, change));
}

/** The ids of the charges of all versions that a mistake concerns, each once. */
export function chargeIds(
  { versions }: Pick<TariffDocument, 'versions'>,
  isMeant: (charge: Charge, charges: readonly Charge[]) => boolean,
): readonly string[] {
  const ids = versions.flatMap(({ charges }) =>
    charges.filter((charge) => isMeant(charge, charges)).map(({ id }) => id),
  );
  return [...new Set(ids)];
}
