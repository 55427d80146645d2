import {
  CAUSES,
  checkAccountBills,
  type CheckedAccount,
  type CheckedBill,
  type CheckInput,
  type Finding,
} from '@unitbook/engine';
import { inIdleChunks, type Cancel } from '../../quote/work/idle.ts';
import { causesForBill } from './one-bill.ts';

/** A bill as far as it is checked. */
export interface BillResult {
  readonly checked: CheckedBill;
  /** Whether every known mistake was tried: before that nothing is said of why. */
  readonly isSearched: boolean;
}

/** What came of the bills so far. */
export interface CheckResults {
  /** In the order of the input; none: nothing is checked yet. */
  readonly bills: readonly BillResult[];
  /** About readings. */
  readonly findings: readonly Finding[];
  /** The whole account, once every bill is searched. */
  readonly account: CheckedAccount | null;
}

/** Nothing checked yet. */
export const NOTHING_CHECKED: CheckResults = { bills: [], findings: [], account: null };

/** How long typing has to stand still before bills are set beside the right ones, in milliseconds: that is quick. */
const STILL = 250;

/** How much longer before a bill is searched for what explains it: a key that is pressed meanwhile would wait. */
const LONGER = 300;

/** Only a bill that differs is searched for what explains it. */
const wantsSearch = ({ verdict }: CheckedBill): boolean => verdict === 'wrong';

/**
 * Checks printed bills while nobody types: first every bill is set beside the right one, then one after the other is
 * searched for what explains it. A later check takes the place of one before.
 */
export class CheckWork {
  private cancel: Cancel = () => undefined;
  private left: Iterator<void> | null = null;
  private results = NOTHING_CHECKED;
  private readonly tell: (results: CheckResults) => void;

  constructor(tell: (results: CheckResults) => void) {
    this.tell = tell;
  }

  private add(results: CheckResults): void {
    this.results = results;
    this.tell(results);
  }

  private *steps(input: CheckInput, first: number): Generator<void, void> {
    const { bills, findings } = checkAccountBills(input, { causes: [] });
    this.add({
      bills: bills.map((checked) => ({ checked, isSearched: !wantsSearch(checked) })),
      findings,
      account: null,
    });
    const places = bills.map((_, at) => at).filter((at) => wantsSearch(bills[at] as CheckedBill));
    // What the reader looks at goes first.
    places.sort((one, other) => Number(other === first) - Number(one === first));
    for (const at of places) {
      yield;
      this.search(input, at);
    }
    const checked = this.results.bills.map((one) => one.checked);
    this.add({ ...this.results, account: { bills: checked, findings } });
  }

  private search(input: CheckInput, at: number): void {
    const printed = input.bills[at];
    if (printed === undefined) return;
    const causes = causesForBill(CAUSES, printed);
    const checked = checkAccountBills(input, { causes }).bills[at];
    if (checked === undefined) return;
    const bills = this.results.bills.map((one, place) =>
      place === at ? { checked, isSearched: true } : one,
    );
    this.add({ ...this.results, bills });
  }

  /**
   * Begin once typing has stood still.
   *
   * @param first  place of the bill that is searched first
   */
  start(input: CheckInput, first: number): void {
    this.stop();
    const left = this.steps(input, first);
    this.left = left;
    this.wait(STILL, () => {
      // The first step sets bills beside the right ones; it is done at once.
      if (left.next().done === true) return;
      this.wait(LONGER, () => {
        this.cancel = inIdleChunks(left);
      });
    });
  }

  private wait(milliseconds: number, act: () => void): void {
    const timer = setTimeout(act, milliseconds);
    this.cancel = () => {
      clearTimeout(timer);
    };
  }

  /** Do at once what is left: paper waits for nothing. */
  finish(): void {
    this.cancel();
    while (this.left !== null) if (this.left.next().done === true) this.left = null;
  }

  /** Give up what is going on. */
  stop(): void {
    this.cancel();
    this.left = null;
  }
}
