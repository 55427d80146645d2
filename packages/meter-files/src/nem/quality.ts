import { VALUE_QUALITIES, type ValueQuality } from '../stream.ts';

/** Stands for the flag V: each value has its own quality, told by records 400. */
export const VARIABLE = 255;

/** Stands for a text that is no quality. */
export const UNKNOWN_QUALITY = -1;

/**
 * What a quality stands for in columns of bytes: its index in VALUE_QUALITIES.
 *
 * @example
 * qualityIndex('missing') //=> 4
 */
export const qualityIndex = (quality: ValueQuality): number => VALUE_QUALITIES.indexOf(quality);

/** From memory, but for A and E: F a final substitute, S a substitute, N no value, V see {@link VARIABLE}. */
const FLAGS: Readonly<Record<string, number>> = {
  A: qualityIndex('actual'),
  E: qualityIndex('estimated'),
  F: qualityIndex('substituted'),
  S: qualityIndex('substituted'),
  N: qualityIndex('missing'),
  V: VARIABLE,
};

/**
 * Read a quality: a flag, and two digits for the method by which a value was estimated or substituted.
 *
 * @returns an index into VALUE_QUALITIES, {@link VARIABLE}, or {@link UNKNOWN_QUALITY}
 * @example
 * readQuality('E64') //=> 1
 * readQuality('A64x') //=> -1
 */
export function readQuality(text: string): number {
  const flag = FLAGS[text.charAt(0)];
  if (flag === undefined) return UNKNOWN_QUALITY;
  return text.length === 1 || /^.\d\d$/.test(text) ? flag : UNKNOWN_QUALITY;
}

/** The name of a quality that is neither V nor unknown. */
export function qualityName(index: number): ValueQuality {
  return VALUE_QUALITIES[index] ?? 'missing';
}
