import { wholeToDecimal, type Account, type Book } from '@unitbook/engine';
import { dayWords } from './day-words.ts';
import { headEntry } from './head-entry.ts';
import type { PageNotation } from './notation.ts';
import { PAGE_WIDTH, plainText } from './text.ts';

function power(watts: number, notation: PageNotation): string {
  return notation.number(wholeToDecimal(watts, 3).replace(/\.?0+$/, ''));
}

/** The number on a meter; people leave it out. */
function serialText(serial: string): string {
  return serial.trim() === '' ? 'meter' : serial;
}

/** The meters of one place as they followed each other: "PB-1, from 16 Apr 2025 PB-2". */
function seriesText(account: Account, meter: 'grid' | 'generation'): string {
  const serials = account.spans.map(({ from, serials: own }) => ({ from, serial: own[meter] ?? '' }));
  return serials
    .filter(({ serial }, index) => index === 0 || serial !== serials[index - 1]?.serial)
    .map(({ from, serial }, index) => {
      const text = serialText(serial);
      return index === 0 || from === null ? text : `from ${dayWords(from)} ${text}`;
    })
    .join(', ');
}

/**
 * The head of a page: whose book it is, under which tariff, from which readings or intervals.
 *
 * @param book            any
 * @param label, words    what it was made of, and where that comes from
 */
export function pageHead(
  book: Book,
  [label, words]: readonly [label: string, words: string],
  notation: PageNotation,
): readonly string[] {
  const { account, tariff } = book;
  const { id, name, meters } = account.document;
  const made =
    meters.generation === undefined
      ? 'no generation meter'
      : `generation ${seriesText(account, 'generation')}`;
  const { document } = tariff;
  const known = id === '' ? 'A household' : `Account ${id}`;
  const title = name === undefined || name.trim() === '' ? known : name;
  const invented = document.invented === true ? ' (an invented example)' : '';
  return [
    `UNITBOOK   ${plainText(title)}`,
    '='.repeat(PAGE_WIDTH),
    ...headEntry(
      'Account',
      `${id === '' ? 'without a number' : id}; sanctioned load ${power(account.sanctionedLoad, notation)} kW, ` +
        `solar plant ${power(account.plantCapacity, notation)} kWp`,
    ),
    ...headEntry('Meters', `grid ${seriesText(account, 'grid')}, ${made}`),
    ...headEntry('Tariff', `${document.name}; ${document.supplier}${invented}`),
    ...headEntry(label, words),
    ...headEntry('Amounts', `in ${document.currency}; 1 unit is 1 kWh`),
  ];
}
