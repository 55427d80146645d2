import type { QuoteDocument } from '@unitbook/engine';
import type { Household } from '../../household/household.ts';
import type { Keep } from '../../keep.ts';
import { offerFile } from '../../offer-file.ts';
import { blankQuote, quoteText } from '../document/blank-quote.ts';
import { readQuoteFile, type QuoteFile } from '../document/read-quote-file.ts';
import type { QuoteSlot } from '../quote-desk.ts';
import { loadQuote, saveQuote, type KeptQuote } from './kept-quote.ts';

/** What a store is given, and whom it tells of changes. */
export interface StoreHost {
  readonly keep: Keep | null;
  readonly demo: (() => Promise<string>) | null;
  readonly household: Household;
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
  tariff: KeptQuote['tariff'] = '';
  slot: QuoteSlot = 'own';
  before: Before | null = null;
  refused: { readonly name: string; readonly file: QuoteFile } | null = null;
  isKept = true;
  /** Counts the quotes that were opened: what was typed in one is not about another. */
  opened = 0;
  private readonly host: StoreHost;

  constructor(host: StoreHost) {
    this.host = host;
    this.quote = blankQuote('en-IN', '');
  }

  get deeds(): StoreDeeds {
    const { startOwn, showDemo, putBack, openFile, saveFile } = this;
    return { startOwn, showDemo, putBack, openFile, saveFile };
  }

  private lay(slot: QuoteSlot, { quote, tariff }: KeptQuote): void {
    this.slot = slot;
    this.quote = quote;
    this.tariff = tariff;
    this.refused = null;
    this.opened += 1;
    this.host.requestUpdate();
  }

  private save(): void {
    const { quote, tariff, slot } = this;
    // The demo is there again at each visit; changes to it are for a look only.
    if (slot === 'own') this.isKept = saveQuote(this.host.keep, { quote, tariff });
  }

  /** Open what is kept, else the demo, else a blank quote. */
  async start(): Promise<void> {
    const kept = loadQuote(this.host.keep);
    if (kept !== null) this.lay('own', kept);
    else if (!(await this.layDemo())) this.layBlank();
  }

  private layBlank(): void {
    const { household, today } = this.host;
    this.lay('own', {
      quote: blankQuote(household.account.locale ?? 'en-IN', today),
      tariff: household.tariff,
    });
  }

  private async layDemo(): Promise<boolean> {
    const text = await (this.host.demo ?? (() => Promise.resolve('')))().catch(() => '');
    const file = readQuoteFile(text);
    if (file.kind !== 'quote') return false;
    // The demo's tariff is that of the demo household: the first of the examples.
    this.lay('demo', { quote: file.quote, tariff: 'tarumira-domestic' });
    return true;
  }

  private putAside(told: string): void {
    const { quote, tariff, slot } = this;
    this.before = { quote, tariff, slot, told };
  }

  readonly change = (quote: QuoteDocument): void => {
    this.quote = quote;
    this.save();
    this.host.requestUpdate();
  };

  readonly chooseTariff = (tariff: KeptQuote['tariff']): void => {
    this.tariff = tariff;
    this.save();
    this.host.requestUpdate();
  };

  readonly startOwn = (): void => {
    const kept = loadQuote(this.host.keep);
    this.putAside('The demo was closed.');
    if (kept === null) this.layBlank();
    else this.lay('own', kept);
  };

  readonly showDemo = (): void => {
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
    this.putAside(`“${file.name}” took the place of the quote before.`);
    this.lay('own', { quote: read.quote, tariff: this.tariff });
    this.save();
  };

  readonly saveFile = (): void => {
    const name = (this.quote.offer.customer ?? '').replace(/[^\w-]+/g, '-').replace(/^-|-$/g, '');
    offerFile(`unitbook-quote${name === '' ? '' : `-${name.toLowerCase()}`}.json`, quoteText(this.quote));
  };
}
