import { isSameQuotient, subtractQuotients, type Quotient, signOf, ZERO } from './quantity/index.ts';
import { FIGURE, type Figures } from './audit/index.ts';
import type { CheckedBill } from './check-bill.ts';

/** What a ledger holds otherwise than it should because of a mistake. */
export interface BankEffect {
  readonly ledger: string;
  /** Printed closing less right closing after the last bill, in units of the ledger; 0: it is as it should be. */
  readonly units: Quotient;
  /** The bill since which it has held that, from 0: where units came back, the one on which they did. null: `units` is 0. */
  readonly since: number | null;
  /** The bill on which it came to be as it should again; null: it was never off, or still is. */
  readonly evenOn: number | null;
}

/** Units that a bill counted otherwise than its register. */
export interface RegisterEffect {
  readonly register: string;
  /** Units that the register counted and its bill did not: below 0, it counted too many. */
  readonly units: Quotient;
  /** The bill on which they came back by themselves, by a reading that is right again; null: none yet. */
  readonly backOn: number | null;
}

const isZero = (value: Quotient): boolean => signOf(value) === 0;

/** Figures that the books hold, besides those printed: of what the verdict says the bill is. */
function booksOf({ verdict, right, carried, explanations }: CheckedBill): Figures | null {
  if (verdict === 'right' || verdict === 'right-but-surprising') return right?.figures ?? null;
  if (verdict === 'follows') return carried?.figures ?? null;
  return explanations.length === 1 ? (explanations[0]?.attempt.figures ?? null) : null;
}

/** A figure of the books less the right one; null where one is not known. */
function offBy(bill: CheckedBill, name: string): Quotient | null {
  const own = bill.printed.figures.get(name) ?? booksOf(bill)?.get(name);
  const right = bill.right?.figures.get(name);
  return own === undefined || right === undefined ? null : subtractQuotients(own, right);
}

/** Differences of a figure after each bill; what is not known stays as it was. */
function runningOff(bills: readonly CheckedBill[], name: string): readonly Quotient[] {
  let last = ZERO;
  return bills.map((bill) => (last = offBy(bill, name) ?? last));
}

function bankEffect(ledger: string, off: readonly Quotient[], at: number): BankEffect {
  const before = off[at - 1] ?? ZERO;
  const changes = off.slice(at).map((one) => subtractQuotients(one, before));
  const units = changes.at(-1) ?? ZERO;
  // The first bill from which on it stayed at what it is at the end.
  const rest = changes.length - 1 - changes.findLastIndex((one) => !isSameQuotient(one, units));
  const settled = at + changes.length - rest;
  const wasOff = changes.some((one) => !isZero(one));
  return {
    ledger,
    units,
    since: isZero(units) ? null : settled,
    evenOn: isZero(units) && wasOff ? settled : null,
  };
}

/**
 * What a mistake changed in every ledger, up to the next mistake: the changes of all mistakes sum to the difference of
 * the bank at the end.
 *
 * @param at     the bill on which it was made, from 0
 * @param until  the bill of the next mistake, or the number of bills
 */
export function bankEffects(bills: readonly CheckedBill[], at: number, until: number): readonly BankEffect[] {
  const ledgers = Object.keys(bills[at]?.facts.opening ?? {});
  return ledgers.map((ledger) =>
    bankEffect(ledger, runningOff(bills.slice(0, until), FIGURE.closing(ledger)), at),
  );
}

/** Units of a difference of readings; null where the register is not known, or shows what it should. */
function pendingUnits(bill: CheckedBill, register: string): Quotient | null {
  const off = offBy(bill, FIGURE.reading(register, 'present'));
  const factor = bill.facts.registers[register]?.register.factor;
  if (off === null || factor === undefined || isZero(off)) return null;
  const numerator = -BigInt(off.numerator) * BigInt(factor.numerator);
  return subtractQuotients({ numerator, denominator: off.denominator * factor.denominator }, ZERO);
}

/** Whether a bill ends with the reading that it should end with. */
function isReadRight(bill: CheckedBill, register: string): boolean {
  const off = offBy(bill, FIGURE.reading(register, 'present'));
  return off !== null && isZero(off);
}

/**
 * Units that a mistake in a reading left out, or counted too many, by register, and when they came back.
 *
 * @param at     the bill on which it was made, from 0
 * @param until  the bill of the next mistake, or the number of bills
 */
export function registerEffects(
  bills: readonly CheckedBill[],
  at: number,
  until: number,
): readonly RegisterEffect[] {
  const bill = bills[at];
  if (bill === undefined) return [];
  return Object.keys(bill.facts.registers).flatMap((register) => {
    const units = pendingUnits(bill, register);
    if (units === null) return [];
    const back = bills.findIndex((one, place) => place > at && place < until && isReadRight(one, register));
    return [{ register, units, backOn: back === -1 ? null : back }];
  });
}
