import { html, nothing, type TemplateResult } from 'lit';
import {
  quotientText,
  useBounds,
  type Account,
  type BookMonth,
  type Bounds,
  type Figure,
  type Finding,
  type LedgerEntry,
} from '@unitbook/engine';
import type { BookView, RowView } from '../view/view-book.ts';
import { daysText, unitsWord, type Writing } from '../writing/writing.ts';
import { closingOf, shownWith } from '../view/month-rows.ts';
import { fieldOf } from '../view/still-typing.ts';
import { isUnfinished } from '../view/unfinished.ts';
import { renderButton } from './button.ts';
import type { Desk } from './desk.ts';
import { renderEstimateCost } from './estimate.ts';
import { findingText } from './findings.ts';
import { monthName } from './months.ts';
import { stillToType } from './still-to-type.ts';

/** "1 April to 1 May 2025, 30 days": from reading to reading. */
export function spanText(month: BookMonth, writing: Writing): string {
  const { from, to } = month.energy.period;
  // A date stays on one line.
  const [first, last] = [from, to].map((day) => writing.day(day).replaceAll(' ', '\u00a0'));
  return `${first ?? ''} to ${last ?? ''}, ${daysText(month.energy.days)}`;
}

/** Between what own use lies where it cannot be known. */
function boundsSentence({ energy }: BookMonth, account: Account | null, writing: Writing): string {
  const bounds = account === null ? null : useBounds(energy, account);
  if (bounds === null) return '';
  const between = ({ least, most }: Bounds): string =>
    `between ${writing.plain(least)} and ${writing.plain(most)}`;
  return (
    ` The house used ${between(bounds.selfConsumption)} units straight from the roof, and ` +
    `${between(bounds.totalUse)} in all; more exactly it cannot be known from these readings.`
  );
}

/** One sentence of why: what was used from where, what was given, and how the plant did. */
function whySentence(month: BookMonth, { account: { account }, writing }: BookView): string {
  const { energy, ratios } = month;
  const { generation, selfConsumption, totalUse } = energy;
  const taken = writing.plain(energy.import);
  const given = writing.plain(energy.export);
  if (generation === null || selfConsumption === null || totalUse === null)
    return `${taken} units came from the grid and ${given} were given to it.${boundsSentence(month, account, writing)}`;
  const perDay = ratios.specificYield;
  const pace =
    perDay === null
      ? ''
      : `, ${writing.number(quotientText(perDay.numerator, perDay.denominator, 2))} per kWp and day`;
  return (
    `The house used ${writing.plain(totalUse)} units: ${writing.plain(selfConsumption)} straight from the ` +
    `roof and ${taken} from the grid; ${given} were given to the grid. ` +
    `The plant made ${writing.plain(generation)}${pace}.`
  );
}

/** The bank of the passbook, or a ledger. */
type Bank = Pick<LedgerEntry, 'label' | 'unit' | 'isClosed' | 'payment' | 'lapsed' | 'closing'>;

function banksOf({ passbook, ledgers }: BookMonth): readonly Bank[] {
  return passbook === null ? ledgers : [{ ...passbook, label: 'The bank', unit: 'kWh' }];
}

/** What the close of a bank did in this month; empty where it did not close. */
function closeText({ label, unit, isClosed, payment, lapsed }: Bank, writing: Writing): string {
  if (!isClosed) return '';
  const amount = (figure: Figure): string =>
    unit === 'money' ? writing.sum(figure) : `${writing.plain(figure)} surplus ${unitsWord(unit)}`;
  if (payment !== null) {
    const pays = unit === 'money' ? 'pays out' : 'pays for';
    const bill = payment.inBill === 'same' ? 'this bill' : 'the next bill';
    return `${label} closed with this month: ${bill} ${pays} ${amount(payment.units)}.`;
  }
  return lapsed.numerator === 0
    ? `${label} closed with this month, and nothing was left in it.`
    : `${label} closed with this month: ${amount(lapsed)} lapsed.`;
}

/** What goes into the next month, of each bank. */
function bankedText(month: BookMonth, writing: Writing): string {
  const texts = banksOf(month).map(({ unit, closing }) =>
    unit === 'money' ? writing.sum(closing) : `${writing.plain(closing)} ${unitsWord(unit)}`,
  );
  return texts.join(', ') || 'nothing';
}

const isQuestion = ({ severity }: Finding): boolean => severity === 'question';

/** That a question is open in the month shown, and the way to it. */
function renderQuestion(desk: Desk): TemplateResult | typeof nothing {
  const shown = desk.month === null ? [] : shownWith(desk.month);
  const row = shown.find(({ findings }) => findings.some(isQuestion));
  if (row === undefined) return nothing;
  return html`<p class="provided">
    If the readings are right: a question stands beside them.
    ${renderGo('Go to the question', row.index, row.findings.find(isQuestion), desk)}
  </p>`;
}

function renderMonth(month: BookMonth, desk: Desk): TemplateResult {
  const { writing } = desk.view;
  const { payable } = month.bill;
  const inFavour = payable.numerator < 0;
  const question = renderQuestion(desk);
  return html`
    <p class="period">${spanText(month, writing)}</p>
    ${question}
    <dl class="answer">
      <div class="first">
        <dt>${inFavour ? 'The bill should be in your favour by' : 'The bill should be'}</dt>
        <dd class="payable ${question === nothing ? '' : 'asked'}" id="answer-payable">
          ${writing.sum(inFavour ? { numerator: -payable.numerator, denominator: payable.denominator } : payable)}
        </dd>
      </div>
      <div>
        <dt>Banked for next month</dt>
        <dd id="answer-banked">${bankedText(month, writing)}</dd>
      </div>
      <div>
        <dt>Solar saved</dt>
        <dd id="answer-saved">
          ${month.savings === null ? 'cannot be said' : writing.sum(month.savings.saving)}
        </dd>
      </div>
    </dl>
    <p class="why">
      ${whySentence(month, desk.view)}
      ${banksOf(month)
        .map((bank) => closeText(bank, writing))
        .filter((text) => text !== '')
        .join(' ')}
    </p>
    ${renderEstimateCost(desk)}
    ${
      month.energy.isEstimated
        ? html`<p class="hint">A reading was estimated: the next one read from the meter corrects it.</p>`
        : nothing
    }
  `;
}

const isWaiting = ({ severity }: Finding): boolean => severity === 'error';

function firstReason(blocked: RowView, desk: Desk): Finding | null {
  const upTo = desk.view.rows.slice(0, blocked.index + 1);
  const errors = upTo.flatMap((row) => row.findings).concat(desk.view.findings);
  return errors.find(isWaiting) ?? null;
}

/** What holds a month up: "Still to type: import, export on 1 May 2025", or what has to be set right. */
function reasonText(reason: Finding, row: RowView | undefined, desk: Desk): string {
  if (!isUnfinished(reason) || row === undefined) return findingText(reason, desk);
  return stillToType(row, desk.view.writing);
}

/** Show a month and go to one of its fields. */
function renderGo(
  words: string,
  index: number,
  finding: Finding | null | undefined,
  desk: Desk,
): TemplateResult {
  return renderButton(
    words,
    () => {
      desk.select(index);
      if (finding != null) desk.focusField(fieldOf(finding));
    },
    { className: 'quiet' },
  );
}

/** Why there is no bill yet, and where to go. */
function renderBlocked(blocked: RowView, desk: Desk): TemplateResult {
  const { rows, writing } = desk.view;
  const reason = firstReason(blocked, desk);
  const at =
    reason?.path[0] === 'readings' && typeof reason.path[1] === 'number' ? reason.path[1] : blocked.index;
  const here = closingOf(rows, at) === desk.selected;
  const later = rows.slice(blocked.index + 1).some(({ isBlank }) => !isBlank);
  const wait = here
    ? later
      ? 'This month waits until it is set right, and so do all later ones, since their credit hangs on it.'
      : ''
    : `The month ${monthName(blocked, writing)} has to be set right first: this one waits, since its credit hangs on it.`;
  return html`
    <p class="period">Can’t tell yet</p>
    ${reason === null ? nothing : html`<p class="why">${reasonText(reason, rows[at], desk)}</p>`}
    <p class="why">${wait} ${renderGo(here ? 'Go to it' : 'Show it', at, reason, desk)}</p>
  `;
}

function renderPrompt(text: string): TemplateResult {
  return html`<p class="period">Can’t tell yet</p>
    <p class="why">${text}</p>`;
}

function renderState(desk: Desk): TemplateResult {
  const row = desk.view.rows[desk.selected];
  if (row?.month != null) return renderMonth(row.month, desk);
  if (desk.tariff.kind === 'opening') return renderPrompt('Opening the tariff …');
  if (desk.tariff.kind !== 'open')
    return renderPrompt('Choose the tariff of this connection under “This account”.');
  if (desk.view.account.account === null)
    return renderPrompt(
      'Type the sanctioned load and the plant size under “This account”, once for all months.',
    );
  const { blocked } = desk.view;
  if (blocked !== null && blocked.index <= desk.selected) return renderBlocked(blocked, desk);
  return renderPrompt('Type the date and the numbers of both meters: the answer appears as you type.');
}

/** Questions that are still open, in months that were billed all the same. */
function renderOpenQuestions(desk: Desk): TemplateResult | typeof nothing {
  const open = desk.view.rows.filter((row) => row.findings.some(isQuestion));
  const elsewhere = open.filter((row) => closingOf(desk.view.rows, row.index) !== desk.selected);
  const [first] = elsewhere;
  if (first === undefined) return nothing;
  const closing = desk.view.rows[closingOf(desk.view.rows, first.index)];
  return html`<p class="hint">
    A question is open in another month.
    ${renderGo(`Show the month ${monthName(closing ?? first, desk.view.writing)}`, first.index, null, desk)}
  </p>`;
}

/** The answer: what the bill should be, what is banked, what solar saved, and why. */
export function renderAnswer(desk: Desk): TemplateResult {
  return html`
    <div role="status" aria-live="polite" aria-atomic="true" class="live">${renderState(desk)}</div>
    ${renderOpenQuestions(desk)}
  `;
}
