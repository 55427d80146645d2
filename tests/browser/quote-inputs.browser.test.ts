import { page } from 'vitest/browser';
import { afterEach, expect, it } from 'vitest';
import quoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import domesticText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import sellAllText from '../../tariffs-examples/tarumira/taresco-buy-all-sell-all/tariff.json?raw';
import shopText from '../../tariffs-examples/tarumira/taresco-shop/tariff.json?raw';
import { drawn, expectAccessible } from './mount.ts';
import { openDemo, type OpenQuote } from './open-quote.ts';
import { saved } from './opened.ts';

const choice = (id: string, name: string, text: string) => ({ id, name, load: () => Promise.resolve(text) });
const TARIFFS = [
  choice('tarumira-domestic', 'Tarumira D-1', domesticText),
  choice('tarumira-shop', 'Tarumira C-1', shopText),
];
const demo = JSON.parse(quoteText) as Record<string, unknown>;
const withParts = (parts: Readonly<Record<string, unknown>>): string => JSON.stringify({ ...demo, ...parts });

afterEach(async () => {
  await page.viewport(414, 896);
});

async function addBattery(quote: OpenQuote): Promise<void> {
  await quote.unfold();
  await quote.press('There is a battery');
  const texts = { capacity: '5', power: '2.5', efficiency: '100', cost: '60000' };
  for (const [key, text] of Object.entries(texts)) await quote.type(`quote-battery-${key}`, text);
}

it('takes a battery in, gives its own saving and payback, and takes it out with a way back', async () => {
  const { quote } = await openDemo();
  await addBattery(quote);
  // Units given count as much as units taken here: a battery that loses nothing changes no bill.
  expect(quote.text('#quote-answer-saving')).toBe('₹36,673.88');
  expect(quote.text('#quote-answer-battery-saving')).toBe('₹0.00');
  expect(quote.text('#quote-answer-battery-payback')).toBe('not within the life');
  expect(quote.text('#quote-note-battery-payback')).toContain('It costs ₹60,000.00.');
  // 216,000 + 60,000 − 120,000 borrowed.
  expect(quote.text('#quote-answer-cash')).toBe('₹1,56,000.00');
  expect(quote.findings('quote-battery')).toContain('an estimate by the mean day of each month');
  await expectAccessible();
  await quote.press('There is no battery');
  expect(quote.text('#quote-battery-result')).toBe('');
  expect(quote.text('#quote-answer-cash')).toBe('₹96,000.00');
  await quote.press('Put it back');
  expect(quote.text('#quote-answer-cash')).toBe('₹1,56,000.00');
});

it('goes on from the first field where a part is added by the keyboard', async () => {
  const { quote } = await openDemo();
  await quote.unfold();
  await quote.press('There is a battery');
  await expect.poll(() => quote.root.activeElement?.id).toBe('quote-battery-capacity');
  expect(quote.text('#quote-wanted')).toContain('4 still to type or set right');
  await quote.press('It is replaced within the life');
  await expect.poll(() => quote.root.activeElement?.id).toBe('quote-battery-replacement-year');
  await quote.press('It is not replaced');
  expect(quote.text('.undo')).toContain('The next battery was taken out.');
});

it.each([
  ['quote-battery-efficiency', '140', 'the efficiency of the battery in percent'],
  ['quote-battery-capacity', '5o', 'Use 50'],
  ['quote-battery-cost', '', 'Still to type: the price of the battery'],
  ['quote-battery-replacement-year', '30', 'The next battery in year 30. Expected: a year from 1 to 25'],
  ['quote-battery-replacement-year', '2.5', 'Expected: a whole number'],
])('says beside %s what is wrong with "%s"', async (id, typed, said) => {
  const { quote } = await openDemo();
  await addBattery(quote);
  if (id.includes('replacement')) {
    await quote.press('It is replaced within the life');
    await quote.type('quote-battery-replacement-amount', '40000');
  }
  await quote.type(id, typed);
  expect(quote.findings(id)).toContain(said);
  expect(quote.field(id).value).toBe(typed);
  expect(quote.text('#quote-wanted')).toContain('There is no answer yet');
});

it('adds a case, lets its rule be chosen, and says which in words', async () => {
  const { quote } = await openDemo({ tariffs: TARIFFS });
  await quote.unfold();
  const own = (): string => quote.text('#quote-policies-0-settlement-words');
  expect(own()).toBe('“Units sold” paid at ₹3.10 a unit in every period (NMR-2021 r. 7.8).');
  await quote.press('Add a case');
  await expect.poll(() => quote.root.activeElement?.id).toBe('quote-policies-1-name');
  expect(quote.findings('quote-policies-1-name')).toContain('Still to type: what the case is called');
  await quote.type('quote-policies-1-name', 'The shop’s rule from year 5');
  await quote.type('quote-policies-1-from', '5');
  const options = (): string[] => quote.texts('#quote-policies-1-settlement option');
  await expect
    .poll(options)
    .toContain('Tarumira C-1, small shop, net-metered: the rule from 1 April 2024 on');
  expect(options()).toContain('As it came with “Net billing from year 8”');
  expect(quote.text('#quote-policies-1-settlement-words')).toContain('as the tariff settles them');
  await quote.choose('quote-policies-1-settlement', 'tarumira-shop 0');
  expect(quote.text('#quote-policies-1-settlement-words')).toContain(
    'on 31 March surplus is paid at ₹2.60 a unit',
  );
  await expect
    .poll(() => quote.rows('#quote-cases').join(), { timeout: 10_000 })
    .toContain('The shop’s rule');
  // The rule of the shop is that of the household: nothing changes.
  const [asQuoted = '', ...cases] = quote.rows('#quote-cases');
  const shop = cases.find((line) => line.startsWith('The shop’s rule from year 5 |')) ?? '';
  expect(shop.split(' | ').slice(1)).toEqual(asQuoted.split(' | ').slice(1));
  await expectAccessible();
});

it('keeps the rule that came with the file among the choices', async () => {
  const { quote } = await openDemo({ tariffs: TARIFFS });
  await quote.unfold();
  const words = '#quote-policies-0-settlement-words';
  const before = quote.text(words);
  await quote.choose('quote-policies-0-settlement', '');
  expect(quote.text(words)).toContain('as the tariff settles them');
  await quote.choose('quote-policies-0-settlement', 'own 0');
  expect(quote.text(words)).toBe(before);
  const { text } = await saved(() => quote.press('Save the quote as a file'));
  expect((JSON.parse(text) as typeof demo)['policies']).toEqual(demo['policies']);
});

it('takes a case out with a way back, and goes on meaning a case that is renamed', async () => {
  const { quote } = await openDemo({ tariffs: TARIFFS });
  await quote.unfold();
  await quote.type('quote-policies-0-name', 'Net billing');
  expect(quote.field('quote-uncertainty-policy').value).toBe('Net billing');
  expect(quote.text('#quote-answer-payback')).not.toBe('');
  await quote.press('Take this case out');
  expect(quote.text('#quote-wanted')).toContain('Net billing');
  await quote.press('Put it back');
  expect(quote.text('#quote-answer-saving')).toBe('₹36,673.88');
  expect(quote.text('#quote-policies-0-settlement-words')).toContain('₹3.10');
});

it('compares the quote under other tariffs, and saves the table', async () => {
  const { quote } = await openDemo({ tariffs: TARIFFS });
  await quote.unfold();
  quote.field('quote-against-tarumira-shop').click();
  await expect.poll(() => quote.rows('#quote-tariffs').length, { timeout: 15_000 }).toBe(2);
  const [own, shop = ''] = quote.rows('#quote-tariffs');
  expect(own).toBe('Tarumira D-1, domestic, net-metered | 38,931.60 | 3,336.72 | 36,673.88 | 4.6 years');
  // Before: 12 × 4 × 110.00 + 5,300 × (7.00 + 0.40 + 6 % of 7.00) = 46,726.00. After: only April to August bill
  // units, 10 + 55 + 60 + 50 + 20 = 195: 5,280.00 + 195 × 7.82 = 6,804.90. The 415 left in March are paid at 2.60.
  expect(shop).toContain('Tarumira C-1, small shop, net-metered | 46,726.00 | 6,804.90 | 41,000.10 |');
  const csv = await saved(async () => {
    quote.root.querySelector<HTMLElement>('button[aria-label*="under other tariffs"]')?.click();
    await drawn(quote.element);
  });
  expect(csv.name).toBe('unitbook-quote-tariffs.csv');
  expect(csv.text).toContain('"Tarumira C-1, small shop, net-metered",46726,6804.9,41000.1,');
  await expectAccessible();
  quote.field('quote-against-tarumira-shop').click();
  await drawn(quote.element);
  expect(quote.rows('#quote-tariffs')).toEqual([]);
});

it('compares a tariff from its file, and says why one is not compared', async () => {
  const { quote } = await openDemo();
  await quote.unfold();
  quote.give('quote-against-file', '{', 'torn.json');
  await expect.poll(() => quote.text('.inputs-page')).toContain('“torn.json” cannot be used yet');
  const foreign = sellAllText.replace('"currency": "INR"', '"currency": "EUR"');
  quote.give('quote-against-file', foreign, 'foreign.json');
  await expect.poll(() => quote.rows('#quote-tariffs').at(-1), { timeout: 15_000 }).toContain('not compared');
  expect(quote.text('.results-page')).toContain('is not compared: its bills are in EUR.');
  quote.give('quote-against-file', shopText, 'shop.json');
  await expect
    .poll(() => quote.rows('#quote-tariffs').at(-1), { timeout: 15_000 })
    .toContain('46,726.00 | 6,804.90 | 41,000.10');
});

it('opens a quote with the tariff that it names', async () => {
  const { quote } = await openDemo({ tariffs: TARIFFS });
  await quote.openFile(withParts({ tariff: { id: 'tarumira-shop' } }), 'shop-quote.json');
  // As under “compares the quote under other tariffs”.
  await expect.poll(() => quote.text('#quote-answer-saving')).toBe('₹41,000.10');
  await quote.unfold();
  expect(quote.field('quote-tariff').value).toBe('tarumira-shop');
  expect(quote.text('#quote-other-tariff')).toBe('');
});

it('keeps the tariff that lies open where the one that is named is not at hand, and asks', async () => {
  const { quote } = await openDemo({ tariffs: TARIFFS });
  const tariff = { id: 'marlow-7', name: 'Marlow seven' };
  await quote.openFile(withParts({ tariff }), 'marlow.json');
  await quote.unfold();
  expect(quote.text('#quote-answer-saving')).toBe('₹36,673.88');
  expect(quote.text('#quote-other-tariff')).toContain('names the tariff “Marlow seven”');
  expect(quote.text('#quote-other-tariff')).toContain('the bills here are by “Tarumira D-1”');
  await expectAccessible();
  const kept = await saved(() => quote.press('Save the quote as a file'));
  expect(JSON.parse(kept.text)).toMatchObject({ tariff });
  await quote.press('Go on by this one');
  expect(quote.text('#quote-other-tariff')).toBe('');
  const { text } = await saved(() => quote.press('Save the quote as a file'));
  expect(JSON.parse(text)).toMatchObject({ tariff: { id: 'tarumira-domestic', name: 'Tarumira D-1' } });
});

it('names the tariff that is chosen in the quote', async () => {
  const { quote } = await openDemo({ tariffs: TARIFFS });
  await quote.unfold();
  await quote.choose('quote-tariff', 'tarumira-shop');
  const { text } = await saved(() => quote.press('Save the quote as a file'));
  expect(JSON.parse(text)).toMatchObject({ tariff: { id: 'tarumira-shop', name: 'Tarumira C-1' } });
});

const before = (first: Element | null, second: Element | null): boolean =>
  first !== null && second !== null && (first.compareDocumentPosition(second) & 4) !== 0;

it('has the answer before the inputs on a phone, and two of its figures go along', async () => {
  await page.viewport(360, 740);
  const { quote } = await openDemo({ tariffs: TARIFFS });
  const { root } = quote;
  const [answer, inputs] = [root.querySelector('#quote-answer'), root.querySelector('.inputs-page')];
  const [strip, results] = [root.querySelector('.strip'), root.querySelector('.results-page')];
  expect([before(answer, strip), before(strip, inputs), before(inputs, results)]).toEqual([true, true, true]);
  const top = (one: Element | null): number => one?.getBoundingClientRect().top ?? 0;
  expect(top(answer)).toBeLessThan(top(inputs));
  expect(top(inputs)).toBeLessThan(top(results));
  await addBattery(quote);
  quote.field('quote-trial').focus();
  // The strip stays at the top of what is seen, and what is gone to is beneath it.
  expect(top(strip)).toBe(0);
  expect(quote.field('quote-trial').getBoundingClientRect().top).toBeGreaterThanOrEqual(
    strip?.getBoundingClientRect().bottom ?? 0,
  );
  expect(quote.text('#quote-short-payback')).toContain('Paid back after');
  expect(quote.text('#quote-short-saving')).toContain('₹36,673.88');
  quote.field('quote-against-tarumira-shop').click();
  await expect.poll(() => quote.rows('#quote-tariffs').length, { timeout: 15_000 }).toBe(2);
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(360);
  await expectAccessible();
});

it('has the inputs on the left page of a desk, first in order and in sight', async () => {
  await page.viewport(1280, 900);
  const { quote } = await openDemo();
  const { root } = quote;
  const [inputs, results] = [root.querySelector('.inputs-page'), root.querySelector('.results-page')];
  expect(before(inputs, results)).toBe(true);
  expect(inputs?.getBoundingClientRect().right).toBeLessThanOrEqual(
    results?.getBoundingClientRect().left ?? 0,
  );
  expect(root.querySelectorAll('#quote-answer, .strip')).toHaveLength(2);
  quote.field('quote-rise').focus();
  await page.viewport(360, 740);
  await expect.poll(() => root.querySelector('.answer-page')).not.toBe(null);
  await expect.poll(() => root.activeElement?.id).toBe('quote-rise');
  expect(quote.text('#quote-answer-saving')).toBe('₹36,673.88');
});

it('leads to the first of a group of fields, and says in the strip of a phone that there is no answer', async () => {
  const { quote } = await openDemo();
  await quote.unfold();
  await quote.type('quote-use-months-03', '');
  expect(quote.text('.strip')).toBe('There is no answer yet: 1 still to type or set right.');
  quote.root.querySelector<HTMLElement>('.wanted-list button')?.click();
  await expect.poll(() => quote.root.activeElement?.id).toBe('quote-use-months-01');
  await expectAccessible();
});

it('lists the first of what is still wanted, and folds the rest away', async () => {
  const { quote } = await openDemo();
  await quote.press('Start my own quote');
  expect(quote.texts('#quote-wanted > ul > li').length).toBe(5);
  const all = Number(/\d+/.exec(quote.text('#quote-wanted .provided'))?.[0]);
  expect(quote.text('#quote-wanted summary')).toBe(`And ${String(all - 5)} more`);
  expect(quote.texts('#quote-wanted details li').length).toBe(all - 5);
  await expectAccessible();
});
