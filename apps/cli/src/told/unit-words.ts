import type { MissingQuantity } from '@unitbook/engine';

/** What a quantity is counted in, as a person types it. */
const WORDS: Readonly<Partial<Record<MissingQuantity['unit'], string>>> = {
  kWh: 'units',
  count: 'a count',
  class: 'the number of the class',
};

/**
 * What a quantity is counted in, in words.
 *
 * @example
 * unitWords('kWh') //=> "units"
 * unitWords('kW') //=> "kW"
 */
export function unitWords(unit: MissingQuantity['unit']): string {
  return WORDS[unit] ?? unit;
}
