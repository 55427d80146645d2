import { describe, expect, it } from 'vitest';
import { layoutFindings } from '../check-layout.ts';
import type { DecisionSubject, TableDecision } from './decision.ts';
import { proposeTable, type TableProposal } from './propose-table.ts';

const propose = (...lines: readonly string[]): TableProposal => proposeTable(`${lines.join('\n')}\n`);

const decision = (
  { decisions }: TableProposal,
  about: DecisionSubject,
  column: number | null = null,
): TableDecision => {
  const found = decisions.find((one) => one.about === about && (column === null || one.column === column));
  if (found === undefined) throw new RangeError(`no decision about ${about}`);
  return found;
};

/** The columns as words: "import 1 kWh". */
const columnsOf = ({ layout }: TableProposal): readonly string[] =>
  layout.columns.map((column) =>
    'unit' in column
      ? [column.is, ...(column.rate === undefined ? [] : [column.rate]), column.unit].join(' ')
      : column.is,
  );

const QUARTERS = ['00:00', '00:15', '00:30', '00:45', '01:00', '01:15'];

/** A table of quarter hours of one day and some values. */
const ofDay = (date: string, ...values: readonly string[]): readonly string[] =>
  values.map((value, at) => `${date} ${QUARTERS[at] ?? ''};${value}`);

describe('a table of a German portal', () => {
  const proposal = propose(
    'Lastgang',
    'Kunde;4711',
    '',
    'Datum;Uhrzeit;Bezug HT [kWh];Bezug NT [kWh];Einspeisung [kWh];Status;Preis EUR',
    '13.05.2025;00:15;0,125;0,000;1.250,5;W;0,30',
    '13.05.2025;00:30;0,250;0,000;1.100,5;W;0,30',
    '13.05.2025;00:45;0,100;0,000;900,25;E;0,30',
    '13.05.2025;01:00;0,150;0,000;1.000,5;W;0,30',
    '13.05.2025;24:00;0,125;0,000;1.200,5;X;0,30',
  );

  it('is told column by column', () => {
    expect(columnsOf(proposal)).toEqual([
      'date',
      'time',
      'import ht kWh',
      'import nt kWh',
      'export kWh',
      'quality',
      'nothing',
    ]);
    const { columns, ...layout } = proposal.layout;
    expect(layout).toEqual({
      format: 'unitbook-columns-1',
      header: [
        'Datum',
        'Uhrzeit',
        'Bezug HT [kWh]',
        'Bezug NT [kWh]',
        'Einspeisung [kWh]',
        'Status',
        'Preis EUR',
      ],
      holds: 'intervals',
      delimiter: ';',
      decimalMark: ',',
      grouping: '.',
      dateOrder: 'day-month-year',
      clock: 'local',
      label: 'end',
      minutes: '15',
      confirmed: false,
    });
    expect(columns[5]).toEqual({ is: 'quality', words: { W: 'actual', E: 'estimated' } });
    expect(layoutFindings(proposal.layout)).toEqual([]);
    expect(proposal.findings.map(({ code }) => code)).toEqual(['table/lines-above']);
  });

  it('has evidence with its place', () => {
    expect(decision(proposal, 'decimal-mark')).toEqual({
      about: 'decimal-mark',
      column: null,
      detected: ',',
      evidence: 'decimals behind this mark: "0,125"',
      position: { line: 5, column: 18 },
      alternatives: [],
      certain: true,
    });
    expect(decision(proposal, 'date-order')).toMatchObject({
      position: { line: 5, column: 1 },
      certain: true,
    });
    expect(decision(proposal, 'label')).toMatchObject({ detected: 'end', certain: true });
    expect(decision(proposal, 'words')).toMatchObject({
      certain: false,
      evidence: 'what "X" means is not known',
    });
    expect(decision(proposal, 'lines-above')).toMatchObject({
      detected: '2',
      position: { line: 1, column: 1 },
    });
  });
});

describe('the order of a date', () => {
  const order = (...dates: readonly string[]): readonly [string, boolean, readonly string[]] => {
    const { detected, certain, alternatives } = decision(
      propose('day;import', ...dates.map((date) => `${date};1`)),
      'date-order',
    );
    return [detected, certain, alternatives];
  };

  it.each([
    [['2025-05-01', '2025-05-02'], 'year-month-day'],
    [['20250501', '20250502'], 'year-month-day'],
    [['1/5/2025', '13/5/2025'], 'day-month-year'],
    [['5/1/2025', '5/13/2025'], 'month-day-year'],
    [['1 May 2025', '2 May 2025'], 'day-month-year'],
    [['May 1 2025', 'May 2 2025'], 'month-day-year'],
  ])('of %j is certain', (dates, detected) => {
    expect(order(...dates)).toEqual([detected, true, []]);
  });

  it('cannot be told where no part is above 12', () => {
    expect(order('01/05/2025', '02/05/2025', '03/05/2025')).toEqual([
      'day-month-year',
      false,
      ['month-day-year'],
    ]);
    expect(order('05/01/2025', '05/02/2025', '05/03/2025')).toEqual([
      'month-day-year',
      false,
      ['day-month-year'],
    ]);
    expect(order('01.05.2025')).toEqual(['day-month-year', false, ['month-day-year']]);
    // 31 December 2025 and the day after, or 25 December 2031 and 26 January 2001.
    expect(order('25/12/31', '26/01/01')).toEqual(['year-month-day', false, ['day-month-year']]);
    expect(order('01/05/25')[1]).toBe(false);
  });
});

describe('the marks of numbers', () => {
  const marks = (...numbers: readonly string[]): readonly unknown[] => {
    const proposal = propose('day;import', ...numbers.map((number, at) => `2025-05-0${at + 1};${number}`));
    return [
      proposal.layout.decimalMark,
      proposal.layout.grouping,
      decision(proposal, 'decimal-mark').certain,
    ];
  };

  it.each([
    [
      ['1.5', '2.25'],
      ['.', '', true],
    ],
    [
      ['1,5', '2,25'],
      [',', '', true],
    ],
    [
      ['0.125', '0.250'],
      ['.', '', true],
    ],
    [
      ['8350.274', '8350.385'],
      ['.', '', true],
    ],
    [
      ['1,234.5', '1,234'],
      ['.', ',', true],
    ],
    [
      ['1.234,5', '1.234'],
      [',', '.', true],
    ],
    [
      ['1,234,567', '1,234'],
      ['.', ',', true],
    ],
    [
      ["1'234.5", '1.5'],
      ['.', "'", true],
    ],
    [
      ['1 234,5', '1,5'],
      [',', ' ', true],
    ],
    [
      ['1.234', '1,5'],
      [',', '.', true],
    ],
    // Three digits behind one mark are decimals or thousands.
    [
      ['1.234', '2.345'],
      ['.', '', false],
    ],
    [
      ['1,234', '2,345'],
      [',', '', false],
    ],
    [
      ['1', '2'],
      ['.', '', false],
    ],
  ])('of %j', (numbers, expected) => {
    expect(marks(...numbers)).toEqual(expected);
  });
});

describe('registers and intervals', () => {
  const held = (...values: readonly string[]): readonly [string, boolean] => {
    const dates = values.map((_, at) => `2025-05-${String(at + 1).padStart(2, '0')}`);
    const proposal = propose('day;import', ...values.map((value, at) => `${dates[at] ?? ''};${value}`));
    const { detected, certain } = decision(proposal, 'holds');
    return [detected, certain];
  };
  const growing = Array.from({ length: 12 }, (_, at) => String(1000 + at));

  it('are told by whether the numbers fall', () => {
    expect(held(...growing)).toEqual(['registers', true]);
    expect(held('5', '3', '4', '2', '6')).toEqual(['intervals', true]);
    expect(held('1', '2', '3')).toEqual(['registers', false]);
    expect(held('1', '1', '1')).toEqual(['intervals', false]);
    expect(held('9', '10')).toEqual(['registers', false]);
  });

  it('are told apart though a meter was changed once', () => {
    const anew = Array.from({ length: 16 }, (_, at) => String(at));
    // 26 steps up and one down.
    expect(held(...growing, ...anew)).toEqual(['registers', false]);
  });

  it('are told with the newest first, and for each point', () => {
    const rows = growing.flatMap((_, at) => [
      `A;2025-05-${String(20 - at)};${2000 - at}`,
      `B;2025-05-${String(20 - at)};${7000 - at}`,
    ]);
    expect(decision(propose('home;day;import', ...rows), 'holds')).toMatchObject({
      detected: 'registers',
      certain: true,
    });
  });

  it('of both kinds in one table leave one kind out', () => {
    const values = [5, 3, 4, 2, 6, 1, 7, 3, 5, 2, 4, 6];
    const rows = values.map(
      (value, at) => `2025-05-${String(at + 1).padStart(2, '0')};${1000 + 10 * at};${value};${value + 1}`,
    );
    const proposal = propose('day;import reading;import used;export', ...rows);
    expect(columnsOf(proposal)).toEqual(['date', 'nothing', 'import kWh', 'export kWh']);
    expect(decision(proposal, 'holds').certain).toBe(false);
    expect(decision(proposal, 'column', 1)).toMatchObject({ certain: false });
  });
});

describe('times', () => {
  it('have the commonest step, the label of the name and the clock in the text', () => {
    const proposal = propose(
      'Meter serial,Interval end,kWh',
      ...['00:30', '01:00', '01:30', '02:00', '05:00'].map(
        (time, at) => `12345,2025-05-13T${time}:00+02:00,0.${9 - at}`,
      ),
    );
    expect(proposal.layout).toMatchObject({ clock: 'in-text', label: 'end', minutes: '30', delimiter: ',' });
    expect(columnsOf(proposal)).toEqual(['meter', 'date-time', 'import kWh']);
    expect(decision(proposal, 'minutes')).toMatchObject({
      certain: true,
      evidence: '3 of 4 steps are so long',
    });
    expect(decision(proposal, 'column', 2)).toMatchObject({
      certain: false,
      evidence: 'it is the only column of numbers',
    });
  });

  it('begin where two columns give both ends', () => {
    const proposal = propose(
      'From;To;import',
      '2025-05-01 00:00;2025-05-01 01:00;2',
      '2025-05-01 01:00;2025-05-01 02:00;1',
    );
    expect(columnsOf(proposal)).toEqual(['date-time', 'nothing', 'import kWh']);
    expect(proposal.layout).toMatchObject({ label: 'start' });
    expect(decision(proposal, 'column', 1)).toMatchObject({ certain: false });
  });

  it('likely name the end where the first is one interval after midnight', () => {
    const rows = QUARTERS.slice(1).map((time, at) => `13/5/2025 ${time};0.${5 - (at % 3)}`);
    expect(decision(propose('time;import', ...rows), 'label')).toMatchObject({
      detected: 'end',
      certain: false,
    });
    expect(
      decision(propose('time;import', ...ofDay('13/5/2025', '2', '1', '2', '1')), 'label'),
    ).toMatchObject({ detected: 'start', certain: false });
  });

  it('can have no colon, and be of UTC by their name', () => {
    const proposal = propose(
      'Date|Time (UTC)|Export Wh',
      ...['0000', '0015', '0030', '0045'].map((time, at) => `2025-05-01|${time}|${at % 2}`),
    );
    expect(columnsOf(proposal)).toEqual(['date', 'time', 'export Wh']);
    expect(proposal.layout).toMatchObject({ clock: 'utc', minutes: '15', delimiter: '|' });
  });
});

describe('names of columns', () => {
  it('can be missing, and are then told so', () => {
    const proposal = propose(...ofDay('2025-05-01', '2', '1', '2'));
    expect(proposal.layout.header).toEqual(['', '']);
    expect(columnsOf(proposal)).toEqual(['date-time', 'import kWh']);
    expect(proposal.findings.map(({ code }) => code)).toEqual(['table/no-header']);
  });

  it('can have their units in a line below', () => {
    const proposal = propose('Time;Import;Export', ';[Wh];[Wh]', ...ofDay('2025-05-01', '2;1', '1;2', '2;0'));
    expect(proposal.layout.header).toEqual(['Time', 'Import', 'Export']);
    expect(columnsOf(proposal)).toEqual(['date-time', 'import Wh', 'export Wh']);
  });

  it('are as many as have names, whatever delimiters stand behind them', () => {
    const proposal = propose('Time;Import;;', ...ofDay('2025-05-01', '2;;', '1;;', '2;;'));
    expect(proposal.layout.header).toEqual(['Time', 'Import']);
  });

  it('that are empty all over are not read, unless they say what they count', () => {
    const proposal = propose(
      'home;day;import;export;x',
      'a;2025-05-01;5;;',
      'a;2025-05-02;4;;',
      'a;2025-05-03;6;;',
    );
    expect(columnsOf(proposal)).toEqual(['point', 'date', 'import kWh', 'export kWh', 'nothing']);
  });
});

describe('any text', () => {
  it.each([[''], ['\n\n'], ['x'], ['a,b'], ['"'], ['\0\0;;\0'], ['1,2\n3,4\n'], [';\n;\n;'], ['=;=']])(
    '%j is proposed as something',
    (text) => {
      const { layout, decisions } = proposeTable(text);
      expect(layout.confirmed).toBe(false);
      expect(layout.columns.length).toBe(layout.header.length);
      expect(decisions.length > 0).toBe(true);
    },
  );

  it('leaves the last line out where it may be cut off', () => {
    const cut = [
      'day;import',
      ...Array.from({ length: 5 }, (_, at) => `2025-05-0${at + 1};1.${5 + at}`),
      '2025-05-06;1',
    ].join('\n');
    expect(proposeTable(cut)).toEqual(proposeTable(cut.slice(0, cut.lastIndexOf('\n') + 1)));
  });
});
