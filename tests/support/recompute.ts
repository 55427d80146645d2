import { roundLargeQuotient, type Figure } from '@unitbook/engine';

/** An exact fraction: numerator and denominator, the denominator above 0. */
type Fraction = readonly [bigint, bigint];

const add = ([a, b]: Fraction, [c, d]: Fraction): Fraction => [a * d + c * b, b * d];
const negate = ([a, b]: Fraction): Fraction => [-a, b];
const times = ([a, b]: Fraction, [c, d]: Fraction): Fraction => [a * c, b * d];
const over = ([a, b]: Fraction, [c, d]: Fraction): Fraction => (c < 0n ? [-a * d, b * -c] : [a * d, b * c]);
const isLess = ([a, b]: Fraction, [c, d]: Fraction): boolean => a * d < c * b;
const isEqual = ([a, b]: Fraction, [c, d]: Fraction): boolean => a * d === c * b;
const larger = (a: Fraction, b: Fraction): Fraction => (isLess(a, b) ? b : a);
const smaller = (a: Fraction, b: Fraction): Fraction => (isLess(b, a) ? b : a);

const ZERO: Fraction = [0n, 1n];
const ONE: Fraction = [1n, 1n];

/** A decimal such as "-1.50", or a fraction such as "190/3". */
function fractionOf(text: string): Fraction {
  const [top = '', bottom = '1'] = text.split('/');
  const [whole = '', decimals = ''] = top.split('.');
  return [BigInt(whole + decimals), 10n ** BigInt(decimals.length) * BigInt(bottom)];
}

const valueOf = (figure: { numerator: number | bigint; denominator: number }): Fraction => [
  BigInt(figure.numerator),
  BigInt(figure.denominator),
];

const sumOf = (values: readonly Fraction[]): Fraction => values.reduce(add, ZERO);

/** What the operation of a figure makes of its inputs and parameters, before rounding. */
function computed(figure: Figure): Fraction {
  const inputs = figure.inputs.map(valueOf);
  const parameters = figure.parameters.map((parameter) => fractionOf(parameter.text));
  const [first = ZERO, ...rest] = inputs;
  const [low = ZERO, high] = parameters;
  switch (figure.operation) {
    case 'given':
      return figure.rounding === null ? valueOf(figure) : valueOf(figure.rounding);
    case 'sum':
      return sumOf(inputs);
    case 'difference':
      return add(first, negate(sumOf(rest)));
    case 'excess':
    case 'shortfall':
      return larger(ZERO, add(first, negate(sumOf(rest))));
    case 'least':
      return inputs.reduce(smaller);
    case 'greatest':
      return inputs.reduce(larger);
    case 'product':
      return [...inputs, ...parameters].reduce(times, ONE);
    case 'quotient':
      return rest.reduce(over, first);
    case 'share':
      return over(times(sumOf(inputs), low), [100n, 1n]);
    case 'inside':
      return over(times(sumOf(inputs), low), add([100n, 1n], negate(low)));
    case 'credit':
      return negate(larger(ZERO, smaller(first, larger(ZERO, sumOf(rest)))));
    case 'part':
      return larger(ZERO, add(high === undefined ? first : smaller(first, high), negate(low)));
    case 'at-least':
      return larger(first, sumOf(rest));
  }
}

function roundedTo(value: Fraction, step: Fraction, mode: NonNullable<Figure['rounding']>['mode']): Fraction {
  const [top, bottom] = over(value, step);
  return times([roundLargeQuotient(top, bottom, mode), 1n], step);
}

/**
 * The figures of a tree, itself included, whose value does not follow from what they show: from their
 * inputs and parameters by their operation, and by their rounding. Computed in fractions of large whole
 * numbers, by none of the engine's own arithmetic but its rounding of a quotient.
 */
export function unexplained(figure: Figure): readonly Figure[] {
  const below = figure.inputs.flatMap(unexplained);
  const before = computed(figure);
  const { rounding } = figure;
  const value = rounding === null ? before : roundedTo(before, fractionOf(rounding.step), rounding.mode);
  const isStated = rounding === null || isEqual(before, valueOf(rounding));
  return isStated && isEqual(value, valueOf(figure)) ? below : [figure, ...below];
}
