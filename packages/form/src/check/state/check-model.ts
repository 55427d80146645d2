import { parseDay, type DisputeDocument, type Tariff } from '@unitbook/engine';
import type { Household } from '../../household/household.ts';
import type { TariffChoice } from '../../tariff-choice.ts';
import { OpenTariff } from '../../quote/state/open-tariff.ts';
import { groundOf, type CheckGround } from '../document/typed-check.ts';
import { unreadPoints } from '../view/open-points.ts';
import { viewCheck, type BillView, type CheckView } from '../view/view-check.ts';
import { CheckWork, NOTHING_CHECKED, type BillResult, type CheckResults } from '../work/check-work.ts';
import { reportSheets, type ReportSheets } from '../report/report-sheets.ts';
import { CheckStore, type StoreHost } from './check-store.ts';
import { DisputeRules } from './dispute-rules.ts';
import { OtherTariffs } from './other-tariffs.ts';
import { PageTyping, type TypingHost } from '../../page-typing.ts';

/** What the model is given by the element. */
export interface ModelHost extends StoreHost, TypingHost {
  readonly household: Household;
  readonly tariffs: readonly TariffChoice[];
  /** The day it is, as an ISO date. */
  readonly today: string;
  /** Fetches the text of the rules for disputes of the invented place; null: there are none. */
  readonly demoDispute: (() => Promise<string>) | null;
}

/** Holds what is typed, reads it, and has it checked when typing stands still. */
export class CheckModel {
  readonly store: CheckStore;
  readonly typing: PageTyping;
  readonly tariff: OpenTariff;
  readonly rules: DisputeRules;
  results: CheckResults = NOTHING_CHECKED;
  /** Whether the results are still those of what was typed before the last change. */
  isStale = false;
  view: CheckView;
  private readonly others: OtherTariffs;
  private readonly work: CheckWork;
  private readonly host: ModelHost;
  /** What the view was made of. */
  private basis: readonly unknown[] = [];
  /** The sheets, and what they were made of. */
  private made: { readonly basis: readonly unknown[]; readonly sheets: ReportSheets } | null = null;
  /** Which bills the results are of. */
  private of = '';
  /** Evidence that is at hand, in the words of the causes; for this visit. */
  held: ReadonlySet<string> = new Set();

  constructor(host: ModelHost) {
    this.host = host;
    const update = (): void => {
      host.requestUpdate();
    };
    this.store = new CheckStore(host);
    this.typing = new PageTyping(host);
    this.tariff = new OpenTariff(update);
    this.rules = new DisputeRules(update);
    this.others = new OtherTariffs(update);
    this.work = new CheckWork((results) => {
      this.results = results;
      this.isStale = false;
      update();
    });
    this.view = viewCheck({ check: this.store.check, ground: this.ground, tariff: null, others: [] });
  }

  /** What the bills are checked against. */
  get ground(): CheckGround {
    return groundOf(this.store.check, this.host.household);
  }

  /** The tariff that lies open; null: none does. */
  get openTariff(): Tariff | null {
    const { view } = this.tariff;
    return view.kind === 'open' ? view.tariff.tariff : null;
  }

  /** The rules for disputes that hold; null: none are known. */
  get dispute(): DisputeDocument | null {
    return this.rules.of(this.openTariff?.document.invented === true);
  }

  /** The bill that lies open. */
  get bill(): BillView | undefined {
    return this.view.bills.find(({ key }) => key === this.store.open) ?? this.view.bills.at(-1);
  }

  /** What came of a bill; null: nothing yet. */
  resultOf({ at }: BillView): BillResult | null {
    return this.results.bills[at] ?? null;
  }

  /** Read what was typed, if anything of it has changed, and have it checked. */
  update(): void {
    const { host, store, ground } = this;
    this.tariff.want(ground.tariff, host.tariffs);
    this.others.want(host.tariffs);
    this.rules.want(host.demoDispute);
    const tariff = this.openTariff;
    const others = this.others.besides(tariff);
    const basis = [store.check, ground.account, ground.readings, tariff, others];
    if (basis.every((one, at) => one === this.basis[at]) && this.basis.length > 0) return;
    this.basis = basis;
    this.view = viewCheck({ check: store.check, ground, tariff, others });
    this.begin();
  }

  private begin(): void {
    const { input } = this.view;
    this.work.stop();
    if (input === null) {
      this.results = NOTHING_CHECKED;
      this.isStale = false;
      return;
    }
    const keys = this.view.bills.flatMap(({ key, at }) => (at < 0 ? [] : [key]));
    const of = `${String(this.store.opened)}: ${keys.join(' ')}`;
    // Of other bills than before, nothing that is there says anything.
    if (of !== this.of) this.results = NOTHING_CHECKED;
    this.of = of;
    this.isStale = this.results.bills.length > 0;
    this.work.start(input, this.bill?.at ?? 0);
  }

  /** The memo and the letter, once every bill was searched and it is known which day it is; made once for the same. */
  sheets(): ReportSheets | null {
    const { results, view, isStale, held, dispute, host } = this;
    const on = parseDay(host.today);
    const { account: checked } = results;
    const { input } = view;
    if (checked === null || input === null || isStale || on === null) return null;
    const basis = [checked, held, dispute, on];
    if (this.made !== null && basis.every((one, at) => one === this.made?.basis[at])) return this.made.sheets;
    const unread = view.bills.flatMap((bill) => (bill.at < 0 ? [] : [unreadPoints(bill)]));
    const asked = { input, checked, on, held: [...held], unread, dispute, writing: view.writing };
    this.made = { basis, sheets: reportSheets(asked) };
    return this.made.sheets;
  }

  readonly hold = (evidence: string, isHeld: boolean): void => {
    const others = [...this.held].filter((one) => one !== evidence);
    this.held = new Set(isHeld ? [...others, evidence] : others);
    this.host.requestUpdate();
  };

  /** Do at once what is left: paper waits for nothing. */
  finish(): void {
    this.work.finish();
  }

  /** Give up what is going on. */
  close(): void {
    this.work.stop();
  }
}
