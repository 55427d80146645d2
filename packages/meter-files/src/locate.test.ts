import { readingFinding } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { locateInCsv } from './locate.ts';
import { readRegisterCsv } from './read-register-csv.ts';

const { source } = readRegisterCsv(
  [
    'date;export;import;printed_days',
    '2025-04-01;1;2;',
    'bad;;;;;;;x',
    '"2025-05-01";"a ""quoted""',
    'cell";=A1;x',
    '2025-06-01;5;6;7',
  ].join('\r\n'),
);

const at = (...path: (string | number)[]) =>
  locateInCsv(source, readingFinding('reading/formula', { path: ['readings', ...path] }, { value: '' }))
    .position;

describe('locateInCsv', () => {
  it('finds the cell of a register, whatever its column', () => {
    expect(at(0, 'import')).toEqual({ line: 2, column: 14 });
    expect(at(0, 'export')).toEqual({ line: 2, column: 12 });
  });

  it('counts lines within quoted cells and over rows that were left out', () => {
    expect(at(1, 'export')).toEqual({ line: 4, column: 14 });
    expect(at(1, 'import')).toEqual({ line: 5, column: 7 });
    expect(at(2, 'printedDays')).toEqual({ line: 6, column: 16 });
  });

  it('stands at the row for what has no cell, and at the file for what has no row', () => {
    expect(at(2, 'generation')).toEqual({ line: 6, column: 1 });
    expect(at(2)).toEqual({ line: 6, column: 1 });
    expect(at()).toEqual({ line: 1, column: 1 });
  });

  it('leaves alone what is not about readings, or stands somewhere already', () => {
    const other = readingFinding('reading/none', { path: ['versions'] });
    expect(locateInCsv(source, other)).toBe(other);
    const placed = { ...other, path: ['readings', 0], position: { line: 9, column: 9 } };
    expect(locateInCsv(source, placed)).toBe(placed);
    expect(locateInCsv(null, other)).toBe(other);
  });
});
