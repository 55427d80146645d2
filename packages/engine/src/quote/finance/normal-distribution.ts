import { finite } from './check-arguments.ts';

/** Half of the logarithm of 2 π. */
const HALF_LOG_TURN = 0.9189385332046728;
/** Beyond so many sigma less than 1e-12 is left. */
const FARTHEST = 7;

/**
 * The part of a standard normal distribution that lies below a value, good to 1e-12: the series
 * ½ + φ(z) × (z + z³/3 + z⁵/(3·5) + …).
 *
 * @param z  in sigma
 * @returns  from 0 to 1
 * @throws RangeError where it is not finite: a caller's bug
 * @source George Marsaglia, Evaluating the Normal Distribution, Journal of Statistical Software 11(4), 2004
 *         (from memory)
 * @example
 * normalBelow(0) //=> 0.5
 */
export function normalBelow(z: number): number {
  if (Math.abs(finite(z, 'a number of sigma')) > FARTHEST) return z < 0 ? 0 : 1;
  let [sum, before, term] = [z, NaN, z];
  for (let odd = 3; sum !== before; odd += 2) {
    before = sum;
    term *= (z * z) / odd;
    sum += term;
  }
  return 0.5 + sum * Math.exp(-0.5 * z * z - HALF_LOG_TURN);
}

// Coefficients of the quotients of polynomials, from the highest power down.
const CENTRAL_TOP = [
  2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987, 13731.69376550946,
  1971.5909503065513, 133.14166789178438, 3.3871328727963665,
];
const CENTRAL_BOTTOM = [
  5226.495278852854, 28729.085735721943, 39307.89580009271, 21213.794301586597, 5394.196021424751,
  687.1870074920579, 42.31333070160091, 1,
];
const MIDDLE_TOP = [
  0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684, 3.6478483247632045,
  5.769497221460691, 4.630337846156546, 1.4234371107496835,
];
const MIDDLE_BOTTOM = [
  1.0507500716444169e-9, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008, 0.6897673349851,
  1.6763848301838038, 2.053191626637759, 1,
];
const FAR_TOP = [
  2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124,
  0.29656057182850487, 1.7848265399172913, 5.463784911164114, 6.657904643501103,
];
const FAR_BOTTOM = [
  2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 0.0007868691311456133,
  0.014875361290850615, 0.1369298809227358, 0.599832206555888, 1,
];

const polynomial = (coefficients: readonly number[], at: number): number =>
  coefficients.reduce((value, coefficient) => value * at + coefficient, 0);

/** The quantile of a part near an end, by the root of the logarithm of what lies beyond it. */
function tail(beyond: number): number {
  const root = Math.sqrt(-Math.log(beyond));
  return root <= 5
    ? polynomial(MIDDLE_TOP, root - 1.6) / polynomial(MIDDLE_BOTTOM, root - 1.6)
    : polynomial(FAR_TOP, root - 5) / polynomial(FAR_BOTTOM, root - 5);
}

/**
 * The value below which a part of a standard normal distribution lies, good to about 1e-15.
 *
 * @param part  between 0 and 1, without the ends
 * @returns     in sigma
 * @throws RangeError for a part outside of that: a caller's bug
 * @source Michael J. Wichura, Algorithm AS 241: The Percentage Points of the Normal Distribution, Applied
 *         Statistics 37(3), Royal Statistical Society, 1988 (PPND16)
 * @example
 * normalQuantile(0.5) //=> 0
 */
export function normalQuantile(part: number): number {
  if (!(part > 0 && part < 1)) throw new RangeError(`a part must lie between 0 and 1, found ${part}`);
  const fromMiddle = part - 0.5;
  if (Math.abs(fromMiddle) <= 0.425) {
    const at = 0.180625 - fromMiddle * fromMiddle;
    return (fromMiddle * polynomial(CENTRAL_TOP, at)) / polynomial(CENTRAL_BOTTOM, at);
  }
  return fromMiddle < 0 ? -tail(part) : tail(1 - part);
}
