import { readTariff, type Tariff } from '@unitbook/engine';
import demoHousehold from '../../../tariffs-examples/households/demo.json?raw';

/** The household that `unitbook demo` shows, as its file has it. */
export const DEMO_HOUSEHOLD: string = demoHousehold;

// Read in as text when the command is built, so that the one built file needs no other.
const TEXTS = import.meta.glob<string>('../../../tariffs-examples/*.json', {
  query: '?raw',
  import: 'default',
  eager: true,
});

function fileId(path: string): string {
  return path.replace(/^.*\//, '').replace(/\.json$/, '');
}

/** The ids of the example tariffs that come with the command. */
export const EXAMPLE_IDS: readonly string[] = Object.keys(TEXTS).map(fileId).sort();

/**
 * An example tariff by its id.
 *
 * @returns null when none has this id
 * @throws  Error when the example itself is wrong: a fault of ours, and a test reads them all
 */
export function exampleTariff(id: string): Tariff | null {
  const entry = Object.entries(TEXTS).find(([path]) => fileId(path) === id);
  if (entry === undefined) return null;
  const { value, findings } = readTariff(entry[1]);
  if (value === null) throw new Error(`The example ${id} is wrong: ${findings[0]?.found ?? ''}`);
  return value;
}
