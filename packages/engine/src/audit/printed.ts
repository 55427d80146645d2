import {
  addQuotients,
  decimalPlaces,
  decimalToWhole,
  NumberTooLarge,
  parseDay,
  signOf,
  type DayNumber,
  type Finding,
  type Outcome,
  type Path,
  type Period,
  type Quotient,
} from '../quantity/index.ts';
import { FIGURE } from './figure-names.ts';
import type { Figures } from './figures.ts';
import { checkFinding } from './findings.ts';
import type { PrintedBillDocument } from './printed-document.ts';

/** A printed bill that was understood. */
export interface PrintedBill {
  readonly document: PrintedBillDocument;
  readonly period: Period;
  /** Every figure it prints, in the order of paper. */
  readonly figures: Figures;
  readonly status: 'actual' | 'estimated' | null;
  readonly paid: { readonly on: DayNumber; readonly amount: Quotient } | null;
  /** Where it stands in the document, for findings. */
  readonly path: Path;
}

const PLACES = { units: 3, money: 8 } as const;
const MOST_DIGITS = 12;

/**
 * A decimal text as an exact value on the decimals that it shows, zeros too.
 *
 * @example
 * quotientOf('119.20') //=> {"numerator":11920,"denominator":100}
 */
export function quotientOf(text: string): Quotient {
  const places = text.split('.')[1]?.length ?? 0;
  return { numerator: decimalToWhole(text, places), denominator: 10 ** places };
}

/** The sum of two amounts of one charge; null where it cannot be held. */
function sumOf(before: Quotient | undefined, own: Quotient): Quotient | null {
  if (before === undefined) return own;
  try {
    return addQuotients([before, own]);
  } catch (error) {
    if (!(error instanceof NumberTooLarge)) throw error;
    return null;
  }
}

/** Collects the figures of a bill, and what is wrong with them. */
class Collected {
  readonly figures = new Map<string, Quotient>();
  readonly findings: Finding[] = [];
  private readonly path: Path;

  constructor(path: Path) {
    this.path = path;
  }

  /** Take a number in; those of lines of the same charge are added up. */
  take(name: string, value: string | undefined, kind: keyof typeof PLACES, path: Path): void {
    if (value === undefined) return;
    const own = this.read(value, kind, path);
    const sum = own === null ? null : sumOf(this.figures.get(name), own);
    if (sum !== null) this.figures.set(name, sum);
    else if (own !== null) this.tooFine(value, kind, path);
  }

  /** A number as an exact value; null where it has more digits than can be held. */
  read(value: string, kind: keyof typeof PLACES, path: Path): Quotient | null {
    if (decimalPlaces(value) <= PLACES[kind] && value.replace(/\D/g, '').length <= MOST_DIGITS)
      return quotientOf(value);
    this.tooFine(value, kind, path);
    return null;
  }

  belowZero(value: string, path: Path): void {
    this.findings.push(checkFinding('check/paid-below-zero', { path: [...this.path, ...path] }, { value }));
  }

  private tooFine(value: string, kind: keyof typeof PLACES, path: Path): void {
    const values = { value, what: String(path.at(-1)), places: String(PLACES[kind]) };
    this.findings.push(checkFinding('check/number-too-fine', { path: [...this.path, ...path] }, values));
  }

  takeAll(texts: Readonly<Record<string, string>> | undefined, key: 'units' | 'opening' | 'closing'): void {
    for (const [name, value] of Object.entries(texts ?? {})) {
      this.take(FIGURE[key](name), value, 'units', [key, name]);
    }
  }
}

function collect(document: PrintedBillDocument, path: Path): Collected {
  const collected = new Collected(path);
  const { readings = {}, lines = [] } = document;
  collected.take('days', document.days, 'units', ['days']);
  collected.take('load', document.load, 'units', ['load']);
  collected.take('factor', document.factor, 'units', ['factor']);
  for (const [register, ends] of Object.entries(readings)) {
    for (const end of ['previous', 'present'] as const)
      collected.take(FIGURE.reading(register, end), ends[end], 'units', ['readings', register, end]);
  }
  collected.takeAll(document.units, 'units');
  collected.takeAll(document.opening, 'opening');
  collected.takeAll(document.closing, 'closing');
  lines.forEach(({ charge, amount }, at) => {
    collected.take(FIGURE.line(charge), amount, 'money', ['lines', at, 'amount']);
  });
  collected.take('arrears', document.arrears, 'money', ['arrears']);
  collected.take('late-fee', document.lateFee, 'money', ['lateFee']);
  collected.take('adjustment', document.adjustment, 'money', ['adjustment']);
  collected.take('sum', document.sum, 'money', ['sum']);
  collected.take('rounding', document.rounding, 'money', ['rounding']);
  collected.take('payable', document.payable, 'money', ['payable']);
  return collected;
}

/** What was paid, and when; null where nobody says. */
function paymentOf({ paid }: PrintedBillDocument, collected: Collected): PrintedBill['paid'] {
  if (paid === undefined) return null;
  const path = ['paid', 'amount'];
  const on = parseDay(paid.on);
  const amount = collected.read(paid.amount, 'money', path);
  if (amount !== null && signOf(amount) < 0) collected.belowZero(paid.amount, path);
  return on === null || amount === null ? null : { on, amount };
}

const DAYS = ['issued', 'due', 'from', 'to'] as const;

function dayFindings(document: PrintedBillDocument, path: Path): readonly Finding[] {
  const typed: readonly (readonly [string | undefined, Path])[] = [
    ...DAYS.map((key) => [document[key], [key]] as const),
    [document.paid?.on, ['paid', 'on']],
  ];
  return typed.flatMap(([value, at]) =>
    value === undefined || parseDay(value) !== null
      ? []
      : [checkFinding('check/no-such-day', { path: [...path, ...at] }, { value })],
  );
}

/**
 * Understand a printed bill of the right form.
 *
 * @param path  of the bill in its document
 * @returns     null where its days or numbers cannot be used
 */
export function readPrintedBill(document: PrintedBillDocument, path: Path): Outcome<PrintedBill | null> {
  const collected = collect(document, path);
  const paid = paymentOf(document, collected);
  const findings = [...dayFindings(document, path), ...collected.findings];
  const [from, to] = [parseDay(document.from), parseDay(document.to)];
  if (from === null || to === null) return { value: null, findings };
  if (to <= from) {
    const values = { from: document.from, to: document.to };
    findings.push(checkFinding('check/ends-before-it-begins', { path: [...path, 'to'] }, values));
  }
  if (findings.length > 0) return { value: null, findings };
  const { status = null } = document;
  const { figures } = collected;
  return { value: { document, period: { from, to }, figures, status, paid, path }, findings };
}
