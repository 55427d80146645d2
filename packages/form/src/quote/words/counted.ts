/** A number as it is written, and how many it is for the word that goes with it. */
export interface Counted {
  readonly text: string;
  readonly count: number;
}

/**
 * The word that goes with a number by the rules of a language.
 *
 * @param words     for one, and for any other number
 * @param decimals  with how many the number is written: languages differ in what "1.0" takes
 * @example
 * wordFor('en', 1, ['year', 'years']) //=> "year"
 * wordFor('fr', 1.5, ['an', 'ans'], 1) //=> "an"
 */
export function wordFor(
  language: string,
  count: number,
  [one, other]: readonly [one: string, other: string],
  decimals = 0,
): string {
  const rules = new Intl.PluralRules(language, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  });
  return rules.select(count) === 'one' ? one : other;
}
