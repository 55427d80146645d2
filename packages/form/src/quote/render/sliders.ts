import { html, nothing, type TemplateResult } from 'lit';
import { isDecimalText, wholeToDecimal, decimalToWhole } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import { renderInput } from '../../render/field.ts';
import { keptNumber } from '../../plant/document/typed-texts.ts';
import { fieldIdOf, putAt, textAt } from '../document/edit-quote.ts';
import { lifeFields, selfUseFields, type QuoteField } from '../document/quote-fields.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderQuoteField } from './quote-field.ts';
import { renderSlider } from './slider.ts';

/** A field of the quote with a slider beneath it. */
function renderSlid(
  field: QuoteField | undefined,
  { most, step }: { readonly most: string; readonly step: string },
  desk: QuoteDesk,
): TemplateResult | typeof nothing {
  if (field === undefined) return nothing;
  const kept = textAt(desk.document, field.path);
  const slider = renderSlider({
    id: `${fieldIdOf(field.path)}-slider`,
    label: `${field.label}: slide`,
    least: '0',
    most,
    step,
    value: isDecimalText(kept) ? kept : '',
    says: kept === '' ? 'not said' : `${kept} %`,
    slide: (value) => {
      desk.change(putAt(desk.document, field.path, value));
    },
  });
  const isIdle = field.path[0] === 'selfUse' && desk.profile.read !== null;
  const more = html`${slider}
  ${isIdle ? html`<p class="hint">Not counted: own use follows from the intervals that were read.</p>` : nothing}`;
  return renderQuoteField(field, desk, more);
}

/** The size that would be tried at most: twice the offered one, in whole kWp. */
const mostOf = (kWp: string): string =>
  isDecimalText(kWp) ? String(Math.max(2, Math.ceil(decimalToWhole(kWp, 3) / 500))) : '10';

/** What is tried, in words; '' for the size that is offered. */
function triedText({ trial, view: { watts, writing } }: QuoteDesk, offered: string): string {
  if (trial === '') return '';
  if (watts === null) return 'Not a size yet: type kWp, such as 3.5.';
  return `Tried: ${writing.number(wholeToDecimal(watts, 3))} kWp in the place of ${offered} kWp offered.`;
}

/** Another size, to be tried: the offer stays as it is. */
function renderSize(desk: QuoteDesk): TemplateResult {
  const offered = textAt(desk.document, ['plant', 'kWp']);
  const shown = desk.trial === '' ? offered : desk.trial;
  const tryOut = (text: string): void => {
    const kept = keptNumber(text);
    desk.tryOut(kept === offered ? '' : kept);
  };
  const isOther = desk.trial !== '';
  return html`<div class="field">
    <label for="quote-trial">Try a size, kWp</label>
    <span class="hint" id="quote-trial-hint">generation and price by capacity; the offer stays as it is</span>
    ${renderInput({
      id: 'quote-trial',
      label: 'Try a size, kWp',
      hint: 'by capacity',
      value: shown,
      echo: '',
      findings: [],
      inputMode: 'decimal',
      input: tryOut,
    })}
    <span class="echo" id="quote-trial-echo">${triedText(desk, offered)}</span>
    ${renderSlider({
      id: 'quote-trial-slider',
      label: 'Try a size, kWp: slide',
      least: '0.1',
      most: mostOf(offered),
      step: '0.1',
      value: isDecimalText(shown) ? shown : '',
      says: `${shown} kWp`,
      slide: tryOut,
    })}
    ${
      isOther
        ? renderButton('Back to the offer', () => {
            desk.tryOut('');
            desk.focusField('quote-trial');
          })
        : nothing
    }
  </div>`;
}

/** All rises at once: of those that are typed, or of every charge that can rise. */
function renderRise(desk: QuoteDesk): TemplateResult {
  const { charges } = desk.document.escalation;
  const known = desk.view.source.charges.filter(({ follows }) => follows === '').map(({ id }) => id);
  const rising = Object.keys(charges).filter((id) => known.includes(id));
  const ids = rising.length > 0 ? rising : known;
  const values = [...new Set(Object.values(charges))];
  const value = values.length === 1 ? (values[0] ?? '') : '';
  const set = (percent: string): void => {
    const risen = Object.fromEntries(ids.map((id) => [id, percent]));
    desk.change(putAt(desk.document, ['escalation', 'charges'], { ...charges, ...risen }));
  };
  const says = values.length > 1 ? 'differs by charge' : value === '' ? 'not at all' : `${value} %`;
  return html`<div class="field">
    <label for="quote-rise">Rates rise by, % a year</label>
    <span class="hint" id="quote-rise-hint">all charges at once; one by one under “How rates rise”</span>
    ${renderInput({
      id: 'quote-rise',
      label: 'Rates rise by, % a year',
      hint: 'all at once',
      value: desk.shown('quote-rise', value),
      echo: '',
      findings: [],
      inputMode: 'decimal',
      input: (text) => {
        const kept = keptNumber(text);
        desk.noteTyped('quote-rise', text, kept);
        set(kept);
      },
    })}
    <span class="echo" id="quote-rise-echo">${values.length > 1 ? 'The charges differ.' : ''}</span>
    ${renderSlider({
      id: 'quote-rise-slider',
      label: 'Rates rise by, % a year: slide',
      least: '0',
      most: '10',
      step: '0.1',
      value: isDecimalText(value) ? value : '',
      says,
      slide: set,
    })}
  </div>`;
}

/** What can be slid: the answer follows each move. */
export function renderSliders(desk: QuoteDesk): TemplateResult {
  const [share] = selfUseFields();
  const [discount] = lifeFields();
  return html`<section class="part" aria-labelledby="quote-sliders">
    <h3 class="sub" id="quote-sliders">What if</h3>
    <div class="pair sliders">
      ${renderSize(desk)} ${renderSlid(share, { most: '100', step: '1' }, desk)} ${renderRise(desk)}
      ${renderSlid(discount, { most: '20', step: '0.5' }, desk)}
    </div>
  </section>`;
}
