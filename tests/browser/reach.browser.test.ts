import { page, userEvent } from 'vitest/browser';
import { emptyHousehold } from '@unitbook/form';
import { expect, it } from 'vitest';
import {
  demoHousehold,
  expectAccessible,
  householdWith,
  memoryStorage,
  mountBook,
  mountMonth,
} from './mount.ts';

it('fits a phone 360 px wide without scrolling sideways', async () => {
  await page.viewport(360, 740);
  for (const household of [demoHousehold(), emptyHousehold('en-IN'), householdWith(3, { import: '46403' })]) {
    const mounted = await mountMonth(household);
    await expectAccessible();
    for (const summary of mounted.root.querySelectorAll('summary')) summary.click();
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(360);
  }
  await mountBook(memoryStorage().keep);
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(360);
  await page.viewport(1280, 900);
});

/** The focused element, through the shadow roots. */
function focused(): Element | null {
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement != null) active = active.shadowRoot.activeElement;
  return active;
}

async function tabTo(isThere: (element: Element) => boolean): Promise<Element> {
  for (let count = 0; count < 80; count += 1) {
    await userEvent.keyboard('{Tab}');
    const active = focused();
    if (active !== null && isThere(active)) return active;
  }
  throw new Error('Tab did not get there.');
}

it('goes from a slip to the answer and into its derivation by keyboard alone', async () => {
  const mounted = await mountMonth(householdWith(3));
  await expectAccessible();
  await tabTo((element) => element.id === 'reading-2-import');
  await userEvent.keyboard('{Control>}a{/Control}46403');
  await mounted.month.updateComplete;
  expect(mounted.text('answer-payable')).toBe('₹3,70,331');
  const button = await tabTo((element) => element.textContent.includes('Use 4,640.3'));
  expect(getComputedStyle(button).outlineStyle).toBe('solid');
  await userEvent.keyboard('{Enter}');
  await mounted.month.updateComplete;
  expect(mounted.text('answer-payable')).toBe('₹230');
  expect(focused()?.id).toBe('reading-2-import');
  await tabTo((element) => element.matches('#bill-lines > li:nth-child(2) > details > summary'));
  await userEvent.keyboard('{Enter}');
  await expect
    .poll(() => mounted.root.querySelector('#bill-lines .how')?.textContent)
    .toContain('Energy charge, up to 50');
  await tabTo((element) => element.matches('.wide'));
});
