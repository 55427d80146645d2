import type { DerivedFigure } from './case.ts';
import { rational, rationalText, readRational, roundText, type Rational } from './rational.ts';

type Operation = (a: Rational, b: Rational) => Rational;

const OPERATIONS: Readonly<Record<string, Operation>> = {
  sum: (a, b) => rational(a.top * b.bottom + b.top * a.bottom, a.bottom * b.bottom),
  difference: (a, b) => rational(a.top * b.bottom - b.top * a.bottom, a.bottom * b.bottom),
  product: (a, b) => rational(a.top * b.top, a.bottom * b.bottom),
  quotient: (a, b) => rational(a.top * b.bottom, a.bottom * b.top),
};

/**
 * Work out a figure that a source prints beside those the engine gives: a sum, a difference, a quotient.
 *
 * @param derived  operation and operands; a decimal stands for itself; "given" takes one operand as it is
 * @param figures  exact texts by name
 * @returns        exact text, rounded only where `derived.rounding` says so
 */
export function deriveFigure(derived: DerivedFigure, figures: Readonly<Record<string, string>>): string {
  const [first, ...rest] = derived.of.map((name) => readRational(figures[name] ?? name));
  if (first === undefined) throw new RangeError(`${derived.name} is made of nothing`);
  const operation = OPERATIONS[derived.op];
  if (operation === undefined && derived.op !== 'given') throw new RangeError(`no operation "${derived.op}"`);
  const value = operation === undefined ? first : rest.reduce(operation, first);
  return derived.rounding === undefined ? rationalText(value) : roundText(value, derived.rounding);
}
