import {
  addQuotients,
  decimalPlaces,
  decimalToWhole,
  parseDay,
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
    const most = PLACES[kind];
    if (decimalPlaces(value) > most || value.replace(/\D/g, '').length > MOST_DIGITS) {
      const values = { value, what: String(path.at(-1)), places: String(most) };
      this.findings.push(checkFinding('check/number-too-fine', { path: [...this.path, ...path] }, values));
      return;
    }
    const own = quotientOf(value);
    const before = this.figures.get(name);
    this.figures.set(name, before === undefined ? own : addQuotients([before, own]));
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
  const { figures, findings: ofNumbers } = collect(document, path);
  const findings = [...dayFindings(document, path), ...ofNumbers];
  const [from, to] = [parseDay(document.from), parseDay(document.to)];
  if (from === null || to === null) return { value: null, findings };
  if (to <= from) {
    const values = { from: document.from, to: document.to };
    findings.push(checkFinding('check/ends-before-it-begins', { path: [...path, 'to'] }, values));
  }
  if (findings.length > 0) return { value: null, findings };
  const { paid, status = null } = document;
  const paidOn = paid === undefined ? null : parseDay(paid.on);
  const value: PrintedBill = {
    document,
    period: { from, to },
    figures,
    status,
    paid: paid === undefined || paidOn === null ? null : { on: paidOn, amount: quotientOf(paid.amount) },
    path,
  };
  return { value, findings };
}
