import type { PrintedBillDocument } from '@unitbook/engine';
import { page } from 'vitest/browser';
import { expect, it } from 'vitest';
import billsText from '../../tariffs-examples/checks/two-bills.json?raw';
import { expectAccessible } from './mount.ts';
import { openCheck, type OpenCheck } from './open-check.ts';

// Two acceptance scenarios, in an invented place (project reference, 2025), section 6.1: right is Rs 230 for May.

/** The invented bills with other ones in their place. */
const fileWith = (bills: readonly PrintedBillDocument[]): string =>
  JSON.stringify({ ...(JSON.parse(billsText) as object), bills });

const MAY = { from: '2025-05-01', to: '2025-06-01' } as const;

/** Type a bill of one's own beside the book of the demo. */
async function typeOwn(check: OpenCheck, payable: string): Promise<void> {
  await check.type('check-from', '2025-05-01');
  await check.type('check-to', '2025-06-01');
  await check.type('check-payable', payable);
  await check.settled();
}

it('gives own bills back after a file was opened while the demo was shown', async () => {
  const { check, texts } = await openCheck();
  await check.pressAt('check-start-own');
  await typeOwn(check, '546');
  await check.pressAt('check-show-demo');
  await expect.poll(() => check.text('.which')).toContain('Demo');
  await check.openFile(fileWith([{ ...MAY, payable: '230' }]), 'theirs.json');
  expect(check.field('check-payable').value).toBe('230');
  expect(check.text('#check-before')).toContain('“theirs.json” took the place of your own bills.');
  await check.pressAt('check-put-back');
  await expect.poll(() => check.root.activeElement?.id).toBe('check-from');
  expect(check.field('check-payable').value).toBe('546');
  expect(texts.get('unitbook-check')).toContain('"546"');
});

it('says that own bills are set beside the invented household of the demo', async () => {
  const { check } = await openCheck({ demo: '' });
  expect(check.text('#check-invented')).toContain('Set beside the invented household of the demo');
  await typeOwn(check, '546');
  expect(check.text('#check-verdict')).toBe('₹316 too much.');
  expect(check.text('#check-invented')).toContain('Type your own account, readings and tariff');
  // What they are set beside lies open, too.
  expect(check.text('#check-ground')).toContain('(an invented place)');
  await expectAccessible();
  const demo = await openCheck();
  expect(demo.check.root.querySelector('#check-invented')).toBe(null);
});

it('never calls a bill right of which a figure cannot be read', async () => {
  const { check } = await openCheck({ demo: fileWith([{ ...MAY, payable: '230' }]) });
  expect(check.texts('button.bill strong')).toEqual(['right']);
  await check.type('check-line-fuel', '9.60 or so');
  await check.settled();
  expect(check.text('#check-verdict')).toBe(
    'It cannot be told yet: a figure cannot be read (“Fuel surcharge”).',
  );
  expect(check.texts('button.bill strong')).toEqual(['not known']);
  expect(check.text('#check-should')).toBe('It should be ₹230. Every other printed figure is as computed.');
  expect(check.text('[data-open="check/not-a-number"]')).toBe(
    'Fuel surcharge: "9.60 or so" for fuel surcharge.',
  );
  // An amount is no reading: nobody is sent to the meter.
  expect(check.text('#check-line-fuel-findings')).toContain('Type the number as it is printed.');
  await expect.poll(() => check.text('.memo')).toContain('“Fuel surcharge” cannot be read');
  expect(check.text('.memo')).not.toContain('Found right');
  await expectAccessible();
  await check.type('check-line-fuel', '9.60');
  await check.settled();
  expect(check.texts('button.bill strong')).toEqual(['right']);
  await expect.poll(() => check.text('.memo')).toContain('Found right');
});

it('says what is wrong with reading dates that are typed, not that they are to be typed', async () => {
  const { check } = await openCheck({ demo: '' });
  await check.type('check-from', '2025-06-01');
  await check.type('check-to', '2025-05-01');
  await check.settled();
  expect(check.text('#check-wanted')).toContain('A bill from 1 June 2025 to 1 May 2025.');
  expect(check.text('#check-wanted')).not.toContain('both reading dates');
  await check.type('check-to', '');
  await check.settled();
  expect(check.text('#check-wanted')).toContain('Type both reading dates of this bill.');
});

it('leaves the focus where one can go on, after what was taken out is put back', async () => {
  const { check } = await openCheck();
  await check.pressAt('check-add-bill');
  await check.pressAt('check-take-bill');
  await check.openBill(0);
  await check.pressAt('check-take-bill');
  await check.settled();
  expect(check.texts('button.bill')).toHaveLength(1);
  await check.pressAt('check-undo');
  // One more was taken out before: its button is the next step.
  await expect.poll(() => check.root.activeElement?.id).toBe('check-undo');
  expect(check.field('check-from').value).toBe('2025-04-01');
  await check.pressAt('check-undo');
  await expect.poll(() => check.root.activeElement?.id).toBe('check-add-bill');
  expect(check.texts('button.bill')).toHaveLength(3);
});

/** How many lines the text of a cell takes. */
function linesOf(cell: Element): number {
  const range = document.createRange();
  range.selectNodeContents(cell);
  return new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size;
}

it('keeps every number of a memo whole on a phone 360 px wide', async () => {
  await page.viewport(360, 740);
  const { check } = await openCheck();
  await expect.poll(() => check.text('.memo')).not.toBe('');
  check.root.querySelector<HTMLElement>('.memo summary')?.click();
  await check.settled();
  const numbers = [...check.root.querySelectorAll('.memo td.number')];
  // To be paid: printed 546, right 230.
  expect(check.texts('.memo td.number')).toContain('₹546.00');
  expect(numbers.filter((cell) => linesOf(cell) !== 1).map((cell) => cell.textContent)).toEqual([]);
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(360);
  await expectAccessible();
  await page.viewport(1280, 900);
});
