import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import { renderFold } from '../../render/fold.ts';
import type { BesidePart, QuoteDesk } from '../quote-desk.ts';

/** What can be laid beside a quote, in the words of its fold. */
const TITLES: Readonly<Record<BesidePart, string>> = {
  flyer: 'A rival’s flyer beside it',
  promise: 'After the sale: was the promise kept?',
};

function renderFlyer(desk: QuoteDesk): TemplateResult {
  const { beside, view, profile, document } = desk;
  return html`<unitbook-flyer
    .quoteDocument=${view.quote === null ? null : view.plain}
    .tariff=${beside.tariff}
    .profile=${profile.read?.profile ?? null}
    .locale=${document.locale ?? 'en-IN'}
    .flyer=${beside.flyer}
    @unitbook-flyer-change=${(event: CustomEvent<typeof beside.flyer>) => {
      beside.setFlyer(event.detail);
    }}
  ></unitbook-flyer>`;
}

function renderPromise(desk: QuoteDesk): TemplateResult {
  const { beside, view, profile, document } = desk;
  return html`<unitbook-promise
    .quoteDocument=${view.quote === null ? null : view.plain}
    .tariff=${beside.tariff}
    .profile=${profile.read?.profile ?? null}
    .locale=${document.locale ?? 'en-IN'}
    .household=${beside.household}
    .tariffs=${desk.tariff.choices}
    .today=${beside.today}
  ></unitbook-promise>`;
}

const CONTENTS: Readonly<Record<BesidePart, (desk: QuoteDesk) => TemplateResult>> = {
  flyer: renderFlyer,
  promise: renderPromise,
};

function renderOpened(part: BesidePart, desk: QuoteDesk): TemplateResult {
  const { beside } = desk;
  beside.want(part);
  return html`${
    beside.isFailed
      ? html`<p class="notice" role="alert">This part could not be fetched. Open it once while online.</p>`
      : CONTENTS[part](desk)
  }
  ${renderButton(
    'Print this part',
    () => {
      beside.print(part);
    },
    { className: 'quiet', about: TITLES[part] },
  )}`;
}

/** A flyer, and what came of the promise: each is fetched when its fold is opened. */
export function renderBeside(desk: QuoteDesk): TemplateResult {
  const part = (name: BesidePart): TemplateResult =>
    html`<div class="beside" data-part=${name}>
      ${renderFold(
        {
          key: `quote-beside-${name}`,
          className: 'help',
          summary: TITLES[name],
          content: (isOpen) => (isOpen ? renderOpened(name, desk) : nothing),
        },
        desk,
      )}
    </div>`;
  return html`${part('flyer')}${part('promise')}`;
}
