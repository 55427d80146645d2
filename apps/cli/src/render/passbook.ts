import type { BookMonth, Figure, PassbookEntry } from '@unitbook/engine';
import { periodWords } from './day-words.ts';
import { ledgerTables } from './ledgers.ts';
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

/** The months that have a passbook, one row for each. */
function unitsTable(months: readonly BookMonth[], notation: PageNotation): readonly string[] {
  const body = months.flatMap(({ energy, passbook }) =>
    passbook === null
      ? []
      : [[periodWords(energy.period), ...COLUMNS.map(([, of]) => notation.units(of(passbook)))]],
  );
  if (body.length === 0) return [];
  const columns: readonly Column[] = [
    { heading: ['Period'], side: 'right' },
    ...COLUMNS.map(([heading]): Column => ({ heading, side: 'right' })),
  ];
  return [
    'PASSBOOK OF UNITS',
    ...renderTable(columns, { body }),
    'Brought forward + given = set off + paid + lapsed + carried forward.',
    'Taken = set off + billed.',
  ];
}

/**
 * The passbook of units and the ledgers of a book: one row for each period.
 *
 * @param months  of the book, all of them
 */
export function passbookLines(months: readonly BookMonth[], notation: PageNotation): readonly string[] {
  const units = unitsTable(months, notation);
  const ledgers = ledgerTables(months, notation);
  return units.length > 0 && ledgers.length > 0 ? [...units, '', ...ledgers] : [...units, ...ledgers];
}
