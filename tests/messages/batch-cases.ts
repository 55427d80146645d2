import { mkdtempSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileFailure } from '../../apps/cli/src/batch/file-failure.ts';
import { runBatch, type BatchIo, type BatchOptions } from '../../apps/cli/src/batch/index.ts';
import { DEMO_TARIFF, goodTariff } from '../support/demo.ts';
import { said, type MessageCase } from './message-case.ts';

/** What is told of a table, or of one of its rows: there "line:column" is where. */
type Told = Pick<MessageCase, 'code' | 'at' | 'found' | 'expected' | 'remedy'>;

/** A table of bills, or a choice of options, that brings about one finding. */
export interface BatchCase extends Told {
  readonly when: string;
  readonly make: () => Promise<readonly Told[]>;
}

interface Line extends Told {
  readonly verdict: string;
  readonly line: number;
  readonly column: string | null;
}

const folder = (): string => mkdtempSync(join(tmpdir(), 'unitbook-batch-'));

const toldOf = (finding: Parameters<typeof said>[0]): Told => {
  const { code, at, found, expected, remedy } = said(finding);
  return { code, at, found, expected, remedy };
};

/** Everything that a check says of itself and of rows that it cannot read. */
async function check(options: Omit<BatchOptions, 'tariff'>): Promise<readonly Told[]> {
  let out = '';
  const io: BatchIo = {
    write: (bytes) => {
      out += Buffer.from(bytes).toString('utf8');
      return Promise.resolve();
    },
    err: () => undefined,
    isTerminal: false,
    now: () => 0,
    entry: null,
    cores: 1,
  };
  const { findings } = await runBatch({ ...options, tariff: goodTariff(DEMO_TARIFF) }, io);
  const lines = out.split('\n').filter((line) => line !== '');
  const rows = lines.map((line) => JSON.parse(line) as Line);
  return [
    ...findings.map(({ finding }) => toldOf(finding)),
    ...rows
      .filter(({ verdict }) => verdict === 'unreadable')
      .map(({ line, column, code, found, expected, remedy }) => {
        const at = column === null ? String(line) : `${String(line)}:${column}`;
        return { code, at, found, expected, remedy };
      }),
  ];
}

const table =
  (text: string, form: 'csv' | 'ndjson' = 'csv') =>
  (): Promise<readonly Told[]> => {
    const rows = join(folder(), 'rows');
    writeFileSync(rows, text);
    return check({ rows, form });
  };

/** A check with these options, of a table that nobody opens. */
const optioned = (options: Partial<BatchOptions>) => (): Promise<readonly Told[]> =>
  check({ rows: 'rows.csv', ...options });

const HEADER = 'account,from,to,sanctioned-load,import,export,opening,printed.line.energy,printed.payable';
const APRIL = 'TAR-41-00001,2025-04-01,2025-05-01,3,222,280,0,,180';
const MAY = 'TAR-41-00001,2025-05-01,2025-06-01,3,298,216,,72.00,230';

const header = (text: string) => table(`${text}\n`);
const rows = (...lines: readonly string[]) => table(`${[HEADER, ...lines].join('\n')}\n`);
const json = (...lines: readonly string[]) => table(`${lines.join('\n')}\n`, 'ndjson');

/** A check to go on with, after something was changed. */
const resumed =
  (change: (paths: { readonly rows: string; readonly out: string }) => void) =>
  async (): Promise<readonly Told[]> => {
    const own = folder();
    const paths = { rows: join(own, 'rows.csv'), out: join(own, 'found.ndjson') };
    writeFileSync(paths.rows, `${HEADER}\n${APRIL.replace(',180', ',181')}\n`);
    await check(paths);
    change(paths);
    return check({ ...paths, isResumed: true });
  };

/** What is said where the system refuses a file. */
const refused =
  (code: string, text = code) =>
  (): Promise<readonly Told[]> => {
    const error = Object.assign(new Error(text), { code, syscall: 'write' });
    return Promise.resolve(fileFailure('found.ndjson', error).map(({ finding }) => toldOf(finding)));
  };

const HEADER_CASES: readonly BatchCase[] = [
  {
    code: 'batch/column-missing',
    when: 'no last day',
    make: header('account,from,import,printed.payable'),
    at: 'header',
    found: 'no column "to" among account, from, import, printed.payable',
    expected: 'the columns account, from and to, what is known, and what is printed',
    remedy: 'Add a column "to" to the table.',
  },
  {
    code: 'batch/column-twice',
    when: 'import twice',
    make: header(`${HEADER},import`),
    at: 'header',
    found: 'two columns "import"',
    expected: 'each column once',
    remedy: 'Take one out, or name it "note." and anything, which is passed by.',
  },
  {
    code: 'batch/column-unknown',
    when: 'a figure that no bill has',
    make: header(`${HEADER},printed.stamp`),
    at: 'header',
    found: 'a column "printed.stamp"',
    expected:
      'account, from, to, opening, "printed." and a figure, or a quantity of the tariff: import, export, generation, self-consumption, total-use, sanctioned-load, plant-capacity, shared',
    remedy: 'Correct its name, or begin it with "note.", which is passed by.',
  },
  {
    code: 'batch/nothing-printed',
    when: 'only what is known',
    make: header('account,from,to,import,export,opening,printed.days'),
    at: 'header',
    found: 'no column of anything that a bill prints as its result',
    expected:
      'at least one of printed.payable, printed.sum, printed.units.billed, printed.line. and a charge',
    remedy: 'Add what is to be checked.',
  },
  {
    code: 'batch/no-header',
    when: 'an empty file',
    make: table(''),
    at: '',
    found: 'a table without a first row',
    expected: 'a first row with the names of the columns',
    remedy: 'Put the names of the columns on top.',
  },
];

const ROW_CASES: readonly BatchCase[] = [
  {
    code: 'batch/cells',
    when: 'one too many',
    make: rows(APRIL, `${MAY},`),
    at: '3',
    found: '10 cells',
    expected: '9, as many as the header has',
    remedy: 'Put a text that holds a comma, a quote or a line break between quotes.',
  },
  {
    code: 'batch/number',
    when: 'digits in groups',
    make: rows(APRIL.replace(',222,', ',2 22,')),
    at: '2:import',
    found: '"2 22" under import',
    expected: 'a plain decimal number such as 546 or -75.00, or an empty cell',
    remedy: 'Write the number with a point, without groups, units or signs of currency.',
  },
  {
    code: 'batch/number-too-fine',
    when: 'units finer than thousandths',
    make: rows(APRIL.replace(',222,', ',222.1234,')),
    at: '2:import',
    found: '222.1234 under import',
    expected: 'at most 3 decimals and 12 digits',
    remedy: 'Write the number as it is read or printed.',
  },
  {
    code: 'batch/number-too-fine',
    when: 'money of more digits than paper has',
    make: rows(APRIL.replace(/180$/, '1800000000000')),
    at: '2:printed.payable',
    found: '1800000000000 under printed.payable',
    expected: 'at most 8 decimals and 12 digits',
    remedy: 'Write the number as it is read or printed.',
  },
  {
    code: 'batch/day',
    when: 'no day of the calendar',
    make: rows(APRIL.replace('2025-05-01', '2025-04-31')),
    at: '2:to',
    found: '"2025-04-31" under to',
    expected: 'a day of the calendar as yyyy-mm-dd',
    remedy: 'Write the day of the reading.',
  },
  {
    code: 'batch/period',
    when: 'both readings on one day',
    make: rows(APRIL.replace('2025-05-01', '2025-04-01')),
    at: '2',
    found: 'a period from 2025-04-01 to 2025-04-01',
    expected: 'a reading now that is later than the reading before',
    remedy: 'Write both days as they are on the bill.',
  },
  {
    code: 'batch/overlap',
    when: 'a bill that stands twice',
    make: rows(APRIL, APRIL),
    at: '3',
    found: 'a period of account TAR-41-00001 from 2025-04-01, before the one above it ended',
    expected: 'the bills of an account once each, in order of time',
    remedy: 'Sort the rows by account and day, and take out a bill that stands twice.',
  },
  {
    code: 'batch/quote',
    when: 'a quote that nothing closes',
    make: rows(`"${APRIL}`),
    at: '2:account',
    found: 'a quote under account that is not closed, or does not stand around the whole of the cell',
    expected: 'quotes around the whole of a cell, and two for each one inside',
    remedy: 'Close the quote, or double it.',
  },
  {
    code: 'batch/account',
    when: 'an empty cell',
    make: rows(APRIL.replace('TAR-41-00001', '')),
    at: '2:account',
    found: 'a row without an account',
    expected: 'the number of the account under "account"',
    remedy: 'Fill the cell.',
  },
  {
    code: 'batch/json',
    when: 'a list',
    make: json('[]'),
    at: '1',
    found: 'a line that cannot be used: no object',
    expected: 'one JSON object a line, with the names of the columns as its keys',
    remedy: 'Correct the line.',
  },
  {
    code: 'batch/json',
    when: 'a number that is no text',
    make: json('{"account":"TAR-41-00001","from":"2025-04-01","to":"2025-05-01","printed.payable":180}'),
    at: '1',
    found: 'a line that cannot be used: "printed.payable" is no text; numbers are written as texts: "546"',
    expected: 'one JSON object a line, with the names of the columns as its keys',
    remedy: 'Correct the line.',
  },
  {
    code: 'batch/json',
    when: 'a line break in a text',
    make: json(String.raw`{"account":"TAR-41\n00001","from":"2025-04-01","to":"2025-05-01"}`),
    at: '1',
    found: 'a line that cannot be used: a line break under "account"',
    expected: 'one JSON object a line, with the names of the columns as its keys',
    remedy: 'Correct the line.',
  },
];

const READABLE = 'a file that can be read';
const WRITABLE = 'room and leave to write';

const FILE_CASES: readonly BatchCase[] = [
  {
    code: 'batch/file',
    when: 'a table that is not there',
    make: () => check({ rows: join(folder(), 'none.csv') }),
    at: '',
    found: 'no such file',
    expected: READABLE,
    remedy: 'Check the path.',
  },
  {
    code: 'batch/file',
    when: 'a folder',
    make: () => check({ rows: folder() }),
    at: '',
    found: 'a folder',
    expected: READABLE,
    remedy: 'Name a file.',
  },
  {
    code: 'batch/file',
    when: 'no permission',
    make: refused('EACCES'),
    at: '',
    found: 'permission denied',
    expected: READABLE,
    remedy: 'Give leave to read and write it.',
  },
  {
    code: 'batch/file',
    when: 'a full disk',
    make: refused('ENOSPC'),
    at: '',
    found: 'no space is left on the disk',
    expected: WRITABLE,
    remedy: 'Make room, and go on with --resume: what is written stays.',
  },
  {
    code: 'batch/file',
    when: 'a quota that is used up',
    make: refused('EDQUOT'),
    at: '',
    found: 'the quota of the disk is used up',
    expected: WRITABLE,
    remedy: 'Make room, and go on with --resume: what is written stays.',
  },
  {
    code: 'batch/file',
    when: 'more than a file can hold',
    make: refused('EFBIG'),
    at: '',
    found: 'a file larger than the disk allows',
    expected: WRITABLE,
    remedy: 'Write to another disk, or in parts with --part.',
  },
  {
    code: 'batch/file',
    when: 'anything else that the system says',
    make: refused('EIO', 'EIO: i/o error, write'),
    at: '',
    found: 'EIO: i/o error, write',
    expected: 'files that can be read and written',
    remedy: 'Put that right, and go on with --resume.',
  },
  {
    code: 'batch/cannot-resume',
    when: 'a table that was changed',
    make: resumed((paths) => {
      writeFileSync(paths.rows, `${HEADER}\n${APRIL}\n${MAY}\n`);
    }),
    at: '',
    found: 'the journal of a check of another table, tariff or choice of options',
    expected: 'the table, the tariff and the files with which the check was begun',
    remedy: 'Begin anew, without --resume.',
  },
  {
    code: 'batch/cannot-resume',
    when: 'findings that were cut',
    make: resumed((paths) => {
      truncateSync(paths.out, 10);
    }),
    at: '',
    found: 'fewer findings than its journal tells of',
    expected: 'the table, the tariff and the files with which the check was begun',
    remedy: 'Begin anew, without --resume.',
  },
  {
    code: 'batch/options',
    when: 'a part that is not one',
    make: optioned({ part: { index: 3, count: 2 } }),
    at: '',
    found: 'part 3 of 2',
    expected: 'a part from 1 to as many as there are',
    remedy: 'Number the parts from 1.',
  },
  {
    code: 'batch/options',
    when: 'a part of standard input',
    make: optioned({ rows: '-', part: { index: 1, count: 2 } }),
    at: '',
    found: 'a part of standard input',
    expected: 'a file, of which every part reads its own rows',
    remedy: 'Name the file.',
  },
  {
    code: 'batch/options',
    when: 'findings that nobody can go on with',
    make: optioned({ isResumed: true }),
    at: '',
    found: 'a check to go on with, whose findings go to standard output',
    expected: 'a file of findings',
    remedy: 'Name it with --findings.',
  },
];

/** Cases of every code that a check of a table of bills knows. */
export const BATCH_CASES: readonly BatchCase[] = [...HEADER_CASES, ...ROW_CASES, ...FILE_CASES];
