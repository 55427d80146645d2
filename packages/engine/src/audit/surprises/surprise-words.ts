import { dayText } from '../../quantity/index.ts';
import { valueWords, type ReportNotation } from '../report/report-words.ts';
import type { Surprise, SurprisePart } from './surprise.ts';

function partWords(part: SurprisePart, notation: ReportNotation): string {
  if (typeof part === 'string') return part;
  if (part.kind === 'day') return notation.day(dayText(part.day));
  return valueWords(part.value, part.kind === 'money' ? 'money' : 'count', notation);
}

/**
 * What surprises on a bill, with numbers, money and days as the household writes them.
 *
 * @param notation  how numbers, money and days are written
 */
export const surpriseWords = ({ said }: Pick<Surprise, 'said'>, notation: ReportNotation): string =>
  said.map((part) => partWords(part, notation)).join('');
