import {
  closeSync,
  linkSync,
  mkdirSync,
  openSync,
  readFileSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { TABLE_HEADER, tableRow } from '../bench/check-batch-table.ts';
import { runTable, testFolder } from './table-run.ts';

const TERMS = { accounts: 40, wrongOfThousand: 100 };
const ROWS = Array.from({ length: 40 }, (_, at) => tableRow(at + 1, TERMS));
const TABLE = `${TABLE_HEADER}\n${ROWS.join('')}`;

/** A table in a folder of its own. */
function tableIn(name = 'table.csv'): { readonly rows: string; readonly at: (name: string) => string } {
  const folder = testFolder();
  const at = (own: string): string => join(folder, own);
  writeFileSync(at(name), TABLE);
  return { rows: at(name), at };
}

const told = async (options: Parameters<typeof runTable>[1]): Promise<readonly string[]> =>
  (await runTable('', options)).told;

describe('the files of a check', () => {
  it('are not written over the table, nor over one another', async () => {
    const { rows, at } = tableIn('found.ndjson.unread.csv');
    const one = (what: string, path: string): readonly string[] => [
      `unitbook check  One file for ${what}: ${path}. Expected a file for each of them. Name another with --findings or --unread. [batch/options]`,
    ];
    // The file beside the findings is the table, as after the rows in it were put right.
    expect(await told({ rows, out: at('found.ndjson'), sideIs: 'beside' })).toEqual(
      one('the table and rows that cannot be used', rows),
    );
    expect(await told({ rows, out: rows })).toEqual(one('the table and the findings', rows));
    const found = at('found');
    expect(await told({ rows, out: found, side: found })).toEqual(
      one('the findings and rows that cannot be used', found),
    );
    const journal = `${found}.journal`;
    expect(await told({ rows, out: found, side: journal })).toEqual(
      one('rows that cannot be used and the journal', journal),
    );
    expect(readFileSync(rows, 'utf8')).toBe(TABLE);
  });

  it('are known by what they are, not by their names', async () => {
    const { rows, at } = tableIn();
    symlinkSync(rows, at('link.csv'));
    linkSync(rows, at('twin.csv'));
    mkdirSync(at('folder'));
    for (const name of ['link.csv', 'twin.csv', 'folder/../table.csv'])
      expect((await told({ rows, out: at(name) }))[0]).toContain('One file for the table and the findings');
    const twice = { rows, out: at('found'), side: join(at('folder'), '..', 'found') };
    expect((await told(twice))[0]).toContain('One file for the findings and rows that cannot be used');
    // A link to what is not there yet: both would be made as one.
    symlinkSync('later', at('leads-there'));
    const later = { rows, out: at('later'), side: at('leads-there') };
    expect((await told(later))[0]).toContain('One file for the findings and rows that cannot be used');
    expect(readFileSync(rows, 'utf8')).toBe(TABLE);
  });

  it('are not written over the tariff', async () => {
    const { rows, at } = tableIn();
    writeFileSync(at('tariff.json'), '{}');
    expect(await told({ rows, tariffFiles: [at('tariff.json')], side: at('tariff.json') })).toEqual([
      `unitbook check  One file for a tariff and rows that cannot be used: ${at('tariff.json')}. Expected a file for each of them. Name another with --findings or --unread. [batch/options]`,
    ]);
    expect(readFileSync(at('tariff.json'), 'utf8')).toBe('{}');
  });

  it('are files, where they are there already', async () => {
    const { rows, at } = tableIn();
    expect(await told({ rows, out: '/dev/null', side: at('side') })).toEqual([
      'unitbook check  The findings to /dev/null, which is no plain file. Expected a file, or the name of one that is to be made. Leave --findings out to have them printed. [batch/options]',
    ]);
    expect(await told({ rows, side: '/dev/null' })).toEqual([
      'unitbook check  Rows that cannot be used to /dev/null, which is no plain file. Expected a file, or the name of one that is to be made. Name a file with --unread. [batch/options]',
    ]);
  });

  it('are needed for a part: what comes through a pipe has none', async () => {
    const file = openSync('/dev/null', 'r');
    const part = { index: 1, count: 2 };
    expect(await told({ rows: `/dev/fd/${String(file)}`, part })).toEqual([
      'unitbook check  A part of what is no plain file. Expected a file, of which every part reads its own rows. Name the file. [batch/options]',
    ]);
    closeSync(file);
  });

  it('must all be there to go on, rows that cannot be used among them', async () => {
    const { rows, at } = tableIn();
    const options = { rows, out: at('found'), side: at('side'), blockBytes: 500 };
    writeFileSync(rows, TABLE.replace(',2025-05-31', ',May'));
    await runTable('', options);
    truncateSync(at('side'), 10);
    expect((await told({ ...options, isResumed: true }))[0]).toContain(
      'Fewer rows that cannot be used than its journal tells of.',
    );
  });

  it('must be the same to go on', async () => {
    const { rows, at } = tableIn();
    const options = { rows, out: at('found'), side: at('side') };
    await runTable('', options);
    expect((await told({ ...options, side: at('other'), isResumed: true }))[0]).toContain(
      '[batch/cannot-resume]',
    );
  });

  it('are named where one of them cannot be written', async () => {
    const { rows, at } = tableIn();
    const side = at('nowhere/side');
    expect(await told({ rows, out: at('found'), side })).toEqual([
      `${side}  No folder of this name. Expected a folder that is there. Make the folder, or name another. [batch/file]`,
    ]);
  });
});

describe('a table that is no text', () => {
  const message =
    'rows.csv  Bytes that are no text in UTF-8. Expected text in UTF-8, neither packed nor coded otherwise. Save the table as UTF-8, unpacked. [batch/not-text]';

  it('is told of once: packed, or in UTF-16', async () => {
    const utf16 = Buffer.from(`\uFEFF${TABLE}`, 'utf16le');
    for (const bytes of [gzipSync(TABLE), utf16, utf16.subarray(2)])
      for (const form of ['csv', 'ndjson'] as const) {
        const { told: lines, status } = await runTable(bytes, { form });
        expect([status, lines]).toEqual([2, [message]]);
      }
  });

  it('is left out row by row where only some rows are none', async () => {
    const spoilt = Buffer.from(ROWS[1] ?? '', 'latin1');
    spoilt[4] = 0xe9;
    const table = [`${TABLE_HEADER}\n`, ROWS[0] ?? '', spoilt, ROWS[2] ?? ''].map((part) =>
      Buffer.from(part),
    );
    const { lines, summary } = await runTable(Buffer.concat(table), { isEvery: true });
    expect(lines.map(({ line, code, column }) => [line, code, column])[1]).toEqual([
      3,
      'batch/not-text',
      null,
    ]);
    expect(summary).toMatchObject({ rows: 3, verdicts: { unreadable: { bills: 1 } } });
    const json = Buffer.concat([Buffer.from('{"account":"'), Buffer.from([0xe9]), Buffer.from('"}\n')]);
    expect((await runTable(json, { form: 'ndjson' })).lines).toMatchObject([
      { line: 1, code: 'batch/not-text' },
    ]);
  });

  it('names the key at fault of a JSON object', async () => {
    const rows = ['{"account":7}', '{"accounts":"7"}', String.raw`{"from":"a\nb"}`, '[]'];
    const { lines } = await runTable(`${rows.join('\n')}\n`, { form: 'ndjson' });
    expect(lines.map(({ column }) => column)).toEqual(['account', 'accounts', 'from', null]);
  });

  it('can have a first row of very many names', async () => {
    // A cell takes no longer behind a hundred thousand others: with a decoder for each it took minutes.
    const notes = Array.from({ length: 60_000 }, (_, at) => `note.${String(at)}`).join(',');
    const { status } = await runTable(`${TABLE_HEADER},${notes}\n`);
    expect(status).toBe(0);
  });
});
