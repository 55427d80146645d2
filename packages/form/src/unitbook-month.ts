import { html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import type { LayoutKeep } from './files/keep-layouts.ts';
import { renderMeterFileFold } from './files/meter-file-fold.ts';
import { insertRow } from './household/edit-household.ts';
import { emptyHousehold, isBlankRow, type Household } from './household/household.ts';
import { HOUSEHOLD_CHANGE } from './household-change.ts';
import { noteFix, type Fixed } from './household/put-back.ts';
import { putIn, takeOut, type TakenOut } from './household/take-out.ts';
import { renderPlantPage } from './plant/plant-page.ts';
import type { Desk } from './render/desk.ts';
import { renderAccount } from './render/account.ts';
import { renderAnswer } from './render/answer.ts';
import { renderBill } from './render/bill.ts';
import { renderEntry } from './render/entry.ts';
import { renderMonths } from './render/months.ts';
import { renderPassbook } from './render/passbook.ts';
import { renderSafety } from './render/safety.ts';
import { renderScreenHelp } from './render/screen-help.ts';
import { drawnProperties, styleSheet } from './element-parts.ts';
import type { TariffChoice } from './tariff-choice.ts';
import { closingOf, monthRows } from './view/month-rows.ts';
import { openTariff, openTariffText, type RefusedTariff, type TariffView } from './view/tariff-view.ts';
import { viewBook, type BookView } from './view/view-book.ts';

export { HOUSEHOLD_CHANGE };

/** What was taken out, and the sentence that says so. */
interface Removed {
  readonly taken: TakenOut;
  readonly told: string;
}

/** The place of a row after a change: other rows may have been put in before it or taken out. */
function followed(index: number, before: Household, after: Household): number {
  const row = before.readings[index];
  if (row === undefined || after.readings[index] === row) return index;
  const place = after.readings.indexOf(row, index);
  const at = place < 0 ? after.readings.lastIndexOf(row, index) : place;
  return at < 0 ? index : at;
}

/**
 * A household's account book: readings in, and out come the bill, its derivation and the passbook.
 *
 * @summary Checks a solar household's bill against its meter readings, month by month.
 * @event unitbook-household-change - the homeowner edited something; `detail` is the new household
 */
export class UnitbookMonth extends LitElement {
  static override properties = drawnProperties([
    'household',
    'tariffs',
    'today',
    'layouts',
    'selected',
    'tariff',
    'takenOut',
    'refused',
    'opened',
    'typing',
    'drafts',
  ]);
  static override styles = styleSheet;

  /** Everything typed. Replace it, never change it in place. */
  declare household: Household;
  /** The tariffs to choose from. */
  declare tariffs: readonly TariffChoice[];
  /** The day it is, as an ISO date; '' leaves dates in the future unquestioned. */
  declare today: string;
  /** Where layouts of tables are remembered; null remembers none. */
  declare layouts: LayoutKeep | null;
  declare private selected: number;
  declare private tariff: TariffView;
  /** Months and changes of meters taken out, the last one last. */
  declare private takenOut: readonly Removed[];
  /** What is wrong with a tariff file that was opened and not taken. */
  declare private refused: RefusedTariff | null;
  declare private opened: ReadonlyMap<string, boolean>;
  /** The id of the input that is being typed in; '' once it is left. */
  declare private typing: string;
  /** What was typed in inputs and cannot be taken over as it is, by their ids. */
  declare private drafts: ReadonlyMap<string, string>;
  private readonly fixed: Fixed = new WeakMap();
  /** The household as this element last sent it: any other comes from the page. */
  private own: Household | null = null;

  constructor() {
    super();
    this.household = emptyHousehold('en-IN');
    this.tariffs = [];
    this.today = '';
    this.layouts = null;
    this.selected = 1;
    this.tariff = { kind: 'none' };
    this.takenOut = [];
    this.refused = null;
    this.opened = new Map();
    this.typing = '';
    this.drafts = new Map();
  }

  protected override willUpdate(changed: PropertyValues): void {
    const before = changed.get('household') as Household | undefined;
    if (changed.has('household') && this.household !== this.own) this.showLastMonth();
    const tariffChanged = changed.has('household') && this.household.tariff !== before?.tariff;
    if (tariffChanged || changed.has('tariffs')) void this.openTariff();
  }

  /** A household from the page opens at its last reading. */
  private showLastMonth(): void {
    this.own = this.household;
    this.takenOut = [];
    this.opened = new Map();
    this.drafts = new Map();
    const last = this.household.readings.findLastIndex((row) => !isBlankRow(row));
    this.selected = Math.max(1, last);
  }

  private async openTariff(): Promise<void> {
    const { tariff } = this.household;
    this.tariff = { kind: tariff === '' ? 'none' : 'opening' };
    this.refused = null;
    const opened = await openTariff(tariff, this.tariffs);
    if (this.household.tariff === tariff) this.tariff = opened;
  }

  private readonly change = (household: Household): void => {
    this.selected = followed(this.selected, this.household, household);
    this.own = household;
    this.household = household;
    this.dispatchEvent(
      new CustomEvent<Household>(HOUSEHOLD_CHANGE, { detail: household, bubbles: true, composed: true }),
    );
  };

  private readonly fix = (household: Household): void => {
    noteFix(this.fixed, this.household, household);
    this.change(household);
  };

  private readonly noteTyping = ({ type }: Event): void => {
    this.typing = type === 'input' ? (this.shadowRoot?.activeElement?.id ?? '') : '';
  };

  private readonly openTariffFile = async (file: File): Promise<void> => {
    const read = openTariffText(await file.text());
    this.setOpen('account', true);
    this.refused = read.kind === 'wrong' ? { name: file.name, findings: read.findings } : null;
    if (read.kind === 'open') this.change({ ...this.household, tariff: read.tariff.tariff.document });
  };

  private readonly setOpen = (key: string, isOpen: boolean): void => {
    if (this.opened.get(key) === isOpen) return;
    this.opened = new Map(this.opened).set(key, isOpen);
  };

  private readonly setDraft = (id: string, text: string | null): void => {
    const drafts = new Map(this.drafts);
    if (text === null) drafts.delete(id);
    else drafts.set(id, text);
    this.drafts = drafts;
  };

  private addMonth(view: BookView): void {
    const last = view.rows.length - 1;
    const isFresh = view.rows[last]?.isBlank === true;
    if (!isFresh) this.change(insertRow(this.household, view.rows.length));
    this.selected = isFresh ? last : last + 1;
    this.focusField(`reading-${String(this.selected)}-date`);
  }

  private readonly takeOut = (places: readonly number[], told: string): void => {
    const shown = this.selected;
    const { household, taken } = takeOut(this.household, places);
    if (taken.rows.length === 0) return;
    this.takenOut = [...this.takenOut, { taken, told }];
    this.change(household);
    if (places.includes(shown)) this.selected = Math.min(places[0] ?? shown, household.readings.length - 1);
    this.focusField('undo');
  };

  private readonly undo = (): void => {
    const last = this.takenOut.at(-1);
    if (last === undefined) return;
    this.takenOut = this.takenOut.slice(0, -1);
    this.change(putIn(this.household, last.taken));
    this.selected = last.taken.rows.at(-1)?.[0] ?? this.selected;
    this.focusField('month');
  };

  /** Go to a field, once it is drawn. */
  readonly focusField = (id: string): void => {
    void this.updateComplete.then(() => {
      const field = this.shadowRoot?.getElementById(id);
      field?.focus();
      if (field instanceof HTMLInputElement) field.select();
    });
  };

  private desk(view: BookView): Desk {
    const selected = closingOf(view.rows, this.selected);
    return {
      household: this.household,
      view,
      tariff: this.tariff,
      tariffs: this.tariffs,
      selected,
      month: monthRows(view.rows, selected),
      removed: this.takenOut.at(-1)?.told ?? '',
      refusedTariff: this.refused,
      fixed: this.fixed,
      change: this.change,
      fix: this.fix,
      select: (index) => {
        this.selected = closingOf(view.rows, index);
      },
      remove: this.takeOut,
      undo: this.undo,
      addMonth: () => {
        this.addMonth(view);
      },
      focusField: this.focusField,
      openTariffFile: this.openTariffFile,
      isOpen: (key, otherwise) => this.opened.get(key) ?? otherwise,
      setOpen: this.setOpen,
      draft: (id) => this.drafts.get(id),
      setDraft: this.setDraft,
    };
  }

  protected override render(): TemplateResult {
    const prepared = this.tariff.kind === 'open' ? this.tariff.tariff : null;
    const { household, today, typing } = this;
    const desk = this.desk(viewBook({ household, tariff: prepared, today, typing }));
    const { name, id } = household.account;
    return html`
      <div class="book" @input=${this.noteTyping} @focusout=${this.noteTyping}>
        <section class="page answer-page" aria-labelledby="answer">
          <h2 id="answer">The answer</h2>
          ${renderAnswer(desk)}
        </section>
        <section class="page entry-page" aria-labelledby="entry">
          <h2 id="entry">Readings</h2>
          <p class="particulars">${name === undefined || name === '' ? id : name}</p>
          ${renderAccount(desk)} ${renderMonths(desk)} ${renderEntry(desk)} ${renderScreenHelp(desk)}
          ${renderMeterFileFold(desk, { today, layouts: this.layouts })}
        </section>
        <section class="page bill-page" aria-labelledby="bill">
          <h2 id="bill">The bill</h2>
          ${renderBill(desk)}
        </section>
        <section class="page passbook-page" aria-labelledby="passbook">
          <h2 id="passbook">The passbook</h2>
          ${renderPassbook(desk)}
        </section>
        ${renderPlantPage(desk, { today, layouts: this.layouts })} ${renderSafety()}
      </div>
    `;
  }
}
