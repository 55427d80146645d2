import type { BookMonth, Figure, PassbookEntry } from '@unitbook/engine';
import { periodWords } from './day-words.ts';
import type { PageNotation } from './notation.ts';
import { renderTable, type Column } from './table.ts';

const COLUMNS: readonly (readonly [readonly string[], (entry: PassbookEntry) => Figure])[] = [
  [['Brought', 'forward'], (entry) => entry.opening],
  [['Given'], (entry) => entry.exported],
  [['Set off'], (entry) => entry.setOff],
  [['Paid'], (entry) => entry.paid],
  [['Lapsed'], (entry) => entry.lapsed],
  [['Carried', 'forward'], (entry) => entry.closing],
  [['Taken'], (entry) => entry.imported],
  [['Billed'], (entry) => entry.billed],
];

/**
 * The passbook of units: one row for each period.
 *
 * @param months  of the book, all of them
 */
export function passbookLines(months: readonly BookMonth[], notation: PageNotation): readonly string[] {
  const columns: readonly Column[] = [
    { heading: ['Period'], side: 'right' },
    ...COLUMNS.map(([heading]): Column => ({ heading, side: 'right' })),
  ];
  const body = months.map(({ energy, passbook }) => [
    periodWords(energy.period),
    ...COLUMNS.map(([, of]) => notation.units(of(passbook))),
  ]);
  return [
    'PASSBOOK OF UNITS',
    ...renderTable(columns, { body }),
    'Brought forward + given = set off + paid + lapsed + carried forward.',
    'Taken = set off + billed.',
  ];
}
