import {
  addDays,
  dayText,
  parseDay,
  type DayNumber,
  type Finding,
  type Path,
  type Period,
} from '../../quantity/index.ts';
import { disputeFinding } from './dispute-findings.ts';

/** Later than any day that is asked about. */
const OPEN_END = parseDay('9999-12-31') as DayNumber;

/** Something with its first and last day, as documents write them. */
interface DatedText {
  readonly from: string;
  readonly through?: string | undefined;
}

/**
 * The half-open period of something dated; null where a day does not exist.
 *
 * @example
 * periodOfDated({ from: '2020-01-01', through: '2020-01-31' }).to - periodOfDated({ from: '2020-01-01' }).from //=> 31
 */
export function periodOfDated({ from, through }: DatedText): Period | null {
  const first = parseDay(from);
  const last = through === undefined ? addDays(OPEN_END, -1) : parseDay(through);
  return first === null || last === null ? null : { from: first, to: addDays(last, 1) };
}

/**
 * Days that do not exist, and dated things that are not in order of time. Gaps are allowed: what is asked of a day in
 * one is answered with a finding.
 *
 * @param path  of the list
 */
export function datedFindings(items: readonly DatedText[], path: Path): readonly Finding[] {
  const findings: Finding[] = [];
  let before: Period | null = null;
  items.forEach(({ from, through }, at) => {
    const own = [...path, at];
    const days = { from, ...(through === undefined ? {} : { through }) };
    for (const [key, value] of Object.entries(days)) {
      if (parseDay(value) === null)
        findings.push(disputeFinding('dispute/no-such-day', { path: [...own, key] }, { value }));
    }
    const period = periodOfDated({ from, through });
    if (period === null) return;
    if (period.to <= period.from)
      findings.push(
        disputeFinding('dispute/ends-before-it-begins', { path: own }, { from, through: through ?? '' }),
      );
    else if (before !== null && period.from < before.to) {
      const values = { from, before: lastDay(before) };
      findings.push(disputeFinding('dispute/not-in-order', { path: [...own, 'from'] }, values));
    }
    before = period;
  });
  return findings;
}

/** The last day of a period as text. */
function lastDay({ to }: Period): string {
  return to > OPEN_END - 1 ? 'every later day' : dayText(addDays(to, -1));
}

/**
 * The days that dated things cover, in words.
 *
 * @example
 * coveredWords([{ from: '2020-04-01' }]) //=> "from 2020-04-01"
 */
export function coveredWords(items: readonly DatedText[]): string {
  return items
    .map(({ from, through }) => (through === undefined ? `from ${from}` : `${from} through ${through}`))
    .join(', ');
}
