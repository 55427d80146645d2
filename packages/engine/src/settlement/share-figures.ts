import {
  exactText,
  givenFigure,
  isSameQuotient,
  wholeSteps,
  type Figure,
  type Parameter,
  type Quotient,
} from '../quantity/index.ts';
import type { SharingRule } from '../tariff/index.ts';

const NONE: readonly never[] = [];

/** A pool that is to be shared. */
export interface Sharing {
  readonly rule: SharingRule;
  readonly pool: Figure;
  /** The pool in watt-hours. */
  readonly wattHours: number;
  /** The watt-hours that every share is a whole multiple of. */
  readonly step: number;
}

/** What a derived figure is called, and how it follows from others. */
export interface Derivation extends Pick<Figure, 'id' | 'label' | 'operation' | 'inputs'> {
  readonly parameters?: readonly Parameter[];
}

/** Units that follow from others, with the clause of the rule. */
export function derivedUnits(from: Derivation, wattHours: number, { rule }: Sharing): Figure {
  return {
    ...from,
    parameters: from.parameters ?? NONE,
    unit: 'kWh',
    numerator: wattHours,
    denominator: 1000,
    rounding: null,
    clause: rule.clause,
  };
}

/** The same, cut down to whole shared units where the exact watt-hours are finer. */
export function cutDownUnits(from: Derivation, exact: Quotient, sharing: Sharing): Figure {
  const { rule, step } = sharing;
  const whole = wholeSteps(exact, { numerator: step, denominator: 1 }, 'down') * step;
  const figure = derivedUnits(from, whole, sharing);
  if (isSameQuotient({ numerator: whole, denominator: 1 }, exact)) return figure;
  const { numerator, denominator } = exact;
  return {
    ...figure,
    rounding: {
      step: exactText(step, 1000),
      mode: 'down',
      clause: rule.clause,
      numerator,
      denominator: denominator * 1000,
    },
  };
}

/** Units that are given: a pool, a need, or what another figure came to. */
export function givenUnits(words: Pick<Figure, 'id' | 'label' | 'clause'>, wattHours: number): Figure {
  return givenFigure({ ...words, unit: 'kWh', numerator: wattHours, denominator: 1000 });
}

/**
 * What another figure of the same sharing came to, without its derivation: that stands beside it, and
 * unfolded again in every later share it would double with each member.
 */
export function cameTo({ id, label, clause, numerator }: Figure): Figure {
  return givenUnits({ id, label, clause }, numerator as number);
}
