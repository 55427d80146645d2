import { wholeToDecimal, type Book } from '@unitbook/engine';
import type { PageNotation } from './notation.ts';
import { atLeft, PAGE_WIDTH, plainText, wrap } from './text.ts';

const LABEL_WIDTH = 11;

function entry(label: string, text: string): readonly string[] {
  return wrap(plainText(text), PAGE_WIDTH - LABEL_WIDTH).map(
    (line, index) => atLeft(index === 0 ? label : '', LABEL_WIDTH) + line,
  );
}

function power(watts: number, notation: PageNotation): string {
  return notation.number(wholeToDecimal(watts, 3).replace(/\.?0+$/, ''));
}

/** The number on a meter; people leave it out. */
function serialText(serial: string): string {
  return serial.trim() === '' ? 'meter' : serial;
}

/**
 * The head of a page: whose book it is, under which tariff, from which readings.
 *
 * @param book      any
 * @param readings  where they come from, in words
 */
export function pageHead(book: Book, readings: string, notation: PageNotation): readonly string[] {
  const { account, tariff } = book;
  const { id, name, meters } = account.document;
  const made =
    meters.generation === undefined
      ? 'no generation meter'
      : `generation ${serialText(meters.generation.serial)}`;
  const { document } = tariff;
  const known = id === '' ? 'A household' : `Account ${id}`;
  const title = name === undefined || name.trim() === '' ? known : name;
  const invented = document.invented === true ? ' (an invented example)' : '';
  return [
    `UNITBOOK   ${plainText(title)}`,
    '='.repeat(PAGE_WIDTH),
    ...entry(
      'Account',
      `${id === '' ? 'without a number' : id}; sanctioned load ${power(account.sanctionedLoad, notation)} kW, ` +
        `solar plant ${power(account.plantCapacity, notation)} kWp`,
    ),
    ...entry('Meters', `grid ${serialText(meters.grid.serial)}, ${made}`),
    ...entry('Tariff', `${document.name}; ${document.supplier}${invented}`),
    ...entry('Readings', readings),
    ...entry('Amounts', `in ${document.currency}; 1 unit is 1 kWh`),
  ];
}
