import { expect, it } from 'vitest';
import type { Household } from '@unitbook/form';
import { LEDGER_READINGS, LEDGER_TARIFF } from '../support/ledgers.ts';
import { demoHousehold, expectAccessible, mountMonth } from './mount.ts';

/** Three months under a bank of units and a ledger of money; the figures are worked out in book.test.ts. */
function ledgerHousehold(): Household {
  const tariff = JSON.parse(LEDGER_TARIFF) as Household['tariff'];
  return { ...demoHousehold(), tariff, readings: LEDGER_READINGS };
}

/** The cells of a table, row by row, without the day of the reading. */
function cells(root: ShadowRoot, name: string): string[][] {
  const rows = root.querySelectorAll(`[aria-label="${name} table"] tbody tr`);
  return [...rows].map((row) => [...row.querySelectorAll('td')].map(({ textContent }) => textContent));
}

it('shows every ledger where there is no passbook', async () => {
  const { root } = await mountMonth(ledgerHousehold());
  expect(root.querySelector('[aria-label="Passbook table"]')).toBeNull();
  expect(cells(root, 'Bank of units')).toEqual([
    ['0', '60', '–', '–', '–', '60', '₹60'],
    ['60', '–', '40', '20', '–', '0', '₹10'],
    ['0', '–', '–', '–', '–', '0', '₹230'],
  ]);
  expect(cells(root, 'Rewards')).toEqual([
    ['₹0', '₹80', '–', '–', '–', '₹80', '₹60'],
    ['₹80', '₹35', '–', '–', '–', '₹115', '₹10'],
    ['₹115', '–', '₹115', '–', '–', '₹0', '₹230'],
  ]);
  const [, closed] = root.querySelectorAll('[aria-label="Bank of units table"] tbody tr');
  expect(closed?.querySelector('.mark')?.textContent).toBe('closed');
});

it('answers with what every ledger carries on, and says what its close did', async () => {
  const mounted = await mountMonth(ledgerHousehold());
  const choose = async (index: string): Promise<void> => {
    const months = mounted.field('month');
    months.value = index;
    months.dispatchEvent(new Event('change', { bubbles: true }));
    await mounted.month.updateComplete;
  };
  await choose('1');
  expect(mounted.text('answer-banked')).toBe('60 units, ₹80');
  await choose('2');
  expect(mounted.text('answer-payable')).toBe('₹10');
  expect(mounted.text('answer-banked')).toBe('0 units, ₹115');
  expect(mounted.root.querySelector('.answer-page .why')?.textContent).toContain(
    'Bank of units closed with this month: this bill pays for 20 surplus units.',
  );
});

it('tells what was worked out, and where it comes from', async () => {
  const { root, month } = await mountMonth(ledgerHousehold());
  const steps = [...root.querySelectorAll('.passbook-page > .lines > li')];
  const text = ({ textContent }: Element): string => textContent.replace(/\s+/g, ' ').trim();
  expect(steps.map(text)).toEqual([
    'Units given to the grid, left by: Units set off 0 units',
    'Bank of units, brought forward, left by: Units set off 0 units',
    'Units taken from the grid, left by: Units set off 60 units',
    'Bank of units, carried forward 0 units',
    'Rewards, carried forward ₹0.00',
  ]);
  steps[2]?.querySelector('summary')?.click();
  await expect.poll(() => steps[2]?.querySelector('.formula')?.textContent).toBe('= 90 units − 30 units');
  await month.updateComplete;
  await expectAccessible();
});
