import {
  exactText,
  figureLabel,
  figureUnit,
  type ComparedFigure,
  type Quotient,
  type TariffDocument,
} from '@unitbook/engine';
import type { PageNotation } from './notation.ts';
import { moneyFigure } from './sum-figures.ts';
import { renderTable, type Column } from './table.ts';

/**
 * Writes figures of bills: money to the coin, units and readings as they are.
 *
 * @param name    see `FIGURE` of the engine
 * @param tariff  says which of its ledgers hold money
 */
export function figureText(
  name: string,
  value: Quotient,
  tariff: TariffDocument,
  notation: PageNotation,
): string {
  if (figureUnit(name, tariff) === 'money') return notation.amount(moneyFigure(value));
  return notation.number(exactText(value.numerator, value.denominator));
}

/** An amount with its sign. */
export function signedAmount(value: Quotient, notation: PageNotation): string {
  const text = notation.amount(moneyFigure(value));
  return value.numerator > 0 ? `+${text}` : text;
}

const right = (...heading: readonly string[]): Column => ({ heading, side: 'right' });

function differenceText(
  { name, difference, agrees }: ComparedFigure,
  tariff: TariffDocument,
  notation: PageNotation,
): string {
  if (difference === null) return 'not known';
  if (agrees && difference.numerator === 0) return '';
  const text = figureText(name, difference, tariff, notation);
  return difference.numerator > 0 ? `+${text}` : text;
}

/** Printed figures beside the right ones, in the order of paper. */
export function comparedRows(
  compared: readonly ComparedFigure[],
  tariff: TariffDocument,
  notation: PageNotation,
): readonly string[] {
  const columns: readonly Column[] = [
    { heading: ['Figure'], side: 'left' },
    right('Printed'),
    right('Right'),
    right('Differs', 'by'),
  ];
  const body = compared.map((one) => [
    figureLabel(one.name, tariff),
    figureText(one.name, one.printed, tariff, notation),
    one.computed === null ? '–' : figureText(one.name, one.computed, tariff, notation),
    differenceText(one, tariff, notation),
  ]);
  return renderTable(columns, { body });
}
