import { emptyHousehold, type Household } from '@unitbook/form';
import { expect, it } from 'vitest';
import { demoHousehold, expectAccessible, householdWith, mountMonth } from './mount.ts';

it('is accessible with disclosures closed and with one of each kind opened', async () => {
  const mounted = await mountMonth(householdWith(3));
  await expectAccessible();
  const kinds = [
    '.account > summary',
    '.help > summary',
    '#bill-lines li:nth-child(2) summary',
    '.split summary',
  ];
  for (const kind of kinds) mounted.root.querySelector<HTMLElement>(kind)?.click();
  await new Promise((resolve) => setTimeout(resolve, 50));
  await expectAccessible();
});

it('is accessible with a blank book and with findings', async () => {
  await mountMonth(emptyHousehold('en-IN'));
  await expectAccessible();
  await mountMonth(householdWith(3, { import: '46403', export: 'l5', generation: '' }));
  await expectAccessible();
});

it('opens the demo at its last month, with twelve lines in the passbook', async () => {
  const mounted = await mountMonth(demoHousehold());
  expect(mounted.text('answer-payable')).toBe('₹180');
  const lines = [...mounted.root.querySelectorAll('tbody tr')];
  expect(lines).toHaveLength(12);
  expect(lines.at(-1)?.className).toBe('closed');
  const cells = [...(lines[1]?.children ?? [])].map((cell) => cell.textContent.trim());
  expect(cells).toEqual(['1 June 2025', '58', '298', '216', '274', '58', '24', '–', '–', '0', '₹230']);
  expect(mounted.text('payment-due')).toContain('417 units at ₹2.60 each');
});

it('bills April and May of the first scenario as they are typed', async () => {
  const blank = emptyHousehold('en-IN');
  const mounted = await mountMonth({ ...blank, tariff: 'tarumira-domestic' });
  await mounted.type('account-sanctionedLoad', '3 kW');
  await mounted.type('account-plantCapacity', '3,3');
  await mounted.type('reading-0-date', '1 Apr 2025');
  await mounted.type('reading-0-import', '4120.6');
  await mounted.type('reading-0-export', '2,655.2');
  await mounted.type('reading-0-generation', '6890.4');
  await mounted.type('reading-1-date', '1 May 2025');
  await mounted.type('reading-1-import', '4342.1');
  await mounted.type('reading-1-export', '2935.8');
  await mounted.type('reading-1-generation', '7318.0');
  expect(mounted.text('answer-payable')).toBe('₹180');
  expect(mounted.text('answer-banked')).toBe('58 units');
  await mounted.press('New month');
  await mounted.type('reading-2-date', '2025-06-01');
  await mounted.type('reading-2-import', '४६४०.३');
  await mounted.type('reading-2-export', '3151.0 kWh');
  await mounted.type('reading-2-generation', '7689,7');
  expect(mounted.text('answer-payable')).toBe('₹230');
  expect(mounted.text('answer-banked')).toBe('0 units');
  expect(mounted.root.querySelector('.why')?.textContent).toContain(
    'The house used 453 units: 155 straight from the roof and 298 from the grid; 216 were given to the grid. ' +
      'The plant made 371, 3.63 per kWp and day.',
  );
  expect(mounted.text('reading-2-date-echo')).toBe('1 June 2025, 31 days');
  expect(mounted.text('reading-2-import-echo')).toBe('Read as 4,640.3');
});

it('writes the bill of May line by line, with the bill without solar beside it', async () => {
  const mounted = await mountMonth(householdWith(3));
  const lines = [...mounted.root.querySelectorAll('#bill-lines > li')].map((line) => [
    line.querySelector('.label')?.textContent.trim(),
    line.querySelector('.amount.own')?.textContent,
    line.querySelector('.amount.without')?.textContent,
  ]);
  expect(lines).toEqual([
    ['Fixed charge', '180.00', '180.00'],
    ['Energy charge', '72.00', '2,829.00'],
    ['Shortfall to the minimum charge', '0.00', '0.00'],
    ['Fuel surcharge', '9.60', '181.20'],
    ['Electricity tax', '4.32', '169.74'],
    ['Subsidy', '−36.00', '−75.00'],
    ['Sum of the lines', '229.92', '3,284.94'],
    ['Rounding to the rupee', '0.08', '0.06'],
    ['Payable', '230.00', '3,285.00'],
  ]);
});

it('opens a line of the bill down to the readings and the clauses', async () => {
  const mounted = await mountMonth(householdWith(3));
  for (let depth = 0; depth < 12; depth += 1) {
    for (const closed of mounted.root.querySelectorAll<HTMLElement>(
      '#bill-lines > li:nth-child(2) details:not([open]) > summary',
    ))
      closed.click();
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  const text = mounted.root.querySelector('#bill-lines > li:nth-child(2)')?.textContent ?? '';
  expect(text).toContain('24 units × ₹3.00 per unit');
  expect(text).toContain('TO-2024 cl. 4.2');
  expect(text).toContain('Import register, present');
  expect(text).toContain('4,640.3 units');
  expect(text).toContain('NMR-2021 r. 7.1');
});

it('sends each edit to the page, and nothing when the page sets a household', async () => {
  const sent: Household[] = [];
  const listen = (event: CustomEvent<Household>): void => {
    sent.push(event.detail);
  };
  document.addEventListener('unitbook-household-change', listen as EventListener);
  const start = householdWith(3);
  const mounted = await mountMonth(start);
  mounted.month.household = householdWith(4);
  await mounted.month.updateComplete;
  expect(sent).toEqual([]);
  mounted.month.household = start;
  await mounted.month.updateComplete;
  await mounted.type('reading-2-import', '464');
  document.removeEventListener('unitbook-household-change', listen as EventListener);
  expect(sent).toHaveLength(1);
  expect(sent[0]?.readings[2]?.import).toBe('464');
  expect(start.readings[2]?.import).toBe('4640.3');
});

it('takes a month out and puts it back', async () => {
  const start = householdWith(4);
  const mounted = await mountMonth(start);
  await mounted.press('Take this month out');
  expect(mounted.month.household.readings).toHaveLength(3);
  expect(mounted.text('answer-payable')).toBe('₹230');
  await mounted.press('Put it back');
  expect(mounted.month.household).toEqual(start);
});

it('says which month holds later ones up, and bills the ones before', async () => {
  const demo = demoHousehold();
  const readings = demo.readings.map((row, index) => (index === 3 ? { ...row, import: '4x' } : row));
  const mounted = await mountMonth({ ...demo, readings });
  expect(mounted.root.querySelector('.live')?.textContent).toContain(
    'this one waits, since its credit hangs on it',
  );
  expect(mounted.root.querySelectorAll('tbody tr')).toHaveLength(2);
  await mounted.press('Show it');
  expect(mounted.codes('error')).toEqual(['reading/not-a-number']);
  await mounted.type('reading-3-import', '4926.5');
  expect(mounted.root.querySelectorAll('tbody tr')).toHaveLength(12);
});

it('lists what is wrong with a tariff file with line and column, and keeps the tariff it had', async () => {
  const mounted = await mountMonth(householdWith(3));
  const file = new File(['{\n  "format": "unitbook-tariff-1",\n  "id": 7\n}'], 'own.json');
  const files = new DataTransfer();
  files.items.add(file);
  mounted.field('tariff-file').files = files.files;
  mounted.field('tariff-file').dispatchEvent(new Event('change'));
  await expect
    .poll(() => mounted.root.querySelector('.file-findings')?.textContent)
    .toContain('Line 3, column');
  expect(mounted.root.querySelector('.finding.error p')?.textContent.replace(/\s+/g, ' ')).toMatch(
    /“own.json” cannot be used yet: .* The tariff chosen before still counts\./,
  );
  expect(mounted.text('answer-payable')).toBe('₹230');
  expect(mounted.month.household.tariff).toBe('tarumira-domestic');
});

it('groups numbers as the account says', async () => {
  const start = householdWith(3, { import: '46403' });
  const mounted = await mountMonth(start);
  expect(mounted.text('answer-payable')).toBe('₹3,70,331');
  await mounted.type('account-sanctionedLoad', '3');
  const locale = mounted.field('account-locale');
  locale.value = 'de-DE';
  locale.dispatchEvent(new Event('change'));
  await mounted.month.updateComplete;
  expect(mounted.text('answer-payable').replace(/\s/g, ' ')).toBe('370.331 ₹');
});

it('opens the payable of the twelfth month, whose credit hangs on all before, at once', async () => {
  const mounted = await mountMonth(demoHousehold());
  const open = (): HTMLElement[] => [
    ...mounted.root.querySelectorAll<HTMLElement>('#bill-lines > .total details:not([open]) > summary'),
  ];
  for (let depth = 0; depth < 3; depth += 1) {
    for (const summary of open()) summary.click();
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  expect(mounted.root.querySelector('#bill-lines > .total')?.textContent).toContain('Fixed charge');
});

it('puts months that were taken out back one after the other', async () => {
  const start = householdWith(5);
  const mounted = await mountMonth(start);
  await mounted.press('Take this month out');
  await mounted.press('Take this month out');
  expect(mounted.month.household.readings).toHaveLength(3);
  await expectAccessible();
  await mounted.press('Put it back');
  await mounted.press('Put it back');
  expect(mounted.month.household).toEqual(start);
});

it('says what is still to type, and nothing of later months where there are none', async () => {
  const mounted = await mountMonth(householdWith(3, { import: '', generation: '' }));
  const told = (): string => mounted.root.querySelector('.live')?.textContent.replace(/\s+/g, ' ') ?? '';
  expect(told()).toContain('Still to type: import, generation on 1 June 2025.');
  expect(told()).not.toContain('later');
  await mounted.press('Go to it');
  await expect.poll(() => mounted.root.activeElement?.id).toBe('reading-2-import');
  await expectAccessible();
});
