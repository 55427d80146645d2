import { html, LitElement, unsafeCSS, type PropertyValues, type TemplateResult } from 'lit';
import type { QuoteDocument } from '@unitbook/engine';
import { drawnProperties, styleSheet } from '../element-parts.ts';
import { emptyHousehold, type Household } from '../household/household.ts';
import type { Keep } from '../keep.ts';
import type { TariffChoice } from '../tariff-choice.ts';
import { viewBook } from '../view/view-book.ts';
import type { Taken } from './document/edit-quote.ts';
import { useFromBook } from './document/from-book.ts';
import type { QuoteDesk, ShelfDesk, TariffDesk } from './quote-desk.ts';
import { renderQuoteBook } from './render/quote-book.ts';
import { OpenTariff } from './state/open-tariff.ts';
import { QuoteStore } from './state/quote-store.ts';
import { QuoteTyping } from './state/quote-typing.ts';
import { quoteStyles } from './styles/quote-styles.ts';
import { viewQuote, type QuoteView } from './view/view-quote.ts';
import { LaterWork, NOTHING_LATER, type LaterResults } from './work/later-work.ts';
import { QuoteBench } from './work/quote-bench.ts';

declare global {
  interface HTMLElementTagNameMap {
    'unitbook-quote': UnitbookQuote;
  }
}

/** From so many pixels of the right page on the charts are drawn wide. */
const WIDE = 700;

/**
 * An installer's quote: what is offered, what it saves by the household's own tariff, and how sure that is.
 *
 * @summary Works a quote for a solar plant out, and prints it.
 */
export class UnitbookQuote extends LitElement {
  static override properties = drawnProperties([
    'household',
    'tariffs',
    'keep',
    'today',
    'demo',
    'trial',
    'later',
    'isStale',
    'isWide',
    'isOnPaper',
  ]);
  static override styles = [styleSheet, unsafeCSS(quoteStyles)];

  /** The household of the book: its use can be taken over. */
  declare household: Household;
  declare tariffs: readonly TariffChoice[];
  /** Where the quote is kept; null keeps nothing. */
  declare keep: Keep | null;
  /** The day it is, as an ISO date. */
  declare today: string;
  /** Fetches the text of the invented quote; null: there is none. */
  declare demo: (() => Promise<string>) | null;
  declare private trial: string;
  declare private later: LaterResults;
  /** Whether cases and sizes are still those of the quote before the last change. */
  declare private isStale: boolean;
  declare private isWide: boolean;
  declare private isOnPaper: boolean;
  private view: QuoteView;
  /** What the view was made of. */
  private basis: readonly unknown[] = [];
  private seen = 0;
  private bookUse: QuoteDocument['use'] | null = null;
  private readonly bench = new QuoteBench();
  private readonly store: QuoteStore;
  private readonly typing: QuoteTyping;
  private readonly tariff: OpenTariff;
  private readonly work: LaterWork;
  private readonly widthWatch: ResizeObserver;
  private readonly printing: MediaQueryList;

  constructor() {
    super();
    this.household = emptyHousehold('en-IN');
    this.tariffs = [];
    this.keep = null;
    this.today = '';
    this.demo = null;
    this.trial = '';
    this.later = NOTHING_LATER;
    this.isStale = false;
    this.isWide = false;
    this.isOnPaper = false;
    this.store = new QuoteStore(this);
    this.typing = new QuoteTyping(this);
    this.tariff = new OpenTariff(() => {
      this.requestUpdate();
    });
    this.work = new LaterWork(this.hearLater);
    this.view = this.makeView();
    this.printing = window.matchMedia('print');
    this.widthWatch = new ResizeObserver(() => {
      // Drawn with the next frame: within this one another height would call the watch again.
      requestAnimationFrame(() => {
        this.isWide = (this.shadowRoot?.querySelector('.results-page')?.clientWidth ?? 0) >= WIDE;
      });
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.widthWatch.observe(this);
    this.printing.addEventListener('change', this.onPrinting);
    window.addEventListener('beforeprint', this.onBeforePrint);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.widthWatch.disconnect();
    this.printing.removeEventListener('change', this.onPrinting);
    window.removeEventListener('beforeprint', this.onBeforePrint);
    this.work.close();
  }

  /** Whoever prints by the browser's own command gets the quote on paper, too. */
  private readonly onPrinting = ({ matches }: MediaQueryListEvent): void => {
    if (matches) this.onBeforePrint();
  };

  private readonly onBeforePrint = (): void => {
    this.work.finish();
    this.isOnPaper = true;
    // The browser prints what stands there now, and waits for nothing.
    this.performUpdate();
  };

  private readonly hearLater = (results: LaterResults): void => {
    this.isStale = results.cases === null || results.sizes === null;
    this.later = {
      ...results,
      cases: results.cases ?? this.later.cases,
      sizes: results.sizes ?? this.later.sizes,
    };
  };

  private makeView(): QuoteView {
    const { view } = this.tariff;
    return viewQuote({
      document: this.store.quote,
      tariff: view.kind === 'open' ? view.tariff.tariff : null,
      trial: this.trial,
      typing: this.typing.field,
      bench: this.bench,
    });
  }

  protected override firstUpdated(): void {
    // Not within this update: what is opened makes another one.
    void Promise.resolve().then(() => this.store.start());
  }

  protected override willUpdate(changed: PropertyValues): void {
    this.tariff.want(this.store.tariff, this.tariffs);
    if (this.seen !== this.store.opened) {
      this.seen = this.store.opened;
      this.typing.forget();
      this.trial = '';
    }
    const basis = [this.store.quote, this.tariff.view, this.trial, this.typing.field];
    if (changed.has('household') || this.tariff.view !== this.basis[1]) this.bookUse = this.useOfBook();
    if (basis.every((one, at) => one === this.basis[at])) return;
    const isOther = basis.slice(0, 3).some((one, at) => one !== this.basis[at]);
    this.basis = basis;
    this.view = this.makeView();
    if (isOther) this.startLater();
  }

  /** What takes longer than a frame begins once the quote has stood still. */
  private startLater(): void {
    const { quote, prepared, plain, watts } = this.view;
    const { view } = this.tariff;
    this.work.stop();
    this.later = { ...NOTHING_LATER, cases: this.later.cases, sizes: this.later.sizes };
    this.isStale = true;
    if (quote === null || prepared === null || view.kind !== 'open') return;
    this.work.start({ quote, prepared, document: plain, tariff: view.tariff.tariff, watts });
  }

  /** What the household uses by its own readings, where its tariff is the one that lies open. */
  private useOfBook(): QuoteDocument['use'] | null {
    const { view } = this.tariff;
    const { household, today } = this;
    if (view.kind !== 'open' || household.readings.length < 3) return null;
    return useFromBook(viewBook({ household, tariff: view.tariff, today }).book);
  }

  private readonly take = (taken: Taken | null, told: string): void => {
    const quote = this.typing.take(taken, told);
    if (quote !== null) this.store.change(quote);
  };

  private tariffDesk(): TariffDesk {
    const { store, tariff, tariffs } = this;
    return {
      view: tariff.view,
      chosen: store.tariff,
      choices: tariffs,
      refused: tariff.refused,
      choose: store.chooseTariff,
      openFile: async (file) => {
        const document = await tariff.readFile(file);
        if (document !== null) store.chooseTariff(document);
      },
    };
  }

  private shelfDesk(): ShelfDesk {
    const { store } = this;
    return {
      ...store.deeds,
      slot: store.slot,
      hasDemo: this.demo !== null,
      isKept: store.isKept,
      refused: store.refused,
      before: store.before?.told ?? '',
      print: () => {
        this.onBeforePrint();
        window.print();
      },
    };
  }

  private desk(): QuoteDesk {
    const { store, typing } = this;
    return {
      document: store.quote,
      view: this.view,
      later: this.later,
      isStale: this.isStale,
      tariff: this.tariffDesk(),
      shelf: this.shelfDesk(),
      bookUse: this.bookUse,
      change: store.change,
      take: this.take,
      removed: typing.removed,
      undo: () => {
        const quote = typing.undo(store.quote);
        if (quote !== null) store.change(quote);
      },
      shown: typing.shown,
      noteTyped: typing.noteTyped,
      focusField: typing.focusField,
      isOpen: typing.isOpen,
      setOpen: typing.setOpen,
      trial: this.trial,
      tryOut: (kWp) => {
        this.trial = kWp;
      },
      size: this.isWide ? 'wide' : 'narrow',
      isOnPaper: this.isOnPaper,
      showPaper: (isShown) => {
        if (isShown) this.work.finish();
        this.isOnPaper = isShown;
      },
    };
  }

  protected override render(): TemplateResult {
    if (this.store.opened === 0) return html`<p class="hint opening">Opening the quote …</p>`;
    return html`<div @input=${this.typing.note} @focusout=${this.typing.note}>
      ${renderQuoteBook(this.desk())}
    </div>`;
  }
}
