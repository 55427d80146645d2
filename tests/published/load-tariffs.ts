import { prepareTariff, readTariff, textUnder, type PreparedTariff } from '@unitbook/engine';

const ours = import.meta.glob<string>('./tariffs/*.json', { query: '?raw', import: 'default', eager: true });
/** The two that the page offers, by the ids that they give themselves. */
const examples = import.meta.glob<string>(
  '../../tariffs-examples/tarumira/{taresco-domestic,taresco-shop}/tariff.json',
  { query: '?raw', import: 'default', eager: true },
);

const byName = new Map([
  ...Object.entries(ours).map(([path, text]) => [path.replace(/^.*\/|\.json$/g, ''), text] as const),
  ...Object.values(examples).map((text) => [textUnder(text, 'id') ?? '', text] as const),
]);
const prepared = new Map<string, PreparedTariff>();

/** The names of the tariff files that cases can use. */
export function tariffNames(): readonly string[] {
  return [...byName.keys()];
}

/** The text of a tariff file. */
export function tariffText(name: string): string {
  const text = byName.get(name);
  if (text === undefined) throw new Error(`no tariff file "${name}"`);
  return text;
}

/** Read a tariff, or say what is wrong with it. */
export function readPrepared(text: string): PreparedTariff {
  const { value, findings } = readTariff(text);
  if (value !== null) return prepareTariff(value);
  const lines = findings.map(({ path, found, expected }) => `${path.join('.')}: ${found}, not ${expected}`);
  throw new Error(lines.join('; '));
}

/** A tariff file in normal form. */
export function tariffNamed(name: string): PreparedTariff {
  const known = prepared.get(name) ?? readPrepared(tariffText(name));
  prepared.set(name, known);
  return known;
}
