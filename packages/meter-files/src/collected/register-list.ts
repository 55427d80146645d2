import { dayText, type Finding } from '@unitbook/engine';
import { VALUE_QUALITIES, type RegisterValue, type Stream } from '../stream.ts';
import { collectedFinding, type CollectedFindingCode } from './collected-findings.ts';
import { decimalOf, lessDecimal } from './decimal-text.ts';
import { qualityRank } from './quality.ts';
import { DAY_MINUTES, minuteText, streamText } from './texts.ts';

/** The readings of one register in order of time, of each moment one. */
export interface RegisterSeries {
  readonly stream: Stream;
  readonly readings: readonly RegisterValue[];
}

/** A reading of a day alone comes before those of a minute. */
const minuteOf = ({ minute }: RegisterValue): number => minute ?? -1;

const rankOf = ({ quality }: RegisterValue): number => qualityRank(VALUE_QUALITIES.indexOf(quality));

const inOrder = (a: RegisterValue, b: RegisterValue): number =>
  a.day - b.day || minuteOf(a) - minuteOf(b) || rankOf(a) - rankOf(b) || a.line - b.line;

const isSameMoment = (a: RegisterValue, b: RegisterValue): boolean =>
  a.day === b.day && a.minute === b.minute;

const isSameValue = (a: RegisterValue, b: RegisterValue): boolean =>
  lessDecimal(decimalOf(a.value), decimalOf(b.value)).whole === 0n;

/** The moment of a reading as people read it. */
export function momentText({ day, minute }: Pick<RegisterValue, 'day' | 'minute'>): string {
  return minute === null ? dayText(day) : minuteText(day * DAY_MINUTES + minute);
}

const valueText = ({ value, quality, line }: RegisterValue): string =>
  `${value} kWh (${quality}) on line ${line}`;

function doubleFinding(code: CollectedFindingCode, best: RegisterValue, other: RegisterValue): Finding {
  const values = {
    register: streamText(best.stream),
    moment: momentText(best),
    one: valueText(best),
    other: valueText(other),
  };
  return {
    ...collectedFinding(code, { path: [] }, values),
    position: { line: Math.max(best.line, other.line), column: 1 },
  };
}

/** The one reading of several of one moment, the best first; null where nothing tells which is right. */
function oneOf(group: readonly RegisterValue[], tell: (finding: Finding) => void): RegisterValue | null {
  const [best] = group;
  if (best === undefined) return null;
  const other = group.find((one) => !isSameValue(one, best));
  if (other === undefined) return best;
  const isRival = rankOf(other) === rankOf(best);
  tell(doubleFinding(isRival ? 'meter-file/reading-conflict' : 'meter-file/reading-replaced', best, other));
  return isRival ? null : best;
}

/**
 * Put the readings of a register in order of time, of each moment one: of several values the one of the
 * best quality; of several of one quality none. The same value again is nothing to be told.
 *
 * @param stream    the register
 * @param readings  of it, in any order; those without a value are left out
 * @param tell      where findings go
 * @throws RangeError  for a value that is no decimal text
 */
export function registerSeries(
  stream: Stream,
  readings: readonly RegisterValue[],
  tell: (finding: Finding) => void,
): RegisterSeries {
  const ordered = readings.filter(({ quality }) => quality !== 'missing').sort(inOrder);
  const kept: RegisterValue[] = [];
  for (let from = 0; from < ordered.length;) {
    const first = ordered[from] as RegisterValue;
    let end = from + 1;
    while (end < ordered.length && isSameMoment(first, ordered[end] as RegisterValue)) end += 1;
    // By far the most moments have one reading, and a group of its own for each would cost time.
    const one = end === from + 1 ? first : oneOf(ordered.slice(from, end), tell);
    if (one !== null) kept.push(one);
    from = end;
  }
  return { stream, readings: kept };
}
