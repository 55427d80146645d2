import { isDecimalText } from '../quantity/index.ts';
import type { Charge } from './schema.ts';

/** The rates of a charge as they are written, with the path of each inside it. */
export function ratesOfCharge(
  charge: Charge,
): readonly (readonly [text: string, path: readonly (string | number)[]])[] {
  const rows = (list: readonly object[] | undefined, key: string, path: readonly (string | number)[]) =>
    (list ?? []).map(
      (row, index) => [(row as Record<string, string>)[key] ?? '0', [...path, index, key]] as const,
    );
  const one = (text: string | undefined, key: string) => (text === undefined ? [] : [[text, [key]] as const]);
  switch (charge.kind) {
    case 'slabs':
      return rows(charge.slabs, 'rate', ['slabs']);
    case 'slab-tables':
      return charge.tables.flatMap((table, index) => rows(table.slabs, 'rate', ['tables', index, 'slabs']));
    case 'per-unit':
      return one(charge.rate, 'rate');
    case 'per-kilowatt':
      return [...one(charge.rate, 'rate'), ...rows(charge.bands, 'rate', ['bands'])];
    case 'fixed':
      return [...one(charge.amount, 'amount'), ...rows(charge.steps, 'amount', ['steps'])];
    case 'percentage':
      return [...one(charge.percent, 'percent'), ...rows(charge.steps, 'percent', ['steps'])];
    case 'minimum':
      return one(charge.amount, 'amount');
    case 'credit':
      return [];
  }
}

/** The prices that charges name, each once. */
export function ratesNamed(charges: readonly Charge[]): readonly string[] {
  const texts = charges.flatMap((charge) => ratesOfCharge(charge).map(([text]) => text));
  return [...new Set(texts.filter((text) => !isDecimalText(text)))];
}
