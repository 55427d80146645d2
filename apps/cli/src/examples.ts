import { readExtendedTariff, textUnder, type Tariff } from '@unitbook/engine';
import demoHousehold from '../../../tariffs-examples/households/demo.json?raw';

/** The household that `unitbook demo` shows, as its file has it. */
export const DEMO_HOUSEHOLD: string = demoHousehold;

// Read in as text when the command is built, so that the one built file needs no other.
const TEXTS = import.meta.glob<string>('../../../tariffs-examples/*/*/tariff.json', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** The texts of the examples, by the id that each gives itself. */
const BY_ID: ReadonlyMap<string, string> = new Map(
  Object.values(TEXTS).map((text) => [textUnder(text, 'id') ?? '', text]),
);

/** The ids of the example tariffs that come with the command. */
export const EXAMPLE_IDS: readonly string[] = [...BY_ID.keys()].sort();

/** The most ids that a message lists. */
const MOST_LISTED = 6;

/**
 * Ids of examples to choose from in place of one that none has: those that share a word with it, else the
 * first two of the invented supplier. There are too many to list them all.
 */
export function idsLike(id: string): readonly string[] {
  const words = new Set(id.toLowerCase().split('-'));
  const alike = EXAMPLE_IDS.filter((one) => one.split('-').some((word) => words.has(word)));
  const offered = alike.length > 0 ? alike : EXAMPLE_IDS.filter((one) => one.startsWith('tarumira-'));
  return offered.slice(0, MOST_LISTED);
}

/** The text of an example tariff by its id; null when none has it. */
export function exampleText(id: string): string | null {
  return BY_ID.get(id) ?? null;
}

/**
 * An example tariff by its id.
 *
 * @returns null when none has this id
 * @throws  Error when the example itself is wrong: a fault of ours, and a test reads them all
 */
export function exampleTariff(id: string): Tariff | null {
  const text = exampleText(id);
  if (text === null) return null;
  const { value, findings } = readExtendedTariff(text, { lookUp: exampleText });
  if (value === null) throw new Error(`The example ${id} is wrong: ${findings[0]?.found ?? ''}`);
  return value;
}
