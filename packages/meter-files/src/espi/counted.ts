/**
 * A number of things in words.
 *
 * @param count  whole, as text
 * @param noun   one of them; more than one end in -s
 * @example
 * counted('1', 'value') //=> "1 value"
 * counted('20', 'value') //=> "20 values"
 */
export function counted(count: string, noun: string): string {
  return `${count} ${noun}${count === '1' ? '' : 's'}`;
}
