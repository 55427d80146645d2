import { html, nothing, type TemplateResult } from 'lit';
import {
  canName,
  gridPath,
  nameRate,
  rateRegisters,
  ratesOf,
  setBlock,
  setRateCount,
  type Rate,
  type RateRegisters,
} from '../household/rates.ts';
import { typed, type Desk } from './desk.ts';
import { renderFold } from './fold.ts';
import { SHORT } from './register-words.ts';
import { renderPlainSelect } from './select.ts';

const ORDINALS = ['First', 'Second', 'Third', 'Fourth'];
const ordinal = (at: number): string => ORDINALS[at] ?? `${String(at + 1)}th`;

/** A way in the account as the id of a field. */
const idOf = (registers: RateRegisters, ...rest: readonly string[]): string =>
  ['account', ...gridPath(registers.place), registers.channels[0] ?? 'import', 'rates', ...rest].join('-');

/** "Import and export" or one of them. */
const channelWords = ({ channels }: RateRegisters): string =>
  channels.length > 1 ? 'Import and export' : SHORT[channels[0] ?? 'import'];

/** The section that the rates of the first meter stand in would else close once everything is in. */
function keepOpen({ place }: RateRegisters, desk: Desk): void {
  if (place < 0) desk.setOpen('account', true);
}

function renderCount(registers: RateRegisters, count: number, desk: Desk): TemplateResult {
  const counts = [2, 3, 4, ...(count > 4 ? [count] : [])].map(
    (one) => [String(one), `one for each of ${String(one)} rates`] as const,
  );
  return renderPlainSelect({
    id: idOf(registers, 'count'),
    label: `${channelWords(registers)}: registers`,
    value: String(count),
    options: [['0', 'one for all units'], ...counts],
    choose: (text) => {
      keepOpen(registers, desk);
      desk.fix(setRateCount(desk.household, registers, Number.parseInt(text, 10)));
    },
  });
}

/** The name of a rate. One that cannot be is kept in the field, and the account keeps the one before. */
function renderName(registers: RateRegisters, at: number, rate: Rate, desk: Desk): TemplateResult {
  const id = idOf(registers, String(at), 'id');
  const draft = desk.draft(id);
  const input = (event: Event): void => {
    const text = typed(event);
    const isName = canName(desk.household, registers, at, text);
    desk.setDraft(id, isName ? null : text);
    keepOpen(registers, desk);
    if (isName && text !== rate.id) desk.change(nameRate(desk.household, registers, at, text));
  };
  return html`<div class="field">
    <label for=${id}>${ordinal(at)} rate: its name on the display</label>
    <input
      id=${id}
      type="text"
      autocomplete="off"
      autocapitalize="off"
      spellcheck="false"
      aria-describedby=${draft === undefined ? nothing : `${id}-findings`}
      aria-invalid=${draft === undefined ? 'false' : 'true'}
      .value=${draft ?? rate.id}
      @input=${input}
    />
    ${
      draft === undefined
        ? nothing
        : html`<div class="findings" id="${id}-findings">
            <p class="finding error">
              <strong class="mark">To set right:</strong> “${draft}” names no rate. Expected: up to 12 letters
              and digits, and each rate once. Until then it is called ${rate.id}.
            </p>
          </div>`
    }
  </div>`;
}

function renderBlock(registers: RateRegisters, at: number, rate: Rate, desk: Desk): unknown {
  const blocks =
    desk.tariff.kind === 'open' ? (desk.tariff.tariff.tariff.document.timeBlocks?.blocks ?? []) : [];
  if (blocks.length === 0) return nothing;
  const { block = '' } = rate;
  const known = blocks.map(({ id, label }) => [id, label] as const);
  const isKnown = block === '' || blocks.some(({ id }) => id === block);
  return renderPlainSelect({
    id: idOf(registers, String(at), 'block'),
    label: `${ordinal(at)} rate: the time block that it counts`,
    value: block,
    options: [
      ['', 'not chosen'],
      ...known,
      ...(isKnown ? [] : [[block, `${block}, not in this tariff`] as const]),
    ],
    choose: (text) => {
      keepOpen(registers, desk);
      desk.change(setBlock(desk.household, registers, at, text));
    },
  });
}

function renderRegisters(registers: RateRegisters, desk: Desk): TemplateResult {
  const rates = ratesOf(desk.household, registers);
  const hasBlocks =
    desk.tariff.kind === 'open' && desk.tariff.tariff.tariff.document.timeBlocks !== undefined;
  return html`
    <div class="pair">${renderCount(registers, rates.length, desk)}</div>
    ${rates.map(
      (rate, at) =>
        html`<div class="pair">
          ${renderName(registers, at, rate, desk)} ${renderBlock(registers, at, rate, desk)}
        </div>`,
    )}
    ${
      rates.length > 0 && hasBlocks
        ? html`<p class="hint">
            Rate 1 is not peak everywhere: look into the tariff or ask the utility which rate counts when.
          </p>`
        : nothing
    }
  `;
}

/**
 * The registers of rates of a two-way meter.
 *
 * @param place  of the meter among the later ones; −1: the first meter
 */
export function renderRates(place: number, desk: Desk): TemplateResult {
  const parts = rateRegisters(desk.household, place);
  const count = parts.reduce((most, one) => Math.max(most, ratesOf(desk.household, one).length), 0);
  return renderFold(
    {
      key: `rates-${gridPath(place).join('-')}`,
      className: 'help',
      isOpen: count > 0,
      summary: 'The display shows one register for each rate',
      content: () => html`
        <p class="hint">
          A meter that counts by the time of day shows 1.8.1, 1.8.2 beside or in place of 1.8.0. Each month
          then has a line for each rate. Its name is what stands behind: 1 where the display says 1.8.1.
        </p>
        ${parts.map((registers) => renderRegisters(registers, desk))}
      `,
    },
    desk,
  );
}
