import {
  decimalPlaces,
  decimalToWhole,
  isSameQuotient,
  wholeSteps,
  type Figure,
  type Rounding,
} from '../quantity/index.ts';

/** A rounding as whole numbers: the step is numerator / denominator of a unit. */
export interface StepRounding {
  readonly numerator: number;
  readonly denominator: number;
  readonly rounding: Rounding;
}

/** A document's rounding as whole numbers; null for none. */
export function stepRounding(rounding: Rounding | 'none'): StepRounding | null {
  if (rounding === 'none') return null;
  const places = decimalPlaces(rounding.step);
  return { numerator: decimalToWhole(rounding.step, places), denominator: 10 ** places, rounding };
}

/**
 * A figure rounded to a step; its value the same where that changes nothing.
 *
 * @param figure  exact; its other fields are kept
 * @param step    how to round
 * @param clause  that says so
 */
export function roundedFigure(figure: Figure, step: StepRounding, clause: string): Figure {
  const steps = wholeSteps(figure, step, step.rounding.mode);
  const value = { numerator: steps * step.numerator, denominator: step.denominator };
  const isChanged = !isSameQuotient(value, figure);
  return {
    id: figure.id,
    label: figure.label,
    unit: figure.unit,
    numerator: value.numerator,
    denominator: value.denominator,
    operation: figure.operation,
    inputs: figure.inputs,
    parameters: figure.parameters,
    rounding: isChanged
      ? {
          step: step.rounding.step,
          mode: step.rounding.mode,
          clause,
          numerator: figure.numerator,
          denominator: figure.denominator,
        }
      : null,
    clause: figure.clause,
  };
}
