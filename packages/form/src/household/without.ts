/** An object without some of its fields. */
export function without<Whole extends object, Key extends keyof Whole>(
  whole: Whole,
  ...keys: readonly Key[]
): Omit<Whole, Key> {
  const names: readonly PropertyKey[] = keys;
  return Object.fromEntries(Object.entries(whole).filter(([key]) => !names.includes(key))) as Omit<
    Whole,
    Key
  >;
}
