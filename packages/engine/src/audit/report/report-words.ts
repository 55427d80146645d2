import {
  dayText,
  figureValue,
  givenFigure,
  type DayNumber,
  type Figure,
  type FigureUnit,
  type Notation,
  type Period,
  type Quotient,
  signOf,
} from '../../quantity/index.ts';
import type { BillReference, HeldEvidence } from './bill-finding.ts';
import type { ClauseReference } from './source-of-clause.ts';

/** How a surface writes a report: numbers and money, and days. */
export interface ReportNotation extends Notation {
  /** A day, from "yyyy-mm-dd". */
  readonly day: (text: string) => string;
}

/** A day as the notation writes it. */
export const dayWords = (day: DayNumber, { day: written }: ReportNotation): string => written(dayText(day));

/** An exact value with its unit. */
export function valueWords(
  { numerator, denominator }: Quotient,
  unit: FigureUnit,
  notation: Notation,
): string {
  return figureValue(givenFigure({ id: '', label: '', unit, numerator, denominator, clause: '' }), notation);
}

/** An amount of money. */
export const moneyWords = (value: Quotient, notation: Notation): string =>
  valueWords(value, 'money', notation);

/** An amount of money without its sign. */
export function sizeWords(value: Quotient, notation: Notation): string {
  const { numerator, denominator } = value;
  return moneyWords(signOf(value) < 0 ? { numerator: -numerator, denominator } : value, notation);
}

/** "from 1 May 2025 to 1 June 2025" */
export const periodWords = ({ from, to }: Period, notation: ReportNotation): string =>
  `from ${dayWords(from, notation)} to ${dayWords(to, notation)}`;

/** "bill 4711 from 1 May 2025 to 1 June 2025" */
export function billWords({ number, period }: BillReference, notation: ReportNotation): string {
  return `bill ${number === null ? '' : `${number} `}${periodWords(period, notation)}`;
}

/** "NMR-2021 r. 7.2 (Net Metering Regulations 2021, Commission, 2021; in force from 1 April 2021)" */
export function clauseWords({ clause, source, from }: ClauseReference, notation: ReportNotation): string {
  const own = source === null ? '' : `${source.title}, ${source.publisher}, ${source.year}`;
  const since = from === null ? '' : `in force from ${notation.day(from)}`;
  const told = [own, since].filter((text) => text !== '').join('; ');
  return told === '' ? clause : `${clause} (${told})`;
}

const labelled = (figure: Figure, notation: ReportNotation): string =>
  `${figure.label.toLowerCase()} ${figureValue(figure, notation)}`;

/** What is held, in words that can stand in a list of enclosures. */
export function heldWords(held: HeldEvidence, notation: ReportNotation): string {
  switch (held.kind) {
    case 'bill':
      return capital(billWords(held.bill, notation));
    case 'bill-before': {
      const closing = [...held.closing, ...held.readings]
        .map((figure) => labelled(figure, notation))
        .join(', ');
      return `The bill before, ${periodWords(held.bill.period, notation)}${closing === '' ? '' : `: ${closing}`}`;
    }
    case 'own-readings':
      return `Own readings of ${held.days.map((day) => dayWords(day, notation)).join(' and ')}`;
    case 'payment': {
      const of = held.of === 'bill' ? 'this bill' : 'the bill before';
      return `Payment of ${figureValue(held.amount, notation)} for ${of} on ${dayWords(held.on, notation)}`;
    }
    case 'stated':
      return capital(held.what);
  }
}

/** A text with a capital letter at its start. */
export const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;

/**
 * A sentence to go on with inside another: a small letter at its start, unless it begins with a name in capitals.
 *
 * @example
 * insideSentence('Nothing is brought forward') //=> "nothing is brought forward"
 */
export function insideSentence(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? `${text.slice(0, 1).toLowerCase()}${text.slice(1)}` : text;
}
