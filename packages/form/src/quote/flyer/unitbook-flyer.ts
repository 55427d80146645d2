import { html, LitElement, unsafeCSS, type PropertyValues, type TemplateResult } from 'lit';
import type { FlyerDocument } from '@unitbook/engine';
import { drawnProperties, styleSheet } from '../../element-parts.ts';
import { offerFile } from '../../offer-file.ts';
import type { OfferedInput } from '../promise/offered-quote.ts';
import { quoteStyles } from '../styles/quote-styles.ts';
import { flyerCsv } from './flyer-csv.ts';
import type { FlyerDesk } from './flyer-desk.ts';
import { flyerFieldId, typeLine, type FlyerKey } from './flyer-fields.ts';
import { BLANK_FLYER, flyerText, readFlyerFile, type FlyerFile } from './flyer-file.ts';
import { flyerStyles } from './flyer-styles.ts';
import { flyerGround, viewFlyer, type FlyerGround, type FlyerView } from './flyer-view.ts';
import { renderCheck } from './render-check.ts';
import { renderEntry } from './render-entry.ts';

declare global {
  interface HTMLElementTagNameMap {
    'unitbook-flyer': UnitbookFlyer;
  }
}

/** The event that an edit sends: its detail is the new flyer, as typed. */
export const FLYER_CHANGE = 'unitbook-flyer-change';

/** What another flyer took the place of. */
interface Before {
  readonly flyer: FlyerDocument;
  readonly told: string;
}

/**
 * A rival's flyer, typed in line by line: each line is set beside the same of a quote for the same house, with what
 * to ask about it. Nothing in it says that a rival is wrong.
 *
 * Properties: `quoteDocument` (the quote as it is offered, with plain numbers; null: not all of it is typed),
 * `tariff` (that of the quote; null: none is open), `profile` (its intervals, or null), `locale` (how numbers are written), `flyer` (as typed; may be
 * set, and is replaced at each edit). Quote and tariff are never changed.
 *
 * @summary Sets a rival's flyer beside a quote.
 * @fires unitbook-flyer-change - at each edit by the reader, with the new flyer as its detail
 */
export class UnitbookFlyer extends LitElement {
  static override properties = drawnProperties([
    'quoteDocument',
    'tariff',
    'profile',
    'locale',
    'flyer',
    'typing',
    'aside',
    'refused',
  ]);
  static override styles = [styleSheet, unsafeCSS(quoteStyles + flyerStyles)];

  declare quoteDocument: OfferedInput['quoteDocument'];
  declare tariff: OfferedInput['tariff'];
  declare profile: OfferedInput['profile'];
  declare locale: string;
  declare flyer: FlyerDocument;
  /** The claim that is being typed in; '' once it is left. */
  declare private typing: string;
  declare private aside: Before | null;
  declare private refused: { readonly name: string; readonly file: FlyerFile } | null;
  private ground: FlyerGround | null = null;
  private view: FlyerView;

  constructor() {
    super();
    this.quoteDocument = null;
    this.tariff = null;
    this.profile = null;
    this.locale = 'en-IN';
    this.flyer = BLANK_FLYER;
    this.typing = '';
    this.aside = null;
    this.refused = null;
    this.view = this.makeView();
  }

  private makeView(): FlyerView {
    const { flyer, ground, locale, typing } = this;
    return viewFlyer({ flyer, ground, locale, typing });
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (['quoteDocument', 'tariff', 'profile'].some((name) => changed.has(name)))
      this.ground = flyerGround(this);
    this.view = this.makeView();
  }

  private change(flyer: FlyerDocument): void {
    this.flyer = flyer;
    this.dispatchEvent(
      new CustomEvent<FlyerDocument>(FLYER_CHANGE, { detail: flyer, bubbles: true, composed: true }),
    );
  }

  /** Lay another flyer in the place of this one; what was typed in this one can be put back. */
  private lay(flyer: FlyerDocument, told: string): void {
    this.aside = this.view.isBlank ? null : { flyer: this.flyer, told };
    this.refused = null;
    this.change(flyer);
  }

  private readonly openFile = async (file: File): Promise<void> => {
    const read = readFlyerFile(await file.text());
    if (read.kind === 'refused') this.refused = { name: file.name, file: read };
    else this.lay(read.flyer, `“${file.name}” took the place of the flyer before.`);
  };

  private readonly takeOut = (): void => {
    this.lay(BLANK_FLYER, 'The flyer was taken out.');
    this.focusId('flyer-put-back');
  };

  private readonly putBack = (): void => {
    const { aside } = this;
    if (aside === null) return;
    this.lay(aside.flyer, 'The flyer before was put back in the place of another.');
    this.focusId(flyerFieldId('price'));
  };

  private focusId(id: string): void {
    void this.updateComplete.then(() => {
      this.shadowRoot?.getElementById(id)?.focus();
    });
  }

  private readonly note = ({ type }: Event): void => {
    const id = type === 'input' ? (this.shadowRoot?.activeElement?.id ?? '') : '';
    this.typing = id.replace(/^flyer-/, '');
  };

  private desk(): FlyerDesk {
    return {
      flyer: this.flyer,
      view: this.view,
      type: (key: FlyerKey, text) => {
        this.change(typeLine(this.flyer, key, text));
      },
      focusLine: (key) => {
        this.focusId(flyerFieldId(key));
      },
      openFile: this.openFile,
      refused: this.refused,
      saveFile: () => {
        offerFile('unitbook-flyer.json', flyerText(this.view.plain));
      },
      saveCsv: () => {
        offerFile('unitbook-flyer.csv', flyerCsv(this.view), 'text/csv');
      },
      takeOut: this.takeOut,
      before: this.aside?.told ?? '',
      putBack: this.putBack,
    };
  }

  protected override render(): TemplateResult {
    const desk = this.desk();
    return html`<h3 class="sub">A flyer beside this quote</h3>
      <div class="flyer" @input=${this.note} @focusout=${this.note}>
        ${renderEntry(desk)} ${renderCheck(desk)}
      </div>`;
  }
}
