import { VALUE_QUALITIES, type ValueQuality } from '../stream.ts';

/** What there is to ask about a value because of its quality: bits, for a reading can have several codes. */
export const DOUBTS = { none: 0, questionable: 1, notMeasured: 2, unknown: 4 } as const;

/** A quality as an index into VALUE_QUALITIES, and what there is to ask, as bits of DOUBTS. */
export interface Quality {
  readonly index: number;
  readonly doubts: number;
}

const meaning = (quality: ValueQuality, doubts: number = DOUBTS.none): Quality => ({
  index: VALUE_QUALITIES.indexOf(quality),
  doubts,
});

/**
 * QualityOfReading by its code. The codes to 18 are described in the schema, as public repositories
 * reproduce it; 19 and all short names are from memory. Which of our words each one comes to is our choice.
 */
const QUALITIES: ReadonlyMap<number, Quality> = new Map([
  [0, meaning('actual')], // valid: has passed every check
  [7, meaning('edited')], // manually edited: replaced or approved by a human
  [8, meaning('estimated')], // estimated from readings of the past (reference day)
  [9, meaning('estimated')], // estimated by linear interpolation
  [10, meaning('actual', DOUBTS.questionable)], // has failed a check
  [11, meaning('substituted')], // derived: calculated
  [12, meaning('estimated', DOUBTS.notMeasured)], // projected: a forecast
  [13, meaning('estimated')], // mixed: some of it is no actual value
  [14, meaning('actual')], // raw: has not been checked
  [15, meaning('substituted', DOUBTS.notMeasured)], // adjusted for the weather
  [16, meaning('estimated', DOUBTS.unknown)], // other
  [17, meaning('actual')], // validated by approved procedures
  [18, meaning('actual')], // verified: failed a check, found to be actual use
  [19, meaning('actual')], // revenue quality
]);

/** What a code that is not in the list comes to: by caution, no actual value. */
const UNKNOWN = meaning('estimated', DOUBTS.unknown);

/** Of several codes, the one that says most against a value counts: an estimate, then a substitute. */
const GRAVITY = ['actual', 'edited', 'substituted', 'estimated'] as const satisfies readonly ValueQuality[];

const gravityOf = (index: number): number =>
  GRAVITY.findIndex((quality) => quality === VALUE_QUALITIES[index]);

/** A value of which nothing is said is valid. */
export const VALID: Quality = meaning('actual');

/**
 * What a code of QualityOfReading comes to.
 *
 * @param code  null where the text is no whole number
 * @example
 * qualityOf(8) //=> {"index":1,"doubts":0}
 */
export function qualityOf(code: number | null): Quality {
  return (code === null ? undefined : QUALITIES.get(code)) ?? UNKNOWN;
}

/**
 * The quality of a value that has two: the graver one, and all doubts.
 *
 * @example
 * graver(qualityOf(10), qualityOf(9)) //=> {"index":1,"doubts":1}
 */
export function graver(one: Quality, other: Quality): Quality {
  const doubts = one.doubts | other.doubts;
  return { index: gravityOf(one.index) >= gravityOf(other.index) ? one.index : other.index, doubts };
}
