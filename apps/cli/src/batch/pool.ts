import { setImmediate } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { Worker } from 'node:worker_threads';
import type { Block } from './check-block.ts';
import { blockChecker, type WorkerAnswer, type WorkerTask, type WorkerTerms } from './worker.ts';
import type { Tally } from './tally.ts';

/** What a block came to, in bytes. */
export interface BlockResult {
  readonly findings: Uint8Array;
  readonly side: Uint8Array;
  readonly tally: Tally;
}

/** Checks blocks; results come in the order of the blocks. */
export interface Pool {
  /** Check a block; waits while too many are on their way. Its bytes can be used again when it returns. */
  readonly add: (block: Block, done: (result: BlockResult) => Promise<void>) => Promise<void>;
  /** Wait for all that are on their way. */
  readonly end: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** Checks blocks in this thread, each at once. */
export function ownThread(terms: WorkerTerms): Pool {
  const checker = blockChecker(terms);
  const encoder = new TextEncoder();
  return {
    add: async (block, done) => {
      const { findings, side, tally } = checker.check(block);
      await done({ findings: encoder.encode(findings), side, tally });
    },
    end: () => Promise.resolve(),
    close: () => Promise.resolve(),
  };
}

const NONE = new ArrayBuffer(0);

/** Blocks on their way for each worker: one in work, one waiting. */
const FOR_EACH = 2;

/** A thread has no use for a large nursery: what it makes of a row is gone with the row. */
const LIMITS = { maxYoungGenerationSizeMb: 6 } as const;

interface Waiting {
  readonly done: (result: BlockResult) => Promise<void>;
  answer: WorkerAnswer | null;
}

/** Blocks whose results wait for those above them, for each thread. */
const MOST_WAITING = 4;

/**
 * Garbage is collected once the heap has grown by so much of what is in use, in percent: what a row is checked with is
 * gone with the row. A heap that waits longer grows; one that waits less is collected more than it is used.
 */
const GROWTH = 100;

/** Keep the nursery of this thread as small as it is: the limit that others begin with cannot be set any more. */
function keepNurserySmall(): void {
  setFlagsFromString('--semi-space-growth-factor=1');
}

/** Keep the heaps of this program small; for the threads of a batch, before they begin. */
export function keepHeapsSmall(): void {
  setFlagsFromString(`--heap-growing-percent=${String(GROWTH)}`);
  // Threads that mark beside those that check take cores from them: there is one for each core already.
  setFlagsFromString('--no-concurrent-marking');
  keepNurserySmall();
}

/** Checks blocks in this thread and in others: each block goes to the one that has fewest, here when all have enough. */
export class Workers implements Pool {
  private readonly workers: { readonly thread: Worker; load: number }[];
  private readonly waiting = new Map<number, Waiting>();
  private readonly spare: ArrayBuffer[] = [];
  private next = 0;
  private due = 0;
  private wake: (() => void) | null = null;
  private failure: Error | null = null;
  private isTelling = false;
  private readonly own: ReturnType<typeof blockChecker>;
  private readonly encoder = new TextEncoder();

  /**
   * @param count  threads besides this one
   * @param entry  the script of this program, which calls `serveBatch` where `isBatchWorker`
   */
  constructor(terms: WorkerTerms, count: number, entry: string | URL) {
    this.own = blockChecker(terms);
    this.workers = Array.from({ length: count }, () => {
      const thread = new Worker(entry, {
        workerData: terms,
        argv: process.argv.slice(2),
        resourceLimits: LIMITS,
      });
      const worker = { thread, load: 0 };
      thread.on('message', (answer: WorkerAnswer) => {
        worker.load -= 1;
        this.take(answer);
      });
      // A thread that begins sets the growth of nurseries back to what it was.
      thread.on('online', keepNurserySmall);
      thread.on('error', (error) => {
        this.fail(error);
      });
      thread.on('exit', (code) => {
        if (code !== 0) this.fail(new Error(`a worker ended with ${String(code)}`));
      });
      return worker;
    });
  }

  private fail(error: Error): void {
    this.failure ??= error;
    this.wake?.();
  }

  private take(answer: WorkerAnswer): void {
    const waiting = this.waiting.get(answer.index);
    if (waiting !== undefined) waiting.answer = answer;
    void this.tell();
  }

  /**
   * The next block to be told of, where it is done. Behind a failure nothing more is told: what was written of a block
   * would be written once more.
   */
  private nextDone(): (Waiting & { readonly answer: WorkerAnswer }) | null {
    const { answer = null, done } = this.waiting.get(this.due) ?? {};
    return this.failure !== null || answer === null || done === undefined ? null : { answer, done };
  }

  /** Tell of the blocks that are done, in their order. */
  private async tell(): Promise<void> {
    if (this.isTelling) return;
    this.isTelling = true;
    try {
      for (let first = this.nextDone(); first !== null; first = this.nextDone()) {
        await first.done(first.answer);
        if (first.answer.bytes !== NONE) this.spare.push(first.answer.bytes);
        this.waiting.delete(this.due);
        this.due += 1;
      }
    } catch (error) {
      this.fail(error instanceof Error ? error : new Error(String(error)));
    }
    this.isTelling = false;
    this.wake?.();
  }

  private async until(isSo: () => boolean): Promise<void> {
    while (!isSo() && this.failure === null)
      await new Promise<void>((resolve) => {
        this.wake = resolve;
      });
    this.wake = null;
    if (this.failure !== null) throw this.failure;
  }

  /** Bytes for a block: used ones where they are large enough. */
  private bytesFor(size: number): Uint8Array {
    const used = this.spare.pop();
    return used !== undefined && used.byteLength >= size ? new Uint8Array(used) : new Uint8Array(size);
  }

  async add({ bytes, from, to, line }: Block, done: Waiting['done']): Promise<void> {
    // Answers that have come are taken before anything more is begun.
    await setImmediate();
    await this.until(() => this.waiting.size < (this.workers.length + 1) * MOST_WAITING);
    const index = this.next;
    this.next += 1;
    this.waiting.set(index, { done, answer: null });
    const worker = this.workers.reduce((least, one) => (one.load < least.load ? one : least));
    if (worker.load >= FOR_EACH) {
      const { findings, side, tally } = this.own.check({ bytes, from, to, line });
      const answer = { index, findings: this.encoder.encode(findings), side, tally, bytes: NONE };
      this.take(answer);
      return;
    }
    const own = this.bytesFor(to - from);
    own.set(bytes.subarray(from, to));
    worker.load += 1;
    const task: WorkerTask = { index, bytes: own.buffer as ArrayBuffer, to: to - from, line };
    worker.thread.postMessage(task, [task.bytes]);
  }

  async end(): Promise<void> {
    await this.until(() => this.waiting.size === 0);
  }

  async close(): Promise<void> {
    await Promise.all(this.workers.map(({ thread }) => thread.terminate()));
  }
}
