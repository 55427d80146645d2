import type { Finding, Path } from '../quantity/index.ts';
import { tariffFinding } from './findings.ts';
import type { NamedQuantity } from './known-quantities.ts';

/** The most names that a message lists. */
const MOST_NAMES = 12;

/** How many pairs of letters two names have in common, of both together: 1 where they are the same. */
function sharedPairs(a: string, b: string): number {
  const pairs = (text: string): string[] =>
    Array.from({ length: text.length - 1 }, (_, at) => text.slice(at, at + 2));
  const [own, other] = [pairs(a), pairs(b)];
  const shared = own.filter((pair) => other.includes(pair)).length;
  return (2 * shared) / Math.max(1, own.length + other.length);
}

/** A quantity that nothing gives at its place; those with a name alike are listed first. */
export function unknownQuantity(
  quantity: string,
  known: ReadonlyMap<string, NamedQuantity>,
  path: Path,
): Finding {
  const names = [...known.keys()].filter((name) => !name.includes('@') || quantity.includes('@'));
  const nearest = names.map((name) => [sharedPairs(name, quantity), name] as const).sort(([a], [b]) => b - a);
  const listed = nearest.slice(0, MOST_NAMES).map(([, name]) => name);
  const more = names.length > MOST_NAMES ? ' …' : '';
  return tariffFinding(
    'tariff/unknown-quantity',
    { path },
    { quantity, known: `${listed.map((name) => `"${name}"`).join(', ')}${more}` },
  );
}
