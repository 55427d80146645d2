import { readFileSync } from 'node:fs';
import { BLOCK, readTariff, type QuoteDocument } from '@unitbook/engine';
import { expect, it, vi } from 'vitest';
import { EVENING_HOUSE, yearOf } from '../../../../../tests/support/quote-profile.ts';
import { putAt } from '../document/edit-quote.ts';
import { drawBlocks, type DrawNews } from './draw-blocks.ts';
import { DrawThread } from './draw-thread.ts';

const text = (path: string): string =>
  readFileSync(new URL(`../../../../../tariffs-examples/${path}`, import.meta.url), 'utf8');
const demo = JSON.parse(text('quotes/rooftop-4-kilowatt.json')) as QuoteDocument;
const { value: tariff } = readTariff(text('tarumira/taresco-domestic/tariff.json'));
if (tariff === null) throw new Error('The tariff cannot be read.');

const job = { id: 7, document: demo, tariff: tariff.document, watts: null, profile: null, draws: 2 * BLOCK };

it('tells of each block of draws, then of all', () => {
  const news = [...drawBlocks(job)];
  expect(news.map(({ kind }) => kind)).toEqual(['drawn', 'drawn', 'done']);
  const last = news.at(-1);
  expect(last?.kind === 'done' ? last.summary.count : 0).toBe(200);
});

it('draws by the intervals: without them, time blocks cannot be billed', () => {
  const { value: blocks } = readTariff(text('tarumira/taresco-time-blocks/tariff.json'));
  if (blocks === null) throw new Error('The tariff cannot be read.');
  const alone = putAt(putAt(demo, ['policies'], undefined), ['uncertainty', 'policy'], undefined);
  const own = putAt(alone, ['escalation', 'charges'], { peak: '2' });
  const blocked = { ...job, document: own, tariff: blocks.document };
  expect([...drawBlocks(blocked)].map(({ kind }) => kind)).toEqual(['failed']);
  const news = [...drawBlocks({ ...blocked, profile: yearOf(EVENING_HOUSE) })];
  expect(news.map(({ kind }) => kind)).toEqual(['drawn', 'drawn', 'done']);
});

it('says why there can be no draws', () => {
  const [news] = [...drawBlocks({ ...job, document: putAt(demo, ['plant', 'kWp'], '0') })];
  expect(news?.kind).toBe('failed');
});

it('draws between everything else where there is no worker, and the same', async () => {
  const heard: DrawNews[] = [];
  await new Promise<void>((resolve) => {
    const thread = new DrawThread(
      (news) => {
        heard.push(news);
        if (news.kind === 'done') resolve();
      },
      () => null,
    );
    expect(thread.isApart).toBe(false);
    thread.draw(job);
  });
  expect(heard).toEqual([...drawBlocks(job)]);
});

it('gives up where another quote takes the place of one before', async () => {
  const heard: DrawNews[] = [];
  const thread = new DrawThread(
    (news) => heard.push(news),
    () => null,
  );
  thread.draw(job);
  thread.stop();
  await new Promise((resolve) => setTimeout(resolve, 100));
  expect(heard).toEqual([]);
});

it('tells a worker to stop, once, and hears no more of what it did', () => {
  const told: unknown[] = [];
  const heard: DrawNews[] = [];
  const listeners = new Map<string, (event: unknown) => void>();
  const worker = {
    postMessage: (message: unknown) => told.push(message),
    addEventListener: (type: string, listen: (event: unknown) => void) => listeners.set(type, listen),
  } as unknown as Worker;
  const thread = new DrawThread(
    (news) => heard.push(news),
    () => worker,
  );
  const drawn: DrawNews = { id: job.id, kind: 'drawn', draws: BLOCK };
  thread.draw(job);
  listeners.get('message')?.({ data: drawn });
  thread.stop();
  thread.stop();
  listeners.get('message')?.({ data: drawn });
  expect(told).toEqual([job, null]);
  expect(heard).toEqual([drawn]);
});

it('stops its worker after the block it is in', async () => {
  const posted: DrawNews[] = [];
  let listen: (event: { data: unknown }) => void = () => undefined;
  vi.stubGlobal('postMessage', (news: DrawNews) => posted.push(news));
  vi.stubGlobal('addEventListener', (_type: string, own: typeof listen) => {
    listen = own;
  });
  await import('./draw-worker.ts');
  const soon = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 300));
  listen({ data: { ...job, draws: 1000 * BLOCK } });
  listen({ data: null });
  await soon();
  expect(posted).toEqual([{ id: job.id, kind: 'drawn', draws: BLOCK }]);
  // The next job is drawn to its end.
  listen({ data: { ...job, id: 8 } });
  await vi.waitFor(() => {
    expect(posted.map(({ id, kind }) => `${String(id)} ${kind}`)).toEqual([
      '7 drawn',
      '8 drawn',
      '8 drawn',
      '8 done',
    ]);
  });
  vi.unstubAllGlobals();
});
