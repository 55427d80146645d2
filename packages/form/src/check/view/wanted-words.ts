import type { Writing } from '../../writing/writing.ts';
import { isUnfinished } from '../../view/unfinished.ts';
import { checkFindingText } from './finding-words.ts';
import type { BillView } from './view-check.ts';

const BOTH = 'Type both reading dates of this bill.';

/** What a bill that cannot be checked still needs, a sentence each: its dates, or what is wrong with them. */
export function wantedOfBill({ findings }: Pick<BillView, 'findings'>, writing: Writing): readonly string[] {
  const ofDates = findings.filter(({ path }) => path[0] === 'from' || path[0] === 'to');
  const wrong = ofDates.filter((finding) => !isUnfinished(finding));
  const told = wrong.map((finding) => checkFindingText(finding, writing));
  return told.length === 0 || wrong.length < ofDates.length ? [BOTH, ...told] : told;
}
