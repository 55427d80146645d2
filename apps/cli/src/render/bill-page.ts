import { type Book, type BookMonth, type DayNumber, type Figure, type PassbookEntry } from '@unitbook/engine';
import { chargesLines, type ChargesStyle } from './charges.ts';
import { periodWords } from './day-words.ts';
import { ledgersLines } from './ledgers.ts';
import type { PageNotation } from './notation.ts';
import { readingLines } from './reading-lines.ts';
import { useLines } from './use-lines.ts';
import { atLeft, atRight, PAGE_WIDTH, wrapIndented } from './text.ts';

/** From units taken to units billed, and what becomes of the credit. */
function settlementLines(entry: PassbookEntry, notation: PageNotation): readonly string[] {
  const { setOff, creditUsed } = entry;
  // Watt-hours, all of them: every quantity of the passbook has the same denominator.
  const minus = (wattHours: number): string =>
    notation.units({ numerator: 0 - wattHours, denominator: setOff.denominator });
  const ofCredit = creditUsed.numerator as number;
  const ofPeriod = (setOff.numerator as number) - ofCredit;
  const row = (label: string, amount: string): string => `  ${atLeft(label, 42)}${atRight(amount, 10)}`;
  const moves = (
    [
      ['paid', entry.paid],
      ['lapsed', entry.lapsed],
    ] as const
  )
    .filter(([, figure]) => figure.numerator !== 0)
    .map(([word, figure]) => ` − ${notation.units(figure)} ${word}`);
  const credit =
    `Credit: ${notation.units(entry.opening)} brought forward + ${notation.units(entry.exported)} given − ` +
    `${notation.units(setOff)} set off${moves.join('')} = ${notation.units(entry.closing)} carried forward`;
  return [
    row('Units taken from the grid', notation.units(entry.imported)),
    row('Set off: units given in these days', minus(ofPeriod)),
    row('Set off: credit brought forward', minus(ofCredit)),
    `${' '.repeat(46)}--------`,
    row('Units billed', notation.units(entry.billed)),
    ...wrapIndented(credit, '  ', PAGE_WIDTH),
  ];
}

/** How units were settled, by the passbook or by ledgers, and how the house used them. */
function settledLines(month: BookMonth, { account, tariff }: BillOf, style: ChargesStyle): readonly string[] {
  const { passbook } = month;
  const use = useLines(month, account, style.notation);
  if (passbook !== null) return [...settlementLines(passbook, style.notation), ...use];
  const ledgers = ledgersLines(month, tariff, style);
  return ledgers.length > 0 && use.length > 0 ? [...ledgers, '', ...use] : [...ledgers, ...use];
}

function savingLines(month: BookMonth, style: ChargesStyle): readonly string[] {
  const { withoutSolar, savings } = month;
  if (withoutSolar === null || savings === null) {
    return wrapIndented(
      'What solar saved cannot be said: how much the house used is not known.',
      '  ',
      PAGE_WIDTH,
    );
  }
  const { amount } = style.notation;
  const row = (label: string, figure: Figure): string =>
    `  ${atLeft(label, 52)}${atRight(amount(figure), PAGE_WIDTH - 54)}`;
  return [
    ...chargesLines(withoutSolar, 'Without solar', style),
    '',
    row('SAVED BY SOLAR', savings.saving),
    row('  by using units straight from the roof', savings.fromSelfConsumption),
    row('  by giving units to the grid', savings.fromExport),
  ];
}

/** Whose bill it is, and what is missing of its period, in words, by the first day. */
type BillOf = Pick<Book, 'account' | 'tariff'> & { readonly doubts?: ReadonlyMap<DayNumber, string> };

/**
 * One bill in full: readings, units, charges, payable, the bill without solar, what was saved.
 *
 * @param month   of the book
 * @param number  of the bill in the book, from 1
 * @param of      whose account and tariff it is under
 */
export function billPage(
  month: BookMonth,
  number: number,
  of: BillOf,
  style: ChargesStyle,
): readonly string[] {
  const { energy, bill } = month;
  const doubt = of.doubts?.get(energy.period.from) ?? '';
  const { notation } = style;
  const estimated = energy.isEstimated ? ', from an estimated reading' : '';
  return [
    `BILL ${String(number)}   ${periodWords(energy.period)}   ${String(energy.days)} days${estimated}`,
    '-'.repeat(PAGE_WIDTH),
    ...(doubt === '' ? [] : [...wrapIndented(doubt, '  ', PAGE_WIDTH), '']),
    ...readingLines(month, of.account, notation),
    '',
    ...settledLines(month, of, style),
    '',
    ...chargesLines(bill, 'Charges', style),
    '',
    ...savingLines(month, style),
  ];
}
