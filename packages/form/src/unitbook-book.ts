import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { emptyHousehold, householdText, type Household } from './household/household.ts';
import { readHousehold, type HouseholdText } from './household/read-household.ts';
import type { LayoutKeep } from './files/keep-layouts.ts';
import type { Aside, Keep, Slot } from './keep.ts';
import { renderShelf, type Shelf } from './render/shelf.ts';
import { offerFile } from './offer-file.ts';
import { drawnProperties, styleSheet } from './element-parts.ts';
import { renderCheckPage } from './check/check-page.ts';
import { renderQuotePage } from './quote/quote-page.ts';
import { renderButton } from './render/button.ts';
import type { TariffChoice } from './tariff-choice.ts';
import type { UnitbookMonth } from './unitbook-month.ts';

/** Which page lies open: the book, or one in its place. */
type OpenPage = 'book' | 'quote' | 'check';

/** A book with nothing in it: it need not be put aside. */
const BLANK = householdText(emptyHousehold('en-IN'));

/**
 * The account book with its shelf: the demo and the homeowner's own book, kept in the browser, saved as a
 * file and opened from one.
 *
 * @summary Keeps what is typed in `<unitbook-month>`.
 */
export class UnitbookBook extends LitElement {
  static override properties = drawnProperties([
    'keep',
    'demo',
    'tariffs',
    'today',
    'layouts',
    'openSlot',
    'household',
    'asides',
    'refused',
    'isKept',
    'demoQuote',
    'demoCheck',
    'demoDispute',
    'page',
    'isFailed',
  ]);
  static override styles = styleSheet;

  /** Where books are kept; null keeps nothing. */
  declare keep: Keep | null;
  /** The invented household that the first visit shows. */
  declare demo: Household | null;
  declare tariffs: readonly TariffChoice[];
  /** The day it is, as an ISO date. */
  declare today: string;
  /** Where layouts of tables are remembered; null remembers none. */
  declare layouts: LayoutKeep | null;
  /** Fetches the text of the invented quote; null: there is none. */
  declare demoQuote: (() => Promise<string>) | null;
  /** Fetches the text of invented printed bills; null: there are none. */
  declare demoCheck: (() => Promise<string>) | null;
  /** Fetches the text of the rules for disputes of the invented place; null: there are none. */
  declare demoDispute: (() => Promise<string>) | null;
  declare private page: OpenPage;
  /** Whether the page that lies open could not be fetched. */
  declare private isFailed: boolean;
  declare private openSlot: Slot;
  declare private household: Household | null;
  declare private asides: readonly Aside[];
  /** A file that could not be opened, and why. */
  declare private refused: { readonly name: string; readonly read: HouseholdText } | null;
  declare private isKept: boolean;

  constructor() {
    super();
    this.keep = null;
    this.demo = null;
    this.tariffs = [];
    this.today = '';
    this.layouts = null;
    this.openSlot = 'demo';
    this.household = null;
    this.asides = [];
    this.refused = null;
    this.isKept = true;
    this.demoQuote = null;
    this.demoCheck = null;
    this.demoDispute = null;
    this.page = 'book';
    this.isFailed = false;
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('keep') || changed.has('demo')) this.openShelf();
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('storage', this.takeOver);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('storage', this.takeOver);
  }

  /** Another tab kept something newer: show that, so that two tabs do not overwrite each other. */
  private readonly takeOver = (event: StorageEvent): void => {
    if (event.key === `unitbook-${this.openSlot}`)
      this.household = this.kept(this.openSlot) ?? this.household;
  };

  private openShelf(): void {
    this.openSlot = this.keep?.openSlot() ?? 'demo';
    let household = this.kept(this.openSlot);
    if (household === null && this.openSlot === 'own') {
      this.openSlot = 'demo';
      household = this.kept('demo');
    }
    if (household === null && this.demo === null) this.openSlot = 'own';
    this.household = household ?? this.demo ?? emptyHousehold('en-IN');
    this.asides = this.keep?.asides() ?? [];
  }

  /** What is kept in a slot; what cannot be opened is put aside, untouched. */
  private kept(slot: Slot): Household | null {
    const text = this.keep?.load(slot) ?? null;
    if (text === null) return null;
    const read = readHousehold(text);
    if (read.kind === 'household') return read.household;
    this.isKept = this.keep?.setAside(text) ?? false;
    return null;
  }

  private show(slot: Slot, household: Household): void {
    this.openSlot = slot;
    this.household = household;
    this.refused = null;
    this.keep?.open(slot);
    this.save(household);
    this.asides = this.keep?.asides() ?? [];
  }

  private save(household: Household): void {
    this.isKept = this.keep?.save(this.openSlot, householdText(household)) ?? false;
  }

  /** Show a book and go on from one of its fields: the button that was pressed may be gone. */
  private showAt(slot: Slot, household: Household, field: string): void {
    this.show(slot, household);
    void this.updateComplete.then(() => {
      this.shadowRoot?.querySelector<UnitbookMonth>('unitbook-month')?.focusField(field);
    });
  }

  private readonly startOwn = (): void => {
    const own = this.kept('own');
    this.showAt('own', own ?? emptyHousehold('en-IN'), own === null ? 'tariff' : 'month');
  };

  /** Put the own book aside, unless there is nothing in it. @returns whether it is kept, or need not be */
  private putAside(): boolean {
    const own = this.keep?.load('own') ?? BLANK;
    return own === BLANK || this.keep?.setAside(own) === true;
  }

  private readonly startAnother = (): void => {
    this.isKept = this.putAside();
    if (this.isKept) this.showAt('own', emptyHousehold('en-IN'), 'tariff');
  };

  /** A book put aside and the own one change places. */
  private readonly openAside = ({ key, text }: Aside): void => {
    const read = readHousehold(text);
    if (read.kind !== 'household') return;
    this.isKept = this.keep?.replaceAside(key, this.keep.load('own') ?? BLANK) ?? false;
    if (this.isKept) this.showAt('own', read.household, 'month');
  };

  private readonly showDemo = (): void => {
    const demo = this.kept('demo') ?? this.demo;
    if (demo !== null) this.show('demo', demo);
  };

  private readonly openFile = async (file: File): Promise<void> => {
    const read = readHousehold(await file.text());
    if (read.kind !== 'household') {
      this.refused = { name: file.name, read };
      return;
    }
    if (this.keep?.load('own') !== householdText(read.household)) this.putAside();
    this.show('own', read.household);
  };

  private readonly saveFile = (): void => {
    if (this.household === null) return;
    const name = this.household.account.id.replace(/[^\w-]+/g, '-');
    offerFile(`unitbook-${name === '' ? 'household' : name}.json`, householdText(this.household));
  };

  private readonly onChange = (event: CustomEvent<Household>): void => {
    this.household = event.detail;
    this.save(event.detail);
  };

  private shelf(): Shelf {
    return {
      slot: this.openSlot,
      hasOwn: this.keep?.load('own') != null,
      isKept: this.isKept,
      asides: this.asides.filter(({ text }) => text !== BLANK),
      refused: this.refused,
      startOwn: this.startOwn,
      startAnother: this.startAnother,
      showDemo: this.showDemo,
      saveFile: this.saveFile,
      openFile: this.openFile,
      openAside: this.openAside,
      takeAside: ({ key, text }) => {
        offerFile(`${key}.json`, text);
      },
    };
  }

  private turnTo(page: OpenPage, focus: string): void {
    this.page = page;
    this.isFailed = false;
    void this.updateComplete.then(() => {
      this.shadowRoot?.getElementById(focus)?.focus();
    });
  }

  private renderPage(household: Household, name: 'quote' | 'check'): TemplateResult {
    const page = {
      isFailed: this.isFailed,
      isDemoBook: this.openSlot === 'demo',
      fail: (isFailed: boolean) => {
        this.isFailed = isFailed;
      },
      close: () => {
        this.turnTo('book', `open-${name}`);
      },
    };
    return name === 'quote' ? renderQuotePage(this, household, page) : renderCheckPage(this, household, page);
  }

  protected override render(): TemplateResult | typeof nothing {
    if (this.household === null) return nothing;
    const { page } = this;
    // The book stays as it is beneath another page: a number half typed in it is not lost.
    return html`
      <div ?hidden=${page !== 'book'}>${this.renderBook(this.household)}</div>
      ${page === 'book' ? nothing : this.renderPage(this.household, page)}
    `;
  }

  private renderBook(household: Household): TemplateResult {
    return html`
      ${renderShelf(this.shelf())}
      <unitbook-month
        .household=${household}
        .tariffs=${this.tariffs}
        .today=${this.today}
        .layouts=${this.layouts}
        @unitbook-household-change=${this.onChange}
      ></unitbook-month>
      <p class="shelf">
        ${renderButton(
          'Work out a quote',
          () => {
            this.turnTo('quote', 'close-quote');
          },
          { id: 'open-quote' },
        )}
        ${renderButton(
          'Check a printed bill',
          () => {
            this.turnTo('check', 'close-check');
          },
          { id: 'open-check' },
        )}
      </p>
    `;
  }
}
