import { readTariff, type QuoteDocument, type Tariff } from '@unitbook/engine';
import { emptyHousehold, householdText, type Household } from '@unitbook/form';
import { page } from 'vitest/browser';
import { expect, it, vi } from 'vitest';
import { definePromise } from '../../packages/form/src/quote/promise/define-promise.ts';
import quoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import tariffText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { demoHousehold, drawn, expectAccessible } from './mount.ts';
import { chooseFile, Opened, plain } from './opened.ts';

definePromise();

const quoteDocument = JSON.parse(quoteText) as QuoteDocument;

function tariffOf(text: string): Tariff {
  const { value } = readTariff(text);
  if (value === null) throw new Error('The tariff cannot be read.');
  return value;
}

const tariff = tariffOf(tariffText);

/** The demo tariff with twice the fixed charge: 4 kW × 60.00 = 240.00 a month more. */
const dear = tariffText
  .replaceAll('"rate": "60.00"', '"rate": "120.00"')
  .replace('"name": "Tarumira D-1', '"name": "Tarumira D-2')
  .replace('"id": "tarumira-domestic"', '"id": "tarumira-dear"');

const tariffs = [
  { id: 'tarumira-domestic', name: 'Tarumira D-1', load: () => Promise.resolve(tariffText) },
  { id: 'tarumira-dear', name: 'Tarumira D-2', load: () => Promise.resolve(dear) },
];

const register = { digits: '5', decimals: '1' } as const;

/**
 * The household of tests/command/promise.md: from April to June everything came as quoted; in July 180 units more
 * were used and 28 fewer were made.
 */
const HOUSEHOLD: Household = {
  ...emptyHousehold('en-IN'),
  tariff: 'tarumira-domestic',
  account: {
    format: 'unitbook-account-1',
    id: 'TAR-40-00212',
    locale: 'en-IN',
    sanctionedLoad: '4',
    plantCapacity: '4',
    openingCredit: '0',
    meters: {
      grid: { serial: 'PB-40118', multiplyingFactor: '1', import: register, export: register },
      generation: { serial: 'GN-40119', multiplyingFactor: '1', generation: register },
    },
  },
  readings: [
    { date: '2025-04-01', import: '100.0', export: '0.0', generation: '0.0' },
    { date: '2025-05-01', import: '426.0', export: '316.0', generation: '510.0' },
    { date: '2025-06-01', import: '794.0', export: '629.0', generation: '1015.0' },
    { date: '2025-07-01', import: '1114.0', export: '889.0', generation: '1435.0' },
    { date: '2025-08-01', import: '1590.0', export: '1107.0', generation: '1787.0' },
  ],
};

/** A promise on the page, and what tests do with it. */
class OpenPromise extends Opened<HTMLElementTagNameMap['unitbook-promise']> {
  rows(id: string): string[] {
    return [...this.root.querySelectorAll(`#${id} tbody tr`)].map((row) =>
      [...row.children].map((cell) => plain(cell.textContent)).join(' | '),
    );
  }

  async openFile(text: string, name: string): Promise<void> {
    chooseFile(this.field('promise-open'), text, name);
    await expect.poll(() => this.text('#promise-source') + this.text('#promise-refused')).toContain(name);
    await drawn(this.element);
  }
}

/** Put `<unitbook-promise>` on the page, and look that it is accessible as it is. */
async function mountPromise(
  household: Household = HOUSEHOLD,
  more: Partial<HTMLElementTagNameMap['unitbook-promise']> = {},
) {
  document.body.replaceChildren();
  document.body.style.background = '#fcf8ec';
  const heading = document.createElement('h2');
  heading.textContent = 'The quote';
  const element = document.createElement('unitbook-promise');
  Object.assign(element, { quoteDocument, tariff, tariffs, today: '2025-08-02', household }, more);
  document.body.append(heading, element);
  await drawn(element);
  await drawn(element);
  await expectAccessible();
  return new OpenPromise(element);
}

it('answers first, in one sentence, why the bill is still high', async () => {
  const promise = await mountPromise();
  // By a script apart from the engine, see tests/command/promise.md: +1,132.00 by use, +204.12 by generation.
  expect(promise.text('#promise-why-high')).toBe('Why is my bill still high?');
  expect(promise.text('#promise-answer')).toBe(
    'Your bills came to ₹2,711.24, ₹1,336.12 more than quoted: use +180 units explains ₹1,132.00, generation −28 units explains ₹204.12.',
  );
  expect(promise.text('#promise-saved')).toBe('₹13,847.56');
  expect(promise.text('#promise-note-saved')).toBe(
    'The promise was kept: quoted were ₹13,585.28, ₹262.28 more.',
  );
  expect(promise.text('#promise-note-bills')).toContain('₹16,558.80');
  // 1,787 ÷ 1,815 = 98.457 %
  expect(promise.text('#promise-generation')).toBe('98.46 %');
  expect(promise.text('#promise-note-generation')).toContain('Within what weather does to a promise');
});

it('restates when the price has come back', async () => {
  const promise = await mountPromise();
  expect(promise.text('#promise-payback')).toBe('4.6 years (November 2029)');
  expect(promise.text('#promise-note-payback')).toContain('Quoted: 4.6 years (November 2029).');
  expect(promise.text('#promise-note-payback')).toMatch(/If all goes on as so far: 4\.\d years \(\w+ 2029\)/);
});

it('splits the difference exactly, in the stated order', async () => {
  const promise = await mountPromise();
  expect(promise.rows('promise-causes')).toEqual([
    'Use | +180 | +1,132.00 | +466.40 | 1,990 | 2,170',
    'Generation | −28 | +204.12 | −204.12 | 1,815 | 1,787',
    'Used at home as it is made | −10 | 0.00 | 0.00 | 690 | 680',
    'Charges of the tariff |  | 0.00 | 0.00 |  | ',
    'Rules of the settlement |  | 0.00 | 0.00 |  | ',
    'Together |  | +1,336.12 | +262.28 |  | ',
  ]);
});

it('shows each month as promised and as it came', async () => {
  const promise = await mountPromise();
  const rows = promise.rows('promise-periods');
  expect(rows).toHaveLength(5);
  expect(rows[0]).toBe(
    '1 April 2025 to 1 May 2025 | 520 | 520 | 510 | 510 | 260.80 | 260.80 | 3,679.10 | 3,679.10',
  );
  expect(rows[3]).toBe(
    '1 July 2025 to 1 August 2025 | 430 | 610 | 380 | 352 | 344.00 | 1,680.12 | 2,796.70 | 3,058.98',
  );
});

it('explains the bill of one month', async () => {
  const promise = await mountPromise();
  await promise.choose('promise-period', '3');
  expect(promise.text('#promise-one')).toBe(
    'The bill of 1 July 2025 to 1 August 2025 came to ₹1,680.12, ₹1,336.12 more than quoted: use +180 units explains ₹1,132.00, generation −28 units explains ₹204.12.',
  );
  expect(promise.rows('promise-causes')[0]).toBe('Use | +180 | +1,132.00 | +466.40 | 430 | 610');
  await promise.choose('promise-period', '0');
  expect(promise.text('#promise-one')).toBe(
    'The bill of 1 April 2025 to 1 May 2025 came to ₹260.80, as quoted.',
  );
  await expectAccessible();
});

it('says what another tariff changes, and lets that of the quote make the bills', async () => {
  const promise = await mountPromise({ ...HOUSEHOLD, tariff: 'tarumira-dear' });
  // Four months × 240.00 more in fixed charges, with the plant and without it.
  expect(promise.rows('promise-causes')[3]).toBe('Charges of the tariff |  | +960.00 | 0.00 |  | ');
  expect(promise.text('#promise-answer')).toContain('the charges of the tariff explain ₹960.00');
  await promise.choose('promise-tariff', 'quote');
  expect(promise.rows('promise-causes')[3]).toBe('Charges of the tariff |  | 0.00 | 0.00 |  | ');
});

it('says what to do where there are too few readings', async () => {
  const promise = await mountPromise({ ...HOUSEHOLD, readings: HOUSEHOLD.readings.slice(0, 1) });
  expect(promise.text('#promise-wanted .provided')).toBe(
    'There is 1 reading. Expected: at least two, the first from 1 April 2025 on, when the plant begins. Type them in the book, or open another household’s file.',
  );
  const blank = await mountPromise(emptyHousehold('en-IN'));
  expect(blank.text('#promise-wanted .provided')).toContain('There is no reading.');
});

it('says what is to be set right before the readings make a bill', async () => {
  const readings = HOUSEHOLD.readings.map((row, at) => (at === 1 ? { ...row, import: '4z6' } : row));
  const promise = await mountPromise({ ...HOUSEHOLD, readings });
  expect(promise.text('#promise-wanted .provided')).toContain('These readings make no bill yet.');
  expect(promise.text('#promise-wanted li')).toContain('4z6');
});

it('says what to do where the readings lie before the plant, and tells of those that do', async () => {
  const later = await mountPromise(HOUSEHOLD, { quoteDocument: { ...quoteDocument, start: '2026-04-01' } });
  expect(later.text('[data-code="quote/promise-before-start"]')).toContain(
    'Give the readings since the plant runs',
  );
  expect(later.text('#promise-wanted')).toContain('The plant of the quote runs from 1 April 2026');
  const some = await mountPromise(HOUSEHOLD, { quoteDocument: { ...quoteDocument, start: '2025-06-01' } });
  expect(some.text('.provided')).toContain('2 periods are left out that began earlier');
  expect(some.rows('promise-periods')).toHaveLength(3);
});

it('says what to do where generation was not read', async () => {
  const { generation, ...meters } = HOUSEHOLD.account.meters;
  expect(generation).toBeDefined();
  const promise = await mountPromise({ ...HOUSEHOLD, account: { ...HOUSEHOLD.account, meters } });
  expect(promise.text('[data-code="quote/promise-without-generation"]')).toContain(
    'Type them, or those of the inverter',
  );
});

it('does not set one currency against another', async () => {
  const abroad = JSON.stringify({ ...(JSON.parse(tariffText) as object), currency: 'EUR' });
  const promise = await mountPromise({ ...HOUSEHOLD, tariff: tariffOf(abroad).document });
  expect(promise.text('#promise-wanted')).toContain(
    'The quote is in INR, and the bills of these readings are in EUR',
  );
  await promise.choose('promise-tariff', 'quote');
  expect(promise.text('#promise-answer')).toContain('₹2,711.24');
});

it('waits for the quote', async () => {
  const promise = await mountPromise(HOUSEHOLD, { quoteDocument: null });
  expect(promise.text('#promise-wanted')).toContain('The quote has no answer yet');
});

it('asks whether it is the same plant', async () => {
  const promise = await mountPromise(demoHousehold(), { today: '2026-05-01' });
  expect(promise.text('.provided')).toContain('The book has a plant of 3.3 kWp, the quote one of 4 kWp.');
});

it('takes another household’s file in the place of the book, and goes back', async () => {
  const promise = await mountPromise(demoHousehold(), { today: '2026-05-01' });
  await promise.openFile(householdText(HOUSEHOLD), 'lagoon-street.json');
  await expect.poll(() => promise.text('#promise-answer')).toContain('₹1,336.12 more than quoted');
  expect(promise.text('#promise-source')).toBe(
    'The quote of 10 February 2025, 4 kWp; the readings of “lagoon-street.json”, 1 April 2025 to 1 August 2025.',
  );
  await promise.openFile('{', 'broken.json');
  expect(promise.text('#promise-refused')).toContain(
    '“broken.json” was not opened; the readings are as they were.',
  );
  expect(promise.text('#promise-answer')).toContain('₹1,336.12 more than quoted');
  await expectAccessible();
  promise.field('promise-use-book').click();
  await drawn(promise.element);
  expect(promise.text('#promise-source')).toContain(
    'the readings of the book, 1 April 2025 to 1 April 2026.',
  );
  expect(promise.rows('promise-periods')).toHaveLength(13);
});

it('saves the months as CSV, whose parts sum to the difference', async () => {
  const promise = await mountPromise();
  const click = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(() => undefined);
  promise.field('promise-csv').click();
  const [link] = click.mock.contexts as HTMLAnchorElement[];
  click.mockRestore();
  expect(link?.download).toBe('unitbook-promise.csv');
  const lines = (await (await fetch(link?.href ?? '')).text()).trimEnd().split('\n');
  expect(lines).toHaveLength(5);
  expect(lines[4]).toMatch(/^2025-07-01,2025-08-01,430,610,380,352,/);
  expect(lines[4]).toContain(',1132,204.12,0,0,0,466.4,-204.12,0,0,0');
});

it('fits a phone 360 px wide without scrolling sideways', async () => {
  await page.viewport(360, 740);
  await mountPromise({ ...HOUSEHOLD, tariff: 'tarumira-dear' });
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(360);
  await page.viewport(1280, 900);
});
