import type { QuoteDocument, Tariff } from '@unitbook/engine';
import type { TypingHost } from '../../page-typing.ts';
import { viewBook } from '../../view/view-book.ts';
import { useFromBook } from '../document/from-book.ts';
import { viewQuote, type QuoteView } from '../view/view-quote.ts';
import { LaterWork, NOTHING_LATER, type LaterResults } from '../work/later-work.ts';
import { QuoteBench } from '../work/quote-bench.ts';
import { QuoteLanguages } from '../words/quote-languages.ts';
import { Beside, type BesideHost } from './beside.ts';
import { OpenTariff } from './open-tariff.ts';
import { ProfileState, type ProfileHost } from './profile-state.ts';
import { QuoteStore, type StoreHost } from './quote-store.ts';
import { QuoteTyping } from './quote-typing.ts';
import { TariffsAtHand } from './tariffs-at-hand.ts';

/** What the page is given, and whom to tell of changes. */
export type ModelHost = StoreHost & TypingHost & ProfileHost & BesideHost;

/** Everything that lies open on the page, and what comes of it. */
export class QuoteModel {
  readonly store: QuoteStore;
  readonly typing: QuoteTyping;
  readonly tariff: OpenTariff;
  readonly others: TariffsAtHand;
  readonly profile: ProfileState;
  readonly work: LaterWork;
  readonly languages: QuoteLanguages;
  readonly beside: Beside;
  view: QuoteView;
  later = NOTHING_LATER;
  /** Whether what takes longer is still that of the quote before the last change. */
  isStale = false;
  bookUse: QuoteDocument['use'] | null = null;
  /** kWp of a size to be tried, as typed; '' for none. */
  trial = '';
  /** What the view was made of. */
  private basis: readonly unknown[] = [];
  private seen = 0;
  private readonly bench = new QuoteBench();
  private readonly host: ModelHost;

  constructor(host: ModelHost) {
    const told = (): void => {
      host.requestUpdate();
    };
    this.host = host;
    this.store = new QuoteStore(host);
    this.typing = new QuoteTyping(host);
    this.tariff = new OpenTariff(told);
    this.others = new TariffsAtHand(told);
    this.profile = new ProfileState(host);
    this.work = new LaterWork(this.hearLater);
    this.languages = new QuoteLanguages(told);
    this.beside = new Beside(host, () => {
      this.store.keepFlyer(this.beside.flyer);
    });
    this.view = this.makeView();
  }

  readonly tryOut = (kWp: string): void => {
    this.trial = kWp;
    this.host.requestUpdate();
  };

  private readonly hearLater = (results: LaterResults): void => {
    this.isStale = [results.cases, results.sizes, results.tariffs].includes(null);
    this.later = {
      ...results,
      cases: results.cases ?? this.later.cases,
      sizes: results.sizes ?? this.later.sizes,
      batteries: results.batteries ?? this.later.batteries,
      tariffs: results.tariffs ?? this.later.tariffs,
    };
    this.host.requestUpdate();
  };

  /** The tariff that lies open; null: none. */
  get openTariff(): Tariff | null {
    const { view } = this.tariff;
    return view.kind === 'open' ? view.tariff.tariff : null;
  }

  private makeView(): QuoteView {
    return viewQuote({
      document: this.store.quote,
      tariff: this.openTariff,
      profile: this.profile.read?.profile ?? null,
      trial: this.trial,
      typing: this.typing.field,
      bench: this.bench,
    });
  }

  /** Bring the view up to date before it is drawn. @param isOtherBook  whether the household is another one */
  update(isOtherBook: boolean): void {
    const { store, tariff, others, host } = this;
    tariff.want(store.tariff, host.tariffs);
    others.want(host.tariffs, this.typing.isOpen('quote-policies', false));
    this.turnToOpened();
    this.languages.want(store.quote.locale);
    const compared = others.compared(host.tariffs, store.tariff);
    const basis = [this.typing.field, store.quote, tariff.view, this.trial, this.profile.read, compared];
    if (isOtherBook || tariff.view !== this.basis[2]) this.bookUse = this.useOfBook();
    const isSame = basis.map((one, at) => one === this.basis[at]);
    if (!isSame.includes(false)) return;
    this.basis = basis;
    this.view = this.makeView();
    if (isSame.slice(1).includes(false)) this.startLater(compared);
  }

  /** Where another quote was opened, what was typed, tried and read for the one before is not about it. */
  private turnToOpened(): void {
    const { store } = this;
    if (this.seen === store.opened) return;
    this.seen = store.opened;
    this.typing.forget();
    this.trial = '';
    this.beside.flyer = store.flyer;
    this.profile.turnTo(store.quote, this.basis[1] as QuoteDocument | undefined);
  }

  /** What takes longer than a frame begins once the quote has stood still. */
  private startLater(others: readonly Tariff[]): void {
    const { quote, prepared, plain, watts } = this.view;
    const tariff = this.openTariff;
    this.work.stop();
    const { cases, sizes, batteries, tariffs } = this.later;
    this.later = { ...NOTHING_LATER, cases, sizes, batteries, tariffs };
    this.isStale = true;
    if (quote === null || prepared === null || tariff === null) return;
    const profile = this.profile.read?.profile ?? null;
    this.work.start({ quote, prepared, document: plain, tariff, watts, profile, others });
  }

  /** What the household uses by its own readings, where its tariff is the one that lies open. */
  private useOfBook(): QuoteDocument['use'] | null {
    const { view } = this.tariff;
    const { household, today } = this.host;
    if (view.kind !== 'open' || household.readings.length < 3) return null;
    return useFromBook(viewBook({ household, tariff: view.tariff, today }).book);
  }
}
