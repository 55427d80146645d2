import { readCheck, type PrintedBillDocument } from '@unitbook/engine';
import { page, userEvent } from 'vitest/browser';
import { expect, it, vi } from 'vitest';
import billsText from '../../tariffs-examples/checks/two-bills.json?raw';
import disputeText from '../../tariffs-examples/disputes/tarumira.json?raw';
import { drawn, expectAccessible } from './mount.ts';
import { openCheck, type OpenCheck } from './open-check.ts';
import { chooseFile, saved } from './opened.ts';

// Two acceptance scenarios, in an invented place (project reference, 2025), section 6.1: right is Rs 230 with 24 units
// billed, printed is Rs 546 with 82; credit not brought forward adds 229.70, the surcharge on import 86.40.

/** The invented bills with other ones in their place. */
function fileWith(
  bills: readonly PrintedBillDocument[],
  more: Readonly<Record<string, unknown>> = {},
): string {
  return JSON.stringify({ ...(JSON.parse(billsText) as object), ...more, bills });
}

const MAY = { from: '2025-05-01', to: '2025-06-01' } as const;
const LAST_READINGS = (JSON.parse(billsText) as { readings: object[] }).readings.slice(1);

/** A line of those that differ: printed, right, and by how much. */
function line(check: OpenCheck, name: string): string {
  const cells = check.root.querySelectorAll(`[data-line="${name}"] .amount`);
  return [...cells].map((cell) => (cell.lastChild?.textContent ?? '').trim()).join(' | ');
}

it('says first what is wrong, then which lines, then why and how sure that is', async () => {
  const { check } = await openCheck();
  expect(check.text('#check-verdict')).toBe('₹316 too much.');
  expect(check.text('#check-should')).toBe('It should be ₹230.');
  expect(line(check, 'payable')).toBe('546.00 | 230.00 | +316.00');
  expect(line(check, 'line.energy')).toBe('303.60 | 72.00 | +231.60');
  expect(line(check, 'line.fuel')).toBe('119.20 | 9.60 | +109.60');
  // What agrees is not among them.
  expect(check.root.querySelector('[data-line="line.fixed"]')).toBe(null);
  const causes = check.texts('.cause');
  expect(causes).toHaveLength(2);
  expect(causes[0]).toContain('Credit not brought forward (+₹229.70):');
  expect(causes[1]).toContain('(+₹86.40):');
  expect(check.text('.confidence')).toContain('Proven:');
  // 229.70 + 86.40 − 0.10 = 316
  expect(check.texts('.parts td')).toEqual(['+₹229.70', '+₹86.40', '−₹0.10', '+₹316']);
});

it('opens each right figure to how it comes about', async () => {
  const { check } = await openCheck();
  check.root.querySelector<HTMLElement>('[data-line="line.fuel"] summary')?.click();
  await check.settled();
  await expect.poll(() => check.text('[data-line="line.fuel"] .how')).toContain('24 units × ₹0.40 per unit');
  expect(check.text('[data-line="line.fuel"] .how')).toContain('TO-2024 cl. 5.1');
  await expectAccessible();
});

it('finds the bill of April right', async () => {
  const { check } = await openCheck();
  expect(check.texts('button.bill strong')).toEqual(['right', '₹316 too much']);
  await check.openBill(0);
  expect(check.text('#check-verdict')).toBe('Your bill looks right.');
  expect(check.root.querySelector('#check-lines')).toBe(null);
  // Fixed charges stay where nothing is billed: reference "causes" (project reference, 2025), 2.6, S3.
  expect(check.root.querySelector('[data-surprise="standing-charges"]')).not.toBe(null);
  await expectAccessible();
});

it('sets the right figure beside each printed one, and marks what differs in ink and sign', async () => {
  const { check } = await openCheck();
  const row = check.root.querySelector('[data-figure="units.billed"]');
  expect(row?.classList.contains('differs')).toBe(true);
  expect(row?.querySelector('.computed .amount')?.textContent).toBe('24');
  expect(row?.querySelector('.off')?.textContent).toContain('+58');
  const right = check.root.querySelector('[data-figure="line.fixed"]');
  expect(right?.classList.contains('differs')).toBe(false);
  expect(right?.querySelector('.computed .amount')?.textContent).toBe('180.00');
});

it('takes numbers as a bill prints them, says how they were read, and keeps them as typed', async () => {
  const { check } = await openCheck();
  await check.type('check-payable', 'Rs 546/-');
  expect(check.text('#check-payable-echo')).toBe('Read as 546');
  await check.type('check-line-subsidy', '−75.00');
  await check.type('check-sum', '1,158');
  // A sum has at most two decimals: this can only be grouped.
  expect(check.text('#check-sum-echo')).toBe('Read as 1,158');
  await check.type('check-sum', '546.02');
  await check.type('check-from', '1 May 2025');
  expect(check.text('#check-from-echo')).toBe('1 May 2025');
  await check.settled();
  expect(check.field('check-payable').value).toBe('Rs 546/-');
  expect(check.field('check-line-subsidy').value).toBe('−75.00');
  expect(check.text('#check-verdict')).toBe('₹316 too much.');
  const { name, text } = await saved(() => check.pressAt('check-save'));
  expect(name).toBe('unitbook-bills-TAR-30-00417.json');
  const bill = (JSON.parse(text) as { bills: PrintedBillDocument[] }).bills[1];
  expect([bill?.payable, bill?.from, bill?.lines?.at(-1)]).toEqual([
    '546',
    '2025-05-01',
    { charge: 'subsidy', amount: '-75.00' },
  ]);
});

it('offers the minus of a line that was typed without it', async () => {
  const { check } = await openCheck();
  await check.openBill(1);
  // 24 billed units × −1.50 = −36.00.
  await check.type('check-line-subsidy', '36.00');
  await check.settled();
  const offer = check.root.querySelector<HTMLElement>('[data-figure="line.subsidy"] .fixes button');
  expect(offer?.textContent.trim()).toBe('Use −36');
  offer?.click();
  await check.settled();
  expect(check.field('check-line-subsidy').value).toBe('-36.00');
  expect(line(check, 'line.subsidy')).toBe('');
});

it('tells of a number that cannot be read once it is left, and checks everything else meanwhile', async () => {
  const { check } = await openCheck();
  check.field('check-line-tax').focus();
  await userEvent.fill(check.field('check-line-tax'), '18.22 or so');
  expect(check.root.querySelector('#check-line-tax-findings')).toBe(null);
  await userEvent.tab();
  await check.settled();
  expect(check.text('#check-line-tax-findings')).toContain('To set right');
  expect(check.field('check-line-tax').getAttribute('aria-invalid')).toBe('true');
  expect(check.field('check-line-tax').value).toBe('18.22 or so');
  expect(check.text('#check-verdict')).toBe('₹316 too much.');
  expect(line(check, 'line.tax')).toBe('');
  await expectAccessible();
});

it('says what a bill should be where only its days are known', async () => {
  const { check } = await openCheck({ demo: fileWith([MAY]) });
  expect(check.text('#check-verdict')).toBe('It cannot be told yet.');
  expect(check.text('#check-should')).toContain('It should be ₹230. Add what the bill prints');
});

it('answers with what it comes to where nobody knows the credit brought forward', async () => {
  const bill = { ...MAY, opening: { credit: '58' } };
  const { check } = await openCheck({
    demo: fileWith([bill], { readings: LAST_READINGS, opening: 'unknown' }),
  });
  // Section 6.1, third path: Rs 230 if 58 were carried, Rs 460 if none.
  expect(check.text('#check-verdict')).toContain('₹460 if nothing was brought forward');
  expect(check.text('#check-verdict')).toContain('₹230 if 58 units were brought forward');
  expect(check.text('#check-should')).toContain('closing credit of the bill before');
});

it('calls a cause possible where only the total is printed', async () => {
  // Section 6.1: Rs 460 where none was carried, Rs 230 is right.
  const { check } = await openCheck({ demo: fileWith([{ ...MAY, payable: '460' }]) });
  expect(check.text('#check-verdict')).toBe('₹230 too much.');
  expect(check.texts('.cause')[0]).toContain('Credit not brought forward (+₹229.70):');
  expect(check.texts('.confidence').every((one) => one.startsWith('Possible:'))).toBe(true);
});

it('says so where no known mistake makes the figures', async () => {
  const bill = { ...MAY, lines: [{ charge: 'fixed', amount: '181.37' }], payable: '231' };
  const { check } = await openCheck({ demo: fileWith([bill]) });
  expect(check.text('#check-unexplained')).toBe('Not explained');
  expect(check.root.querySelector('.cause')).toBe(null);
  expect(line(check, 'line.fixed')).toBe('181.37 | 180.00 | +1.37');
  await expectAccessible();
});

it('writes the memo and the letter, with interest by the rules of the place', async () => {
  const { check } = await openCheck();
  await expect.poll(() => check.text('.letter')).toContain('TAR-30-00417');
  // Section 6.1: 316 × 9 % × 60/365 = 4.68, up to 17 August 2025.
  expect(check.text('.letter')).toContain('₹4.68');
  expect(check.text('.letter')).toContain('17 August 2025');
  expect(check.text('.memo [data-section="scope"]')).toContain('2 printed bills');
  expect(check.text('.memo')).toContain('Credit not brought forward');
  await expectAccessible();
});

it('prints the page, the memo or the letter by itself', async () => {
  const { check } = await openCheck();
  await expect.poll(() => check.text('.letter')).not.toBe('');
  const sheets: string[] = [];
  const print = vi.spyOn(window, 'print').mockImplementation(() => {
    sheets.push(
      check.root.querySelector('.check-book')?.className.replace('book check-book', '').trim() ?? '',
    );
    window.dispatchEvent(new Event('afterprint'));
  });
  await check.pressAt('check-print');
  await check.pressAt('check-print-memo');
  await check.pressAt('check-print-letter');
  print.mockRestore();
  expect(sheets).toEqual(['', 'prints-memo', 'prints-letter']);
  expect(check.root.querySelector('.check-book')?.className.trim()).toBe('book check-book');
});

it('has no letter where no bill is wrong', async () => {
  const { bills } = JSON.parse(billsText) as { bills: PrintedBillDocument[] };
  const { check } = await openCheck({ demo: fileWith(bills.slice(0, 1)) });
  await expect.poll(() => check.text('.memo')).toContain('No bill was found wrong.');
  expect(check.root.querySelector('.letter')).toBe(null);
});

it('ticks the evidence that is held', async () => {
  const { check } = await openCheck();
  const before = check.texts('.evidence li');
  expect(before.length).toBeGreaterThan(0);
  expect(before.every((one) => one.endsWith(', to get'))).toBe(true);
  await check.pressAt('check-held-0');
  expect(check.texts('.evidence li')[0]).toContain(', held');
});

it('adds bills, orders them by their days, takes them out and puts them back', async () => {
  const { check } = await openCheck();
  await check.pressAt('check-add-bill');
  expect(check.field('check-from').value).toBe('2025-06-01');
  await check.type('check-from', '1 March 2025');
  await check.type('check-to', '2025-04-01');
  await check.settled();
  const days = check.texts('button.bill span');
  expect(days[0]).toContain('1 March 2025 to 1 April 2025 (31 days)');
  expect(days).toHaveLength(3);
  // The one that is typed stays open wherever it stands.
  expect(check.field('check-to').value).toBe('2025-04-01');
  await check.pressAt('check-take-bill');
  expect(check.texts('button.bill')).toHaveLength(2);
  await expect.poll(() => check.root.activeElement?.id).toBe('check-undo');
  await check.pressAt('check-undo');
  expect(check.texts('button.bill span')[0]).toContain('1 March 2025');
  expect(check.field('check-from').value).toBe('1 March 2025');
});

it('has lines that the tariff does not have', async () => {
  const { check } = await openCheck();
  await check.pressAt('check-add-line');
  const name = check.field('check-line-other-1-name');
  name.value = 'Meter rent';
  name.dispatchEvent(new Event('change'));
  await drawn(check.element);
  await check.type('check-line-other-1', '20.00');
  await check.settled();
  expect(check.text('[data-figure="line.Meter rent"] label:not([for$="-name"])')).toBe('Meter rent');
  expect(check.text('[data-figure="line.Meter rent"] .off')).toContain('+20.00');
  await expectAccessible();
  check.root.querySelector<HTMLElement>('.name button')?.click();
  await check.settled();
  expect(check.root.querySelector('[data-figure="line.Meter rent"]')).toBe(null);
  await check.pressAt('check-undo');
  expect(check.field('check-line-other-1').value).toBe('20.00');
});

it('writes a file that the engine reads whole, and opens it again', async () => {
  const { check } = await openCheck();
  const { text } = await saved(() => check.pressAt('check-save'));
  const read = readCheck(text);
  expect(read.findings).toEqual([]);
  expect(read.value.bills).toHaveLength(2);
  await check.openFile(text, 'mine.json');
  await check.settled();
  expect(check.text('.which')).toContain('Your own bills');
  expect(check.text('#check-verdict')).toBe('₹316 too much.');
  await check.pressAt('check-put-back');
  expect(check.text('.which')).toContain('Demo');
});

it.each([
  ['{', 'It is not JSON'],
  ['{"format":"unitbook-household-1"}', 'A household is opened in the book.'],
  [fileWith([{ ...MAY, payabel: '546' } as PrintedBillDocument]), 'payabel'],
  [fileWith([{ ...MAY, payable: 546 } as never]), 'payable'],
])('refuses another file and keeps the bills, %#', async (text, said) => {
  const { check } = await openCheck();
  await check.openFile(text, 'wrong.json');
  expect(check.text('#check-refused')).toContain('“wrong.json” was not opened');
  expect(check.text('#check-refused')).toContain(said);
  expect(check.text('#check-verdict')).toBe('₹316 too much.');
});

it('keeps one’s own bills in the browser, checked against the book', async () => {
  const { check, texts } = await openCheck({ demo: '' });
  expect(check.text('#check-verdict')).toContain('Type a printed bill in');
  await check.type('check-from', '2025-05-01');
  await check.type('check-to', '2025-06-01');
  await check.type('check-payable', 'Rs 546/-');
  await check.settled();
  // The book of the demo is the household of section 6.1: with 58 units carried, Rs 230 is right.
  expect(check.text('#check-verdict')).toBe('₹316 too much.');
  const kept = texts.get('unitbook-check') ?? '';
  expect(kept).toContain('Rs 546/-');
  const again = await openCheck({ demo: '', start: { 'unitbook-check': kept } });
  expect(again.check.field('check-payable').value).toBe('Rs 546/-');
});

it('puts aside what was kept and cannot be opened', async () => {
  const { check, texts } = await openCheck({ start: { 'unitbook-check': '{"isOfBook":' } });
  expect(check.text('.which')).toContain('Demo');
  expect([...texts.values()].filter((text) => text === '{"isOfBook":')).toHaveLength(2);
});

it('goes by rules of a file, and says why another cannot be used', async () => {
  const { check } = await openCheck();
  await expect.poll(() => check.text('#check-rules')).toContain('Disputed bills of TARESCO');
  const give = (text: string, name: string): void => {
    chooseFile(check.field('check-rules-file'), text, name);
  };
  give('{}', 'none.json');
  await expect.poll(() => check.text('.sheets-page .finding.error')).toContain('“none.json” cannot be used:');
  expect(check.text('#check-rules')).toContain('Disputed bills of TARESCO');
  give(disputeText.replace('Disputed bills of TARESCO', 'Rules of the village'), 'village.json');
  await expect.poll(() => check.text('#check-rules')).toBe('By “Rules of the village”.');
  expect(check.root.querySelector('.sheets-page .finding.error')).toBe(null);
});

it('goes back to the book by keyboard, to the button that opened it', async () => {
  const { check } = await openCheck();
  expect(check.shelf.activeElement?.id).toBe('close-check');
  await userEvent.keyboard('{Enter}');
  await expect.poll(() => check.shelf.activeElement?.id).toBe('open-check');
});

it('fits a phone 360 px wide without scrolling sideways', async () => {
  await page.viewport(360, 740);
  const { check } = await openCheck();
  await check.pressAt('check-add-line');
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(360);
  await expectAccessible();
  await page.viewport(1280, 900);
});
