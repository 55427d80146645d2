import { describe, expect, it } from 'vitest';
import { readTableLayout } from './check-layout.ts';
import { layoutKey } from './layout-key.ts';

const DOCUMENT = {
  format: 'unitbook-columns-1',
  header: ['time', 'import'],
  holds: 'intervals',
  delimiter: ',',
  decimalMark: '.',
  grouping: '',
  dateOrder: 'year-month-day',
  clock: '+05:30',
  label: 'end',
  minutes: '1440',
  columns: [{ is: 'date' }, { is: 'import', rate: '1', unit: 'kWh' }],
  confirmed: true,
};

const read = (parts: object): ReturnType<typeof readTableLayout> =>
  readTableLayout(JSON.stringify({ ...DOCUMENT, ...parts }));

describe('a layout document', () => {
  it('is read as it stands', () => {
    expect(read({})).toEqual({ value: DOCUMENT, findings: [] });
  });

  it.each([['local'], ['utc'], ['in-text'], ['-03:30'], ['+14:00']])('has the clock %s', (clock) => {
    expect(read({ clock }).value?.clock).toBe(clock);
  });

  it.each([
    [{ confirmed: false }, 'document/wrong-value'],
    [{ confirmed: undefined }, 'document/missing-key'],
    [{ clock: '+5:30' }, 'document/wrong-value'],
    [{ clock: '+15:00' }, 'document/wrong-value'],
    [{ minutes: '7' }, 'document/wrong-value'],
    [{ minutes: 15 }, 'document/wrong-value'],
    [{ delimiter: ':' }, 'document/wrong-value'],
    [{ colour: 'red' }, 'document/unknown-key'],
    [{ columns: [{ is: 'date' }, { is: 'import' }] }, 'document/missing-key'],
    [{ columns: [{ is: 'date', unit: 'kWh' }, DOCUMENT.columns[1]] }, 'document/unknown-key'],
    [{ columns: [{ is: 'day' }, DOCUMENT.columns[1]] }, 'document/wrong-value'],
    [{ header: [], columns: [] }, 'document/wrong-value'],
  ])('is refused with %j: %s', (parts, code) => {
    const { value, findings } = read(parts);
    expect(value).toBeNull();
    expect(findings.map((finding) => finding.code)).toContain(code);
  });

  it('tells all that is wrong at once, in the order of the file', () => {
    const { value, findings } = read({ header: ['time'], grouping: '.', zone: 'nowhere', minutes: '15' });
    expect(value).toBeNull();
    expect(findings.map(({ code }) => code)).toEqual([
      'table-layout/same-marks',
      'table-layout/time-needed',
      'table-layout/column-count',
      'table-layout/zone',
    ]);
  });

  it('is no text but JSON', () => {
    expect(readTableLayout('time,import').value).toBeNull();
  });
});

describe('what a layout is remembered by', () => {
  it('is the same for names in another case and with other spaces', () => {
    expect(layoutKey(['\ufeffTime', ' IMPORT\u00a0 kWh ', '', ''])).toBe(layoutKey(['time', 'import kWh']));
  });

  it.each([
    [
      ['a', 'b'],
      ['b', 'a'],
    ],
    [['a,b'], ['a', 'b']],
    [['', ''], ['']],
    [
      ['a', '', 'b'],
      ['a', 'b'],
    ],
  ])('is not the same for %j and %j', (one, other) => {
    expect(layoutKey(one)).not.toBe(layoutKey(other));
  });
});
