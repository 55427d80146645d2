import { html, nothing, type TemplateResult } from 'lit';
import { parseDay } from '@unitbook/engine';
import { keptDay } from '../../plant/document/typed-texts.ts';
import { renderButton } from '../../render/button.ts';
import { typed } from '../../render/desk.ts';
import { renderFileInput } from '../../render/file-input.ts';
import { renderFold } from '../../render/fold.ts';
import { renderInput } from '../../render/field.ts';
import { renderNotUsable } from '../../render/refusal.ts';
import type { CheckDesk } from '../check-desk.ts';
import { isBlankRow } from '../../household/household.ts';
import { checkFindingText } from '../view/finding-words.ts';
import { inventedWords } from '../view/invented-ground.ts';
import { renderFindings } from './check-findings.ts';

function tariffWords({ tariff }: CheckDesk): string {
  switch (tariff.kind) {
    case 'none':
      return 'No tariff is chosen yet.';
    case 'opening':
      return 'Opening the tariff …';
    case 'open': {
      const { name, supplier, invented } = tariff.tariff.tariff.document;
      return `${name}, ${supplier}${invented === true ? ' (an invented place)' : ''}.`;
    }
    case 'unknown':
      return `The tariff “${tariff.id}” is not among the examples: open its file.`;
    case 'failed':
      return `The tariff could not be fetched (${tariff.reason}). Open the page once while online.`;
    case 'wrong':
      return 'The tariff cannot be used: open another file.';
  }
}

function renderRefusedTariff({ refusedTariff, view }: CheckDesk): TemplateResult | typeof nothing {
  if (refusedTariff === null) return nothing;
  const { name, findings } = refusedTariff;
  return renderNotUsable({
    name,
    findings: findings.map((finding) => checkFindingText(finding, view.writing)),
  });
}

/** Account, readings and tariff that came with a file, and the way back to those of the book. */
function renderOwnGround(desk: CheckDesk): TemplateResult | typeof nothing {
  const { store } = desk;
  if (store.check.ground === null) return nothing;
  return html`<div class="field">
      <label for="check-tariff-file">Another tariff file</label>
      ${renderFileInput('check-tariff-file', desk.openTariffFile)}
    </div>
    ${renderRefusedTariff(desk)}
    ${
      store.slot === 'demo'
        ? nothing
        : renderButton(
            'Check against the book instead',
            () => {
              store.changeGround({ ground: null });
            },
            { id: 'check-use-book' },
          )
    }`;
}

function renderConnected(desk: CheckDesk): TemplateResult {
  const { store, view, typing } = desk;
  const { connected } = store.check;
  const id = 'check-connected';
  const day = parseDay(keptDay(connected));
  const findings = typing === id ? [] : view.findings;
  const put = (text: string): void => {
    store.changeGround({ connected: text });
  };
  return html`<div class="field">
    <label for=${id}>Plant connected for net metering on</label>
    <span class="hint" id="${id}-hint">only where it was in one of these months</span>
    ${renderInput({
      id,
      label: 'Plant connected for net metering on',
      hint: '',
      value: connected,
      echo: '',
      findings,
      inputMode: 'text',
      input: put,
    })}
    <span class="echo" id="${id}-echo">${day === null ? '' : view.writing.day(day)}</span>
    ${renderFindings(findings, id, desk, put)}
  </div>`;
}

function renderOpening({ store, ground }: CheckDesk): TemplateResult {
  const credit = ground.account.openingCredit.trim() === '' ? '0' : ground.account.openingCredit;
  const value = store.check.isOpeningKnown ? 'known' : 'unknown';
  return html`<div class="field">
    <label for="check-opening-known">Credit brought forward into the first period</label>
    <select
      id="check-opening-known"
      @change=${(event: Event) => {
        store.changeGround({ isOpeningKnown: typed(event) === 'known' });
      }}
    >
      <option value="known" .selected=${value === 'known'}>as the account says: ${credit}</option>
      <option value="unknown" .selected=${value === 'unknown'}>nobody knows</option>
    </select>
  </div>`;
}

/** What the bills are checked against: the book, or what came with a file. */
export function renderGround(desk: CheckDesk): TemplateResult {
  const { ground, store } = desk;
  const rows = ground.readings.filter((row) => !isBlankRow(row)).length;
  const where =
    store.check.ground === null
      ? 'Account and readings are those of the book'
      : 'Account and readings came with the file';
  const account = ground.account.id === '' ? '' : `, account ${ground.account.id}`;
  const counted = rows === 1 ? '1 own reading.' : `${String(rows)} own readings.`;
  const readings = rows === 0 ? 'No own readings: those of the bills are taken.' : counted;
  return renderFold(
    {
      key: 'check-ground',
      className: 'account',
      isOpen: (desk.tariff.kind !== 'open' && desk.tariff.kind !== 'opening') || inventedWords(desk) !== '',
      summary: 'What the bills are checked against',
      content: () =>
        html`<p class="hint" id="check-ground">
            ${where}${account}. ${readings} Tariff: ${tariffWords(desk)}
          </p>
          <div class="pair">${renderOpening(desk)} ${renderConnected(desk)} ${renderOwnGround(desk)}</div>`,
    },
    desk,
  );
}
