import type { FlyerDocument, QuoteDocument } from '@unitbook/engine';
import type { Household } from '../../household/household.ts';
import type { Keep } from '../../keep.ts';
import { offerFile } from '../../offer-file.ts';
import { blankQuote, quoteText } from '../document/blank-quote.ts';
import { readQuoteFile, type QuoteFile } from '../document/read-quote-file.ts';
import { followNames } from '../document/follow-names.ts';
import { tariffOfQuote, withTariff, type ChosenTariff } from '../document/tariff-of-quote.ts';
import type { TariffChoice } from '../../tariff-choice.ts';
import { BLANK_FLYER } from '../flyer/flyer-file.ts';
import type { QuoteSlot } from '../quote-desk.ts';
import { loadQuote, saveQuote, type KeptQuote } from './kept-quote.ts';

/** What a store is given, and whom it tells of changes. */
export interface StoreHost {
  readonly keep: Keep | null;
  readonly demo: (() => Promise<string>) | null;
  readonly household: Household;
  readonly tariffs: readonly TariffChoice[];
  readonly today: string;
  readonly requestUpdate: () => void;
}

interface Before extends KeptQuote {
  readonly slot: QuoteSlot;
  readonly told: string;
}

/** What can be done with whole quotes. */
export interface StoreDeeds {
  readonly startOwn: () => void;
  readonly showDemo: () => void;
  readonly putBack: () => void;
  readonly openFile: (file: File) => Promise<void>;
  readonly saveFile: () => void;
}

/** Holds the quote that lies open, keeps it, and opens others; what another takes the place of can be put back. */
export class QuoteStore {
  quote: QuoteDocument;
  tariff: ChosenTariff = '';
  /** A rival's flyer beside it, as typed. */
  flyer: FlyerDocument = BLANK_FLYER;
  slot: QuoteSlot = 'own';
  before: Before | null = null;
  refused: { readonly name: string; readonly file: QuoteFile } | null = null;
  isKept = true;
  /** The quote as it was opened: the rules that came with it can be chosen again. */
  first: QuoteDocument;
  /** Counts the quotes that were opened: what was typed in one is not about another. */
  opened = 0;
  private readonly host: StoreHost;

  constructor(host: StoreHost) {
    this.host = host;
    this.quote = blankQuote('en-IN', '');
    this.first = this.quote;
  }

  get deeds(): StoreDeeds {
    const { startOwn, showDemo, putBack, openFile, saveFile } = this;
    return { startOwn, showDemo, putBack, openFile, saveFile };
  }

  private lay(slot: QuoteSlot, { quote, tariff, flyer = BLANK_FLYER }: KeptQuote): void {
    this.flyer = flyer;
    this.slot = slot;
    this.quote = quote;
    this.first = quote;
    this.tariff = tariff;
    this.refused = null;
    this.opened += 1;
    this.host.requestUpdate();
  }

  private save(): void {
    const { quote, tariff, flyer, slot } = this;
    // The demo is there again at each visit; changes to it are for a look only.
    if (slot === 'own') this.isKept = saveQuote(this.host.keep, { quote, tariff, flyer });
  }

  /** Open what is kept, else the demo, else a blank quote. */
  async start(): Promise<void> {
    const kept = loadQuote(this.host.keep);
    if (kept !== null) this.lay('own', kept);
    else if (!(await this.layDemo())) this.layBlank();
  }

  private layBlank(): void {
    const { household, today, tariffs } = this.host;
    const { tariff, account } = household;
    const quote = withTariff(blankQuote(account.locale ?? 'en-IN', today), tariff, tariffs);
    this.lay('own', { quote, tariff });
  }

  private async layDemo(): Promise<boolean> {
    const text = await (this.host.demo ?? (() => Promise.resolve('')))().catch(() => '');
    const file = readQuoteFile(text);
    if (file.kind !== 'quote') return false;
    const { tariffs } = this.host;
    // The demo names its tariff; one that does not is worked out by the first of the examples.
    const tariff = tariffOfQuote(file.quote, tariffs, tariffs[0]?.id ?? '');
    this.lay('demo', { quote: file.quote, tariff });
    return true;
  }

  private putAside(told: string): void {
    const { quote, tariff, flyer, slot } = this;
    // An own quote that waits to be put back stays so: the demo is there again at each visit.
    if (this.before?.slot === 'own' && slot === 'demo') return;
    this.before = { quote, tariff, flyer, slot, told };
  }

  /** Put aside what a file takes the place of: while the demo is shown that is the quote that is kept. */
  private putAsideFor(file: string): void {
    const kept = this.slot === 'demo' ? loadQuote(this.host.keep) : null;
    if (kept === null) this.putAside(`“${file}” took the place of the quote before.`);
    else this.before = { ...kept, slot: 'own', told: `“${file}” took the place of your own quote.` };
  }

  /** Keep what was typed of a rival's flyer with the quote. */
  readonly keepFlyer = (flyer: FlyerDocument): void => {
    this.flyer = flyer;
    this.save();
  };

  readonly change = (quote: QuoteDocument): void => {
    this.quote = followNames(this.quote, quote);
    this.save();
    this.host.requestUpdate();
  };

  /** Work the quote out by a tariff from now on: it names that one. */
  readonly chooseTariff = (tariff: ChosenTariff): void => {
    this.tariff = tariff;
    this.change(withTariff(this.quote, tariff, this.host.tariffs));
  };

  readonly startOwn = (): void => {
    const kept = loadQuote(this.host.keep);
    this.putAside('The demo was closed.');
    if (kept === null) this.layBlank();
    else this.lay('own', kept);
  };

  readonly showDemo = (): void => {
    // A browser that keeps nothing cannot give it back later.
    if (this.slot === 'own' && !this.isKept) this.putAside('Your own quote was closed.');
    void this.layDemo();
  };

  readonly putBack = (): void => {
    const { before } = this;
    if (before === null) return;
    this.before = null;
    this.lay(before.slot, before);
    this.save();
  };

  readonly openFile = async (file: File): Promise<void> => {
    const read = readQuoteFile(await file.text());
    if (read.kind !== 'quote') {
      this.refused = { name: file.name, file: read };
      this.host.requestUpdate();
      return;
    }
    this.putAsideFor(file.name);
    const tariff = tariffOfQuote(read.quote, this.host.tariffs, this.tariff);
    this.lay('own', { quote: read.quote, tariff });
    this.save();
  };

  readonly saveFile = (): void => {
    const name = (this.quote.offer.customer ?? '').replace(/[^\w-]+/g, '-').replace(/^-|-$/g, '');
    offerFile(`unitbook-quote${name === '' ? '' : `-${name.toLowerCase()}`}.json`, quoteText(this.quote));
  };
}
