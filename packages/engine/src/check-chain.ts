import {
  addQuotients,
  isSameQuotient,
  subtractQuotients,
  type Period,
  type Quotient,
  signOf,
  ZERO,
} from './quantity/index.ts';
import { bankEffects, registerEffects, type BankEffect, type RegisterEffect } from './check-chain-units.ts';
import type { CheckedBill } from './check-bill.ts';

/** A later bill that comes out otherwise because of a mistake on one before it. */
export interface LaterBill {
  /** Its place among the bills, from 0. */
  readonly at: number;
  readonly number: string | null;
  readonly period: Period;
  /** What the mistake adds to what is to be paid: printed less right, without what the bill has wrong of itself. */
  readonly difference: Quotient;
}

/** What one mistake did to its own bill, to later ones and to what is carried forward. */
export interface Effects {
  /** The bill on which it was made, from 0. */
  readonly at: number;
  /** Later bills that follow from it, in order of time. */
  readonly bills: readonly LaterBill[];
  /** Money too much (or, below 0, too little) of its own bill and the later ones, without arrears asked once more. */
  readonly money: Quotient;
  /** Bills that follow from it, or its own, and do not print what is to be paid: they are not in `money`. */
  readonly unknown: readonly number[];
  /** The bill that took back exactly what was wrong; null: none did. */
  readonly settledOn: number | null;
  /** What later bills ask for once more because it was not paid. */
  readonly arrears: Quotient;
  /** Late fees for that. */
  readonly lateFee: Quotient;
  /** By ledger: what the books hold too much (or, below 0, too little) at the end because of it. */
  readonly bank: readonly BankEffect[];
  /** By register: units that its bill counted too many or too few, and the bill on which they came back. */
  readonly registers: readonly RegisterEffect[];
}

const isZero = (value: Quotient): boolean => signOf(value) === 0;
const negative = (value: Quotient): Quotient => subtractQuotients(ZERO, value);

/** A mistake as it is followed from bill to bill. */
interface Open {
  readonly at: number;
  readonly bills: LaterBill[];
  readonly money: Quotient[];
  /** Differences of the sums before rounding, as far as bills print them. */
  readonly sums: Quotient[];
  readonly unknown: number[];
  readonly arrears: Quotient[];
  readonly lateFees: Quotient[];
  settledOn: number | null;
}

const openAt = (at: number): Open => ({
  at,
  bills: [],
  money: [],
  sums: [],
  unknown: [],
  arrears: [],
  lateFees: [],
  settledOn: null,
});

/** A difference of a bill in two parts: handed on by bills before, and its own. */
interface Parts {
  readonly handedOn: Quotient | null;
  readonly own: Quotient | null;
  /** The own part of the sum before it is rounded. */
  readonly ownSum: Quotient | null;
}

function less(one: Quotient | undefined, other: Quotient | undefined): Quotient | null {
  return one === undefined || other === undefined ? null : subtractQuotients(one, other);
}

function partsOf({ printed, right, carried, difference }: CheckedBill): Parts {
  const base = carried ?? right;
  const sum = less(printed.figures.get('sum'), base?.figures.get('sum'));
  if (carried === null) return { handedOn: ZERO, own: difference, ownSum: sum };
  const handedOn = less(carried.figures.get('payable'), right?.figures.get('payable'));
  return { handedOn, own: less(printed.figures.get('payable'), carried.figures.get('payable')), ownSum: sum };
}

/** Goes through the bills in order of time, and keeps what each mistake did. */
class Follower {
  readonly mistakes: Open[] = [];
  private readonly bills: readonly CheckedBill[];

  constructor(bills: readonly CheckedBill[]) {
    this.bills = bills;
  }

  follow(bill: CheckedBill, at: number): void {
    const last = this.mistakes.at(-1);
    if (bill.verdict === 'follows') {
      if (last !== undefined) this.handOn(last, at, partsOf(bill).handedOn);
      return;
    }
    if (bill.verdict !== 'wrong') return;
    const parts = partsOf(bill);
    if (last !== undefined && bill.carried !== null) this.handOn(last, at, parts.handedOn);
    if (this.isAskedAgain(bill, at, parts) || this.isTakenBack(at, parts)) return;
    const mistake = openAt(at);
    if (parts.own === null) mistake.unknown.push(at);
    else mistake.money.push(parts.own);
    if (parts.ownSum !== null) mistake.sums.push(parts.ownSum);
    this.mistakes.push(mistake);
  }

  private later(at: number, difference: Quotient): LaterBill {
    const { document, period } = (this.bills[at] as CheckedBill).printed;
    return { at, number: document.number ?? null, period, difference };
  }

  private handOn(mistake: Open, at: number, difference: Quotient | null): void {
    const isPrinted = this.bills[at]?.printed.figures.has('payable') === true;
    if (difference === null || !isPrinted) mistake.unknown.push(at);
    else {
      mistake.money.push(difference);
      mistake.bills.push(this.later(at, difference));
    }
  }

  /** Arrears of the bill before, which was wrong and is not known to be paid, with their late fee. */
  private isAskedAgain({ printed }: CheckedBill, at: number, { own, ownSum }: Parts): boolean {
    const last = this.mistakes.at(-1);
    const wrong = this.bills[at - 1];
    const arrears = printed.figures.get('arrears');
    if (last === undefined || last.at !== at - 1 || arrears === undefined || own === null) return false;
    if (wrong === undefined || wrong.printed.paid !== null) return false;
    const owed = [wrong.printed.figures.get('payable'), wrong.difference];
    if (!owed.some((one) => one !== undefined && one !== null && isSameQuotient(one, arrears))) return false;
    const fee = printed.figures.get('late-fee') ?? ZERO;
    const asked = addQuotients([arrears, fee]);
    if (![own, ownSum].some((one) => one !== null && isSameQuotient(one, asked))) return false;
    last.bills.push(this.later(at, own));
    last.arrears.push(arrears);
    last.lateFees.push(fee);
    last.money.push(fee);
    return true;
  }

  /** A bill that takes back exactly what a mistake before made wrong. */
  private isTakenBack(at: number, { own, ownSum }: Parts): boolean {
    const undone = this.mistakes.findLast(({ money, sums, settledOn }) => {
      const isSame = (one: Quotient | null, parts: readonly Quotient[]): boolean =>
        one !== null && !isZero(one) && isSameQuotient(one, negative(addQuotients(parts)));
      return settledOn === null && (isSame(own, money) || isSame(ownSum, sums));
    });
    if (undone === undefined || own === null) return false;
    undone.settledOn = at;
    undone.money.push(own);
    undone.bills.push(this.later(at, own));
    return true;
  }
}

/**
 * Follow each mistake from the bill on which it was made through the later bills: those that follow from it, what was
 * asked too much or too little in all, and what the bank holds at the end because of it. Units that came back by
 * themselves are in the later bills and in the bank already: there is nothing of them to be claimed again. What several
 * mistakes did adds up to the whole difference.
 *
 * @param bills  as they were checked, in order of time
 * @returns      for each bill what it did to others; null where it is no mistake of its own
 */
export function effectsOf(bills: readonly CheckedBill[]): readonly (Effects | null)[] {
  const follower = new Follower(bills);
  bills.forEach((bill, at) => {
    follower.follow(bill, at);
  });
  const { mistakes } = follower;
  const effects = mistakes.map((mistake, place): Effects => {
    const until = mistakes[place + 1]?.at ?? bills.length;
    const { at, bills: later, unknown, settledOn, money, arrears, lateFees } = mistake;
    const sums = {
      money: addQuotients(money),
      arrears: addQuotients(arrears),
      lateFee: addQuotients(lateFees),
    };
    const units = { bank: bankEffects(bills, at, until), registers: registerEffects(bills, at, until) };
    return { at, bills: later, unknown, settledOn, ...sums, ...units };
  });
  return bills.map((_, at) => effects.find((one) => one.at === at) ?? null);
}
