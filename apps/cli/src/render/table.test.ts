import { expect, it } from 'vitest';
import { renderTable, type Column } from './table.ts';

const COLUMNS: readonly Column[] = [
  { heading: ['Period'], side: 'left' },
  { heading: ['Without', 'solar'], side: 'right' },
];

it('sets columns as wide as their widest cell, headings at the foot of their lines', () => {
  expect(renderTable(COLUMNS, { body: [['1 May', '3,285']], foot: [['', '12,34,567']] })).toEqual([
    '          Without',
    'Period      solar',
    '-----------------',
    '1 May       3,285',
    '-----------------',
    '        12,34,567',
  ]);
});

it('moves columns closer where the page would be too narrow', () => {
  const columns = Array.from({ length: 10 }, (): Column => ({ heading: ['1234567'], side: 'right' }));
  expect(renderTable(columns, { body: [] })[0]).toBe(Array.from({ length: 10 }, () => '1234567').join(' '));
});
