/**
 * Percent a year that a rise of rates is assumed to be at most, and its basis has to be said.
 *
 * @source Residential Solar Energy Disclosure Act, Utah Code 13-52-202, State of Utah, 2018 (Laws of Utah 2018,
 *         Chapter 290)
 */
export const MOST_RISE = '3';

/**
 * Years that a plant is taken to run without a new inverter at most.
 *
 * @source our own yardstick: no publication is behind it
 */
export const LONGEST_WITHOUT_REPLACEMENT = 15;

/**
 * Percent of the use of a year that a plant should make at most: more is sold as surplus.
 *
 * @source our own yardstick: no publication is behind it
 */
export const MOST_OF_USE = 110;
