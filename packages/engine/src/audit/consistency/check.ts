import type { Finding, Path, Quotient } from '../../quantity/index.ts';
import { registersOf, type Account } from '../../readings/index.ts';
import { FIGURE } from '../figure-names.ts';
import { checkFinding, type CheckFindingCode } from '../findings.ts';
import type { PrintedBill } from '../printed.ts';
import { compare, exactFigure, minus, NONE, ONE, times, type Exact } from './exact.ts';

/** What a check of consistency looks at: a bill, and whatever else is known. */
export interface ConsistencyTerms {
  readonly bill: PrintedBill;
  /** The bill printed before it; null: it is the first that is known. */
  readonly before: PrintedBill | null;
  /** null: nothing is known of the account. */
  readonly account: Account | null;
}

/** A check that needs no tariff: whether what is printed can be true at all. */
export interface ConsistencyCheck {
  /** Short and stable, such as "lines-sum-to-total". */
  readonly id: string;
  /** What has to hold, in a few words. */
  readonly holds: string;
  /** What is to be said where it does not; none where it holds, or cannot be told. */
  readonly find: (terms: ConsistencyTerms) => readonly Finding[];
}

/**
 * A finding about a place of a printed bill.
 *
 * @param path  inside the bill
 */
export function atBill(
  { path: before }: PrintedBill,
  path: Path,
  code: CheckFindingCode,
  values: Readonly<Record<string, string>>,
): Finding {
  return checkFinding(code, { path: [...before, ...path] }, values);
}

/** A printed figure as an exact value; undefined where the bill does not print it. */
export function figureOf({ figures }: PrintedBill, name: string): Exact | undefined {
  return exactFigure(figures.get(name));
}

/** The multiplying factor of a register: as printed of the grid meter, or of the account; 1 where nobody says. */
export function factorOf({ bill, account }: ConsistencyTerms, register: string): Exact {
  const registers = account === null ? [] : registersOf(account);
  const own: Quotient | undefined = registers.find(({ key }) => key === register)?.factor;
  const printed = register === 'generation' ? undefined : figureOf(bill, 'factor');
  return printed ?? exactFigure(own) ?? ONE;
}

/** How far a register advanced by the printed readings, before its factor; undefined where one is missing. */
export function advanceOf({ bill }: ConsistencyTerms, register: string): Exact | undefined {
  const previous = figureOf(bill, FIGURE.reading(register, 'previous'));
  const present = figureOf(bill, FIGURE.reading(register, 'present'));
  return previous === undefined || present === undefined ? undefined : minus(present, previous);
}

/** Units by the bill itself: as printed, or else by its readings; undefined where it has neither. */
export function unitsOf(terms: ConsistencyTerms, name: string): Exact | undefined {
  const printed = figureOf(terms.bill, FIGURE.units(name));
  if (printed !== undefined) return printed;
  const advance = advanceOf(terms, name);
  // A register that stands lower than before has passed its full scale, or is asked about itself.
  if (advance === undefined || compare(advance, NONE) < 0) return undefined;
  return times(advance, factorOf(terms, name));
}

/** Where a bill prints units, or else the reading that they follow from. */
export function unitsPath({ document }: PrintedBill, name: string): Path {
  return document.units?.[name] === undefined ? ['readings', name, 'present'] : ['units', name];
}
