/** A clause with the document it stands in. */
export interface ClauseReference {
  /** Such as "NMR-2021 r. 7.2". */
  readonly clause: string;
  /** Title, publisher and year of its source; null where the document names no such source. */
  readonly source: { readonly title: string; readonly publisher: string; readonly year: string } | null;
  /** First day on which the rule is in force, as yyyy-mm-dd; null where it is not dated. */
  readonly from: string | null;
}

type Sources = Readonly<
  Record<string, { readonly title: string; readonly publisher: string; readonly year: string }>
>;

/**
 * The key of the source that a clause begins with, or null.
 *
 * @example
 * sourceKey('TO-2024 cl. 5.1', ['TO-2024']) //=> "TO-2024"
 */
export function sourceKey(clause: string, keys: readonly string[]): string | null {
  return keys.find((key) => clause === key || clause.startsWith(`${key} `)) ?? null;
}

/**
 * A clause with title, publisher and year of its source.
 *
 * @param from  first day on which the rule is in force
 * @example
 * clauseReference('A 1', { A: { title: 'Order', publisher: 'Commission', year: '2024' } }, null).source.year //=> "2024"
 */
export function clauseReference(clause: string, sources: Sources, from: string | null): ClauseReference {
  const key = sourceKey(clause, Object.keys(sources));
  const own = key === null ? undefined : sources[key];
  if (own === undefined) return { clause, source: null, from };
  const { title, publisher, year } = own;
  return { clause, source: { title, publisher, year }, from };
}
