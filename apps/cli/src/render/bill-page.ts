import {
  exactText,
  quotientText,
  type Account,
  type Book,
  type BookMonth,
  type EnergyPeriod,
  type Figure,
  type PassbookEntry,
  type RegisterId,
  type Tariff,
} from '@unitbook/engine';
import { chargesLines, type ChargesStyle } from './charges.ts';
import { dayWords, periodWords } from './day-words.ts';
import { ledgersLines } from './ledgers.ts';
import type { PageNotation } from './notation.ts';
import { renderTable, type Column } from './table.ts';
import { atLeft, atRight, PAGE_WIDTH, wrapIndented } from './text.ts';

const REGISTER_WORDS: Readonly<Record<RegisterId, string>> = {
  import: 'Import',
  export: 'Export',
  generation: 'Generation',
};
const RIGHT = 'right' as const;

/** A figure by its id among everything that another follows from. */
function findFigure(figure: Figure, id: string): Figure | null {
  if (figure.id === id) return figure;
  for (const input of figure.inputs) {
    const found = findFigure(input, id);
    if (found !== null) return found;
  }
  return null;
}

/** What a register showed, with the decimals the meter has. */
function shown(
  energy: Figure,
  end: 'present' | 'previous',
  account: Account,
  notation: PageNotation,
): string {
  const id = energy.id as RegisterId;
  const figure = findFigure(energy, `${id}-${end}`);
  if (figure === null) return '';
  const [whole = '', decimals = ''] = exactText(figure.numerator, figure.denominator).split('.');
  const places = account.registers[id]?.decimals ?? 0;
  return notation.number(places === 0 ? whole : `${whole}.${decimals.padEnd(places, '0')}`);
}

function readingLines(energy: EnergyPeriod, account: Account, notation: PageNotation): readonly string[] {
  const columns: readonly Column[] = [
    { heading: ['  Register  '], side: 'left' },
    { heading: [dayWords(energy.period.from)], side: RIGHT },
    { heading: [dayWords(energy.period.to)], side: RIGHT },
    { heading: ['    Units'], side: RIGHT },
  ];
  const figures = [energy.import, energy.export, energy.generation].filter((figure) => figure !== null);
  const body = figures.map((figure) => [
    `  ${REGISTER_WORDS[figure.id as RegisterId]}`,
    shown(figure, 'previous', account, notation),
    shown(figure, 'present', account, notation),
    notation.units(figure),
  ]);
  return renderTable(columns, { body }).filter((line) => !line.startsWith('---'));
}

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

/** What the house used and where it came from. */
function useLines(month: BookMonth, notation: PageNotation): readonly string[] {
  const { generation, selfConsumption, totalUse } = month.energy;
  const { specificYield } = month.ratios;
  if (generation === null || selfConsumption === null || totalUse === null) return [];
  const perPeak =
    specificYield === null
      ? ''
      : `, ${notation.number(quotientText(specificYield.numerator, specificYield.denominator, 1))} per kWp and day`;
  const text =
    `The house used ${notation.units(totalUse)} units: ${notation.units(selfConsumption)} straight from the roof, ` +
    `${notation.units(month.energy.import)} from the grid. ` +
    `The plant made ${notation.units(generation)}${perPeak}.`;
  return wrapIndented(text, '  ', PAGE_WIDTH);
}

/** How units were settled, by the passbook or by ledgers, and how the house used them. */
function settledLines(month: BookMonth, tariff: Tariff, style: ChargesStyle): readonly string[] {
  const { passbook } = month;
  const use = useLines(month, style.notation);
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

/**
 * One bill in full: readings, units, charges, payable, the bill without solar, what was saved.
 *
 * @param month   of the book
 * @param number  of the bill in the book, from 1
 * @param book    whose account and tariff it is under
 */
export function billPage(
  month: BookMonth,
  number: number,
  { account, tariff }: Pick<Book, 'account' | 'tariff'>,
  style: ChargesStyle,
): readonly string[] {
  const { energy, bill } = month;
  const { notation } = style;
  const estimated = energy.isEstimated ? ', from an estimated reading' : '';
  return [
    `BILL ${String(number)}   ${periodWords(energy.period)}   ${String(energy.days)} days${estimated}`,
    '-'.repeat(PAGE_WIDTH),
    ...readingLines(energy, account, notation),
    '',
    ...settledLines(month, tariff, style),
    '',
    ...chargesLines(bill, 'Charges', style),
    '',
    ...savingLines(month, style),
  ];
}
