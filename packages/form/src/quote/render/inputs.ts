import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import { renderFold } from '../../render/fold.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderBattery } from './group-battery.ts';
import { renderGeneration } from './group-generation.ts';
import { renderOthers } from './group-others.ts';
import { renderSelfUse } from './group-own-use.ts';
import { renderPolicies } from './group-policies.ts';
import { renderCarbon, renderUncertainty } from './groups-doubt.ts';
import { renderPlant, renderUse } from './groups-energy.ts';
import { renderOffer } from './group-offer.ts';
import { renderLoan, renderPrice, renderSubsidy, renderUpkeep } from './groups-money.ts';
import { renderAccount, renderLife, renderRises } from './groups-terms.ts';
import { renderQuoteTariff } from './quote-tariff.ts';
import { renderSliders } from './sliders.ts';

/** A group of inputs that folds away, and the parts of the document that it is about. */
interface Group {
  readonly key: string;
  readonly title: string;
  readonly parts: readonly string[];
  readonly render: (desk: QuoteDesk) => TemplateResult;
}

const GROUPS: readonly Group[] = [
  { key: 'offer', title: 'The offer', parts: ['offer', 'start', 'locale'], render: renderOffer },
  {
    key: 'tariff',
    title: 'Tariff and account',
    parts: ['quantities', 'tariff', 'settlementDay'],
    render: (desk) => html`${renderQuoteTariff(desk)}${renderAccount(desk)}`,
  },
  { key: 'others', title: 'Other tariffs', parts: [], render: renderOthers },
  { key: 'use', title: 'Twelve months of use', parts: ['use'], render: renderUse },
  { key: 'plant', title: 'The plant', parts: ['plant'], render: renderPlant },
  {
    key: 'generation',
    title: 'What it makes',
    parts: ['generation', 'degradation'],
    render: renderGeneration,
  },
  { key: 'own', title: 'Own use', parts: ['selfUse', 'profile'], render: renderSelfUse },
  { key: 'battery', title: 'Battery', parts: ['battery'], render: renderBattery },
  { key: 'price', title: 'Price and tax', parts: ['price'], render: renderPrice },
  { key: 'subsidy', title: 'Subsidy', parts: ['subsidy'], render: renderSubsidy },
  { key: 'loan', title: 'Loan', parts: ['loan'], render: renderLoan },
  { key: 'upkeep', title: 'Upkeep and replacements', parts: ['upkeep'], render: renderUpkeep },
  { key: 'rises', title: 'How rates rise', parts: ['escalation'], render: renderRises },
  {
    key: 'life',
    title: 'Life and rounding',
    parts: ['years', 'discountRate', 'payable'],
    render: renderLife,
  },
  { key: 'sure', title: 'How sure this is', parts: ['uncertainty'], render: renderUncertainty },
  { key: 'policies', title: 'Cases of other rules', parts: ['policies'], render: renderPolicies },
  { key: 'carbon', title: 'CO₂', parts: ['carbon'], render: renderCarbon },
];

/** How much a group still wants; '' for nothing. */
function wants({ parts }: Group, { view }: QuoteDesk): string {
  const open = view.findings.filter(
    ({ path, severity }) => severity === 'error' && parts.includes(String(path[0])),
  );
  if (open.length === 0) return '';
  return open.length === 1 ? '1 to type or set right' : `${String(open.length)} to type or set right`;
}

function renderGroup(group: Group, desk: QuoteDesk): TemplateResult {
  const wanted = wants(group, desk);
  return renderFold(
    {
      key: `quote-${group.key}`,
      className: 'account',
      summary: html`<span class="label">${group.title}</span>
        ${wanted === '' ? nothing : html`<span class="wanted">${wanted}</span>`}`,
      content: (isOpen) => (isOpen ? group.render(desk) : nothing),
    },
    desk,
  );
}

function renderRemoved({ removed, undo }: QuoteDesk): TemplateResult | typeof nothing {
  if (removed === '') return nothing;
  return html`<p class="undo" role="status">
    ${removed} ${renderButton('Put it back', undo, { id: 'quote-undo' })}
  </p>`;
}

/** The left page: what can be slid, and every input in its group. */
export function renderInputs(desk: QuoteDesk): TemplateResult {
  return html`${renderRemoved(desk)} ${renderSliders(desk)}
    <section class="part" aria-labelledby="quote-inputs">
      <h3 class="sub" id="quote-inputs">What the offer says</h3>
      ${GROUPS.map((group) => renderGroup(group, desk))}
    </section>`;
}

/** The group that a part of the document is in: its fold has to be open before a field can be gone to. */
export function groupKeyOf(part: string): string {
  return `quote-${GROUPS.find(({ parts }) => parts.includes(part))?.key ?? 'offer'}`;
}
