/** The values that a finding is made of. */
export type Values = Readonly<Record<string, string>>;

/** A value by its name; '' where it is not there. */
export const of = (values: Values, key: string): string => values[key] ?? '';
