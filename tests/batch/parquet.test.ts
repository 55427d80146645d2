import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { nodeIo } from '../../apps/cli/src/node-io.ts';
import { openEngine, quotedText, type ParquetEngine } from '../../apps/cli/src/parquet/engine.ts';
import { run } from '../../apps/cli/src/run.ts';
import { TABLE_HEADER, tableRow } from '../bench/check-batch-table.ts';
import { runTable, testFolder } from './table-run.ts';

const opened = await openEngine();

/** What `unitbook parquet` printed. */
const parquet = (...words: readonly string[]) => parquetTo(null, ...words);

/** The same where standard output fails, as the operating system says it. */
async function parquetTo(failure: string | null, ...words: readonly string[]) {
  let [out, err] = ['', ''];
  const io = nodeIo();
  const batch = {
    ...io.batch(),
    write: (bytes: Uint8Array) => {
      if (failure !== null)
        return Promise.reject(Object.assign(new Error(failure), { code: failure, syscall: 'write' }));
      out += Buffer.from(bytes).toString('utf8');
      return Promise.resolve();
    },
  };
  const own = { ...io, out: (text: string) => void (out += text), err: (text: string) => void (err += text) };
  const status = await run(['parquet', ...words], { ...own, batch: () => batch });
  return { status, out, err };
}

/** Objects without what they do not have. */
const withoutNulls = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(withoutNulls);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).filter(([, own]) => own !== null);
  return Object.fromEntries(entries.map(([name, own]) => [name, withoutNulls(own)]));
};

async function tableOf(engine: ParquetEngine, path: string): Promise<readonly unknown[]> {
  const lines: unknown[] = [];
  const query = `SELECT CAST(to_json(one) AS VARCHAR) FROM read_parquet(${quotedText(path)}) one`;
  for await (const rows of engine.rows(query))
    for (const [text] of rows) lines.push(withoutNulls(JSON.parse(text ?? '{}')));
  return lines;
}

/** Thirty accounts, every fifth bill wrong, then one with a name that needs quotes, one whose opening is not known. */
const ROWS = Array.from({ length: 30 }, (_, at) => tableRow(at + 1, { accounts: 30, wrongOfThousand: 200 }));
const ODD = [
  '"TAR ""a"", b",2025-05-01,2025-05-31,4,412,278,35,0,99,,,,,,700',
  'TAR-open,2025-05-01,2025-05-31,4,412,278,,,,,,,,,460',
  'TAR-unread,2025-05-01,2025-05-31,4,4l2,278,35,,,,,,,,460',
];
const TABLE = `${TABLE_HEADER}\n${ROWS.join('')}${ODD.join('\n')}\n`;

function filesOf() {
  const folder = testFolder();
  const at = (name: string): string => join(folder, name);
  writeFileSync(at('bills.csv'), TABLE);
  return at;
}

/** Keep the table in Parquet, as a utility would: days as dates, units as decimals or whole numbers, empty cells. */
async function kept(engine: ParquetEngine, at: (name: string) => string): Promise<void> {
  const cells = `* REPLACE (CAST("from" AS DATE) AS "from", CAST("export" AS BIGINT) AS "export",
    CAST("printed.payable" AS DECIMAL(12, 2)) AS "printed.payable"), 1.5::DOUBLE AS "note.seen"`;
  const table = `read_csv(${quotedText(at('bills.csv'))}, all_varchar = true, header = true)`;
  await engine.run(
    `COPY (SELECT ${cells} FROM ${table}) TO ${quotedText(at("bills '25.parquet"))} (FORMAT parquet)`,
  );
}

if (opened === null)
  describe('Parquet without its optional part', () => {
    it('is told of', async () => {
      const at = filesOf();
      expect(await parquet('--rows', at('bills.csv'))).toEqual({
        status: 2,
        out: '',
        err: 'unitbook parquet  No @duckdb/node-api, which reads and writes Parquet. Expected this optional part to be installed. Type npm install @duckdb/node-api where unitbook is, or keep the bills as CSV. [command/parquet-not-installed]\n',
      });
    });
  });
else
  describe('bills that are kept in Parquet', () => {
    const engine = opened;

    it('are checked as those of the same table in CSV', async () => {
      const at = filesOf();
      await kept(engine, at);
      const { status, out, err } = await parquet('--rows', at("bills '25.parquet"));
      expect([status, err]).toEqual([0, '']);
      const [header, ...rows] = out.split('\n');
      expect(header).toBe(`${TABLE_HEADER},note.seen`);
      expect(rows).toHaveLength(34);
      expect(rows[30]).toBe('"TAR ""a"", b",2025-05-01,2025-05-31,4,412,278,35,0,99,,,,,,700.00,1.5');
      const [own, other] = [await runTable(TABLE), await runTable(out)];
      // Rows are told apart by their cells, of which there is one more.
      expect(other.lines).toEqual(own.lines);
      expect(own.lines.length).toBeGreaterThan(5);
    });

    it('get their findings back in Parquet: every name, every text, in their order', async () => {
      const at = filesOf();
      const terms = { part: { index: 1, count: 1 }, withTally: true, isEvery: true };
      const { lines, out } = await runTable(TABLE, terms);
      writeFileSync(at('found.ndjson'), out);
      const { status, err } = await parquet('--findings', at('found.ndjson'), '--to', at('found.parquet'));
      expect([status, err]).toEqual([0, '']);
      const findings = lines.filter((line) => 'verdict' in line);
      expect(lines.length - findings.length).toBe(1);
      expect(await tableOf(engine, at('found.parquet'))).toEqual(findings.map(withoutNulls));
      const verdicts = new Set(findings.map((line) => line['verdict']));
      expect([...verdicts].sort()).toEqual(['cannot-tell', 'right', 'unreadable', 'wrong']);
    });

    it('are not read where their numbers are not exact, all of them named', async () => {
      const at = filesOf();
      const cells = `'A' AS account, 1.5::DOUBLE AS import, [1] AS "export", TIMESTAMP '2025-05-01 00:00:00' AS "from"`;
      await engine.run(`COPY (SELECT ${cells}) TO ${quotedText(at('a.parquet'))} (FORMAT parquet)`);
      const { status, out, err } = await parquet('--rows', at('a.parquet'));
      expect([status, out]).toEqual([2, '']);
      const one = (column: string, type: string): string =>
        `${at('a.parquet')}  A column "${column}" of the type ${type}. Expected text, whole numbers, decimals or dates, which are exact. Write it as DECIMAL or as text, or name it "note.${column}", which is passed by. [command/parquet-column]`;
      expect(err.trim().split('\n')).toEqual([
        one('import', 'DOUBLE'),
        one('export', 'INTEGER[]'),
        one('from', 'TIMESTAMP'),
      ]);
    });

    it('are not told of to whoever reads no more, and told of where there is no room', async () => {
      const at = filesOf();
      await kept(engine, at);
      const words = ['--rows', at("bills '25.parquet")];
      expect(await parquetTo('EPIPE', ...words)).toEqual({ status: 2, out: '', err: '' });
      expect((await parquetTo('ENOSPC', ...words)).err).toBe(
        'standard output  No space is left on the disk. Expected room and leave to write. Make room, and check again. [batch/file]\n',
      );
    });

    it('are told of where a file is missing, or another one', async () => {
      const at = filesOf();
      expect(await parquet('--rows', at('nowhere'))).toEqual({
        status: 2,
        out: '',
        err: `${at('nowhere')}  No file of this name. Expected a file that is there. Check the name and the folder it is in. [command/missing-file]\n`,
      });
      expect((await parquet('--rows', at('bills.csv'))).err).toBe(
        `${at('bills.csv')}  A table that cannot be read: Invalid Input Error: No magic bytes found at end of file '${at('bills.csv')}'. Expected a file in Parquet. Check that it is the right file, and whole. [command/parquet-table]\n`,
      );
      expect((await parquet('--rows', '-')).err).toBe(
        'standard input  A table that cannot be read: standard input, which cannot be read from its end. Expected a file in Parquet. Check that it is the right file, and whole. [command/parquet-table]\n',
      );
      const words = ['--findings', at('bills.csv'), '--to'];
      expect((await parquet(...words, at('found.parquet'))).err).toMatch(
        /bills\.csv {2}Findings that cannot be put into a table: .*Malformed JSON.* Expected what unitbook check --batch wrote, and a folder that can be written to\. .* \[command\/parquet-findings\]\n$/,
      );
      expect((await parquet(...words, at('.') + '/bills.csv')).err).toBe(
        `${at('bills.csv')}  One file for the findings and for the table of them. Expected a file for each. Name another file after --to. [command/parquet-same-file]\n`,
      );
    });
  });
