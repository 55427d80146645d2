import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { calendarDay } from '@unitbook/engine';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FilePiece } from './io.ts';
import { nodeIo } from './node-io.ts';

const MEGABYTE = 1024 * 1024;
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'unitbook-'));
  writeFileSync(join(folder, 'small.csv'), 'date');
  writeFileSync(join(folder, 'large.csv'), '');
  truncateSync(join(folder, 'large.csv'), 50 * MEGABYTE);
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

describe('read', () => {
  const read = (name: string, limit = 20 * MEGABYTE) => nodeIo().read(join(folder, name), limit);

  it('gives the bytes of a file', async () => {
    expect(await read('small.csv')).toEqual({ kind: 'read', bytes: Buffer.from('date') });
  });

  it('takes a file as large as the limit and no byte more', async () => {
    expect((await read('small.csv', 4)).kind).toBe('read');
    expect(await read('small.csv', 3)).toEqual({ kind: 'too-large', size: 4 });
  });

  it('refuses a large file by its size', async () => {
    expect(await read('large.csv')).toEqual({ kind: 'too-large', size: 50 * MEGABYTE });
  });

  it('tells what is not there and what is a folder', async () => {
    expect(await read('nowhere.csv')).toEqual({ kind: 'missing' });
    expect(await read('small.csv/inside')).toEqual({ kind: 'missing' });
    expect(await read('.')).toEqual({ kind: 'folder' });
  });

  it('tells why a file cannot be read', async () => {
    const name = 'x'.repeat(5000);
    expect(await read(name)).toEqual({ kind: 'unreadable', reason: 'a name too long for a file' });
  });
});

describe('pieces', () => {
  const pieces = async (name: string) => {
    const all: FilePiece[] = [];
    for await (const piece of nodeIo().pieces(join(folder, name))) all.push(piece);
    return all;
  };

  it('gives the bytes of a file one part after the other, whatever its size', async () => {
    expect(await pieces('small.csv')).toEqual([{ kind: 'bytes', bytes: Buffer.from('date') }]);
    const sizes = (await pieces('large.csv')).map((piece) =>
      piece.kind === 'bytes' ? piece.bytes.length : 0,
    );
    expect(sizes.length > 1).toBe(true);
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBe(50 * MEGABYTE);
  });

  it('ends with why a file cannot be read', async () => {
    expect(await pieces('nowhere.csv')).toEqual([{ kind: 'missing' }]);
    expect(await pieces('.')).toEqual([{ kind: 'folder' }]);
    expect(await pieces('x'.repeat(5000))).toEqual([
      { kind: 'unreadable', reason: 'a name too long for a file' },
    ]);
  });
});

it('has the day on the clock of the place where it runs', () => {
  const now = new Date();
  expect(calendarDay(nodeIo().today)).toEqual({
    year: now.getFullYear(),
    month: now.getMonth() + 1,
    day: now.getDate(),
  });
});
