import type { CheckedBill, Quotient } from '@unitbook/engine';
import { isAccountOrder, joinedOrder, type AccountOrder } from './account-order.ts';
import { addSums, NO_SUM, sizeOf, sumOf, type ExactSum } from './exact-sum.ts';

/** So many bills, of so many accounts, and what they are wrong by: printed less right. */
export interface Count {
  bills: number;
  accounts: number;
  sum: ExactSum;
}

/** What the check of some rows came to; several of them are added up. */
export interface Tally {
  /** Rows, those that cannot be used among them. */
  rows: number;
  accounts: number;
  /** null: there is no row that can be used. */
  order: AccountOrder | null;
  /** Bills by verdict, and rows that cannot be used as "unreadable". */
  readonly verdicts: Record<string, Count>;
  /** By "utility" and "household": in whose favour bills are wrong. */
  readonly favour: Record<string, Count>;
  /** By how much bills are wrong, whichever way: "1", "10" and so on, the most of each band. */
  readonly amounts: Record<string, Count>;
  /** By cause: its part of what bills are wrong by, where one explanation alone fits. */
  readonly causes: Record<string, Count>;
  /** How wrong bills are explained: "one", "several", "none". */
  readonly explained: Record<string, Count>;
  /** Why bills cannot be told, and rows not read, by code. */
  readonly codes: Record<string, Count>;
}

/** Nothing counted yet. */
export const emptyTally = (): Tally => ({
  rows: 0,
  accounts: 0,
  order: null,
  verdicts: {},
  favour: {},
  amounts: {},
  causes: {},
  explained: {},
  codes: {},
});

const GROUPS = ['verdicts', 'favour', 'amounts', 'causes', 'explained', 'codes'] as const;

type Group = (typeof GROUPS)[number];

/** The most of each band of amounts, in money. */
const BANDS: readonly number[] = [1, 10, 100, 1000, 10_000];

/** The band of a difference: the least that holds it. */
function bandOf(difference: Quotient): string {
  const { top, bottom } = sizeOf(sumOf(difference));
  const band = BANDS.find((most) => BigInt(top) <= BigInt(most) * BigInt(bottom));
  return band === undefined ? 'more' : String(band);
}

const isCount = (value: unknown): boolean => {
  const { bills, accounts, sum } = (value ?? {}) as Partial<Count>;
  const { top, bottom } = (sum ?? {}) as Partial<Record<keyof ExactSum, unknown>>;
  const isSum = typeof top === 'string' && /^-?\d+$/.test(top) && typeof bottom === 'string';
  return Number.isSafeInteger(bills) && Number.isSafeInteger(accounts) && isSum && /^[1-9]\d*$/.test(bottom);
};

/**
 * Whether something that was read of a file is a tally to its end.
 *
 * @example
 * isTally({ rows: 1 }) //=> false
 */
export function isTally(value: unknown): value is Tally {
  if (typeof value !== 'object' || value === null) return false;
  const tally = value as Partial<Record<keyof Tally, unknown>>;
  return (
    Number.isSafeInteger(tally.rows) &&
    Number.isSafeInteger(tally.accounts) &&
    isAccountOrder(tally.order) &&
    GROUPS.every((group) => {
      const counts = tally[group];
      return typeof counts === 'object' && counts !== null && Object.values(counts).every(isCount);
    })
  );
}

/**
 * Whether nothing was found: every row was read, and every bill is right, though some may be surprising.
 *
 * @example
 * isClean({ rows: 0, verdicts: {} }) //=> true
 */
export function isClean({
  rows,
  verdicts,
}: {
  readonly rows: number;
  readonly verdicts: Readonly<Record<string, { readonly bills: number }>>;
}): boolean {
  const { right, 'right-but-surprising': surprising } = verdicts;
  return (right?.bills ?? 0) + (surprising?.bills ?? 0) === rows;
}

/** Adds up what rows came to. */
export class Tallying {
  readonly tally: Tally;
  /** The account counted last under each heading, so that it is counted once. */
  private readonly last = new Map<string, number>();
  private account = 0;

  constructor() {
    this.tally = emptyTally();
  }

  /** Another account begins; the rows that follow are of it. */
  begin(): void {
    this.tally.accounts += 1;
    this.account += 1;
  }

  /** Bills that are right, of accounts that were begun, without a look at each. */
  right(bills: number): void {
    this.tally.rows += bills;
    const right = (this.tally.verdicts['right'] ??= { bills: 0, accounts: 0, sum: NO_SUM });
    right.bills += bills;
  }

  /** A row that cannot be used. */
  unreadable(code: string): void {
    this.tally.rows += 1;
    this.account += 1;
    this.add('verdicts', 'unreadable', NO_SUM);
    this.add('codes', code, NO_SUM);
  }

  /** A bill that was looked at. */
  bill({ verdict, difference, explanations, findings }: CheckedBill): void {
    this.tally.rows += 1;
    const isWrong = verdict === 'wrong' || verdict === 'follows';
    const sum = difference === null || !isWrong ? NO_SUM : sumOf(difference);
    this.add('verdicts', verdict, sum);
    for (const code of new Set(findings.map((finding) => finding.code))) this.add('codes', code, NO_SUM);
    if (!isWrong) return;
    if (difference !== null && difference.numerator !== 0) {
      this.add('favour', difference.numerator > 0 ? 'utility' : 'household', sum);
      this.add('amounts', bandOf(difference), sum);
    }
    if (verdict !== 'wrong') return;
    this.explained(explanations, sum);
  }

  private explained(explanations: CheckedBill['explanations'], sum: ExactSum): void {
    const [first, ...others] = explanations;
    this.add('explained', first === undefined ? 'none' : others.length === 0 ? 'one' : 'several', sum);
    if (first === undefined || others.length > 0) return;
    const { attempt, attribution } = first;
    attempt.steps.forEach(({ cause }, at) => {
      const part = attribution?.parts[at]?.amount;
      this.add('causes', cause.id, part === undefined ? NO_SUM : sumOf(part));
    });
  }

  private add(group: Group, key: string, sum: ExactSum): void {
    const count = (this.tally[group][key] ??= { bills: 0, accounts: 0, sum: NO_SUM });
    const place = `${group} ${key}`;
    count.bills += 1;
    if (this.last.get(place) !== this.account) count.accounts += 1;
    this.last.set(place, this.account);
    if (sum !== NO_SUM) count.sum = addSums(count.sum, sum);
  }
}

/** Add what the rows below came to. */
export function addTally(into: Tally, more: Tally): void {
  into.rows += more.rows;
  into.accounts += more.accounts;
  into.order = joinedOrder(into.order, more.order);
  for (const group of GROUPS)
    for (const [key, { bills, accounts, sum }] of Object.entries(more[group])) {
      const count = (into[group][key] ??= { bills: 0, accounts: 0, sum: NO_SUM });
      count.bills += bills;
      count.accounts += accounts;
      count.sum = addSums(count.sum, sum);
    }
}
