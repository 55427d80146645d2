import { html, LitElement, unsafeCSS, type PropertyValues, type TemplateResult } from 'lit';
import { drawnProperties, styleSheet } from '../../element-parts.ts';
import { emptyHousehold, type Household } from '../../household/household.ts';
import { readHousehold } from '../../household/read-household.ts';
import { offerFile } from '../../offer-file.ts';
import type { TariffChoice } from '../../tariff-choice.ts';
import { OpenTariff } from '../state/open-tariff.ts';
import { quoteStyles } from '../styles/quote-styles.ts';
import type { OfferedInput } from './offered-quote.ts';
import type { PromiseDesk, RefusedHousehold } from './promise-desk.ts';
import { promiseStyles } from './promise-styles.ts';
import { promiseCsv } from './promise-tables.ts';
import { viewPromise, type BillsBy, type PromiseView } from './promise-view.ts';
import { renderReport } from './render-report.ts';
import { renderSource, renderWanted } from './render-source.ts';

declare global {
  interface HTMLElementTagNameMap {
    'unitbook-promise': UnitbookPromise;
  }
}

/** A household's file that was opened in the place of the book. */
interface OpenedFile {
  readonly name: string;
  readonly household: Household;
}

/**
 * Whether the promise of a quote was kept: why the bills differ first, then each period as promised and as it came.
 *
 * Properties: `quoteDocument` (the quote as it is offered, with plain numbers; null: not all of it is typed),
 * `tariff` (that of the quote; null: none is open), `profile` (its intervals, or null), `household` (of the book;
 * its tariff makes the bills that came), `tariffs` (the examples that a household may name), `today` (ISO date, or
 * ''), `locale` (how numbers are written). None of them is changed, and nothing is sent.
 *
 * @summary Sets readings against a quote.
 */
export class UnitbookPromise extends LitElement {
  static override properties = drawnProperties([
    'quoteDocument',
    'tariff',
    'profile',
    'household',
    'tariffs',
    'today',
    'locale',
    'opened',
    'refused',
    'billsBy',
    'chosen',
  ]);
  static override styles = [styleSheet, unsafeCSS(quoteStyles + promiseStyles)];

  declare quoteDocument: OfferedInput['quoteDocument'];
  declare tariff: OfferedInput['tariff'];
  declare profile: OfferedInput['profile'];
  declare household: Household;
  declare tariffs: readonly TariffChoice[];
  /** The day it is, as an ISO date. */
  declare today: string;
  declare locale: string;
  declare private opened: OpenedFile | null;
  declare private refused: RefusedHousehold | null;
  declare private billsBy: BillsBy;
  declare private chosen: number | null;
  private readonly bookTariff = new OpenTariff(() => {
    this.requestUpdate();
  });
  /** What the view was made of. */
  private basis: readonly unknown[] = [];
  private view: PromiseView;

  constructor() {
    super();
    this.quoteDocument = null;
    this.tariff = null;
    this.profile = null;
    this.household = emptyHousehold('en-IN');
    this.tariffs = [];
    this.today = '';
    this.locale = 'en-IN';
    this.opened = null;
    this.refused = null;
    this.billsBy = 'book';
    this.chosen = null;
    this.view = this.makeView();
  }

  private makeView(): PromiseView {
    const { quoteDocument, tariff, profile, billsBy, today, locale } = this;
    const household = this.opened?.household ?? this.household;
    const bookTariff = this.bookTariff.view;
    return viewPromise({ quoteDocument, tariff, profile, household, bookTariff, billsBy, today, locale });
  }

  protected override willUpdate(changed: PropertyValues): void {
    const household = this.opened?.household ?? this.household;
    this.bookTariff.want(household.tariff, this.tariffs);
    if (changed.has('household') || changed.has('opened')) this.chosen = null;
    const { quoteDocument, tariff, profile, billsBy, today, locale } = this;
    const basis = [quoteDocument, tariff, profile, household, this.bookTariff.view, billsBy, today, locale];
    if (basis.every((one, at) => one === this.basis[at])) return;
    this.basis = basis;
    this.view = this.makeView();
  }

  private readonly openFile = async (file: File): Promise<void> => {
    const text = readHousehold(await file.text());
    if (text.kind !== 'household') {
      this.refused = { name: file.name, text };
      return;
    }
    this.refused = null;
    this.opened = { name: file.name, household: text.household };
  };

  private readonly useBook = (): void => {
    this.opened = null;
    this.refused = null;
    void this.updateComplete.then(() => {
      this.shadowRoot?.getElementById('promise-open')?.focus();
    });
  };

  private desk(): PromiseDesk {
    const { view, opened, refused, chosen, openFile, useBook } = this;
    return {
      view,
      fileName: opened?.name ?? '',
      refused,
      openFile,
      useBook,
      chooseTariff: (by) => {
        this.billsBy = by;
      },
      chosen,
      choosePeriod: (at) => {
        this.chosen = at;
      },
      saveCsv: () => {
        if (view.report !== null) offerFile('unitbook-promise.csv', promiseCsv(view.report), 'text/csv');
      },
    };
  }

  protected override render(): TemplateResult {
    const desk = this.desk();
    return html`<h3 class="sub">Was the promise kept?</h3>
      ${renderSource(desk)} ${desk.view.report === null ? renderWanted(desk) : renderReport(desk)}`;
  }
}
