import { emptyHousehold, householdText, type Household } from '@unitbook/form';
import { expect, it, vi } from 'vitest';
import quoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import { drawn, expectAccessible } from './mount.ts';
import { openDemo, type OpenQuote } from './open-quote.ts';
import { plain } from './opened.ts';

/** Open a part that lies beside the quote, and wait until it is there. */
async function openPart(quote: OpenQuote, part: 'flyer' | 'promise'): Promise<ShadowRoot> {
  quote.root.querySelector<HTMLElement>(`.beside[data-part="${part}"] summary`)?.click();
  const find = (): ShadowRoot | null => quote.root.querySelector(`unitbook-${part}`)?.shadowRoot ?? null;
  await expect.poll(find, { timeout: 10_000 }).not.toBeNull();
  await drawn(quote.element);
  const root = find();
  if (root === null) throw new Error('The part was not drawn.');
  return root;
}

async function type(root: ShadowRoot, id: string, text: string): Promise<void> {
  const field = root.getElementById(id) as HTMLInputElement;
  field.focus();
  field.value = text;
  field.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
  field.blur();
  await new Promise((resolve) => {
    setTimeout(resolve, 50);
  });
}

it('sets a flyer beside the quote, line by line', async () => {
  const { quote } = await openDemo();
  const root = await openPart(quote, 'flyer');
  await expectAccessible();
  await type(root, 'flyer-price', '2,00,000');
  // The quote's price is 2,16,000.
  await expect.poll(() => plain(root.textContent)).toContain('₹2,00,000.00');
  expect(plain(root.textContent)).toContain('₹2,16,000.00');
});

it('keeps what was typed of a flyer with a quote of one’s own', async () => {
  const flyer = { format: 'unitbook-flyer-1', price: '2,00,000' };
  const kept = { quote: JSON.parse(quoteText) as unknown, tariff: 'tarumira-domestic', flyer };
  const { quote, texts } = await openDemo({ start: { 'unitbook-quote': JSON.stringify(kept) } });
  const root = await openPart(quote, 'flyer');
  await expect
    .poll(() => (root.getElementById('flyer-price') as HTMLInputElement | null)?.value)
    .toBe('2,00,000');
  await type(root, 'flyer-claimedPayback', '3.7');
  await expect.poll(() => texts.get('unitbook-quote') ?? '').toContain('"claimedPayback":"3.7"');
});

it('asks for readings before it says whether the promise was kept', async () => {
  const bare: Household = { ...emptyHousehold('en-IN'), tariff: 'tarumira-domestic' };
  const start = { 'unitbook-own': householdText(bare), 'unitbook-open': 'own' };
  const { quote } = await openDemo({ start });
  const root = await openPart(quote, 'promise');
  await expectAccessible();
  expect(plain(root.querySelector('#promise-wanted .provided')?.textContent)).toBe(
    'There is no reading. Expected: at least two, the first from 1 April 2025 on, when the plant begins. ' +
      'Type them in the book, or open another household’s file.',
  );
  expect(root.querySelector('#promise-answer')).toBe(null);
});

it('sets the readings of the book against the quote', async () => {
  const { quote } = await openDemo();
  const root = await openPart(quote, 'promise');
  expect(root.querySelector('#promise-wanted')).toBe(null);
  // The demo's twelve bills, with 38,931.60 without a plant by the quote, and 3,336.72 with it.
  expect(plain(root.querySelector('#promise-note-bills')?.textContent)).toContain('Quoted were ₹3,336.72.');
});

it('prints one part alone, and the quote again after it', async () => {
  const { quote } = await openDemo();
  await openPart(quote, 'flyer');
  const seen: string[] = [];
  const print = vi.spyOn(window, 'print').mockImplementation(() => {
    seen.push(quote.element.dataset['print'] ?? '');
  });
  await quote.press('Print this part');
  print.mockRestore();
  expect(seen).toEqual(['flyer']);
  expect(quote.element.dataset['print']).toBeUndefined();
});
