import type { Judgement } from '@unitbook/engine';
import type { Writing } from '../../writing/writing.ts';
import type { MonthView } from './month-views.ts';
import { fixedText } from './fixed-text.ts';
import { percentOf, rounded } from './plant-rows.ts';

/** The answer for a month: a few words first, then the figures in a sentence. */
export interface PlantAnswer {
  readonly judgement: Judgement;
  readonly lead: string;
  readonly text: string;
}

const LEADS: Readonly<Record<Judgement, string>> = {
  fine: 'Fine',
  watch: 'Watch the next month',
  'look-at-it': 'Look at it',
  'cannot-be-told': 'It cannot be told',
};

/** How far off the expectation a month is, in plain words. */
function distance({ judgement, judged }: MonthView): string {
  if (judgement === 'watch') return 'about one healthy month in six is as low as this';
  if (judgement !== 'look-at-it') return 'within what the weather brings about';
  const side = judged?.side === 'above' ? 'more' : 'lower';
  return `${side} than the weather usually brings about`;
}

/**
 * Whether the plant is healthy by one month.
 *
 * @param month    as it was judged
 * @param writing  how numbers are written
 */
export function answerOf(month: MonthView, writing: Writing): PlantAnswer {
  const { judgement, made, expected, share, specificYield, finding } = month;
  const lead = LEADS[judgement];
  const units = `the plant made ${writing.plain(made)} units`;
  if (expected === null || share === null) {
    const pace =
      specificYield === null ? '' : ` (${fixedText(rounded(specificYield, 2), writing)} per kWp and day)`;
    const { reason = '', needed = '' } = finding?.values ?? {};
    const why = reason === '' ? '' : `, but ${reason}. It takes ${needed}`;
    return { judgement, lead, text: `${units}${pace}${why}.` };
  }
  const part = fixedText(percentOf(share), writing);
  const all = fixedText(rounded(expected, 1), writing);
  return { judgement, lead, text: `${units}, ${part} % of the ${all} expected, ${distance(month)}.` };
}
