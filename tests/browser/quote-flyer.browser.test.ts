import { readTariff, type FlyerDocument, type QuoteDocument } from '@unitbook/engine';
import { page, userEvent } from 'vitest/browser';
import { expect, it } from 'vitest';
import { defineFlyer } from '../../packages/form/src/quote/flyer/define-flyer.ts';
import { FLYER_CHANGE } from '../../packages/form/src/quote/flyer/unitbook-flyer.ts';
import quoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import tariffText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { drawn, expectAccessible } from './mount.ts';
import { chooseFile, Opened, plain, saved } from './opened.ts';

defineFlyer();

const quoteDocument = JSON.parse(quoteText) as QuoteDocument;
const tariff = readTariff(tariffText).value;

/** 5,520 units × 8.00 = 44,160.00, the last slab for every unit; 162,000 ÷ 44,160 = 3.67 years. */
const FLYER: FlyerDocument = {
  format: 'unitbook-flyer-1',
  claimedSaving: '44160',
  claimedPayback: '3.7',
  claimedGeneration: '5520',
  claimedRate: '8.00',
  price: '216000',
  netPrice: '162000',
  words: 'Zero bill, saves 44,160 a year',
};

/** A flyer on the page, and what tests do with it. */
class OpenFlyer extends Opened<HTMLElementTagNameMap['unitbook-flyer']> {
  /** What the element told of edits. */
  readonly told: FlyerDocument[] = [];

  constructor(element: HTMLElementTagNameMap['unitbook-flyer']) {
    super(element);
    element.addEventListener(FLYER_CHANGE, (event) => {
      this.told.push((event as CustomEvent<FlyerDocument>).detail);
    });
  }

  /** The figures of a line, cell by cell. */
  line(key: string): string {
    const row = this.root.querySelectorAll(`[data-line="${key}"] tr`)[1];
    return [...(row?.children ?? [])].map((cell) => plain(cell.textContent)).join(' | ');
  }

  /** The codes of what is asked about a line. */
  asks(key: string): string[] {
    const asks = this.root.querySelectorAll<HTMLElement>(`[data-line="${key}"] [data-code]`);
    return [...asks].map((one) => one.dataset['code'] ?? '');
  }

  override type(key: string, text: string): Promise<void> {
    return super.type(`flyer-${key}`, text);
  }

  async openFile(text: string, name = 'flyer.json'): Promise<void> {
    chooseFile(this.field('flyer-open'), text, name);
    await new Promise((resolve) => setTimeout(resolve, 20));
    await drawn(this.element);
  }

  /** The text of the file that a button saves. */
  saved(id: string): Promise<{ name: string; text: string }> {
    return saved(() => this.pressAt(id));
  }
}

/** Put `<unitbook-flyer>` on the page beside the invented quote, and look that it is accessible as it is. */
async function mountFlyer(flyer?: FlyerDocument, quote: QuoteDocument | null = quoteDocument) {
  document.body.replaceChildren();
  document.body.style.background = '#fcf8ec';
  const heading = document.createElement('h2');
  heading.textContent = 'The quote';
  const element = document.createElement('unitbook-flyer');
  element.quoteDocument = quote;
  element.tariff = tariff;
  if (flyer !== undefined) element.flyer = flyer;
  document.body.append(heading, element);
  await drawn(element);
  await expectAccessible();
  return new OpenFlyer(element);
}

it('sets each line beside the quote, in the order of the form', async () => {
  const flyer = await mountFlyer(FLYER);
  // Figures of the quote: tests/command/quote.md. 44,160 − 36,673.88 = 7,486.12; 36,673.88 ÷ 5,520 = 6.64.
  expect(flyer.line('claimedSaving')).toBe('₹44,160.00 | ₹36,673.88 | +₹7,486.12');
  expect(flyer.line('claimedPayback')).toBe('3.7 years | 4.6 years | −0.9 years');
  expect(flyer.line('claimedGeneration')).toBe('5,520 | 5,520 | the same');
  expect(flyer.line('claimedRate')).toBe('₹8.00 | ₹6.64 | +₹1.36');
  expect(flyer.line('price')).toBe('₹2,16,000.00 | ₹2,16,000.00 | the same');
  expect(flyer.line('netPrice')).toBe('₹1,62,000.00 | ₹1,62,000.00 | the same');
  const lines = [...flyer.root.querySelectorAll<HTMLElement>('[data-line]')];
  expect(lines.map((line) => line.dataset['line'])).toEqual([
    'price',
    'netPrice',
    'claimedGeneration',
    'claimedSaving',
    'claimedRate',
    'claimedPayback',
    'words',
  ]);
});

it('says what to ask beneath the line that it is about', async () => {
  const flyer = await mountFlyer(FLYER);
  expect(flyer.asks('claimedSaving')).toEqual([
    'quote/flyer-saving-above-bills',
    'quote/flyer-top-rate',
    'quote/flyer-fixed-charges',
  ]);
  expect(flyer.asks('claimedPayback')).toEqual(['quote/flyer-no-upkeep']);
  expect(flyer.asks('claimedRate')).toEqual(['quote/flyer-surplus-at-retail']);
  expect(flyer.asks('netPrice')).toEqual(['quote/flyer-subsidy-assumed']);
  expect(flyer.text('#flyer-answer')).toBe('There are 6 things to ask about this flyer.');
  // 38,931.60 is the sum of the bills without a plant; 2,880.00 = 12 × 4 kW × 60.00.
  const said = flyer.text('[data-code="quote/flyer-saving-above-bills"]');
  expect(said).toContain(
    'A saving of 44,160 a year. Expected: at most the bills of a year without the plant, 38,931.60',
  );
  expect(said).toContain('Ask which bills it was worked out from.');
  expect(flyer.text('[data-code="quote/flyer-fixed-charges"]')).toContain(
    '2,880.00 a year that stay on the bills',
  );
});

it('takes numbers as a flyer prints them, and says how they were read', async () => {
  const flyer = await mountFlyer();
  expect(flyer.text('#flyer-answer')).toContain('Type in what the flyer says');
  await flyer.type('claimedSaving', 'Rs 44,160/-');
  expect(flyer.text('#flyer-claimedSaving-echo')).toBe('Read as 44,160');
  expect(flyer.field('flyer-claimedSaving').value).toBe('Rs 44,160/-');
  await flyer.type('price', '216,000');
  expect(flyer.text('#flyer-price-echo')).toBe('Read as 2,16,000');
  expect(flyer.line('price')).toBe('₹2,16,000.00 | ₹2,16,000.00 | the same');
  await flyer.type('claimedGeneration', '5,520 kWh');
  expect(flyer.text('#flyer-claimedGeneration-echo')).toBe('Read as 5,520');
  expect(flyer.told.at(-1)).toEqual({
    format: 'unitbook-flyer-1',
    claimedGeneration: '5,520 kWh',
    claimedSaving: 'Rs 44,160/-',
    price: '216,000',
  });
});

it('tells a line that is wrong where it stands, and checks the others', async () => {
  const flyer = await mountFlyer(FLYER);
  await flyer.type('claimedPayback', '3.7 summers');
  expect(flyer.text('#flyer-claimedPayback-findings')).toContain('To set right');
  expect(flyer.field('flyer-claimedPayback').value).toBe('3.7 summers');
  expect(flyer.field('flyer-claimedPayback').getAttribute('aria-invalid')).toBe('true');
  expect(flyer.line('claimedPayback')).toBe('');
  expect(flyer.line('claimedSaving')).toBe('₹44,160.00 | ₹36,673.88 | +₹7,486.12');
  expect(flyer.text('#flyer-left-out')).toContain('1 line is not checked yet');
  await flyer.type('claimedPayback', '101');
  expect(flyer.text('#flyer-claimedPayback-findings')).toContain('from 0 up to 100');
  await flyer.type('claimedRate', '6,640');
  expect(flyer.text('#flyer-claimedRate-findings')).toContain('Use 6.64');
  await expectAccessible();
  const use = [...flyer.root.querySelectorAll('#flyer-claimedRate-findings button')];
  (use[1] as HTMLButtonElement).click();
  await drawn(flyer.element);
  expect(flyer.field('flyer-claimedRate').value).toBe('6.640');
  expect(flyer.line('claimedRate')).toBe('₹6.64 | ₹6.644 | −₹0.004');
  expect(flyer.root.activeElement?.id).toBe('flyer-claimedRate');
});

it('calls a number wrong only once it is left', async () => {
  const flyer = await mountFlyer();
  flyer.field('flyer-price').focus();
  await userEvent.keyboard('21.');
  await drawn(flyer.element);
  expect(flyer.text('#flyer-price-findings')).toContain('Still to type');
  expect(flyer.field('flyer-price').getAttribute('aria-invalid')).toBe('false');
  await userEvent.keyboard('5');
  await userEvent.tab();
  expect(flyer.line('price')).toBe('₹21.50 | ₹2,16,000.00 | −₹2,15,978.50');
  expect(flyer.root.activeElement?.id).toBe('flyer-subsidy');
});

it('asks about words that promise too much, and about a steep rise', async () => {
  const flyer = await mountFlyer();
  await flyer.type('words', 'Free power, guaranteed');
  await flyer.type('escalation', '5');
  expect(flyer.asks('words')).toEqual(['quote/flyer-words']);
  expect(flyer.asks('escalation')).toEqual(['quote/flyer-rise']);
  expect(flyer.line('escalation')).toBe('5 % | 2 % | +3 %');
  expect(flyer.text('#flyer-answer')).toBe('There are 2 things to ask about this flyer.');
});

it('waits for the quote, and keeps what was typed meanwhile', async () => {
  const flyer = await mountFlyer(FLYER, null);
  expect(flyer.text('#flyer-answer')).toContain('The quote beside it has no answer yet');
  expect(flyer.root.querySelector('#flyer-lines')).toBe(null);
  expect(flyer.field('flyer-claimedSaving').value).toBe('44160');
  flyer.element.quoteDocument = quoteDocument;
  await drawn(flyer.element);
  expect(flyer.line('claimedSaving')).toBe('₹44,160.00 | ₹36,673.88 | +₹7,486.12');
});

it('is taken out and put back, and another file’s flyer can be put back, too', async () => {
  const flyer = await mountFlyer(FLYER);
  await flyer.pressAt('flyer-take-out');
  expect(flyer.field('flyer-claimedSaving').value).toBe('');
  expect(flyer.root.activeElement?.id).toBe('flyer-put-back');
  await flyer.type('price', '1');
  await flyer.pressAt('flyer-put-back');
  expect(flyer.told.at(-1)).toEqual(FLYER);
  // What was typed meanwhile is not lost either.
  await flyer.pressAt('flyer-put-back');
  expect(flyer.field('flyer-price').value).toBe('1');
  await flyer.openFile(JSON.stringify(FLYER), 'rival.json');
  expect(flyer.text('.undo')).toContain('“rival.json” took the place of the flyer before.');
  expect(flyer.line('claimedPayback')).toBe('3.7 years | 4.6 years | −0.9 years');
});

it('saves what the command reads, and opens it again', async () => {
  const flyer = await mountFlyer(FLYER);
  await flyer.type('claimedSaving', 'Rs 44,160/-');
  const { name, text } = await flyer.saved('flyer-save');
  expect(name).toBe('unitbook-flyer.json');
  expect(JSON.parse(text)).toEqual(FLYER);
  await flyer.pressAt('flyer-take-out');
  await flyer.openFile(text);
  expect(flyer.told.at(-1)).toEqual(FLYER);
});

it.each([
  ['{', 'It is not JSON'],
  ['{"format":"unitbook-quote-1"}', 'It is in the form “unitbook-quote-1”'],
  ['{"format":"unitbook-flyer-1","claimedSaving":44160}', 'claimedSaving'],
  ['{"format":"unitbook-flyer-1","claimedSavings":"44160"}', 'claimedSavings'],
])('refuses another file and keeps the flyer, %#', async (text, said) => {
  const flyer = await mountFlyer(FLYER);
  await flyer.openFile(text, 'wrong.json');
  expect(flyer.text('#flyer-refused')).toContain('“wrong.json” was not opened; the flyer is as it was.');
  expect(flyer.text('#flyer-refused')).toContain(said);
  expect(flyer.field('flyer-claimedSaving').value).toBe('44160');
  expect(flyer.told).toEqual([]);
  await expectAccessible();
});

it('saves the table as CSV, with exact decimals', async () => {
  const flyer = await mountFlyer(FLYER);
  const { name, text } = await flyer.saved('flyer-csv');
  expect(name).toBe('unitbook-flyer.csv');
  const lines = text.trimEnd().split('\n');
  expect(lines[0]).toBe('Line,The flyer says,This quote says,The flyer says more by,To ask');
  expect(lines).toHaveLength(8);
  expect(lines[4]).toMatch(/^Saved in a year,44160,36673\.88,7486\.12,"A saving of 44,160 a year\./);
  expect(lines[7]).toMatch(/^Its words,"Zero bill, saves 44,160 a year",,,/);
});

it('fits a phone 360 px wide without scrolling sideways', async () => {
  await page.viewport(360, 740);
  const flyer = await mountFlyer(FLYER);
  await flyer.type('claimedPayback', '3.7 summers');
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(360);
  const table = flyer.field('flyer-lines');
  expect(table.scrollWidth).toBeLessThanOrEqual(table.clientWidth);
  await page.viewport(1280, 900);
});
