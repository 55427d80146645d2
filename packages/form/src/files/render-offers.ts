import { readTypedDay, type AccountDocument, type DayNumber } from '@unitbook/engine';
import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../render/button.ts';
import type { Writing } from '../writing/writing.ts';
import { fitAccount, type AccountFit, type Width } from './fit-account.ts';
import { fitOffers, registerTexts, type Offer, type OfferFit } from './fit-book.ts';
import type { Panel } from './panel.ts';
import { renderSentences, renderTick, renderWide } from './parts.ts';
import type { Choices } from './session.ts';
import { counted, listed, SHORT_WORDS } from './words.ts';

/** Readings that are offered, and what goes with them. */
export interface Offering {
  /** Names it on the page. */
  readonly key: 'registers' | 'totals';
  readonly offers: readonly Offer[];
  readonly choices: Choices;
  /** Whether days are picked one by one. */
  readonly isPicking: boolean;
  /** How wide the registers of the account are to be at least. */
  readonly least?: Width;
}

/** "Taken", "Given, rate 1". */
function keyWords(key: string): string {
  const [id = '', rate] = key.split('-');
  const words = SHORT_WORDS[id as keyof typeof SHORT_WORDS];
  return rate === undefined ? words : `${words}, rate ${rate}`;
}

const ORDER = ['import', 'export', 'generation'];

/** The registers of some readings, import first. */
function keysOf(offers: readonly Offer[]): readonly string[] {
  const keys = new Set(offers.flatMap(({ row }) => [...registerTexts(row).keys()]));
  const place = (key: string): number => ORDER.indexOf(key.split('-')[0] ?? '');
  return [...keys].sort((a, b) => place(a) - place(b) || (a < b ? -1 : 1));
}

function toggled<Item>(items: ReadonlySet<Item>, item: Item, isIn: boolean): ReadonlySet<Item> {
  const all = new Set(items);
  if (isIn) all.add(item);
  else all.delete(item);
  return all;
}

/** What a reading of an offering is chosen by. */
const replaceKey = (key: Offering['key'], day: DayNumber): string => `${key} ${String(day)}`;

/** A number in the grouping of the reader; what cannot be read as it stands is shown as it was typed. */
function numberText(text: string, writing: Writing): string {
  if (text === '') return '–';
  return /^\d+(?:\.\d+)?$/.test(text) ? writing.number(text) : `“${text}”`;
}

/** What is said of how a reading goes with the book. */
function renderFit(fit: OfferFit, { choices, key }: Offering, panel: Panel): TemplateResult | string {
  const { day } = fit.offer;
  const { writing } = panel.desk;
  switch (fit.fit) {
    case 'new':
      return 'new';
    case 'same':
      return 'there already, the same';
    case 'fills':
      return `there, without ${listed(fit.blank.map((one) => keyWords(one).toLowerCase()))}: filled in`;
    case 'differs': {
      const words = fit.differences.map(
        (one) =>
          `${keyWords(one.key).toLowerCase()} ${numberText(one.offered, writing)} in place of ${numberText(one.typed, writing)}`,
      );
      return html`there with another number:
      ${renderTick({
        id: `replace-${key}-${String(day)}`,
        words: `use the file: ${listed(words)}`,
        about: panel.desk.writing.day(day),
        isTicked: choices.replace.has(replaceKey(key, day)),
        change: (isIn) => {
          panel.choose({ replace: toggled(choices.replace, replaceKey(key, day), isIn) });
        },
      })}`;
    }
  }
}

function renderDayCell(fit: OfferFit, offering: Offering, panel: Panel): TemplateResult | string {
  const { day } = fit.offer;
  const words = panel.desk.writing.day(day);
  if (!offering.isPicking) return words;
  const { picked } = offering.choices;
  return renderTick({
    id: `pick-${String(day)}`,
    words,
    isTicked: picked.has(day),
    change: (isIn) => {
      panel.choose({ picked: toggled(picked, day, isIn) });
    },
  });
}

function renderTable(fits: readonly OfferFit[], offering: Offering, panel: Panel): TemplateResult {
  const keys = keysOf(fits.map(({ offer }) => offer));
  const { writing } = panel.desk;
  return renderWide(
    'Readings to take over',
    html`<table>
      <thead>
        <tr>
          <th scope="col">Day</th>
          ${keys.map((key) => html`<th scope="col">${keyWords(key)}</th>`)}
          <th scope="col" class="said">In the book</th>
        </tr>
      </thead>
      <tbody>
        ${fits.map((fit) => {
          const texts = registerTexts(fit.offer.row);
          return html`<tr>
            <th scope="row" class="day">${renderDayCell(fit, offering, panel)}</th>
            ${keys.map((key) => html`<td>${numberText(texts.get(key) ?? '', writing)}</td>`)}
            <td class="said">${renderFit(fit, offering, panel)}</td>
          </tr>`;
        })}
      </tbody>
    </table>`,
  );
}

/** The field of the account at which rates are set. */
const RATES_FIELD = 'account-meters-grid-import-rates-count';

function renderObstacles({ obstacles }: AccountFit, panel: Panel): TemplateResult {
  return html`
    ${obstacles.map((sentence) => html`<p class="finding question"><span class="mark">First:</span> ${sentence}</p>`)}
    <div class="row">
      ${renderButton('Go to “This account”', () => {
        panel.desk.goToAccount(RATES_FIELD);
      })}
    </div>
  `;
}

/** What is said of multiplying factors and serial numbers, which a file cannot know of. */
function factorNotes({ meters }: AccountDocument): readonly string[] {
  const factor = meters.grid.multiplyingFactor.trim();
  return factor === '' || factor === '1'
    ? []
    : [
        `This account multiplies what the two-way meter shows by ${factor}: the numbers of the file are taken for what the meter shows.`,
      ];
}

/** The readings that a press takes over: all but those that are there already, or that differ and were not asked for. */
function wantedFits(fits: readonly OfferFit[], { key, choices, isPicking }: Offering): readonly OfferFit[] {
  return fits.filter(({ fit, offer: { day } }) => {
    if (isPicking && !choices.picked.has(day)) return false;
    return (
      fit === 'new' || fit === 'fills' || (fit === 'differs' && choices.replace.has(replaceKey(key, day)))
    );
  });
}

function renderSettings(
  fit: AccountFit,
  { key, choices }: Offering,
  panel: Panel,
): TemplateResult | typeof nothing {
  if (fit.settings.length === 0) return nothing;
  return html`
    ${renderTick({
      id: `set-account-${key}`,
      words: `Set in “This account”, so that these numbers fit: ${fit.settingWords}`,
      isTicked: choices.setsAccount.has(key),
      change: (isIn) => {
        panel.choose({ setsAccount: toggled(choices.setsAccount, key, isIn) });
      },
    })}
    <p class="hint">Else they stand in the book as numbers that its registers cannot show.</p>
  `;
}

/** Readings of a file beside the book, and the press that takes them over. */
export function renderOffers(offering: Offering, panel: Panel): TemplateResult {
  const { household } = panel.desk;
  const fit = fitAccount(offering.offers, household.account, offering.least);
  const fits = fitOffers(fit.offers, household);
  const wanted = wantedFits(fits, offering);
  const settings = offering.choices.setsAccount.has(offering.key) ? fit.settings : [];
  const notes = offering.key === 'registers' ? factorNotes(household.account) : [];
  return html`
    ${renderSentences([...fit.notes, ...notes])} ${renderTable(fits, offering, panel)}
    ${
      fit.obstacles.length > 0
        ? renderObstacles(fit, panel)
        : html`
            ${renderSettings(fit, offering, panel)}
            ${
              wanted.length === 0
                ? html`<p class="say">Nothing to take over: no day is chosen that is not in the book.</p>`
                : renderButton(
                    `Take over ${counted(wanted.length, 'reading')}`,
                    () => {
                      panel.take(wanted, settings);
                    },
                    { id: `take-${offering.key}`, className: 'strong' },
                  )
            }
          `
    }
  `;
}

/** Whether a book has readings that somebody typed, with a day. */
export function hasDatedReadings({ desk: { household } }: Panel): boolean {
  return household.readings.some(({ date }) => readTypedDay(date) !== null);
}
