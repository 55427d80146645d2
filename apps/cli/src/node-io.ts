import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { dayNumber } from '@unitbook/engine';
import type { BatchIo } from './batch/index.ts';
import { readFailure } from './file-failure.ts';
import { openEngine } from './parquet/engine.ts';
import type { CommandIo, FilePiece, FileRead } from './io.ts';

/** Read a stream to its end, or until it is too long: it may never end. */
async function readUpTo(stream: AsyncIterable<Uint8Array>, limit: number): Promise<FileRead> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of stream) {
    size += chunk.length;
    if (size > limit) return { kind: 'too-large', size };
    chunks.push(chunk);
  }
  return { kind: 'read', bytes: Buffer.concat(chunks) };
}

async function readFile(path: string, limit: number): Promise<FileRead> {
  try {
    if (path === '-') return await readUpTo(process.stdin, limit);
    const found = await stat(path);
    if (found.isDirectory()) return { kind: 'folder' };
    if (found.isFile() && found.size > limit) return { kind: 'too-large', size: found.size };
    return await readUpTo(createReadStream(path) as AsyncIterable<Uint8Array>, limit);
  } catch (error) {
    return readFailure(error);
  }
}

async function* readPieces(path: string): AsyncGenerator<FilePiece> {
  try {
    if (path !== '-' && (await stat(path)).isDirectory()) {
      yield { kind: 'folder' };
      return;
    }
    const stream = (path === '-' ? process.stdin : createReadStream(path)) as AsyncIterable<Uint8Array>;
    for await (const bytes of stream) yield { kind: 'bytes', bytes };
  } catch (error) {
    yield readFailure(error);
  }
}

const writeBytes = (bytes: Uint8Array): Promise<void> =>
  new Promise((resolve, reject) => {
    process.stdout.write(bytes, (error) => {
      if (error) reject(error);
      else resolve();
    });
  });

/** The built program is one file: a thread begins it anew. */
const batchIo = (): BatchIo => ({
  write: writeBytes,
  err: (text) => void process.stderr.write(text),
  isTerminal: process.stderr.isTTY,
  now: () => performance.now(),
  entry: new URL(import.meta.url),
  cores: availableParallelism(),
});

/** The real files, streams and clock. */
export function nodeIo(): CommandIo {
  const now = new Date();
  return {
    read: readFile,
    pieces: readPieces,
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    today: dayNumber({ year: now.getFullYear(), month: now.getMonth() + 1, day: now.getDate() }),
    batch: batchIo,
    parquet: openEngine,
  };
}
