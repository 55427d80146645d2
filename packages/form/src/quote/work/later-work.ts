import {
  compareTariffs,
  quoteBounds,
  quoteBatterySizes,
  quoteFacts,
  quoteKeptUnits,
  quoteSizes,
  quoteWarnings,
  usualBatteries,
  usualCases,
  usualSizes,
  workOutCase,
  type CaseResult,
  type DrawSummary,
  type Finding,
  type KeptUnits,
  type PreparedQuote,
  type Quote,
  type QuoteDocument,
  type QuoteProfile,
  type SizePoint,
  type Sizes,
  type Tariff,
  type TariffResult,
} from '@unitbook/engine';
import type { DrawJob, DrawNews } from './draw-blocks.ts';
import { DrawThread } from './draw-thread.ts';
import { inIdleChunks, type Cancel } from './idle.ts';

/** Sizes beside a battery, and the size of the quote beside it. */
export interface BatteryLater {
  /** Wh; 0: none. */
  readonly wattHours: number;
  readonly points: readonly SizePoint[];
  readonly own: SizePoint | null;
}

/** What takes longer than a frame. Every part is null until it is there. */
export interface LaterResults {
  /** What each month of the first year is billed for, and the surplus that is paid and lapses. */
  readonly kept: KeptUnits | null;
  readonly cases: readonly CaseResult[] | null;
  readonly sizes: Sizes | null;
  /** Sizes beside other batteries; none where the quote has none. */
  readonly batteries: readonly BatteryLater[] | null;
  /** The same under other tariffs; none where none is ticked. */
  readonly tariffs: readonly TariffResult[] | null;
  /** What the seller should read before printing. */
  readonly warnings: readonly Finding[] | null;
  readonly draws: DrawSummary | null;
  /** The other end where own use is not known: as much of it as use and generation allow; null where it is known. */
  readonly mostOwnUse: Quote | null;
  /** Draws made so far. */
  readonly drawn: number;
  /** Whether somebody stopped the draws. */
  readonly isStopped: boolean;
  /** Why there are no draws; '' otherwise. */
  readonly problem: string;
}

/** What is worked out when a quote has stood still for a moment. */
export interface LaterJob {
  readonly quote: Quote;
  readonly prepared: PreparedQuote;
  /** With plain numbers. */
  readonly document: QuoteDocument;
  readonly tariff: Tariff;
  readonly watts: number | null;
  /** Use and generation by intervals; null: own use is by the share. */
  readonly profile: QuoteProfile | null;
  /** Other tariffs that are to be compared. */
  readonly others: readonly Tariff[];
}

/** Nothing worked out yet. */
export const NOTHING_LATER: LaterResults = {
  kept: null,
  cases: null,
  sizes: null,
  batteries: null,
  tariffs: null,
  warnings: null,
  draws: null,
  mostOwnUse: null,
  drawn: 0,
  isStopped: false,
  problem: '',
};

/** How many draws are made. */
export const DRAWS = 10_000;

/** How long a quote has to stand still, in milliseconds: a slider that is held moves more often. */
const STILL = 350;

/** Works out cases, other tariffs, sizes and draws of a quote, one after the other; a later quote takes the place of one before. */
export class LaterWork {
  private id = 0;
  private thread: DrawThread | null = null;
  /** The draws of the quote, once it is their turn. */
  private draws: DrawJob | null = null;
  private cancel: Cancel = () => undefined;
  private results = NOTHING_LATER;
  /** What is still to be done. */
  private left: Iterator<void> | null = null;
  private readonly tell: (results: LaterResults) => void;

  constructor(tell: (results: LaterResults) => void) {
    this.tell = tell;
  }

  private add(more: Partial<LaterResults>): void {
    this.results = { ...this.results, ...more };
    this.tell(this.results);
  }

  private readonly hear = (news: DrawNews): void => {
    if (news.id !== this.id) return;
    if (news.kind === 'drawn') this.add({ drawn: news.draws });
    else if (news.kind === 'done') this.add({ draws: news.summary });
    else this.add({ problem: news.why });
  };

  /** Every case, then every other tariff, one at a time. */
  private *bills({ prepared, tariff, profile, others }: LaterJob): Generator<void, void> {
    const { input } = prepared;
    const cases: CaseResult[] = [];
    for (const one of usualCases(input)) {
      // Read under the time blocks of the tariff once for all cases.
      cases.push(workOutCase(input, tariff, one, { profile: prepared.profile }));
      yield;
    }
    this.add({ cases });
    yield;
    const tariffs: TariffResult[] = [];
    for (const other of others) {
      tariffs.push(...compareTariffs(input, [other], { profile }));
      yield;
    }
    this.add({ tariffs });
  }

  /** Sizes, then the same beside each other battery. */
  private *sizes({ prepared }: LaterJob): Generator<void, void> {
    const range = usualSizes(prepared.input.watts);
    this.add({ sizes: quoteSizes(prepared, range) });
    yield;
    const batteries: BatteryLater[] = [];
    const { watts } = prepared.input;
    for (const wattHours of usualBatteries(prepared.input.document)) {
      const [all] = quoteBatterySizes(prepared, range, [wattHours]);
      const [own] = quoteBatterySizes(prepared, { from: watts, step: 1, count: 1 }, [wattHours]);
      batteries.push({ wattHours, points: all?.sizes.points ?? [], own: own?.sizes.points[0] ?? null });
      yield;
    }
    this.add({ batteries });
  }

  private *steps(job: LaterJob): Generator<void, void> {
    const { quote, prepared, document, tariff, watts, profile } = job;
    this.add({ kept: quoteKeptUnits(prepared) });
    yield;
    if (profile === null && prepared.input.share === null) {
      this.add({ mostOwnUse: quoteBounds(prepared.input, tariff).value?.high ?? null });
      yield;
    }
    yield* this.bills(job);
    yield;
    yield* this.sizes(job);
    this.add({ warnings: quoteWarnings(quote, quoteFacts(prepared)) });
    if (document.uncertainty === undefined) return;
    yield;
    this.draws = { id: this.id, document, tariff: tariff.document, watts, profile, draws: DRAWS };
    if (!this.results.isStopped) this.drawAgain();
  }

  /** Stop the draws, also before it is their turn: what else is worked out stays. */
  stopDraws(): void {
    this.thread?.stop();
    this.add({ isStopped: true });
  }

  /** Begin the draws of this quote, from the first. */
  drawAgain(): void {
    this.add({ drawn: 0, isStopped: false });
    if (this.draws === null) return;
    // What a worker still tells of the draws before is not heard as of these.
    this.id += 1;
    this.thread ??= new DrawThread(this.hear);
    this.thread.draw({ ...this.draws, id: this.id });
  }

  /** Begin once the quote has stood still. */
  start(job: LaterJob): void {
    this.stop();
    const left = this.steps(job);
    this.left = left;
    const timer = setTimeout(() => {
      this.cancel = inIdleChunks(left);
    }, STILL);
    this.cancel = () => {
      clearTimeout(timer);
    };
  }

  /** Do at once what is left, but for the draws: paper waits for nothing. */
  finish(): void {
    this.cancel();
    while (this.left !== null) if (this.left.next().done === true) this.left = null;
  }

  /** Give up what is going on, and forget what was worked out. */
  stop(): void {
    this.cancel();
    this.left = null;
    this.draws = null;
    this.thread?.stop();
    this.id += 1;
    this.results = NOTHING_LATER;
  }

  /** Let go of the thread as well. */
  close(): void {
    this.stop();
    this.thread?.close();
    this.thread = null;
  }
}
