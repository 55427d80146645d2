import {
  addQuotients,
  decimalPlaces,
  decimalToWhole,
  NumberTooLarge,
  subtractQuotients,
  wholeSteps,
  type DayNumber,
  type Figure,
  type Finding,
  type Outcome,
  type Quotient,
  signOf,
  ZERO,
} from '../../quantity/index.ts';
import type { InterestRule, SimpleInterest } from './dispute-schema.ts';
import { largerOf, smallerOf } from './exact.ts';
import { interestTooFine, simpleInterest, type InterestStretch } from './interest.ts';

/** Money that was paid for a bill. */
export interface Payment {
  readonly on: DayNumber;
  readonly amount: Quotient;
}

/** What a refund is worked out from: amounts of money, exact. */
export interface RefundInput {
  /** Of the bill, as printed and as it should be: what is to be paid, or the sums before they were rounded. */
  readonly printed: Quotient;
  readonly right: Quotient;
  /** In order of time; none: not paid, or not known. */
  readonly payments: readonly Payment[];
}

/** The part of a payment that was too much. */
export interface RefundPart {
  readonly paidOn: DayNumber;
  readonly principal: Figure;
  /** Interest of each stretch of days, exact; empty where none is due. */
  readonly stretches: readonly InterestStretch[];
}

/**
 * What a wrong bill leaves to be set right. `refund + withdraw + credit − underBilled` is what it printed too much;
 * under-billing is never set off against a refund.
 */
export interface BillRefund {
  /** Printed less right. */
  readonly difference: Quotient;
  /** Paid too much: to be paid back. */
  readonly refund: Figure;
  /** Asked for too much and not paid: to be withdrawn. */
  readonly withdraw: Quotient;
  /** A payment to the household that the bill left out. */
  readonly credit: Quotient;
  /** Asked for too little: the supplier may claim it. */
  readonly underBilled: Quotient;
  readonly parts: readonly RefundPart[];
  /** Interest on the refund, rounded as the rule says; null where no rule, or no rate, is known. */
  readonly interest: Figure | null;
}

const NONE: readonly never[] = [];

const money = (
  words: Pick<Figure, 'id' | 'label' | 'clause'>,
  { numerator, denominator }: Quotient,
  from: Pick<Figure, 'operation' | 'inputs'>,
): Figure => ({ ...words, unit: 'money', numerator, denominator, ...from, parameters: NONE, rounding: null });

const given = (id: string, label: string, value: Quotient): Figure =>
  money({ id, label, clause: 'bill' }, value, { operation: 'given', inputs: NONE });

/** Payments above the right amount, up to what the bill asked for: the first money paid is what was owed. */
function overpaid({ printed, right, payments }: RefundInput): readonly (readonly [DayNumber, Figure])[] {
  const [owed, asked] = [largerOf(right, ZERO), largerOf(printed, ZERO)];
  let before = ZERO;
  return payments.flatMap(({ on, amount }) => {
    const after = addQuotients([before, amount]);
    const [from, to] = [largerOf(before, owed), smallerOf(after, asked)];
    before = after;
    if (signOf(subtractQuotients(to, from)) <= 0) return [];
    const inputs = [given('paid', 'Paid so far', to), given('owed', 'Owed, or paid back already', from)];
    const words = { id: 'paid-too-much', label: 'Paid too much', clause: '' };
    return [[on, money(words, subtractQuotients(to, from), { operation: 'difference', inputs })] as const];
  });
}

/**
 * Round a sum as a rule says, with what it was before.
 *
 * @param rounding  null: not rounded
 * @returns         null where parts of several denominators have no sum that can be held
 */
function roundedSum(
  words: Pick<Figure, 'id' | 'label' | 'clause'>,
  inputs: readonly Figure[],
  rounding: SimpleInterest['rounding'] | null,
): Figure | null {
  try {
    const sum = money(words, addQuotients(inputs), { operation: 'sum', inputs });
    return rounding === null ? sum : roundedTo(sum, rounding);
  } catch (error) {
    if (!(error instanceof NumberTooLarge)) throw error;
    return null;
  }
}

function roundedTo(sum: Figure, rounding: SimpleInterest['rounding']): Figure {
  const places = decimalPlaces(rounding.step);
  const step = { numerator: decimalToWhole(rounding.step, places), denominator: 10 ** places };
  const { numerator, denominator, clause } = sum;
  const steps = wholeSteps(sum, step, rounding.mode);
  const applied = { ...rounding, clause, numerator, denominator };
  return { ...sum, numerator: steps * step.numerator, denominator: step.denominator, rounding: applied };
}

const INTEREST = { id: 'interest', label: 'Interest' } as const;

/** The interest of a bill; null where parts of several denominators cannot be summed exactly. */
function interestFigure(parts: readonly RefundPart[], rule: InterestRule): Figure | null {
  const inputs = parts.flatMap(({ stretches }) => stretches.map(({ interest }) => interest));
  const rounding = rule.kind === 'simple' && rule.roundedAt === 'bill' ? rule.rounding : null;
  return roundedSum({ ...INTEREST, clause: rule.clause }, inputs, rounding);
}

/** Each part with its interest up to a day; null where a rate is not known. */
function withInterest(
  parts: readonly (readonly [DayNumber, Figure])[],
  rule: InterestRule,
  until: DayNumber,
): Outcome<readonly RefundPart[] | null> {
  const findings: Finding[] = [];
  const made = parts.map(([paidOn, principal]): RefundPart | null => {
    if (rule.kind === 'none' || until <= paidOn) return { paidOn, principal, stretches: NONE };
    const { value, findings: own } = simpleInterest(principal, rule, { from: paidOn, to: until });
    findings.push(...own);
    return value === null ? null : { paidOn, principal, stretches: value };
  });
  const known = made.filter((part) => part !== null);
  return { value: known.length === made.length ? known : null, findings };
}

/**
 * Work out what a wrong bill leaves to be set right: what was paid too much goes back with simple interest from each
 * payment to a day; what was asked for too much and not paid is to be withdrawn; what was asked for too little is
 * told apart.
 *
 * @param rule   null: not known whether interest is due
 * @param until  the day up to which interest runs
 * @returns      amounts exact; interest rounded where the rule says so; a finding where a rate is not known
 * @example
 * refundOf({ printed: { numerator: 546, denominator: 1 }, right: { numerator: 230, denominator: 1 }, payments: [] }, null, 0).value.withdraw //=> {"numerator":316,"denominator":1}
 */
export function refundOf(
  input: RefundInput,
  rule: InterestRule | null,
  until: DayNumber,
): Outcome<BillRefund> {
  const { printed, right, payments } = input;
  const difference = subtractQuotients(printed, right);
  const excess = overpaid(input);
  const refund = money(
    { id: 'refund', label: 'To be paid back', clause: '' },
    addQuotients(excess.map(([, one]) => one)),
    {
      operation: 'sum',
      inputs: excess.map(([, one]) => one),
    },
  );
  const paid = addQuotients(payments.map(({ amount }) => amount));
  const [owed, asked] = [largerOf(right, ZERO), largerOf(printed, ZERO)];
  const negative = (value: Quotient): Quotient => largerOf(subtractQuotients(ZERO, value), ZERO);
  const isTooMuch = signOf(difference) > 0;
  const { value: parts, findings } =
    rule === null ? { value: null, findings: NONE } : withInterest(excess, rule, until);
  const interest = rule === null || parts === null ? null : interestFigure(parts, rule);
  const isTooFine = parts !== null && interest === null;
  const value: BillRefund = {
    difference,
    refund,
    withdraw: largerOf(subtractQuotients(asked, largerOf(paid, owed)), ZERO),
    credit: isTooMuch ? subtractQuotients(negative(right), negative(printed)) : ZERO,
    underBilled: isTooMuch ? ZERO : negative(difference),
    parts: parts ?? excess.map(([paidOn, principal]) => ({ paidOn, principal, stretches: NONE })),
    interest,
  };
  return { value, findings: isTooFine ? [...findings, interestTooFine(refund)] : findings };
}

/** Refunds of several bills, each direction summed by itself. */
export interface RefundSum {
  readonly refund: Figure;
  /** null where it is not known of one of them. */
  readonly interest: Figure | null;
  readonly withdraw: Quotient;
  readonly credit: Quotient;
  readonly underBilled: Quotient;
}

/**
 * Sum the refunds of several bills. What was billed too little is summed apart, and set off against nothing.
 *
 * @param rule  that of the refunds: it says whether interest is rounded for each bill or once
 */
export function sumRefunds(refunds: readonly BillRefund[], rule: InterestRule | null): RefundSum {
  const sum = (values: readonly Quotient[]): Quotient => addQuotients(values);
  const inputs = refunds.map(({ refund }) => refund);
  const isKnown = rule !== null && refunds.every(({ interest }) => interest !== null);
  const interests = refunds.flatMap(({ interest }) => (interest === null ? [] : [interest]));
  const rounding = rule?.kind === 'simple' && rule.roundedAt === 'sum' ? rule.rounding : null;
  const words = { ...INTEREST, clause: rule?.clause ?? '' };
  return {
    refund: money({ id: 'refund', label: 'To be paid back', clause: '' }, sum(inputs), {
      operation: 'sum',
      inputs,
    }),
    interest: isKnown ? roundedSum(words, interests, rounding) : null,
    withdraw: sum(refunds.map(({ withdraw }) => withdraw)),
    credit: sum(refunds.map(({ credit }) => credit)),
    underBilled: sum(refunds.map(({ underBilled }) => underBilled)),
  };
}
