import type { Quote } from '@unitbook/engine';
import { paybackWords, type AnswerLine } from './answer-view.ts';
import type { QuoteWriting } from './quote-writing.ts';

const HOW = {
  profile: 'Charged and discharged interval by interval.',
  'mean-day': 'An estimate by the mean day of each month, and rather too high.',
} as const;

/** Where units given are worth as much as units taken, what is lost on the way is all that a battery changes. */
const LESS =
  ' Less is saved with it than without: by this tariff what it loses is worth more than what it keeps.';

/** What the battery comes to by itself, line by line; none where there is no battery. */
export function batteryLines(
  { battery, ownUse, input }: Quote,
  writing: QuoteWriting,
): readonly AnswerLine[] {
  if (battery === null) return [];
  const { replacement } = input.document.battery ?? {};
  const next =
    replacement === undefined
      ? ''
      : ` The next one, for ${writing.money(replacement.amount)} in year ${writing.number(replacement.year)}, is counted.`;
  return [
    {
      key: 'battery-saving',
      label: 'Saved more with it, in the first year',
      value: writing.cash(battery.saving),
      note: `${HOW[ownUse === 'profile' ? 'profile' : 'mean-day']}${battery.saving < 0 ? LESS : ''}`,
    },
    {
      key: 'battery-payback',
      label: 'Paid back by that alone after',
      value: paybackWords({ first: battery.payback, last: battery.paybackForGood }, writing),
      note: `It costs ${writing.cash(battery.cost)}.${next} The answer above is that of plant and battery together.`,
    },
  ];
}
