import type { MeteredQuantity, MeterFileKind, Stream } from '@unitbook/meter-files';

/** What a file is, in words. */
export const KIND_WORDS: Readonly<Record<MeterFileKind, string>> = {
  nem12: 'Intervals in the format NEM12',
  nem13: 'Register readings in the format NEM13',
  espi: 'A download in the format ESPI (XML)',
  telegram: 'A telegram of a meter',
  'register-list': 'A list of registers by their OBIS codes',
  'own-register-list': 'A list of readings with the columns date, import and export',
  table: 'A table',
};

/** What a register counts, in words. */
export const QUANTITY_WORDS: Readonly<Record<MeteredQuantity, string>> = {
  import: 'taken from the grid',
  export: 'given to the grid',
  generation: 'made by the plant',
  net: 'taken less given',
  other: 'nothing that a bill of energy counts',
};

/** The head of a column. */
export const SHORT_WORDS = { import: 'Taken', export: 'Given', generation: 'Made' } as const;

/** What a register counts, and which rate of it. */
export function streamWords({ quantity, rate }: Pick<Stream, 'quantity' | 'rate'>): string {
  return rate === null ? QUANTITY_WORDS[quantity] : `${QUANTITY_WORDS[quantity]}, rate ${rate}`;
}

/** A unit as people call it; 1 unit is 1 kWh. What is no active energy stands in the unit of the file. */
export function unitWords({ quantity, unit }: Pick<Stream, 'quantity' | 'unit'>): string {
  return quantity === 'other' ? unit : 'units';
}

/** "1 reading", "2 readings". */
export function counted(count: number, one: string, many: string = `${one}s`): string {
  return `${String(count)} ${count === 1 ? one : many}`;
}

/** "a", "a and b", "a, b and c". */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;
}
