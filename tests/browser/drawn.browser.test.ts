import type { Household } from '@unitbook/form';
import { expect, it } from 'vitest';
import { demoHousehold, expectAccessible, householdWith, mountMonth } from './mount.ts';

it('draws once for everything set in one go, and only the last of it', async () => {
  const { month, root } = await mountMonth(demoHousehold());
  let drawings = 0;
  new MutationObserver(() => {
    drawings += 1;
  }).observe(root, { subtree: true, childList: true, characterData: true });
  month.household = householdWith(4);
  month.today = '2026-06-01';
  month.household = householdWith(3);
  await month.updateComplete;
  await Promise.resolve();
  expect(drawings).toBe(1);
  expect(root.getElementById('answer-payable')?.textContent.trim()).toBe('₹230');
});

it('draws nothing for a value it has already', async () => {
  const { month } = await mountMonth(demoHousehold());
  const before = month.updateComplete;
  const { household } = month;
  month.household = household;
  expect(month.updateComplete).toBe(before);
  await expectAccessible();
});

it('goes on after a drawing that failed', async () => {
  const { month, root } = await mountMonth(householdWith(3));
  month.household = null as unknown as Household;
  await expect(month.updateComplete).rejects.toThrow();
  month.household = householdWith(2);
  await expect.poll(() => root.getElementById('answer-payable')?.textContent.trim()).toBe('₹180');
});

it('shares one style sheet among all elements', async () => {
  const first = (await mountMonth(demoHousehold())).root.adoptedStyleSheets;
  const second = (await mountMonth(demoHousehold())).root.adoptedStyleSheets;
  expect(second).toEqual(first);
  expect(second).toHaveLength(1);
});
