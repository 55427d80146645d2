import { describe, expect, it } from 'vitest';
import type { CommandIo, FilePiece } from '../../apps/cli/src/io.ts';
import { run } from '../../apps/cli/src/run.ts';
import { sessionIo } from './session-io.ts';

const VALUES = 48;
const DAY = Array.from({ length: VALUES }, () => '0.25').join(',');

/** The days from 1 January 2000 on, as NEM12 writes them. */
const dayText = (index: number): string =>
  new Date(Date.UTC(2000, 0, 1 + index)).toISOString().slice(0, 10).replaceAll('-', '');

const HEAD = '100,NEM12,202505050000,MDA1,Ret1\n200,N1,E1,1,E1,N1,M1,kWh,30,\n';
const row = (index: number, day: string): string => `300,${dayText(index)},${day},A,,,20250505000000,\n`;

/** Bytes one after the other in the same memory, as a reader may hand them on. */
async function* overAndOver(texts: Iterable<string>): AsyncGenerator<FilePiece> {
  const memory = new Uint8Array(4096);
  for (const text of texts) {
    const bytes = new TextEncoder().encode(text);
    memory.fill(0x21);
    memory.set(bytes);
    yield await Promise.resolve({ kind: 'bytes', bytes: memory.subarray(0, bytes.length) });
  }
}

async function readings(pieces: AsyncIterable<FilePiece>, ...words: string[]) {
  const { io, printed } = sessionIo(new Map(), '');
  const own: CommandIo = { ...io, pieces: () => pieces };
  const status = await run(['readings', 'big.csv', ...words], own);
  return { status, ...printed };
}

describe('a file that is read piece by piece', () => {
  const DAYS = 2000;
  function* texts(): Generator<string> {
    yield HEAD;
    for (let index = 0; index < DAYS; index += 1) yield row(index, DAY);
    yield '900\n';
  }

  it('is never held: its memory can be used again', async () => {
    const { status, out, err } = await readings(overAndOver(texts()));
    expect([status, err]).toEqual([0, '']);
    // 2000 × 48 × 0.25 = 24000
    expect(out).toContain('  Values     96,000 of 30 min; 96,000 actual\n  Total      24,000 kWh\n');
    expect(out).toContain('Good       96,000 interval values\n');
  });

  it('is read no further than it is needed to tell what it is', async () => {
    let count = 0;
    let isClosed = false;
    async function* endless(): AsyncGenerator<FilePiece> {
      try {
        for (;;) {
          count += 1;
          const bytes = new TextEncoder().encode('Dear customer, your data is not ready\n'.repeat(100));
          yield await Promise.resolve({ kind: 'bytes', bytes });
        }
      } finally {
        isClosed = true;
      }
    }
    const { status } = await readings(endless());
    expect([status, isClosed]).toEqual([2, true]);
    expect(count < 30).toBe(true);
  });

  it('ends with why it could not be read to its end, and counts what was read', async () => {
    async function* broken(): AsyncGenerator<FilePiece> {
      yield* overAndOver([HEAD, ...Array.from({ length: 400 }, (_, index) => row(index, DAY))]);
      yield { kind: 'unreadable', reason: 'EIO' };
    }
    const { status, out, err } = await readings(broken());
    expect(status).toBe(1);
    // 400 × 48 × 0.25 = 4800
    expect(out).toContain('  Total      4,800 kWh\n');
    expect(err).toContain('big.csv  A file that cannot be read: EIO.');
    expect(out).toMatch(/^command\/unreadable-file +error +1$/m);
  });

  it('that turns out to be no text is read up to there', async () => {
    async function* torn(): AsyncGenerator<FilePiece> {
      yield* overAndOver([HEAD, ...Array.from({ length: 400 }, (_, index) => row(index, DAY))]);
      yield { kind: 'bytes', bytes: Uint8Array.of(0, 0, 0, 0) };
      yield { kind: 'bytes', bytes: new TextEncoder().encode(row(400, DAY)) };
    }
    const { status, out, err } = await readings(torn());
    expect(status).toBe(1);
    expect(out).toContain('  Total      4,800 kWh\n');
    expect(err).toContain('[meter-file/not-text]');
  });
});

describe('messages about a file', () => {
  const DAYS = 250;
  const bad = DAY.replace('0.25', 'x');

  it('are printed as they are met, of each code so many, and all are counted', async () => {
    const all = [HEAD, ...Array.from({ length: DAYS }, (_, index) => row(index, bad)), '900\n'];
    const { status, out, err } = await readings(overAndOver(all));
    expect(status).toBe(1);
    const lines = err.split('\n');
    const values = lines.filter((line) => line.includes('[nem/value]'));
    expect(values.length).toBe(200);
    // The first day stands on line 3, its first value behind "300," and the day.
    expect(values[0]).toMatch(/^big\.csv:3:14 {2}"x" as a value\./);
    expect(values[199]).toMatch(/^big\.csv:202:14 {2}/);
    expect(lines).toContain('… and more of the kind nem/value: they are counted, but not printed.');
    expect(out).toMatch(/^nem\/value +error +250 {2}3 to 252$/m);
    // 250 × 47 × 0.25 = 2937.5
    expect(out).toContain('  Total      2,937.5 kWh\n');
  });
});

describe('a list of ours', () => {
  it('that is larger than any is told', async () => {
    async function* endless(): AsyncGenerator<FilePiece> {
      yield { kind: 'bytes', bytes: new TextEncoder().encode('date,import,export\n') };
      const bytes = new TextEncoder().encode('2025-04-01,1,1\n'.repeat(70_000));
      for (;;) yield await Promise.resolve({ kind: 'bytes', bytes });
    }
    const { status, err } = await readings(endless());
    expect(status).toBe(2);
    expect(err).toMatch(/^big\.csv {2}More than 20 MB\. .*\[readings-file\/too-large\]\n$/);
  });
});
