import type { QuoteDocument } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import quoteText from '../../../../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import { memory } from '../../../../../tests/support/memory.ts';
import { emptyHousehold } from '../../household/household.ts';
import { keepIn, type Keep } from '../../keep.ts';
import { QuoteStore } from './quote-store.ts';

const demo = JSON.parse(quoteText) as QuoteDocument;

/** A file with the demo's quote, made for somebody else. */
const fileFor = (customer: string): File =>
  new File([JSON.stringify({ ...demo, offer: { ...demo.offer, customer } })], `${customer}.json`);

const keptIn = ({ storage }: ReturnType<typeof memory>): Keep => keepIn(() => storage);

async function opened(keep: Keep | null = keptIn(memory())): Promise<QuoteStore> {
  const store = new QuoteStore({
    keep,
    demo: () => Promise.resolve(quoteText),
    household: emptyHousehold('en-IN'),
    tariffs: [],
    today: '2026-05-01',
    requestUpdate: () => undefined,
  });
  await store.start();
  return store;
}

/** Until what was asked for is fetched. */
const fetched = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

describe('an own quote', () => {
  it('comes back after a file was opened while the demo was shown', async () => {
    const store = await opened();
    await store.deeds.openFile(fileFor('mine'));
    store.deeds.showDemo();
    await fetched();
    expect(store.slot).toBe('demo');
    await store.deeds.openFile(fileFor('another'));
    expect(store.quote.offer.customer).toBe('another');
    expect(store.before?.told).toBe('“another.json” took the place of your own quote.');
    store.deeds.putBack();
    expect([store.slot, store.quote.offer.customer]).toEqual(['own', 'mine']);
    // And it is kept again.
    await store.start();
    expect(store.quote.offer.customer).toBe('mine');
  });

  it('waits to be put back while the demo comes and goes', async () => {
    const store = await opened();
    await store.deeds.openFile(fileFor('mine'));
    await store.deeds.openFile(fileFor('another'));
    store.deeds.showDemo();
    await fetched();
    store.deeds.startOwn();
    store.deeds.putBack();
    expect(store.quote.offer.customer).toBe('mine');
  });

  it('can be put back where a browser keeps nothing', async () => {
    const store = await opened(null);
    await store.deeds.openFile(fileFor('mine'));
    store.deeds.showDemo();
    await fetched();
    store.deeds.putBack();
    expect([store.slot, store.quote.offer.customer]).toEqual(['own', 'mine']);
  });
});
