import { html, LitElement, unsafeCSS, type PropertyValues, type TemplateResult } from 'lit';
import { drawnProperties, styleSheet } from '../element-parts.ts';
import type { LayoutKeep } from '../files/keep-layouts.ts';
import { emptyHousehold, type Household } from '../household/household.ts';
import type { Keep } from '../keep.ts';
import type { TariffChoice } from '../tariff-choice.ts';
import { deskOf } from './desk-of.ts';
import { renderQuoteBook } from './render/quote-book.ts';
import { PageWatch } from './state/page-watch.ts';
import { QuoteModel } from './state/quote-model.ts';
import { quoteStyles } from './styles/quote-styles.ts';

declare global {
  interface HTMLElementTagNameMap {
    'unitbook-quote': UnitbookQuote;
  }
}

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
    'layouts',
    'today',
    'demo',
    'isWide',
    'isSpread',
    'isOnPaper',
  ]);
  static override styles = [styleSheet, unsafeCSS(quoteStyles)];

  /** The household of the book: its use can be taken over. */
  declare household: Household;
  declare tariffs: readonly TariffChoice[];
  /** Where the quote is kept; null keeps nothing. */
  declare keep: Keep | null;
  /** Where layouts of tables are remembered; null remembers none. */
  declare layouts: LayoutKeep | null;
  /** The day it is, as an ISO date. */
  declare today: string;
  /** Fetches the text of the invented quote; null: there is none. */
  declare demo: (() => Promise<string>) | null;
  declare private isWide: boolean;
  declare private isSpread: boolean;
  declare private isOnPaper: boolean;
  private readonly model: QuoteModel;
  private readonly watch: PageWatch;

  constructor() {
    super();
    this.household = emptyHousehold('en-IN');
    this.tariffs = [];
    this.keep = null;
    this.layouts = null;
    this.today = '';
    this.demo = null;
    this.isWide = false;
    this.isOnPaper = false;
    this.model = new QuoteModel(this);
    this.watch = this.makeWatch();
    this.isSpread = this.watch.isSpread;
  }

  private makeWatch(): PageWatch {
    return new PageWatch(this, {
      widen: (isWide) => {
        this.isWide = isWide;
      },
      spread: (isSpread) => {
        const field = this.shadowRoot?.activeElement?.id ?? '';
        this.isSpread = isSpread;
        // The pages are laid anew: who was typing goes on in the same field.
        if (field !== '') this.model.typing.focusField(field);
      },
      print: this.putOnPaper,
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.isSpread = this.watch.isSpread;
    this.watch.start();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.watch.stop();
    this.model.work.close();
  }

  private readonly putOnPaper = (): void => {
    this.model.work.finish();
    this.isOnPaper = true;
    // The browser prints what stands there now, and waits for nothing.
    this.performUpdate();
  };

  private readonly print = (): void => {
    this.putOnPaper();
    window.print();
  };

  private readonly showPaper = (isShown: boolean): void => {
    if (isShown) this.model.work.finish();
    this.isOnPaper = isShown;
  };

  protected override firstUpdated(): void {
    // Not within this update: what is opened makes another one.
    void Promise.resolve().then(() => this.model.store.start());
  }

  protected override willUpdate(changed: PropertyValues): void {
    this.model.update(changed.has('household'));
  }

  protected override render(): TemplateResult {
    const { model, tariffs, layouts, household, today } = this;
    const { isWide, isSpread, isOnPaper, print, showPaper } = this;
    if (model.store.opened === 0) return html`<p class="hint opening">Opening the quote …</p>`;
    const page = {
      tariffs,
      layouts,
      household,
      today,
      isWide,
      isSpread,
      isOnPaper,
      print,
      showPaper,
      hasDemo: this.demo !== null,
    };
    return html`<div @input=${model.typing.note} @focusout=${model.typing.note}>
      ${renderQuoteBook(deskOf(model, page))}
    </div>`;
  }
}
