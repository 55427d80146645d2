import type { BookDocument } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.ts';
import { sessionIo } from './session-io.ts';

const TARIFF = 'tariffs-examples/tarumira/taresco-domestic/tariff.json';

const ACCOUNT = JSON.stringify({
  format: 'unitbook-account-1',
  id: 'TAR-30-00417',
  locale: 'en-IN',
  sanctionedLoad: '3',
  plantCapacity: '3.3',
  openingCredit: '0',
  meters: {
    grid: {
      serial: 'PB-77120',
      multiplyingFactor: '1',
      import: { digits: '5', decimals: '1' },
      export: { digits: '5', decimals: '1' },
    },
    generation: {
      serial: 'GN-40316',
      multiplyingFactor: '1',
      generation: { digits: '5', decimals: '1' },
    },
  },
});

const COLUMNS = JSON.stringify({
  format: 'unitbook-columns-1',
  header: ['time', 'import', 'export', 'generation'],
  holds: 'intervals',
  delimiter: ',',
  decimalMark: '.',
  grouping: '',
  dateOrder: 'year-month-day',
  clock: 'local',
  label: 'start',
  minutes: '60',
  columns: [
    { is: 'date-time' },
    { is: 'import', unit: 'kWh' },
    { is: 'export', unit: 'kWh' },
    { is: 'generation', unit: 'kWh' },
  ],
  confirmed: true,
});

const two = (value: number): string => String(value).padStart(2, '0');

/**
 * Hours of a month: a unit in each of the first so many of them, so that the sums are those of the household in
 * homeowner-month.md, where the bills are worked out by hand.
 */
function monthRows(month: string, days: number, units: readonly number[]): readonly string[] {
  return Array.from({ length: days * 24 }, (_, hour) => {
    const time = `${month}-${two(Math.floor(hour / 24) + 1)} ${two(hour % 24)}:00`;
    return [time, ...units.map((count) => (hour < count ? '1' : '0'))].join(',');
  });
}

const APRIL = monthRows('2025-04', 30, [222, 280, 428]);
const MAY = monthRows('2025-05', 31, [298, 216, 371]);
const HEADER = 'time,import,export,generation';

/** Bill the hours of some files. */
async function billOf(
  texts: Readonly<Record<string, string>>,
  watch: (what: string) => unknown = () => undefined,
  words: readonly string[] = [],
) {
  const files = new Map(Object.entries(texts).map(([name, text]) => [name, { bytes: Buffer.from(text) }]));
  const { io, printed } = sessionIo(files, '');
  const watched = {
    ...io,
    out: (text: string) => {
      watch('page');
      io.out(text);
    },
    err: (text: string) => {
      watch('messages');
      io.err(text);
    },
  };
  const tariff = words.includes('--tariff') ? [] : ['--tariff', TARIFF];
  const source = ['--intervals', 'hours.csv', '--columns', 'columns.json'];
  const status = await run(['bill', ...tariff, '--account', 'account.json', ...source, ...words], watched);
  return { status, printed };
}

async function bill(rows: readonly string[], ...words: string[]) {
  const order: string[] = [];
  const hours = `${[HEADER, ...rows].join('\n')}\n`;
  const texts = { 'account.json': ACCOUNT, 'columns.json': COLUMNS, 'hours.csv': hours };
  const { status, printed } = await billOf(texts, (what) => order.push(what), words);
  return { status, order, ...printed };
}

const payables = (page: string): readonly string[] =>
  [...page.matchAll(/^ {2}PAYABLE +(\S+)$/gm)].map((match) => match[1] ?? '');

describe('bills of interval data', () => {
  it('come to what the same units of registers come to', async () => {
    const { status, out, err } = await bill([...APRIL, ...MAY]);
    expect([status, err]).toEqual([0, '']);
    // With solar and without, April then May.
    expect(payables(out)).toEqual(['180.00', '2,548.00', '230.00', '3,285.00']);
    expect(out).toContain(
      [
        '  Intervals of         Units',
        '  Import                 298',
        '  Export                 216',
        '  Generation             371',
      ].join('\n'),
    );
    expect(out).toContain('Intervals  1,464 of 60 minutes, 1 Apr 2025 to 1 Jun 2025 (hours.csv, a table)\n');
    expect(out).toContain('The house used 453 units: 155 straight from the roof, 298 from the grid. The\n');
    expect(out).toContain('plant made 371, 3.6 per kWp and day.');
  });

  it('tell how each line comes about, down to the intervals', async () => {
    const { out } = await bill([...APRIL, ...MAY], '--month', '2', '--explain');
    expect(out).toContain('Units taken from the grid: 298 units [intervals]');
    expect(out).toContain('Units billed: 24 units');
    expect(payables(out)).toEqual(['230.00', '3,285.00']);
  });

  it('are printed as JSON', async () => {
    const { out } = await bill([...APRIL, ...MAY], '--json');
    const { months } = JSON.parse(out) as BookDocument;
    expect(months.map(({ bill: { payable } }) => payable.value)).toEqual(['180', '230']);
    expect(months.map(({ passbook }) => passbook?.closing)).toEqual(['58', '0']);
  });

  it('begin on the cycle day, and say what is left over', async () => {
    const { status, out, err } = await bill([...APRIL, ...MAY], '--cycle-day', '15');
    // From 15 April on all hours of that month are 0; the first 14 days of May have 298 and 216 of them.
    expect(out).toContain('BILL 1   15 Apr – 15 May 2025   30 days');
    expect(out).toMatch(/^ {2}Import {17}298$/m);
    expect(err.split('\n').map((line) => line.replace(/ Expected.*/, ''))).toEqual([
      'hours.csv  Note: 14 days before the billing periods, from 2025-04-01 to 2025-04-15.',
      'hours.csv  Note: 17 days after the billing periods, from 2025-05-15 to 2025-06-01.',
      '',
    ]);
    expect(status).toBe(0);
  });
});

describe('sums of intervals finer than the units of the tariff', () => {
  it('are billed as metered, and that is said once', async () => {
    // Half a unit more in the first hour of April: 222.5 taken, 280 given.
    const finer = APRIL.map((row, at) => (at === 0 ? row.replace(',1,1,1', ',1.5,1,1') : row));
    const { status, err } = await bill([...finer, ...MAY]);
    expect(status).toBe(0);
    expect(err).toBe(
      'hours.csv  Note: Sums of intervals to the thousandth of a unit, where the tariff counts units with 0 decimals. Expected units as the tariff counts them, off the readings of a register. They are billed as metered: what is taken and what is given can each differ from the printed bill by less than one step of what the tariff counts. [command/units-as-metered]\n',
    );
  });
});

describe('under time blocks', () => {
  it('each hour is counted in its block', async () => {
    // One unit from 19:00 to 20:00 of each day of April 2025: 22 weekdays, peak; 8 days of weekends, normal.
    // 22 × 8.00 + 8 × 5.00 + 22 × 1.00 = 238.00
    const rows = Array.from({ length: 720 }, (_, hour) => {
      const time = `2025-04-${two(Math.floor(hour / 24) + 1)} ${two(hour % 24)}:00`;
      return `${time},${hour % 24 === 19 ? '1' : '0'},0,0`;
    });
    const { printed } = await billOf(
      {
        'account.json': ACCOUNT,
        'columns.json': COLUMNS,
        'hours.csv': `${[HEADER, ...rows].join('\n')}\n`,
      },
      undefined,
      ['--tariff', 'tariffs-examples/tarumira/taresco-time-blocks/tariff.json'],
    );
    expect(printed.out).toMatch(/^ {2}Import, peak +22$/m);
    expect(printed.out).toMatch(/^ {2}Import, normal +8$/m);
    expect(printed.out).toMatch(/^ {2}Import, solar +0$/m);
    expect(printed.out).toMatch(/^ {2}Import, together +30$/m);
    expect(payables(printed.out)[0]).toBe('238.00');
  });
});

describe('a period with missing intervals', () => {
  const without = [...APRIL, ...MAY.slice(1)];

  it('is billed once its question is asked, and says so on its page', async () => {
    const { status, out, err, order } = await bill(without);
    expect([status, order]).toEqual([1, ['messages', 'page']]);
    expect(err).toContain('Question: 1 interval missing: 2025-05-01 00:00.');
    expect(out).toContain('MISSING: 1 interval of these days. What they held is not billed.');
    // 297 taken, 215 given, 58 brought forward: 24 billed, as before.
    expect(payables(out)[2]).toBe('230.00');
    expect(out.match(/MISSING/g)?.length).toBe(1);
  });

  it('is billed of what is there', async () => {
    // The 250th hour of May has a unit that is taken and one that is made: 23 units are left to be billed.
    // 180.00 + 69.00 + 9.20 + 4.14 − 34.50 = 227.84
    const { out } = await bill([...APRIL, ...MAY.slice(0, 249), ...MAY.slice(250)], '--month', '2');
    expect(out).toMatch(/^ {2}Units billed {38}23$/m);
    expect(out).toMatch(/^ {2}Sum of the lines {54}227\.84$/m);
    expect(payables(out)[0]).toBe('228.00');
  });
});

describe('values that nobody measured', () => {
  it('are counted in the head of the page', async () => {
    const columns = COLUMNS.replace('"generation"]', '"generation","status"]').replace(
      '{"is":"generation","unit":"kWh"}]',
      '{"is":"generation","unit":"kWh"},{"is":"quality","words":{"A":"actual","E":"estimated"}}]',
    );
    // Three hours of three columns each.
    const rows = APRIL.map((row, index) => `${row},${index < 3 ? 'E' : 'A'}`);
    const { printed } = await billOf({
      'account.json': ACCOUNT,
      'columns.json': columns,
      'hours.csv': `${HEADER},status\n${rows.join('\n')}\n`,
    });
    expect(printed.out).toContain(
      'Intervals  720 of 60 minutes, 9 of the values estimated or substituted, 1 Apr\n           2025 to',
    );
  });
});

describe('the credit that an account brings forward', () => {
  it('is set off in the first period', async () => {
    const { printed } = await billOf({
      'account.json': ACCOUNT.replace('"openingCredit":"0"', '"openingCredit":"10.5"'),
      'columns.json': COLUMNS,
      'hours.csv': `${[HEADER, ...monthRows('2025-04', 30, [100, 40, 40])].join('\n')}\n`,
    });
    // 100 − 40 − 10.5 = 49.5
    expect(printed.out).toMatch(/^ {2}Units billed {36}49\.5$/m);
  });
});
