import type { Judgement } from '@unitbook/engine';
import type { MonthView } from './month-views.ts';

/** Signs of the judgements: they are told apart without colour. */
export const JUDGEMENT_SIGNS: Readonly<Record<Judgement, string>> = {
  fine: '✓',
  watch: '~',
  'look-at-it': '!',
  'cannot-be-told': '?',
};

const WORDS: Readonly<Record<Judgement, string>> = {
  fine: 'fine',
  watch: 'watch',
  'look-at-it': 'look at it',
  'cannot-be-told': 'cannot be told',
};

/** A judgement in words: "watch", "look at it: high". */
export function judgementWords({ judgement, judged }: Pick<MonthView, 'judgement' | 'judged'>): string {
  const side = judged?.side === 'above' ? 'high' : 'low';
  return judgement === 'look-at-it' ? `${WORDS[judgement]}: ${side}` : WORDS[judgement];
}
