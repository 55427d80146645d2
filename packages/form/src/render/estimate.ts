import { html, nothing, type TemplateResult } from 'lit';
import type { Compared, EstimateCost } from '@unitbook/engine';
import { estimateCostAt, type ToldCost } from '../view/estimate-view.ts';
import type { Writing } from '../writing/writing.ts';
import type { Desk } from './desk.ts';

const size = ({ difference }: Compared) => ({
  numerator: difference.numerator < 0 ? -difference.numerator : difference.numerator,
  denominator: difference.denominator,
});

const NUMBERS = ['no', 'this bill', 'these two bills', 'these three bills', 'these four bills'];
const billsText = (count: number): string => NUMBERS[count] ?? `these ${String(count)} bills`;

/** "cost you ₹2,097 in these two bills" */
function moneyText({ payable, months }: EstimateCost, writing: Writing): string {
  const bills = billsText(months.length);
  if (payable.difference.numerator === 0) return `made no difference in money in ${bills}`;
  const verb = payable.difference.numerator > 0 ? 'cost you' : 'saved you';
  return `${verb} ${writing.sum(size(payable))} in ${bills}`;
}

/** " and left 243 units more in the bank", where units are banked. */
function bankText({ credit }: EstimateCost, writing: Writing): string {
  if (credit === null || credit.difference.numerator === 0) return '';
  const more = credit.difference.numerator > 0 ? 'more' : 'less';
  return ` and left ${writing.plain(size(credit))} units ${more} in the bank`;
}

/** "It counted 18 units too many as taken.": nothing where the next reading has evened it out. */
function unitsText({ import: taken, export: given }: EstimateCost, writing: Writing): string {
  const parts = (
    [
      ['taken', taken],
      ['given', given],
    ] as const
  ).flatMap(([word, compared]) => {
    const { numerator } = compared.difference;
    if (numerator === 0) return [];
    return [`${writing.plain(size(compared))} units too ${numerator > 0 ? 'many' : 'few'} as ${word}`];
  });
  return parts.length === 0 ? '' : ` It counted ${parts.join(' and ')}.`;
}

/** What is not known for certain of a cost. */
function doubtText({ cost: { isWhole }, shared }: ToldCost): string {
  const share =
    shared === 'all'
      ? ' That is only a share by days: nobody read the meter on that day, so nobody knows exactly.'
      : shared.length === 0
        ? ''
        : ` For ${shared.join(' and ')} that is only a share by days: nobody read it on that day.`;
  return `${share}${isWhole ? '' : ' A later bill of the same estimate cannot be made yet, and is not in it.'}`;
}

/** What an estimate that opens or closes the month shown cost, in one breath. */
export function renderEstimateCost(desk: Desk): TemplateResult | typeof nothing {
  const { tariff, view, selected } = desk;
  const told = tariff.kind === 'open' ? estimateCostAt(view, tariff.tariff, selected) : null;
  if (told === null) return nothing;
  const { writing } = view;
  const { cost } = told;
  const sentence = `${moneyText(cost, writing)}${bankText(cost, writing)}.${unitsText(cost, writing)}`;
  return html`<p class="why" id="answer-estimate">The estimate ${sentence}${doubtText(told)}</p>`;
}
