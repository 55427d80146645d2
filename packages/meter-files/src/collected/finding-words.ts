/** The values that a finding is made of. */
export type Values = Readonly<Record<string, string>>;

/** A value by its name; '' where it is not there. */
export const of = (values: Values, key: string): string => values[key] ?? '';

/**
 * So many intervals, with the first and the last.
 *
 * @example
 * counted({ count: '1', first: '2025-04-01 06:15' }, 'twice') //=> "1 interval twice, at 2025-04-01 06:15"
 */
export function counted(values: Values, what: string): string {
  if (of(values, 'count') === '1') return `1 interval ${what}, at ${of(values, 'first')}`;
  return `${of(values, 'count')} intervals ${what}, the first at ${of(values, 'first')}, the last at ${of(values, 'last')}`;
}
