import { expect, it } from 'vitest';
import { expectAccessible, householdWith, mountMonth } from './mount.ts';

it.each([
  ['a digit', { import: '46403' }, 'Use 4,640.3', 'You typed 46403.'],
  ['swapped registers', { import: '3151.0', export: '4640.3' }, 'Swap import and export', '3151.0, 4640.3'],
  [
    'units',
    { import: '298.2', export: '215.2', generation: '371.7' },
    'Yes, units: work the readings out',
    'You typed 298.2, 215.2, 371.7.',
  ],
  ['an answer', { import: '46403' }, 'It is right, keep it', ''],
])('puts back what was typed before a fix of %s', async (_, last, label, told) => {
  const start = householdWith(3, last);
  const mounted = await mountMonth(start);
  await mounted.press(label);
  expect(mounted.root.querySelector('.undo')?.textContent).toContain(told);
  await expectAccessible();
  await mounted.press('Put it back as it was');
  expect(mounted.month.household).toEqual(start);
  expect(mounted.root.querySelector('.undo')).toBeNull();
});

it('forgets what was typed before a fix once something else is typed', async () => {
  const mounted = await mountMonth(householdWith(3, { import: '46403' }));
  await mounted.press('Use 4,640.3');
  await mounted.type('reading-2-import', '4640.4');
  expect(mounted.root.querySelector('.undo')).toBeNull();
  await mounted.type('account-sanctionedLoad', '3000');
  await mounted.press('Use 3');
  await mounted.press('Put it back as it was');
  expect(mounted.field('account-sanctionedLoad').value).toBe('3000');
});

it('goes from the answer to the question', async () => {
  const mounted = await mountMonth(householdWith(3, { generation: '76897' }));
  await mounted.press('Go to the question');
  await expect.poll(() => mounted.root.activeElement?.id).toBe('reading-2-generation');
  await expectAccessible();
});

it.each([
  ['reading-2-import', '4640.'],
  ['reading-2-export', '3151,'],
  ['reading-2-date', '1'],
  ['reading-2-date', '1 Ju'],
  ['reading-2-date', '1 Jun 202'],
  ['reading-2-date', '2025-0'],
  ['account-plantCapacity', '3.'],
])('says nothing red while %s is being typed: %s', async (id, text) => {
  const mounted = await mountMonth(householdWith(3));
  const field = mounted.field(id);
  const details = field.closest('details');
  if (details !== null) details.open = true;
  field.focus();
  await mounted.type(id, text);
  expect(mounted.root.querySelector('.finding.error, [aria-invalid="true"]')).toBeNull();
  await expectAccessible();
  field.blur();
  await mounted.month.updateComplete;
  const isRead = mounted.text(`${id}-echo`) !== '';
  expect(mounted.root.querySelector('.finding.error') === null).toBe(isRead);
});
