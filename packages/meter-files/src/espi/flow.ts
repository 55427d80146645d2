import type { MeteredQuantity } from '../stream.ts';
import type { Position } from './elements.ts';
import type { Tell } from './log.ts';
import type { TypeNumbers } from './reading-type.ts';

/**
 * Data qualifiers that make a value another thing than energy: averages, thresholds, highest and smallest
 * values (DataQualifierKind of the schema; that 12 is the normal value is from memory).
 */
const NO_PLAIN_VALUE: readonly number[] = [2, 4, 5, 7, 8, 9, 16, 17, 23, 24, 25];

interface Other {
  readonly at: Position;
  readonly what: string;
  readonly expected: string;
}

/** What a type has that active energy has not: its kind, unit or qualifier; null where it is active energy. */
function otherThan({ kind, uom, dataQualifier }: TypeNumbers): Other | null {
  // 0 is "not applicable"; a type of watt-hours that does not say its kind can only be energy.
  if (!Number.isNaN(kind.number) && kind.number !== 0 && kind.number !== 12)
    return { at: kind.at, what: `kind ${kind.number}`, expected: 'kind 12, energy' };
  if (Number.isNaN(uom.number)) return { at: uom.at, what: 'no unit (uom)', expected: 'uom 72, watt-hours' };
  if (uom.number !== 72) return { at: uom.at, what: `uom ${uom.number}`, expected: 'uom 72, watt-hours' };
  if (!NO_PLAIN_VALUE.includes(dataQualifier.number)) return null;
  const what = `dataQualifier ${dataQualifier.number}`;
  return { at: dataQualifier.at, what, expected: 'dataQualifier 12, the plain value' };
}

/** Flows that usually are a plain one: quadrants of the power diagram. */
const QUADRANTS = {
  8: { plain: 1, quadrants: '1 and 4', quantity: 'import' },
  10: { plain: 19, quadrants: '2 and 3', quantity: 'export' },
} as const;

/** Other directions, in words; FlowDirectionKind of the schema. */
const OTHER_FLOWS: Readonly<Record<number, string>> = {
  5: ', reactive energy of the positive quadrants',
  13: ', reactive energy of the negative quadrants',
  20: ', import and export added up',
  21: ', import and export of each phase added up',
};

function flowQuantity({ flowDirection }: TypeNumbers, tell: Tell): MeteredQuantity {
  const { number, at } = flowDirection;
  if (number === 1) return 'import';
  if (number === 19) return 'export';
  if (number === 4) {
    tell('espi/net', at);
    return 'net';
  }
  if (number === 8 || number === 10) {
    const { plain, quadrants, quantity } = QUADRANTS[number];
    tell('espi/quadrants', at, { flow: String(number), plain: String(plain), quadrants, quantity });
    return quantity;
  }
  // 0 is "not applicable".
  if (Number.isNaN(number) || number === 0) {
    const expected = 'flowDirection 1 (import) or 19 (export)';
    tell('espi/not-stated', at, { field: 'flowDirection', expected, taken: 'import (1)' });
    return 'import';
  }
  const what = `flowDirection ${number}${OTHER_FLOWS[number] ?? ''}`;
  tell('espi/other-quantity', at, { what, expected: 'flowDirection 1 (import) or 19 (export)' });
  return 'other';
}

/** What the readings of a type count; what there is to ask or to note about it is told. */
export function quantityOf(numbers: TypeNumbers, tell: Tell): MeteredQuantity {
  const other = otherThan(numbers);
  if (other === null) return flowQuantity(numbers, tell);
  tell('espi/other-quantity', other.at, { what: other.what, expected: other.expected });
  return 'other';
}
