import type { Household } from '@unitbook/form';
import { expect, it } from 'vitest';
import { demoHousehold, householdWith, mountMonth } from './mount.ts';

type Register = Household['account']['meters']['grid']['import'];

function withImportRegister(household: Household, register: Register): Household {
  const { account } = household;
  const grid = { ...account.meters.grid, import: register };
  return { ...household, account: { ...account, meters: { ...account.meters, grid } } };
}

it('asks about a red digit and sets the point', async () => {
  const mounted = await mountMonth(householdWith(3, { import: '46403' }));
  expect(mounted.codes()).toEqual(['reading/large-advance']);
  const asked = mounted.finding('reading/large-advance').textContent;
  expect(asked).toContain('42,061 units in 31 days');
  expect(mounted.root.querySelector('.payable.asked')).not.toBeNull();
  expect(mounted.root.querySelector('.provided')).not.toBeNull();
  await mounted.press('Use 4,640.3');
  expect(mounted.field('reading-2-import').value).toBe('4640.3');
  expect(mounted.codes()).toEqual([]);
  expect(mounted.text('answer-payable')).toBe('₹230');
});

it('keeps a reading that is right, and can ask again', async () => {
  const mounted = await mountMonth(householdWith(3, { import: '46403' }));
  await mounted.press('It is right, keep it');
  expect(mounted.month.household.readings[2]?.confirmed).toEqual(['reading/large-advance:import']);
  expect(mounted.codes()).toEqual([]);
  await mounted.press('Ask again');
  expect(mounted.codes()).toEqual(['reading/large-advance']);
});

it('asks anew when a kept reading is typed over', async () => {
  const mounted = await mountMonth(householdWith(3, { import: '46403' }));
  await mounted.press('It is right, keep it');
  await mounted.type('reading-2-import', '46404');
  expect(mounted.codes()).toEqual(['reading/large-advance']);
});

it('asks about a decimal missed on the generation meter', async () => {
  const mounted = await mountMonth(householdWith(3, { generation: '76897' }));
  expect(mounted.codes()).toEqual(['reading/large-advance']);
  await mounted.press('Use 7,689.7');
  expect(mounted.field('reading-2-generation').value).toBe('7689.7');
});

it('takes leading zeros silently', async () => {
  const mounted = await mountMonth(householdWith(3, { import: '04640.3' }));
  expect(mounted.codes()).toEqual([]);
  expect(mounted.text('reading-2-import-echo')).toBe('Read as 4,640.3');
});

it('swaps registers that were swapped', async () => {
  const mounted = await mountMonth(householdWith(3, { import: '3151.0', export: '4640.3' }));
  expect(mounted.codes('error')).toEqual(['reading/registers-swapped']);
  await mounted.press('Swap import and export');
  expect(mounted.field('reading-2-import').value).toBe('4640.3');
  expect(mounted.field('reading-2-export').value).toBe('3151.0');
  expect(mounted.text('answer-payable')).toBe('₹230');
});

it('knows the NET screen', async () => {
  const mounted = await mountMonth(householdWith(3, { import: '1489.3' }));
  expect(mounted.codes('error')).toEqual(['reading/net-screen']);
  expect(mounted.finding('reading/net-screen').textContent).toContain('NET screen');
  await mounted.press('Use 4,640.3');
  expect(mounted.text('answer-payable')).toBe('₹230');
});

it('knows the last-bill screen', async () => {
  const mounted = await mountMonth(householdWith(3, { import: '4342.1' }));
  expect(mounted.codes()).toEqual(['reading/same-as-before']);
  expect(mounted.finding('reading/same-as-before').textContent).toContain('last bill');
  await mounted.press('It is right, keep it');
  expect(mounted.codes()).toEqual([]);
});

it('knows the screen test', async () => {
  const mounted = await mountMonth(householdWith(3, { import: '88888' }));
  expect(mounted.codes()).toContain('reading/screen-test');
  expect(mounted.finding('reading/screen-test').textContent).toContain('wait for the next number');
});

it('gives three choices for a reading below the one before', async () => {
  const mounted = await mountMonth(householdWith(3, { import: '4340.9' }));
  expect(mounted.codes('error')).toEqual(['reading/below-before']);
  await mounted.press('A digit is mistyped: correct it');
  await expect.poll(() => mounted.root.activeElement?.id).toBe('reading-2-import');
  await mounted.press('The meter was changed');
  await expect.poll(() => mounted.root.activeElement?.id).toBe('reading-2-date');
  expect(mounted.root.querySelector('.change')?.textContent).toContain('changed by the utility only');
  await mounted.press('Take this change out');
  await mounted.press('It passed 99,999: confirm');
  expect(mounted.month.household.readings[2]?.confirmed).toEqual(['reading/below-before:import']);
  expect(mounted.codes('error')).toEqual([]);
});

it('asks for a day where a month was typed', async () => {
  const mounted = await mountMonth(householdWith(3, { date: 'May 2025' }));
  expect(mounted.codes('error')).toEqual(['reading/no-day']);
  expect(mounted.finding('reading/no-day').textContent).toContain('from which day to which day');
});

it('offers the other day where day and month could change places', async () => {
  const mounted = await mountMonth(householdWith(3, { date: '06/01/2025' }));
  expect(mounted.text('reading-2-date-echo')).toContain('6 January 2025');
  expect(mounted.codes()).toContain('reading/day-or-month');
  await mounted.press('Use 1 June 2025');
  expect(mounted.field('reading-2-date').value).toBe('2025-06-01');
  expect(mounted.text('answer-payable')).toBe('₹230');
});

it('compares the dates with the days the bill prints', async () => {
  const mounted = await mountMonth(householdWith(3, { date: '2025-06-05', printedDays: '31' }));
  expect(mounted.codes()).toEqual(['reading/days-differ']);
  expect(mounted.finding('reading/days-differ').textContent).toContain('Dates 35 days apart');
  await mounted.press('It is right, keep it');
  expect(mounted.codes()).toEqual([]);
});

it.each([
  ['a decimal comma', '4640,3'],
  ['spaces and a unit', ' 4 640.3 kWh'],
  ['digits of another script', '४६४०.३'],
  ['grouping and decimals', '4,640.3'],
])('reads %s', async (_, text) => {
  const mounted = await mountMonth(householdWith(3, { import: text }));
  expect(mounted.text('reading-2-import-echo')).toBe('Read as 4,640.3');
  expect(mounted.text('answer-payable')).toBe('₹230');
});

it('reads one comma and three digits by the reading before', async () => {
  const mounted = await mountMonth(householdWith(3, { import: '4,640' }));
  expect(mounted.text('reading-2-import-echo')).toBe('Read as 4,640');
  const fine = { digits: '5', decimals: '3' } as const;
  const first = await mountMonth({
    ...withImportRegister(demoHousehold(), fine),
    readings: [{ date: '', import: '12,892', export: '' }],
  });
  expect(first.codes('error')).toContain('reading/comma-unclear');
  await first.press('Use 12,892');
  expect(first.field('reading-0-import').value).toBe('12892');
});

it('reads lakh grouping', async () => {
  const wide = { digits: '6', decimals: '1' } as const;
  const mounted = await mountMonth(withImportRegister(householdWith(3, { import: '1,16,444' }), wide));
  expect(mounted.text('reading-2-import-echo')).toBe('Read as 1,16,444');
});

it('offers the digit for a letter', async () => {
  const mounted = await mountMonth(householdWith(3, { import: '464O.3' }));
  expect(mounted.codes('error')).toEqual(['reading/letter']);
  await mounted.press('Use 4,640.3');
  expect(mounted.text('answer-payable')).toBe('₹230');
});

it('works readings out where units were typed in their place', async () => {
  const mounted = await mountMonth(
    householdWith(3, { import: '298.2', export: '215.2', generation: '371.7' }),
  );
  expect(mounted.codes('error')).toEqual(['reading/units-not-readings']);
  await mounted.press('Yes, units: work the readings out');
  expect(mounted.field('reading-2-import').value).toBe('4640.3');
  expect(mounted.field('reading-2-export').value).toBe('3151');
  expect(mounted.field('reading-2-generation').value).toBe('7689.7');
  expect(mounted.text('answer-payable')).toBe('₹230');
});

it('asks whether a load was typed in watts', async () => {
  const mounted = await mountMonth(householdWith(3));
  await mounted.type('account-sanctionedLoad', '3000');
  expect(mounted.codes()).toContain('account/load-in-watts');
  await mounted.press('Use 3');
  expect(mounted.field('account-sanctionedLoad').value).toBe('3');
  expect(mounted.codes()).toEqual([]);
});

it('keeps an answer about the account in the account, and can ask again', async () => {
  const mounted = await mountMonth(householdWith(3));
  await mounted.type('account-sanctionedLoad', '3000');
  await mounted.press('It is right, keep it');
  expect(mounted.month.household.account.confirmed).toEqual(['account/load-in-watts:sanctionedLoad']);
  expect(mounted.codes()).not.toContain('account/load-in-watts');
  await mounted.press('Ask again');
  expect(mounted.month.household.account.confirmed).toEqual([]);
  expect(mounted.codes()).toContain('account/load-in-watts');
});

it('asks for the multiplying factor of a large connection, blank or 1', async () => {
  const mounted = await mountMonth(householdWith(3));
  await mounted.type('account-sanctionedLoad', '12');
  expect(mounted.codes()).toEqual(['account/factor-on-large-load']);
  await mounted.type('account-meters-grid-multiplyingFactor', '');
  expect(mounted.text('account-meters-grid-multiplyingFactor-echo')).toBe('Read as 1');
  await mounted.press('It is right, keep it');
  expect(mounted.codes()).toEqual([]);
});

it('takes a minus sign for credit', async () => {
  const mounted = await mountMonth(householdWith(2));
  await mounted.type('account-openingCredit', '-58');
  expect(mounted.text('account-openingCredit-echo')).toBe('Read as 58 units');
  expect(mounted.text('answer-banked')).toBe('116 units');
});

it('refuses a second reading of the same day and a day in the future', async () => {
  const same = await mountMonth(householdWith(3, { date: '2025-05-01' }));
  expect(same.codes('error')).toEqual(['reading/day-not-after']);
  const future = await mountMonth(householdWith(3), '2025-05-20');
  expect(future.codes('error')).toEqual(['reading/day-in-future']);
});

it('puts readings in order of their dates', async () => {
  const demo = householdWith(3);
  const [first, second, third] = demo.readings;
  const readings = [first, third, second].filter((row) => row !== undefined);
  const mounted = await mountMonth({ ...demo, readings });
  await mounted.press('Put the readings in order of their dates');
  expect(mounted.month.household.readings).toEqual(demo.readings);
});

it('shows all problems of a month at once', async () => {
  const mounted = await mountMonth(
    householdWith(3, { date: 'June', import: 'l640.3', export: '=A1', generation: 'x' }),
  );
  expect(mounted.codes('error')).toEqual([
    'reading/no-day',
    'reading/letter',
    'reading/formula',
    'reading/not-a-number',
  ]);
});
