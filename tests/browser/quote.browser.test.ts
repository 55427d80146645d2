import { page, userEvent } from 'vitest/browser';
import { expect, it } from 'vitest';
import quoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import { drawn, expectAccessible } from './mount.ts';
import { openDemo, openQuote } from './open-quote.ts';
import { plain, saved } from './opened.ts';

it('is accessible with everything open, and on paper', async () => {
  const { quote } = await openDemo();
  await quote.unfold();
  await expect.poll(() => quote.text('#quote-cases'), { timeout: 10_000 }).toContain('As quoted');
  for (const summary of quote.root.querySelectorAll<HTMLElement>('details:not([open]) > summary'))
    summary.click();
  await quote.press('See the quote as it is printed');
  await expectAccessible();
});

it('answers first, with the figures of the demo', async () => {
  const { quote } = await openDemo();
  // 4.597 years, by the scenario worked out apart; 5.912 discounted at 8 %.
  expect(quote.text('#quote-answer-payback')).toBe('4.6 years');
  expect(quote.text('#quote-note-payback')).toContain('Discounted at 8 %: 5.9 years');
  expect(quote.text('#quote-answer-saving')).toBe('₹36,673.88');
  expect(quote.text('#quote-answer-smallest')).toBe('₹240.00');
  expect(quote.text('#quote-answer-cash')).toBe('₹96,000.00');
  expect(quote.text('#quote-note-cash')).toContain('₹54,000.00 comes later');
  expect(quote.text('#quote-answer-instalment')).toBe('₹2,520.22');
  // 34,273.88 − 12 × 2,520.22 = 4,031.24, a twelfth of it.
  expect(quote.text('#quote-note-instalment')).toContain('₹335.94 a month is left in the mean');
  expect(quote.text('.answer-page .caution')).toContain('An estimate, not a guarantee');
});

it('keeps in sight what the answer hangs on', async () => {
  const { quote } = await openDemo();
  const strip = quote.text('.strip');
  for (const text of ['Own use 38 %', '2 % a year', 'Wear 0.6 %', 'Discount rate 8 %', 'Life 25 years'])
    expect(strip).toContain(text);
  const element = quote.root.querySelector('.strip');
  expect(element === null ? '' : getComputedStyle(element).position).toBe('sticky');
});

it('shows the months before and after, exactly', async () => {
  const { quote } = await openDemo();
  // Billed: 286 less 236, once it is worked out.
  await expect
    .poll(() => quote.rows('#quote-months')[3])
    .toBe('July 2025 | 430 | 380 | 144 | 286 | 236 | 50 | 0 | 3,140.70 | 344.00 | 0.00');
  const rows = quote.rows('#quote-months');
  expect(rows[12]).toContain('38,931.60 | 3,336.72 | 1,079.00');
});

it('draws the range on a thread of its own, and gives it once it is there', async () => {
  const { quote } = await openDemo();
  expect(quote.text('.progress')).toContain('of 10,000');
  await expect.poll(() => quote.text('#quote-drawn'), { timeout: 60_000 }).toContain('10,000 draws');
  expect(quote.text('#quote-answer-payback')).toMatch(/^4\.\d to 5\.\d years$/);
  expect(quote.text('#quote-note-payback')).toContain('P50 to P90');
}, 90_000);

it('works out cases and sizes, and warns before a larger plant is sold', async () => {
  const { quote } = await openDemo();
  await expect.poll(() => quote.text('#quote-upsell'), { timeout: 10_000 }).toContain('surplus');
  const rows = quote.rows('#quote-cases');
  expect(rows[0]).toBe('As quoted | 36,673.88 | 4.6 years | 5.9 years | 8,38,507.01 | 2,40,574.80 | 22.01 %');
  expect(rows.at(-1)).toBe(
    'All bad together | 34,853.55 | 5.1 years | 6.8 years | 3,71,751.20 | 97,857.78 | 16.29 %',
  );
  // (37,387.48 − 36,673.88) ÷ (5,797 − 5,520) = 713.60 ÷ 277.
  expect(quote.text('#quote-upsell')).toContain('the step to 4.2 kWp adds earns ₹2.58');
  // 36,673.88 ÷ 5,520 = 6.6438 a unit.
  expect(quote.text('#quote-upsell')).toContain('against ₹6.64');
  expect(quote.text('#quote-warning-list')).toContain('payback that hangs on a subsidy');
});

it('follows a slider that is moved by the keyboard', async () => {
  const { quote } = await openDemo();
  quote.field('quote-discountRate-slider').focus();
  await userEvent.keyboard('{ArrowLeft}{ArrowLeft}');
  await drawn(quote.element);
  expect(quote.field('quote-discountRate').value).toBe('7');
  expect(quote.field('quote-discountRate-slider').getAttribute('aria-valuetext')).toBe('7 %');
  expect(quote.text('#quote-note-payback')).toContain('Discounted at 7 %: 5.7 years');
  await userEvent.keyboard('{ArrowRight}{ArrowRight}');
  await drawn(quote.element);
  expect(quote.text('#quote-note-payback')).toContain('Discounted at 8 %: 5.9 years');
});

it('tries a size without changing the offer', async () => {
  const { quote } = await openDemo();
  await quote.type('quote-trial', '3.5');
  // Table 4 of the scenario: 3.5 kWp saves 34,344.23.
  expect(quote.text('#quote-answer-saving')).toBe('₹34,344.23');
  expect(quote.text('#quote-tried')).toContain('not those of the 4 kWp offered');
  await quote.press('Back to the offer');
  expect(quote.text('#quote-answer-saving')).toBe('₹36,673.88');
});

it('slides all rises at once, and tells of charges that differ', async () => {
  const { quote } = await openDemo();
  await quote.type('quote-rise', '4');
  await quote.unfold();
  expect(quote.field('quote-escalation-charges-fuel').value).toBe('4');
  // Tariff +4 %, 4.436 years.
  expect(quote.text('#quote-answer-payback')).toBe('4.4 years');
  await quote.type('quote-escalation-charges-fuel', '3');
  expect(quote.text('#quote-rise-echo')).toBe('The charges differ.');
  expect(quote.text('.follows')).toContain('Electricity tax follows the charges');
});

const BAD: readonly (readonly [id: string, typed: string, said: string])[] = [
  ['quote-plant-kWp', '0', 'Expected: a number with up to 3 decimals, above 0'],
  ['quote-plant-kWp', '4o', 'Use 40'],
  ['quote-selfUse-share', '140', 'Expected: a number with up to 3 decimals, from 0 up to 100'],
  ['quote-start', '2025-04-02', 'Expected: the first day of a month'],
  ['quote-offer-date', 'last week', 'no day of the calendar'],
  ['quote-price-0-amount', 'much', 'To set right'],
  ['quote-loan-amount', '900000', 'Expected: at most the price'],
  ['quote-loan-months', '400', 'Expected: at most 300'],
  ['quote-upkeep-replacements-0-year', '26', 'Expected: a year from 1 to 25'],
  ['quote-escalation-charges-energy', '90', 'Expected: a number with up to 3 decimals, from -20 up to 40'],
  ['quote-discountRate', '', 'Still to type: discount rate'],
  ['quote-years', '2.5', 'Expected: a whole number'],
  ['quote-uncertainty-use', '75', 'one sigma'],
  ['quote-use-months-01', '-5', 'Expected: a number'],
  ['quote-use-months-01', '400.1234', 'up to 3 decimals'],
];

it.each(BAD)('says beside %s what is wrong with "%s"', async (id, typed, said) => {
  const { quote } = await openDemo();
  await quote.unfold();
  await quote.type(id, typed);
  expect(quote.findings(id)).toContain(said);
  expect(quote.field(id).value).toBe(typed);
  expect(quote.text('#quote-wanted')).toContain('There is no answer yet');
  await expectAccessible();
});

it('tells of everything at once, and leads to each field', async () => {
  const { quote } = await openDemo();
  await quote.unfold();
  await quote.type('quote-plant-kWp', '0');
  await quote.type('quote-loan-rate', 'x');
  await quote.type('quote-use-months-03', '');
  expect(quote.text('#quote-wanted')).toContain('3 still to type or set right');
  expect(quote.text('#quote-use-months-findings')).toContain('No value for March');
  await quote.choose('quote-use-fill', 'neighbours');
  expect(quote.text('#quote-use-months-findings')).toContain('Filled by the mean of the nearest months');
  quote.root.querySelector<HTMLElement>('.wanted-list button')?.click();
  await expect.poll(() => quote.root.activeElement?.id).toMatch(/^quote-(plant-kWp|loan-rate)$/);
});

it('takes out and puts back', async () => {
  const { quote } = await openDemo();
  await quote.unfold();
  await quote.press('There is no loan');
  expect(quote.text('#quote-answer-cash')).toBe('₹2,16,000.00');
  expect(quote.text('.undo')).toContain('The loan was taken out.');
  await quote.press('Put it back');
  expect(quote.text('#quote-answer-cash')).toBe('₹96,000.00');
});

it('saves what it opened, half typed numbers and all', async () => {
  const { quote } = await openDemo();
  const untouched = await saved(() => quote.press('Save the quote as a file'));
  expect(JSON.parse(untouched.text)).toEqual(JSON.parse(quoteText));
  expect(untouched.name).toBe('unitbook-quote-a-household-of-tarumira-invented.json');
  await quote.unfold();
  await quote.type('quote-plant-kWp', '4o');
  await quote.type('quote-offer-promise', 'Five years — “in writing”');
  const first = await saved(() => quote.press('Save the quote as a file'));
  await quote.openFile(first.text);
  const second = await saved(() => quote.press('Save the quote as a file'));
  expect(second.text).toBe(first.text);
  await quote.unfold();
  expect(quote.field('quote-plant-kWp').value).toBe('4o');
});

it.each([
  ['{', 'It is not JSON'],
  ['{"format":"unitbook-household-1"}', 'It is a household, not a quote'],
  ['{"format":"unitbook-quote-9"}', 'this page opens “unitbook-quote-1”'],
  [quoteText.replace('"years": "25"', '"years": 25'), 'years'],
])('refuses another file and keeps the quote, %#', async (text, said) => {
  const { quote } = await openDemo();
  await quote.openFile(text, 'wrong.json');
  expect(quote.text('#quote-refused')).toContain(said);
  expect(quote.text('#quote-refused')).toContain('the quote is as it was');
  expect(quote.text('#quote-answer-saving')).toBe('₹36,673.88');
});

it('keeps a quote of one’s own between visits, and takes the use of the book', async () => {
  const { quote, texts } = await openDemo();
  await quote.press('Start my own quote');
  expect(quote.text('#quote-wanted')).toContain('There is no answer yet');
  await quote.unfold();
  await quote.press('Take the use of the book');
  expect(quote.field('quote-use-months-05').value).not.toBe('');
  await quote.type('quote-plant-kWp', '3,5');
  const kept = Object.fromEntries(texts);
  document.body.replaceChildren();
  const { quote: again } = await openQuote({ start: kept });
  await expect.poll(() => again.text('.shelf .which')).toContain('Your own quote');
  await again.unfold();
  expect(again.field('quote-plant-kWp').value).toBe('3.5');
  expect(again.field('quote-use-months-05').value).not.toBe('');
});

it('saves the figures of each chart as CSV', async () => {
  const { quote } = await openDemo();
  await expect.poll(() => quote.text('#quote-upsell'), { timeout: 10_000 }).toContain('surplus');
  const buttons = [...quote.root.querySelectorAll('button')].filter(
    (one) => plain(one.textContent) === 'Save as CSV',
  );
  const files: string[] = [];
  for (const button of buttons) {
    const { name, text } = await saved(() => {
      button.click();
      return Promise.resolve();
    });
    files.push(name);
    if (name.includes('bills')) expect(text.split('\n')[4]).toBe('July 2025,3140.7,344');
    if (name.includes('sizes')) expect(text).toContain('3.6,34853.55');
  }
  expect(files).toEqual(['bills', 'years', 'cases', 'sizes'].map((name) => `unitbook-quote-${name}.csv`));
});

it('fits a phone 360 px wide without scrolling sideways', async () => {
  await page.viewport(360, 740);
  const { quote } = await openDemo();
  await quote.unfold();
  await quote.press('See the quote as it is printed');
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(360);
  await page.viewport(1280, 900);
});

it('goes back to the book as it was left', async () => {
  const { quote } = await openDemo();
  quote.shelf.getElementById('close-quote')?.click();
  await expect.poll(() => quote.shelf.querySelector('unitbook-quote')).toBe(null);
  await expect.poll(() => quote.shelf.activeElement?.id).toBe('open-quote');
});
