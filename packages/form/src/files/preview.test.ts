import type { TableLayout } from '@unitbook/meter-files';
import { expect, it } from 'vitest';
import { writingFor } from '../writing/writing.ts';
import { without } from '../household/without.ts';
import { firstLines, previewOf } from './preview.ts';

const writing = writingFor('en-IN', 'INR');
const LAYOUT: TableLayout = {
  format: 'unitbook-columns-1',
  header: ['Zeit', 'Bezug'],
  holds: 'intervals',
  delimiter: ';',
  decimalMark: ',',
  grouping: '',
  dateOrder: 'day-month-year',
  clock: 'local',
  label: 'end',
  minutes: '15',
  columns: [{ is: 'date-time' }, { is: 'import', unit: 'kWh' }],
  confirmed: true,
};
const HEAD = 'Zeit;Bezug\n1.5.2025 0:15;0,250\n1.5.2025 0:30;\n1.5.2025 0:45;x\n1.5.2025 1:0';

it('shows intervals with their two ends, what is missing, and what cannot be read', () => {
  const { columns, rows, clock, findings } = previewOf(LAYOUT, HEAD, writing);
  expect(columns).toEqual([{ name: 'Bezug', words: 'taken from the grid' }]);
  expect(rows).toEqual([
    { moment: '1 May 2025, 00:00 to 00:15', values: ['0.25'] },
    { moment: '1 May 2025, 00:15 to 00:30', values: ['missing'] },
    { moment: '1 May 2025, 00:30 to 00:45', values: ['missing'] },
  ]);
  expect(clock).toEqual({ offset: null });
  expect(findings.map(({ position }) => position?.line)).toContain(4);
});

it('shows readings on their days, the first five of them', () => {
  const rest = without(LAYOUT, 'label', 'minutes');
  const head = `Zeit;Bezug\n${[6, 5, 4, 3, 2, 1].map((day) => `${String(day)}.5.2025;1.00${String(day)},5\n`).join('')}`;
  const layout: TableLayout = {
    ...rest,
    holds: 'registers',
    grouping: '.',
    columns: [{ is: 'date' }, { is: 'import', rate: '1', unit: 'kWh' }],
  };
  const { columns, rows } = previewOf(layout, head, writing);
  expect(columns).toEqual([{ name: 'Bezug', words: 'taken from the grid, rate 1' }]);
  expect(rows.map(({ moment, values }) => [moment, ...values])).toEqual([
    ['1 May 2025', '1,001.5'],
    ['2 May 2025', '1,002.5'],
    ['3 May 2025', '1,003.5'],
    ['4 May 2025', '1,004.5'],
    ['5 May 2025', '1,005.5'],
  ]);
});

it('takes the first lines as they stand', () => {
  expect(firstLines('a\r\nb\rc\nd', 3)).toEqual(['a', 'b', 'c']);
});
