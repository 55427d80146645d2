import type { Finding } from '../../quantity/index.ts';
import { quoteFinding } from '../findings.ts';
import { minuteWords } from './local-minutes.ts';
import type { QuoteProfile } from './profile.ts';

const HOUR = 60;
const LENGTHS: readonly number[] = [5, 15, 30, 60];

/** The most Wh of an interval: products of two values stay exact. */
const MOST = 2 ** 26 - 1;

/** How often clocks go back in a profile of a year, and its ends may lie on both. */
const CHANGES = 2;

function intervalFinding({ minutes, starts }: QuoteProfile): readonly Finding[] {
  const finding = (found: string) => [
    quoteFinding('quote/profile-interval', { path: ['profile'] }, { found }),
  ];
  if (!LENGTHS.includes(minutes)) return finding(`intervals of ${minutes} minutes`);
  const odd = starts.find((start) => start % minutes !== 0);
  return odd === undefined ? [] : finding(`an interval of ${minutes} minutes from ${minuteWords(odd)}`);
}

const isWhole = (value: number): boolean => value >= 0 && value <= MOST && Math.floor(value) === value;

function valueFinding(profile: QuoteProfile, channel: 'use' | 'generation'): readonly Finding[] {
  const wrong = [...profile[channel].keys()].filter((row) => !isWhole(profile[channel][row] as number));
  const [first] = wrong;
  if (first === undefined) return [];
  const values = {
    value: String(profile[channel][first]),
    what: channel,
    start: minuteWords(profile.starts[first] as number),
    count: String(wrong.length),
    most: String(MOST),
  };
  return [quoteFinding('quote/profile-value', { path: ['profile', channel] }, values)];
}

/** Intervals that do not follow in time: an hour may come twice, where clocks go back. */
function orderFinding({ minutes, starts }: QuoteProfile): readonly Finding[] {
  let changes = 0;
  for (let row = 1; row < starts.length; row += 1) {
    const [before, start] = [starts[row - 1] as number, starts[row] as number];
    if (start >= before + minutes) continue;
    changes += 1;
    if (start === before + minutes - HOUR && changes <= CHANGES) continue;
    const values = { start: minuteWords(start), before: minuteWords(before) };
    return [quoteFinding('quote/profile-out-of-order', { path: ['profile'] }, values)];
  }
  return [];
}

/**
 * What is wrong with a profile before its months are looked at.
 *
 * @throws RangeError  for columns of different lengths, and for starts that are no whole minutes: a caller's bug
 */
export function profileFindings(profile: QuoteProfile): readonly Finding[] {
  const { starts, use, generation } = profile;
  if (use.length !== starts.length || generation.length !== starts.length) {
    throw new RangeError(`${starts.length} starts, ${use.length} of use, ${generation.length} of generation`);
  }
  const interval = intervalFinding(profile);
  return [
    ...interval,
    ...valueFinding(profile, 'use'),
    ...valueFinding(profile, 'generation'),
    ...(interval.length > 0 ? [] : orderFinding(profile)),
  ];
}
