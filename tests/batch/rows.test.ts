import { describe, expect, it } from 'vitest';
import { TABLE_HEADER, tableRow } from '../bench/check-batch-table.ts';
import { runTable } from './table-run.ts';

// Two acceptance scenarios, in an invented place (project reference, 2025), section 6.1: April is right with 58 units
// carried; May prints 546 for 230, since the credit was not brought forward and the fuel charge is taken on all import.
const HEADER =
  'account,from,to,sanctioned-load,import,export,opening,printed.opening.credit,printed.units.billed,' +
  'printed.line.fixed,printed.line.energy,printed.line.fuel,printed.line.tax,printed.line.subsidy,printed.payable';
const APRIL = 'TAR-30-00417,2025-04-01,2025-05-01,3,222,280,0,,0,,,,,,180';
const MAY = 'TAR-30-00417,2025-05-01,2025-06-01,3,298,216,,0,82,180.00,303.60,119.20,18.22,-75.00,546';

const verdicts = (lines: readonly Record<string, unknown>[]) => lines.map(({ verdict }) => verdict);

describe('a table of bills', () => {
  it('finds the bill of the scenario wrong by 316, and names both causes', async () => {
    const { lines, status, summary } = await runTable(`${HEADER}\n${APRIL}\n${MAY}\n`);
    expect(status).toBe(1);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatchObject({
      account: 'TAR-30-00417',
      from: '2025-05-01',
      to: '2025-06-01',
      verdict: 'wrong',
      printed: '546',
      right: '230',
      difference: '316',
      favour: 'utility',
    });
    const [explained] = lines[0]?.['explained'] as {
      confidence: string;
      causes: { cause: string; amount: string }[];
    }[];
    // 459.62 − 229.92 and 298 × 0.40 − 82 × 0.40, as the scenario has them.
    expect(explained?.causes.map(({ cause, amount }) => [cause, amount])).toEqual([
      ['credit-not-brought-forward', '229.7'],
      ['surcharge-on-import', '86.4'],
    ]);
    expect(summary?.verdicts).toMatchObject({
      right: { bills: 1 },
      wrong: { bills: 1, accounts: 1, sum: '316' },
    });
    expect(summary?.favour).toEqual({ utility: { bills: 1, accounts: 1, sum: '316' } });
    expect(summary?.amounts).toEqual({ '1000': { bills: 1, accounts: 1, sum: '316' } });
    expect(summary?.causes.map(({ cause, sum, isSystemic }) => [cause, sum, isSystemic])).toEqual([
      ['credit-not-brought-forward', '229.7', false],
      ['surcharge-on-import', '86.4', false],
    ]);
  });

  it('tells of a mistake made on ten accounts as systemic, with count and sum', async () => {
    const rows = Array.from({ length: 10 }, (_, at) =>
      MAY.replace('00417', String(500 + at)).replace('216,,0,', '216,58,0,'),
    );
    const { summary } = await runTable(`${HEADER}\n${rows.join('\n')}\n`);
    // Ten times 229.70.
    expect(summary?.causes[0]).toMatchObject({ accounts: 10, sum: '2297', isSystemic: true });
  });

  it('cannot tell where nobody says what was brought forward, and says what it comes to for each balance', async () => {
    const { lines } = await runTable(`${HEADER}\n${MAY}\n`);
    expect(verdicts(lines)).toEqual(['cannot-tell']);
    // Scenario 6.1, third path: 460 if none, 180 (3 × 60) if all of the import is covered.
    expect(lines[0]?.['alternatives']).toEqual([
      { ledger: 'credit', opening: '0', payable: '460' },
      { ledger: 'credit', opening: '298', payable: '180' },
    ]);
  });

  it('cannot tell on a day that the tariff does not cover', async () => {
    const { lines, summary } = await runTable(`${HEADER}\n${APRIL.replaceAll('2025', '2019')}\n`);
    expect(verdicts(lines)).toEqual(['cannot-tell']);
    expect(Object.keys(summary?.codes ?? {})).toHaveLength(1);
  });

  it('takes an account of 400 months as a chain', async () => {
    // Import 100 and export 100 each month: nothing is billed, so that 3 × 60 are due, and nothing is carried.
    const months = Array.from({ length: 400 }, (_, at) => {
      const day = (month: number): string =>
        `${String(2024 + Math.floor((month + 4) / 12))}-${String(((month + 4) % 12) + 1).padStart(2, '0')}-01`;
      return `A,${day(at)},${day(at + 1)},3,100,100,${at === 0 ? '0' : ''},,0,,,,,,180`;
    });
    const { summary, lines } = await runTable(`${HEADER}\n${months.join('\n')}\n`, { blockBytes: 1000 });
    expect(lines).toEqual([]);
    expect(summary).toMatchObject({ rows: 400, accounts: 1, verdicts: { right: { bills: 400 } } });
  });

  it('reads quotes as RFC 4180 has them', async () => {
    const header = HEADER.replace('account,', '"account","note.of ""him""",');
    const row = APRIL.replace('TAR-30-00417,', '"A, ""the"" one","two\nlines, and ""more""",').replace(
      ',180',
      ',"180"',
    );
    const { lines, status } = await runTable(`${header}\r\n${row}\r\n`, { isEvery: true });
    expect([status, lines]).toEqual([
      0,
      [{ account: 'A, "the" one', from: '2025-04-01', to: '2025-05-01', verdict: 'right' }],
    ]);
  });

  it('takes a byte order mark, line breaks of both kinds, empty lines and a last row without one', async () => {
    const { status, summary } = await runTable(
      `\uFEFF${HEADER}\r\n\r\n${APRIL}\n\n${APRIL.replace('00417', '2')}`,
    );
    expect([status, summary?.rows]).toEqual([0, 2]);
  });

  it('sets rows aside that it cannot use, each with its line and what to do', async () => {
    const bad = [
      APRIL.replace(',222,', ',2 22,'),
      APRIL.replace(',222,', ',222.1234,'),
      APRIL.replace('2025-04-01', '2025-02-30'),
      APRIL.replace('2025-05-01', '2025-04-01'),
      `${APRIL},`,
      APRIL.replace('TAR-30-00417', ''),
      APRIL.replace('TAR-30-00417', '"TAR"-30'),
      APRIL.replace(',180', ',1e3'),
    ];
    const rows = [APRIL.replace('00417', '1'), ...bad, APRIL.replace('00417', '2')];
    const { lines, side, summary } = await runTable(`${HEADER}\n${rows.join('\n')}\n`);
    expect(lines.map(({ line, verdict, code }) => [line, verdict, code])).toEqual([
      [3, 'unreadable', 'batch/number'],
      [4, 'unreadable', 'batch/number-too-fine'],
      [5, 'unreadable', 'batch/day'],
      [6, 'unreadable', 'batch/period'],
      [7, 'unreadable', 'batch/cells'],
      [8, 'unreadable', 'batch/account'],
      [9, 'unreadable', 'batch/quote'],
      [10, 'unreadable', 'batch/number'],
    ]);
    expect(lines[0]).toMatchObject({ column: 'import', found: '"2 22" under import' });
    expect(side).toBe(`${HEADER}\n${bad.join('\n')}\n`);
    expect(summary?.verdicts).toMatchObject({ right: { bills: 2 }, unreadable: { bills: 8 } });
  });

  it('loses one row, not the table, to a quote that nothing closes', async () => {
    const rows = Array.from({ length: 30_000 }, (_, at) =>
      tableRow(at + 1, { accounts: 30_000, wrongOfThousand: 0 }),
    );
    rows[3] = `"${rows[3] ?? ''}`;
    const { lines, summary } = await runTable(`${TABLE_HEADER}\n${rows.join('')}`, { blockBytes: 4096 });
    expect(lines.map(({ line, code }) => [line, code])).toEqual([[5, 'batch/quote']]);
    expect(summary?.verdicts).toMatchObject({ right: { bills: 29_999 }, unreadable: { bills: 1 } });
  });

  it('tells of a bill that stands twice, and of one below a later one', async () => {
    const overlaps = async (...rows: readonly string[]) => {
      const { lines } = await runTable(`${[HEADER, ...rows].join('\n')}\n`);
      return lines
        .filter(({ verdict }) => verdict === 'unreadable')
        .map(({ line, code, found }) => [line, code, found]);
    };
    const told = (day: string): string =>
      `a period of account TAR-30-00417 from ${day}, before the one above it ended`;
    expect(await overlaps(APRIL, APRIL)).toEqual([[3, 'batch/overlap', told('2025-04-01')]]);
    expect(await overlaps(MAY, APRIL)).toEqual([[3, 'batch/overlap', told('2025-04-01')]]);
  });

  it('refuses a header that lacks what is needed, with everything about it at once', async () => {
    const { told, status } = await runTable('account,from,imports\n');
    expect(status).toBe(2);
    expect(told.map((line) => /\[(.*)\]/.exec(line)?.[1])).toEqual([
      'batch/column-unknown',
      'batch/column-missing',
      'batch/nothing-printed',
    ]);
    expect(told[1]).toBe(
      'rows.csv  No column "to" among account, from, imports. Expected the columns account, from and to, what is known, and what is printed. Add a column "to" to the table. [batch/column-missing]',
    );
    expect((await runTable('')).told[0]).toContain('[batch/no-header]');
    const twice = await runTable(`${HEADER},import\n`);
    expect(twice.told).toEqual([
      'rows.csv  Two columns "import". Expected each column once. Take one out, or name it "note." and anything, which is passed by. [batch/column-twice]',
    ]);
  });

  it('refuses what cannot be done before it begins', async () => {
    const { told, status } = await runTable('', {
      rows: '-',
      isResumed: true,
      part: { index: 3, count: 2 },
    });
    expect(status).toBe(2);
    expect(told.map((line) => line.split('.')[0])).toEqual([
      'unitbook check  Part 3 of 2',
      'unitbook check  A part of standard input',
      'unitbook check  A check to go on with, whose findings go to standard output',
    ]);
  });

  it('reads JSON lines as the same table', async () => {
    const names = HEADER.split(',');
    const json = [APRIL, MAY].map((row) => {
      const cells = row.split(',').map((cell, at) => [names[at] ?? '', cell] as const);
      return JSON.stringify(Object.fromEntries(cells.filter(([, cell]) => cell !== '')));
    });
    const cells = await runTable(`${HEADER}\n${APRIL}\n${MAY}\n`);
    const lines = await runTable(`${json.join('\n')}\n`, { form: 'ndjson' });
    // What differs is told in the order of the columns, which JSON lines do not have: by name.
    const byName = (of: typeof cells) =>
      of.lines.map(({ differs, ...line }) => ({
        ...line,
        differs: (differs as { figure: string }[]).sort((a, b) => (a.figure < b.figure ? -1 : 1)),
      }));
    expect(byName(lines)).toEqual(byName(cells));
    expect(lines.summary).toEqual(cells.summary);
    const spoilt = await runTable(`${json[0] ?? ''}\nnonsense\n{"account":7}\n{"accounts":"7"}\n`, {
      form: 'ndjson',
    });
    expect(spoilt.lines.map(({ line, code }) => [line, code])).toEqual([
      [2, 'batch/json'],
      [3, 'batch/json'],
      [4, 'batch/column-unknown'],
    ]);
    expect(spoilt.side).toBe('nonsense\n{"account":7}\n{"accounts":"7"}\n');
  });
});
