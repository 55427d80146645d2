/**
 * Words in a row: "a", "a and b", "a, b and c".
 *
 * @example
 * inRow(['a', 'b', 'c']) //=> "a, b and c"
 */
export function inRow(items: readonly string[]): string {
  return items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
}
