import type { Figure } from '../quantity/index.ts';

const NONE: readonly never[] = [];

/** How a figure of units follows from others. */
export interface UnitsFrom {
  readonly operation: Figure['operation'];
  readonly inputs: readonly Figure[];
  readonly clause: string;
}

/** Watt-hours of a figure of units. */
export function wattHours(figure: Figure): number {
  return figure.numerator as number;
}

/**
 * A figure of units, its value in whole watt-hours. Written out field by field: copying objects field by
 * field is some hundred times slower, and a month has dozens of figures.
 */
export function unitFigure(
  value: Pick<Figure, 'id' | 'label'> & { readonly numerator: number },
  from: UnitsFrom,
): Figure {
  return {
    id: value.id,
    label: value.label,
    unit: 'kWh',
    numerator: value.numerator,
    denominator: 1000,
    operation: from.operation,
    inputs: from.inputs,
    parameters: NONE,
    rounding: null,
    clause: from.clause,
  };
}

/** The sum of figures of units. */
export function sumOfUnits(id: string, label: string, inputs: readonly Figure[], clause: string): Figure {
  const numerator = inputs.reduce((sum, input) => sum + wattHours(input), 0);
  return unitFigure({ id, label, numerator }, { operation: 'sum', inputs, clause });
}

/** A figure of units less others. */
export function lessUnits(
  id: string,
  label: string,
  inputs: readonly [Figure, ...Figure[]],
  clause: string,
): Figure {
  const [first, ...rest] = inputs;
  const numerator = rest.reduce((left, input) => left - wattHours(input), wattHours(first));
  return unitFigure({ id, label, numerator }, { operation: 'difference', inputs, clause });
}

/** The least of figures of units. */
export function leastUnits(id: string, label: string, inputs: readonly Figure[], clause: string): Figure {
  const numerator = Math.min(...inputs.map(wattHours));
  return unitFigure({ id, label, numerator }, { operation: 'least', inputs, clause });
}

/** No units, by a clause. */
export function noUnits(id: string, label: string, clause: string): Figure {
  return unitFigure({ id, label, numerator: 0 }, { operation: 'given', inputs: NONE, clause });
}
