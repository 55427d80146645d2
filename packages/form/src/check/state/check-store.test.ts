import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { memory } from '../../../../../tests/support/memory.ts';
import { keepIn, type Keep } from '../../keep.ts';
import { CheckStore } from './check-store.ts';

const EXAMPLE = new URL('../../../../../tariffs-examples/checks/two-bills.json', import.meta.url);
const demoText = readFileSync(EXAMPLE, 'utf8');

/** A file with one bill, of which something is to be paid. */
const fileWith = (payable: string): File => {
  const bills = [{ from: '2025-05-01', to: '2025-06-01', payable }];
  return new File([JSON.stringify({ ...(JSON.parse(demoText) as object), bills })], `${payable}.json`);
};

const keptIn = ({ storage }: ReturnType<typeof memory>): Keep => keepIn(() => storage);

async function opened(keep: Keep | null = keptIn(memory())): Promise<CheckStore> {
  const store = new CheckStore({
    keep,
    demo: () => Promise.resolve(demoText),
    requestUpdate: () => undefined,
  });
  await store.start();
  return store;
}

const payables = ({ check }: CheckStore): readonly (string | undefined)[] =>
  check.bills.map(({ bill }) => bill.payable);

/** Until what was asked for is fetched. */
const fetched = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

describe('own bills', () => {
  it('come back after a file was opened while the demo was shown', async () => {
    const store = await opened();
    store.startOwn();
    store.changeBill('1', { from: '2025-05-01', to: '2025-06-01', payable: '111' });
    store.showDemo();
    await fetched();
    expect(store.slot).toBe('demo');
    await store.openFile(fileWith('222'));
    expect(payables(store)).toEqual(['222']);
    expect(store.before?.told).toBe('“222.json” took the place of your own bills.');
    store.putBack();
    expect([store.slot, ...payables(store)]).toEqual(['own', '111']);
    // And they are kept again.
    await store.start();
    expect(payables(store)).toEqual(['111']);
  });

  it('wait to be put back while the demo comes and goes', async () => {
    const store = await opened();
    await store.openFile(fileWith('111'));
    await store.openFile(fileWith('222'));
    store.showDemo();
    await fetched();
    store.startOwn();
    expect(payables(store)).toEqual(['222']);
    store.putBack();
    expect(payables(store)).toEqual(['111']);
  });

  it('can be put back where a browser keeps nothing', async () => {
    const store = await opened(null);
    await store.openFile(fileWith('111'));
    store.showDemo();
    await fetched();
    expect(store.slot).toBe('demo');
    store.putBack();
    expect([store.slot, ...payables(store)]).toEqual(['own', '111']);
  });
});

describe('what was taken out', () => {
  const WITH_LINE = {
    from: '2025-05-01',
    to: '2025-06-01',
    lines: [{ charge: 'Meter rent', amount: '20' }],
  };

  it('comes back in turn: a bill, then the line that was taken out of it before', async () => {
    const store = await opened();
    store.startOwn();
    store.changeBill('1', WITH_LINE);
    store.addBill();
    store.takeLine('1', 0, 'The line was taken out.');
    store.takeBill('1', 'The bill was taken out.');
    expect(store.removed).toBe('The bill was taken out.');
    store.undo();
    expect([store.removed, store.open]).toEqual(['The line was taken out.', '1']);
    store.undo();
    expect(store.removed).toBe('');
    expect(store.check.bills[0]?.bill.lines).toEqual(WITH_LINE.lines);
  });

  it('lies open once it is back, whichever bill lay open meanwhile', async () => {
    const store = await opened();
    store.startOwn();
    store.changeBill('1', WITH_LINE);
    store.addBill();
    store.takeLine('1', 0, 'The line was taken out.');
    store.openBill('2');
    store.undo();
    expect(store.open).toBe('1');
  });

  it('comes back into its own bill where another was added meanwhile', async () => {
    const store = await opened();
    store.startOwn();
    store.changeBill('1', WITH_LINE);
    store.takeLine('1', 0, 'The line was taken out.');
    store.takeBill('1', 'The bill was taken out.');
    // In its stead lies a blank bill, and one more is added: neither is taken for it.
    store.addBill();
    store.undo();
    store.undo();
    const held = store.check.bills.filter(({ bill }) => bill.lines !== undefined);
    expect(held.map(({ key, bill }) => [key, bill.from])).toEqual([['1', '2025-05-01']]);
  });
});
