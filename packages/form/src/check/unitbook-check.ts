import { html, LitElement, unsafeCSS, type TemplateResult } from 'lit';
import { drawnProperties, styleSheet } from '../element-parts.ts';
import { emptyHousehold, type Household } from '../household/household.ts';
import type { Keep } from '../keep.ts';
import { offerFile } from '../offer-file.ts';
import type { TariffChoice } from '../tariff-choice.ts';
import { deskOf } from './check-desk.ts';
import { checkDocument } from './document/check-file.ts';
import { renderCheckBook } from './render/check-book.ts';
import type { Printed } from './report/report-sheets.ts';
import { CheckModel } from './state/check-model.ts';
import { checkStyles } from './styles/check-styles.ts';

declare global {
  interface HTMLElementTagNameMap {
    'unitbook-check': UnitbookCheck;
  }
}

/**
 * Printed bills, typed in the order of paper, beside the right ones: the verdict first, then the line that differs, and
 * the mistake that makes it.
 *
 * Properties: `household` (the book: its account, readings and tariff make the right bills), `isDemoBook` (whether that
 * is the invented one), `tariffs` (the examples),
 * `keep` (where printed bills are kept; null keeps nothing), `today` (ISO date, or ''), `demo` (fetches the text of
 * invented bills; null: there are none), `demoDispute` (fetches the text of the rules for disputes
 * of the invented place; null: there are none). None of them is changed, and nothing is sent.
 *
 * @summary Sets printed bills beside the right ones.
 */
export class UnitbookCheck extends LitElement {
  static override properties = drawnProperties([
    'household',
    'isDemoBook',
    'tariffs',
    'keep',
    'today',
    'demo',
    'demoDispute',
    'printed',
  ]);
  static override styles = [styleSheet, unsafeCSS(checkStyles)];

  declare household: Household;
  declare isDemoBook: boolean;
  declare tariffs: readonly TariffChoice[];
  declare keep: Keep | null;
  declare today: string;
  declare demo: (() => Promise<string>) | null;
  declare demoDispute: (() => Promise<string>) | null;
  declare private printed: Printed;
  private readonly model: CheckModel;

  constructor() {
    super();
    this.household = emptyHousehold('en-IN');
    this.isDemoBook = false;
    this.tariffs = [];
    this.keep = null;
    this.today = '';
    this.demo = null;
    this.demoDispute = null;
    this.printed = 'page';
    this.model = new CheckModel(this);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('beforeprint', this.finish);
    window.addEventListener('afterprint', this.afterPrint);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('beforeprint', this.finish);
    window.removeEventListener('afterprint', this.afterPrint);
    this.model.close();
  }

  /** The browser prints what stands there now, and waits for nothing. */
  private readonly finish = (): void => {
    this.model.finish();
    this.performUpdate();
  };

  /** Some browsers go on at once while they print: only they know when they are done. */
  private readonly afterPrint = (): void => {
    this.printed = 'page';
  };

  private readonly printSheet = (printed: Printed): void => {
    this.printed = printed;
    this.finish();
    window.print();
  };

  private readonly saveFile = (): void => {
    const { store, view, ground } = this.model;
    const bills = view.bills.filter(({ isBlank }) => !isBlank).map(({ plain }) => plain);
    const name = ground.account.id.replace(/[^\w-]+/g, '-');
    const text = JSON.stringify(checkDocument(store.check, bills, ground), null, 2);
    offerFile(`unitbook-bills${name === '' ? '' : `-${name}`}.json`, `${text}\n`);
  };

  protected override firstUpdated(): void {
    // Not within this update: what is opened makes another one.
    void Promise.resolve().then(() => this.model.store.start());
  }

  protected override willUpdate(): void {
    this.model.update();
  }

  protected override render(): TemplateResult {
    const { model, saveFile, printSheet, printed, demo, isDemoBook } = this;
    const { bill } = model;
    if (model.store.opened === 0 || bill === undefined)
      return html`<p class="hint opening">Opening the bills …</p>`;
    const print = (): void => {
      printSheet('page');
    };
    const page = { bill, hasDemo: demo !== null, isDemoBook, saveFile, print, printed, printSheet };
    const desk = deskOf(model, page);
    return html`<div @input=${model.typing.note} @focusout=${model.typing.note}>
      ${renderCheckBook(desk)}
    </div>`;
  }
}
