import { html, type TemplateResult } from 'lit';
import { renderAccountField, type AccountField } from './account-field.ts';
import { renderMeters } from './account-meters.ts';
import type { Desk } from './desk.ts';
import { renderFindings } from './findings.ts';
import { renderFold } from './fold.ts';
import { renderPutBack } from './put-back.ts';
import { renderTariffChoice } from './tariff.ts';

function renderConnection(desk: Desk): TemplateResult {
  const { account } = desk.household;
  const fields: readonly AccountField[] = [
    {
      path: ['sanctionedLoad'],
      label: 'Sanctioned load, kW',
      hint: 'from the bill',
      value: account.sanctionedLoad,
      unit: ' kW',
    },
    {
      path: ['plantCapacity'],
      label: 'Plant size, kWp',
      hint: 'from the plant’s invoice',
      value: account.plantCapacity,
      unit: ' kWp',
    },
    {
      path: ['openingCredit'],
      label: 'Credit at the start, units',
      hint: 'from the bill before, 0 if none',
      value: account.openingCredit,
      unit: ' units',
    },
    {
      path: ['batteryCapacity'],
      label: 'Battery, kWh',
      hint: 'what it holds; blank if there is none',
      value: account.batteryCapacity ?? '',
      unit: ' kWh',
      isOptional: true,
    },
    {
      path: ['id'],
      label: 'Account number',
      hint: 'only for your own page',
      value: account.id,
      unit: '',
      isText: true,
    },
  ];
  return html`<div class="pair">${fields.map((field) => renderAccountField(field, desk))}</div>`;
}

function heading(desk: Desk): string {
  const { account } = desk.household;
  const { read } = desk.view.account;
  const parts = [
    account.id,
    read['sanctionedLoad'] == null ? '' : `${desk.view.writing.number(read['sanctionedLoad'])} kW sanctioned`,
    read['plantCapacity'] == null ? '' : `${desk.view.writing.number(read['plantCapacity'])} kWp plant`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'not filled in yet' : parts.join(', ');
}

/** The account, typed once: tariff, load, plant, opening credit and meters. */
export function renderAccount(desk: Desk): TemplateResult {
  const { account, findings } = desk.view.account;
  // What is asked about a meter that took the place of another stands in the month of the change.
  const own = findings.filter(({ path, severity }) => severity !== 'note' && !path.includes('later'));
  const isWaiting = account === null && findings.every(({ path }) => !path.includes('later'));
  const needsCare = isWaiting || desk.tariff.kind !== 'open' || own.length > 0;
  const elsewhere = findings.filter((finding) => finding.path.length === 0);
  return renderFold(
    {
      key: 'account',
      className: 'account',
      isOpen: needsCare && desk.tariff.kind !== 'opening',
      summary: html`<span class="label">This account</span> <span class="hint">${heading(desk)}</span>`,
      content: () => html`
        ${renderTariffChoice(desk)} ${renderConnection(desk)} ${renderMeters(desk)}
        ${renderFindings(elsewhere, 'account', desk)}
        ${renderPutBack(desk.household.account, 'account-sanctionedLoad', desk)}
      `,
    },
    desk,
  );
}
