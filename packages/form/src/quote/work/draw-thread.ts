import { drawBlocks, type DrawJob, type DrawNews } from './draw-blocks.ts';
import { inIdleChunks, type Cancel } from './idle.ts';

type Tell = (news: DrawNews) => void;

/** Start the worker that makes draws; null where the browser has none, or does not let us. */
function startWorker(): Worker | null {
  try {
    return new Worker(new URL('./draw-worker.js', import.meta.url), { type: 'module' });
  } catch {
    return null;
  }
}

function* telling(job: DrawJob, tell: Tell): Generator<void, void> {
  for (const news of drawBlocks(job)) {
    tell(news);
    yield;
  }
}

/** Makes draws on a thread of their own, or, without one, between everything else that the page does. */
export class DrawThread {
  private worker: Worker | null;
  private job: DrawJob | null = null;
  private cancel: Cancel = () => undefined;
  private readonly tell: Tell;

  /** @param start  starts the worker; another one for tests */
  constructor(tell: Tell, start: () => Worker | null = startWorker) {
    this.tell = tell;
    this.worker = start();
    this.worker?.addEventListener('message', ({ data }: MessageEvent<DrawNews>) => {
      if (data.id === this.job?.id) this.tell(data);
    });
    // A worker that cannot be fetched or read: what it was to do is done here.
    this.worker?.addEventListener('error', () => {
      this.worker = null;
      if (this.job !== null) this.draw(this.job);
    });
  }

  /** Whether draws are made on a thread of their own. */
  get isApart(): boolean {
    return this.worker !== null;
  }

  /** Begin with a job; one that is still going on is given up. */
  draw(job: DrawJob): void {
    this.cancel();
    this.job = job;
    if (this.worker === null) this.cancel = inIdleChunks(telling(job, this.tell));
    else this.worker.postMessage(job);
  }

  /** Give up what is going on: a worker is told to, and what it still tells of it is not heard. */
  stop(): void {
    this.cancel();
    if (this.job !== null) this.worker?.postMessage(null);
    this.job = null;
  }

  /** Let go of the worker. */
  close(): void {
    this.stop();
    this.worker?.terminate();
    this.worker = null;
  }
}
