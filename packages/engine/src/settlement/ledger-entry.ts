import {
  givenFigure,
  type Figure,
  type FigureUnit,
  type Operation,
  type Rounding,
} from '../quantity/index.ts';
import type { LedgerRule } from '../tariff/index.ts';
import type { LedgerInput, LedgerMoves, LedgerState } from './ledger.ts';
import { moveLedger } from './ledger.ts';

/** Units or money that a settlement pays. */
export interface SurplusPayment {
  /** Units, or an amount of money. */
  readonly units: Figure;
  /** Money per unit, as the document writes it; null where money is paid out. */
  readonly rate: string | null;
  readonly clause: string;
  readonly label: string;
  readonly inBill: 'same' | 'next';
  /** Left out: as lines are rounded. */
  readonly rounding?: Rounding;
}

/** One line of a ledger: `opening + added = used + paid + lapsed + closing`. */
export interface LedgerEntry {
  readonly id: string;
  readonly label: string;
  readonly unit: LedgerRule['unit'];
  readonly opening: Figure;
  readonly added: Figure;
  readonly used: Figure;
  readonly paid: Figure;
  readonly lapsed: Figure;
  readonly closing: Figure;
  readonly payment: SurplusPayment | null;
  readonly isClosed: boolean;
  /** What the next period begins with. */
  readonly next: LedgerState;
}

/** The figures that a ledger's line follows from. */
export interface LedgerFigures {
  readonly keeps: Figure;
  readonly adds: Figure;
  readonly most: Figure | null;
  /** The rate per unit, resolved for the period when units are paid; null for money. */
  readonly rate: (() => { readonly text: string; readonly clause: string }) | null;
}

const NONE: readonly never[] = [];

interface Making {
  readonly rule: LedgerRule;
  readonly moves: LedgerMoves;
  readonly denominator: number;
}

interface Words {
  readonly id: string;
  readonly label: string;
  readonly operation: Operation;
  readonly clause: string;
}

function make(
  { rule, denominator }: Making,
  words: Words,
  numerator: number,
  inputs: readonly Figure[],
): Figure {
  const unit: FigureUnit = rule.unit;
  return {
    id: `${rule.id}-${words.id}`,
    label: words.label,
    unit,
    numerator,
    denominator,
    operation: words.operation,
    inputs,
    parameters: NONE,
    rounding: null,
    clause: words.clause,
  };
}

/** The balance of a ledger brought forward, as a figure of its own. */
export function openingFigure(rule: LedgerRule, state: LedgerState): Figure {
  return givenFigure({
    id: rule.id,
    label: `${rule.label}, brought forward`,
    unit: rule.unit,
    numerator: state.lots.reduce((sum, { amount }) => sum + amount, 0),
    denominator: state.denominator,
    clause: rule.clause,
  });
}

/** What lapsed because it had outlived its time, lot by lot. */
function outlivedFigure(making: Making): Figure {
  const clause = making.rule.life?.clause ?? making.rule.clause;
  const words = { id: 'outlived', label: 'At the end of its life', operation: 'given', clause } as const;
  return make(making, words, making.moves.outlived, NONE);
}

/** What a ledger pays: the balance, or what exceeds the threshold, up to the limit. */
function paidFigure(
  making: Making,
  balance: Figure,
  { threshold, most }: LedgerInput,
  figures: LedgerFigures,
): Figure {
  const { rule, moves, denominator } = making;
  const clause = rule.payment?.clause ?? rule.close?.clause ?? rule.clause;
  const label = rule.unit !== 'money' ? 'Units paid' : 'Paid out';
  if (moves.paid === 0) return make(making, { id: 'paid', label, operation: 'sum', clause }, 0, NONE);
  const isExcess = threshold !== null && rule.payment?.pays === 'excess';
  const words = { id: 'threshold', label: 'Threshold', unit: rule.unit, clause } as const;
  const limit = givenFigure({ ...words, numerator: threshold ?? 0, denominator });
  const due = (balance.numerator as number) - (isExcess ? threshold : 0);
  const excess = { id: 'excess', label: 'What exceeds the threshold', operation: 'excess', clause } as const;
  const base = isExcess ? make(making, excess, due, [balance, limit]) : balance;
  if (most === null || figures.most === null) {
    return make(making, { id: 'paid', label, operation: 'sum', clause }, moves.paid, [base]);
  }
  return make(making, { id: 'paid', label, operation: 'least', clause }, moves.paid, [base, figures.most]);
}

function lapsedFigure(making: Making, balance: Figure, paid: Figure): Figure {
  const { rule, moves } = making;
  const clause = rule.close?.clause ?? rule.clause;
  const words = { id: 'dropped', label: 'At the close', operation: 'difference', clause } as const;
  const dropped = moves.dropped === 0 ? [] : [make(making, words, moves.dropped, [balance, paid])];
  const outlived = moves.outlived === 0 ? [] : [outlivedFigure(making)];
  const label = rule.unit !== 'money' ? 'Units lapsed' : 'Lapsed';
  const sum = { id: 'lapsed', label, operation: 'sum', clause } as const;
  return make(making, sum, moves.dropped + moves.outlived, [...outlived, ...dropped]);
}

function paymentOf(rule: LedgerRule, paid: Figure, rateOf: LedgerFigures['rate']): SurplusPayment | null {
  const { payment } = rule;
  if (payment === undefined || paid.numerator === 0) return null;
  const rate = rateOf === null ? null : rateOf();
  return {
    units: paid,
    rate: rate?.text ?? null,
    clause: rate === null || rate.clause === '' ? payment.clause : rate.clause,
    label: payment.label,
    inBill: payment.inBill,
    ...(payment.rounding === undefined ? {} : { rounding: payment.rounding }),
  };
}

/**
 * Carry a ledger through a period and write its line, every figure with what it follows from.
 *
 * @param rule     of the ledger
 * @param input    its state, and what the period leaves of it and adds
 * @param figures  the same as figures
 */
export function ledgerEntry(rule: LedgerRule, input: LedgerInput, figures: LedgerFigures): LedgerEntry {
  const moves = moveLedger(rule, input);
  const making = { rule, moves, denominator: input.state.denominator };
  const opening = openingFigure(rule, input.state);
  const { clause } = rule;
  const used = make(making, { id: 'used', label: 'Used', operation: 'difference', clause }, moves.used, [
    opening,
    figures.keeps,
  ]);
  const sum = input.keeps + input.adds;
  const earned = { id: 'earned', label: 'Left of it, and added', operation: 'sum', clause } as const;
  const both = make(making, earned, sum, [figures.keeps, figures.adds]);
  const life = { id: 'alive', label: 'Still alive', operation: 'difference', clause } as const;
  const balance =
    moves.outlived === 0 ? both : make(making, life, sum - moves.outlived, [both, outlivedFigure(making)]);
  const paid = paidFigure(making, balance, input, figures);
  const lapsed = lapsedFigure(making, balance, paid);
  const carried = {
    id: 'closing',
    label: `${rule.label}, carried forward`,
    operation: 'difference',
    clause,
  } as const;
  return {
    id: rule.id,
    label: rule.label,
    unit: rule.unit,
    opening,
    added: figures.adds,
    used,
    paid,
    lapsed,
    closing: make(making, carried, moves.closing, [both, paid, lapsed]),
    payment: paymentOf(rule, paid, figures.rate),
    isClosed: moves.isClosed,
    next: moves.next,
  };
}
