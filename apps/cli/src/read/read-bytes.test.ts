import { dayNumber } from '@unitbook/engine';
import { expect, it } from 'vitest';
import type { CommandIo, FileRead } from '../io.ts';
import { readDocumentText } from './read-bytes.ts';

const ioWith = (read: FileRead): CommandIo => ({
  read: () => Promise.resolve(read),
  pieces: () => {
    throw new Error('A document is read in one piece.');
  },
  out: () => undefined,
  err: () => undefined,
  today: dayNumber({ year: 2026, month: 4, day: 15 }),
  batch: () => {
    throw new Error('A document is no table.');
  },
  parquet: () => Promise.resolve(null),
});

it.each([
  [{ kind: 'missing' }, 'command/missing-file', 'no file of this name'],
  [{ kind: 'folder' }, 'command/folder', 'a folder'],
  [
    { kind: 'unreadable', reason: 'permission denied' },
    'command/unreadable-file',
    'a file that cannot be read: permission denied',
  ],
  [{ kind: 'too-large', size: 12 * 1024 * 1024 + 1 }, 'command/file-too-large', 'more than 12 MB'],
  [{ kind: 'too-large', size: 50 * 1024 * 1024 }, 'command/file-too-large', '50 MB'],
  [{ kind: 'read', bytes: Uint8Array.of(0xe9) }, 'command/not-text', 'bytes that are no UTF-8 text'],
] as const)('tells of %j: %s', async (read, code, found) => {
  const { text, findings } = await readDocumentText(ioWith(read), 'tariff.json', 'unitbook-tariff-1');
  expect(text).toBeNull();
  expect(findings.map((finding) => [finding.code, finding.found])).toEqual([[code, found]]);
});

it('takes the mark off the beginning', async () => {
  const bytes = Uint8Array.of(0xef, 0xbb, 0xbf, 0x7b, 0x7d);
  expect(await readDocumentText(ioWith({ kind: 'read', bytes }), 'tariff.json', 'unitbook-tariff-1')).toEqual(
    {
      text: '{}',
      findings: [],
    },
  );
});
