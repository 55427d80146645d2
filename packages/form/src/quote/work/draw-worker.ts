import { drawBlocks, type DrawJob, type DrawNews } from './draw-blocks.ts';

/** What a worker has of its thread; the page's library of types knows only windows. */
interface WorkerThread {
  postMessage: (news: DrawNews) => void;
  addEventListener: (type: 'message', listen: (event: MessageEvent<DrawJob | null>) => void) => void;
}

const thread = globalThis as unknown as WorkerThread;
let latest = 0;

/** One block, then a look whether another job came meanwhile: that one counts. */
function go(blocks: Generator<DrawNews, void>, id: number): void {
  if (id !== latest) return;
  const { value, done } = blocks.next();
  if (done === true) return;
  thread.postMessage(value);
  setTimeout(() => {
    go(blocks, id);
  }, 0);
}

thread.addEventListener('message', ({ data }) => {
  // Nothing to draw: whatever is going on ends with the block it is in.
  latest = data?.id ?? 0;
  if (data !== null) go(drawBlocks(data), data.id);
});
