import { html, nothing, type TemplateResult } from 'lit';
import type { Finding, Quote } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import { isUnfinished } from '../../view/unfinished.ts';
import { fieldIdOf } from '../document/edit-quote.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { answerOf, type AnswerLine } from '../view/answer-view.ts';
import { assumptionsOf } from '../view/assumptions.ts';
import { quoteFindingText } from '../view/quote-finding-text.ts';
import { DRAWS } from '../work/later-work.ts';
import { groupKeyOf } from './inputs.ts';

/** A line of an answer: what it is, how much, and what has to be read with it. */
export function renderAnswerLine({ key, label, value, note }: AnswerLine): TemplateResult {
  return html`<div class=${key === 'payback' ? 'first' : ''}>
    <dt>${label}</dt>
    <dd class=${key === 'payback' ? 'payable' : ''} id="quote-answer-${key}">${value}</dd>
    <dd class="note" id="quote-note-${key}">${note}</dd>
  </div>`;
}

/** How far the draws are. */
function renderProgress({ later, document, view, stopDraws, drawAgain }: QuoteDesk): TemplateResult {
  const { writing } = view;
  const soFar = `${writing.number(String(later.drawn))} of ${writing.number(String(DRAWS))}`;
  if (document.uncertainty === undefined)
    return html`<p class="hint">
      One figure: say under “How sure this is” how sure the inputs are, for a range.
    </p>`;
  if (later.problem !== '') return html`<p class="finding question">No range: ${later.problem}</p>`;
  if (later.draws !== null) {
    const { never, count } = later.draws;
    return html`<p class="hint" id="quote-drawn">
      ${writing.number(String(count))} draws of what may come; in ${writing.number(String(never))} of them the
      price does not come back within the life.
    </p>`;
  }
  if (later.isStopped)
    return html`<p class="hint progress" id="quote-stopped">
      Stopped after ${soFar} draws: there is no range. ${renderButton('Draw again', drawAgain)}
    </p>`;
  return html`<p class="hint progress">
    <label for="quote-progress">Drawing what may come</label>
    <progress id="quote-progress" max=${DRAWS} value=${later.drawn}></progress>
    ${soFar} ${renderButton('Stop', stopDraws, { about: 'drawing what may come' })}
  </p>`;
}

/** That there is no answer, and why not. */
function noAnswerText({ tariff, view }: QuoteDesk): string {
  const { kind } = tariff.view;
  if (kind !== 'open' && kind !== 'opening') return 'There is no answer yet: choose the tariff first.';
  const errors = view.findings.filter(({ severity }) => severity === 'error');
  return `There is no answer yet: ${String(errors.length)} still to type or set right.`;
}

/** So many stand there at once: on a phone the inputs are beneath them. */
const SHOWN = 5;

/** What is to be set right before there is an answer, all of it, each with the way to its field. */
function renderWanted(desk: QuoteDesk): TemplateResult {
  const { findings, writing } = desk.view;
  const errors = findings.filter(({ severity }) => severity === 'error');
  const wrong = errors.filter((finding) => !isUnfinished(finding));
  const go = ({ code, path }: Finding): void => {
    desk.setOpen(groupKeyOf(String(path[0])), true);
    // Whatever is wrong with intervals is set right by a file, and so is that there are none.
    const isOfProfile = path[0] === 'profile' || code === 'quote/needs-profile';
    desk.focusField(fieldIdOf(isOfProfile ? ['profile'] : path));
  };
  const item = (finding: Finding): TemplateResult =>
    html`<li>
      ${isUnfinished(finding) ? `Still to type: ${finding.remedy}` : quoteFindingText(finding, writing)}
      ${renderButton(
        'Go to it',
        () => {
          go(finding);
        },
        { className: 'quiet', about: finding.path.join(' ') },
      )}
    </li>`;
  return html`<div id="quote-wanted">
    <p class="provided">${noAnswerText(desk)}</p>
    <ul class="wanted-list">
      ${errors.slice(0, SHOWN).map(item)}
    </ul>
    ${
      errors.length <= SHOWN
        ? nothing
        : html`<details class="help">
            <summary>And ${errors.length - SHOWN} more</summary>
            <ul class="wanted-list">
              ${errors.slice(SHOWN).map(item)}
            </ul>
          </details>`
    }
    ${wrong.length === 0 ? nothing : html`<p class="hint">Nothing that was typed is lost.</p>`}
  </div>`;
}

/** The answer first: payback, saving, the smallest bill, cash and instalment. */
export function renderAnswer(desk: QuoteDesk): TemplateResult {
  const { quote, writing, watts } = desk.view;
  if (quote === null) return renderWanted(desk);
  const { kWp } = quote.input.document.plant;
  return html`
    ${
      watts === null
        ? nothing
        : html`<p class="provided" id="quote-tried">
            A size is tried: these figures are not those of the ${writing.number(kWp)} kWp offered.
          </p>`
    }
    <dl class="answer" id="quote-answer">${answerOf(quote, desk.later, writing).map(renderAnswerLine)}</dl>
    ${renderProgress(desk)}
    <p class="caution">
      <strong class="mark">An estimate, not a guarantee.</strong> Tariff and rules may change, bills vary from
      month to month, and no bill becomes zero.
    </p>
  `;
}

/** Above the inputs of a phone the answer is out of sight: two of its figures go along. */
function renderShort(quote: Quote, { later, view }: QuoteDesk): readonly TemplateResult[] {
  return answerOf(quote, later, view.writing)
    .slice(0, 2)
    .map(
      ({ key, label, value }) =>
        html`<div class="short" id="quote-short-${key}">
          <dt>${label}</dt>
          <dd>${value}</dd>
        </div>`,
    );
}

/** Beneath the strip of a phone what is typed stays where it is, also while there is no answer. */
function renderNoAnswer(desk: QuoteDesk): TemplateResult | typeof nothing {
  if (desk.isSpread) return nothing;
  return html`<section class="strip" aria-label="What is wanted" tabindex="0">
    ${noAnswerText(desk)}
  </section>`;
}

/** What the figures hang on, in one ruled strip that stays in sight. */
export function renderStrip(desk: QuoteDesk): TemplateResult | typeof nothing {
  const { quote, writing, source } = desk.view;
  if (quote === null) return renderNoAnswer(desk);
  const { view } = desk.tariff;
  const tariff = view.kind === 'open' ? view.tariff.tariff.document.name : '';
  const { charges } = source;
  const { read } = desk.profile;
  const ownUse = read === null ? {} : { ownUse: `by the intervals of “${read.name}”` };
  return html`<section class="strip" aria-label="What this hangs on" tabindex="0">
    <dl>
      ${desk.isSpread ? nothing : renderShort(quote, desk)}
      ${assumptionsOf(quote.input.document, { charges, tariff, ...ownUse }, writing).map(
        ([label, text]) =>
          html`<div>
            <dt>${label}</dt>
            <dd>${text}</dd>
          </div>`,
      )}
    </dl>
  </section>`;
}
