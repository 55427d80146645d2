import {
  dayNumber,
  monthAfter,
  type CausePart,
  type DayNumber,
  type GenerationBand,
  type Period,
  type PromiseCause,
  type PromiseReport,
} from '@unitbook/engine';
import { yearsWords } from '../view/answer-view.ts';
import type { QuoteWriting } from '../view/quote-writing.ts';

/** What was promised and what came, of all periods together or of one. */
export type Compared = Pick<PromiseReport, 'promised' | 'actual' | 'parts'>;

/** What a cause is counted in, where it is units. */
const UNITS: Partial<Record<PromiseCause, 'use' | 'generation' | 'selfUse'>> = {
  use: 'use',
  generation: 'generation',
  'self-use': 'selfUse',
};

/** What a cause is called at the head of a line. */
export const CAUSE_NAMES: Readonly<Record<PromiseCause, string>> = {
  use: 'Use',
  generation: 'Generation',
  'self-use': 'Used at home as it is made',
  tariff: 'Charges of the tariff',
  scheme: 'Rules of the settlement',
};

/** The same within a sentence. */
const IN_A_SENTENCE: Readonly<Record<PromiseCause, string>> = {
  use: 'use',
  generation: 'generation',
  'self-use': 'use at home as it is made',
  tariff: 'the charges of the tariff',
  scheme: 'the rules of the settlement',
};

/** "+180": a text with its sign, whichever it is. */
export function signed(text: string): string {
  return /^[-−]/.test(text) || !/[1-9]/.test(text) ? text : `+${text}`;
}

/** Units of a cause as quoted, as they came and by how much they differ; null where it has none. */
export function unitsOf(
  cause: PromiseCause,
  { promised, actual }: Compared,
): { readonly quoted: number; readonly came: number; readonly by: number } | null {
  const key = UNITS[cause];
  if (key === undefined) return null;
  return { quoted: promised[key], came: actual[key], by: actual[key] - promised[key] };
}

/** "use +180 units explains ₹1,132.00" */
function explained(
  { cause, bill }: CausePart,
  compared: Compared,
  { toward, writing }: { readonly toward: 1 | -1; readonly writing: QuoteWriting },
): string {
  const units = unitsOf(cause, compared);
  const counted = units === null || units.by === 0 ? '' : ` ${signed(writing.units(units.by))} units`;
  const verb = cause === 'tariff' || cause === 'scheme' ? 'explain' : 'explains';
  return `${IN_A_SENTENCE[cause]}${counted} ${verb} ${writing.cash(toward * bill)}`;
}

/** By how much the bills differ, and what explains it, in the stated order. */
export function billSentence(compared: Compared, which: string, writing: QuoteWriting): string {
  const { promised, actual, parts } = compared;
  const difference = actual.after - promised.after;
  const toward = difference < 0 ? -1 : 1;
  const causes = parts
    .filter(({ bill }) => bill !== 0)
    .map((part) => explained(part, compared, { toward, writing }));
  const by =
    difference === 0
      ? 'as quoted'
      : `${writing.cash(Math.abs(difference))} ${difference > 0 ? 'more' : 'less'} than quoted`;
  const why = causes.length === 0 ? '' : `: ${causes.join(', ')}`;
  return `${which} came to ${writing.cash(actual.after)}, ${by}${why}.`;
}

/** Whether the saving is what was promised. */
export function keptSentence({ promised, actual }: Compared, writing: QuoteWriting): string {
  const difference = actual.saving - promised.saving;
  const kept = difference >= 0 ? 'The promise was kept' : 'Less was saved than promised';
  const by =
    difference === 0 ? '' : `, ${writing.cash(Math.abs(difference))} ${difference > 0 ? 'more' : 'less'}`;
  return `${kept}: quoted were ${writing.cash(promised.saving)}${by}.`;
}

const VERDICTS: Readonly<Record<GenerationBand['verdict'], string>> = {
  within: 'Within what weather does to a promise',
  below: 'Less than weather explains: look at the plant',
  above: 'More than weather explains: check the readings, and whether modules were added',
};

/** Generation judged by weather. */
export function weatherSentence({ verdict, low, high }: GenerationBand, { percent }: QuoteWriting): string {
  return `${VERDICTS[verdict]} (${percent(low)} to ${percent(high)} of the quote in 8 of 10 cases).`;
}

/** "4.6 years (November 2029)" */
export function paybackDate(years: number | null, start: DayNumber, writing: QuoteWriting): string {
  const text = yearsWords(years, writing);
  if (years === null || years === Infinity) return text;
  const { year, month } = monthAfter(start, years);
  return `${text} (${writing.month(dayNumber({ year, month, day: 1 }), 'long')})`;
}

/** "1 July 2025 to 1 August 2025" */
export function periodText({ from, to }: Period, { day }: QuoteWriting): string {
  return `${day(from)} to ${day(to)}`;
}
