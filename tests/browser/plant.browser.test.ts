import type { Household } from '@unitbook/form';
import { page, userEvent } from 'vitest/browser';
import { expect, it } from 'vitest';
import { demoHousehold, drawn, expectAccessible, mountMonth, type Mounted } from './mount.ts';
import { chooseFile, fetched, Opened, saved } from './opened.ts';

type Plant = HTMLElementTagNameMap['unitbook-plant'];

/** The demo before anybody typed anything about its plant. */
function withoutPlant(): Household {
  const { format, tariff, account, readings } = demoHousehold();
  return { format, tariff, account, readings };
}

/** The page of the plant, opened, and what tests do with it. */
class OpenPlant extends Opened<Plant> {
  readonly mounted: Mounted;

  constructor(mounted: Mounted, element: Plant) {
    super(element);
    this.mounted = mounted;
  }

  get household(): Household {
    return this.mounted.month.household;
  }

  async openFile(text: string, name = 'days.csv'): Promise<void> {
    chooseFile(this.field('plant-day-files'), text, name);
    await expect.poll(() => this.texts('.files li, [data-code="refused"]').length).toBeGreaterThan(0);
    await drawn(this.element);
  }
}

/** Put a household on the page, open the page of its plant, and look that it is accessible as it is. */
async function mountPlant(household: Household, today = '2026-05-01'): Promise<OpenPlant> {
  const mounted = await mountMonth(household, today);
  mounted.root.querySelector<HTMLElement>('.plant-page > details > summary')?.click();
  const element = await fetched(mounted.root, 'unitbook-plant', '.plant');
  await drawn(element);
  await expectAccessible();
  return new OpenPlant(mounted, element);
}

it('is accessible with everything open, by months and by days', async () => {
  const plant = await mountPlant(demoHousehold());
  for (let depth = 0; depth < 3; depth += 1) {
    for (const summary of plant.root.querySelectorAll<HTMLElement>('details:not([open]) > summary'))
      summary.click();
    await drawn(plant.element);
  }
  await expectAccessible();
  await plant.openFile(DAILY);
  await plant.press('Show on the chart');
  await expectAccessible();
});

it('fits a phone 360 px wide without scrolling sideways', async () => {
  await page.viewport(360, 740);
  const plant = await mountPlant(demoHousehold());
  await plant.openFile(DAILY);
  for (const summary of plant.root.querySelectorAll<HTMLElement>('details:not([open]) > summary'))
    summary.click();
  await drawn(plant.element);
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(360);
  await page.viewport(1280, 900);
});

it('asks first for what it lacks, and leads there', async () => {
  const plant = await mountPlant(withoutPlant());
  // 452.5 ÷ 3.3 ÷ 31 = 4.42
  expect(plant.text('#plant-answer')).toContain(
    'the plant made 452.5 units (4.42 per kWp and day), but nothing',
  );
  expect(plant.text('.provided')).toContain('Type first what the plant should make');
  await plant.press('Go to it');
  await expect.poll(() => plant.root.activeElement?.id).toBe('plant-expected');
});

// One sigma is 10 % where nothing better is typed. March 2026 made 452.5 units, April 2025 427.6, May 371.7.
//   March 600: 75.4 %, 2.46 sigma below. April 480: 89.1 %, 1.09 below. May 300: 123.9 %, 2.39 above.
//   The other months are typed as they were made: 100 %.
const QUOTE = [
  '401.5',
  '410.2',
  '600',
  '480',
  '300',
  '317.5',
  '276.4',
  '289.7',
  '338.6',
  '391.2',
  '386.7',
  '377.7',
];

it('judges the months by a table that is typed', async () => {
  const plant = await mountPlant(withoutPlant());
  await plant.choose('plant-expected', 'monthly');
  expect(plant.text('#plant-expected-monthly-findings')).toContain('every month, January to December');
  for (const [month, units] of QUOTE.entries())
    await plant.put(`plant-expected-monthly-${String(month)}`, units);
  await plant.leave();
  expect(plant.texts('tbody td.judged')).toEqual([
    '~ watch',
    '! look at it: high',
    ...Array<string>(9).fill('✓ fine'),
    '! look at it: low',
  ]);
  expect(plant.text('#plant-answer')).toBe(
    '! Look at it: the plant made 452.5 units, 75.4 % of the 600.0 expected, lower than the weather usually brings about.',
  );
  expect(plant.text('.live')).toContain('A low month is a finding, not a diagnosis');
  expect(plant.household.plant?.expected).toEqual({ monthly: QUOTE });
  await expectAccessible();
});

it('takes a pasted list, and asks about what it cannot read once the field is left', async () => {
  const plant = await mountPlant(withoutPlant());
  await plant.choose('plant-expected', 'monthly');
  const clipboardData = new DataTransfer();
  clipboardData.setData('text', QUOTE.join('\n'));
  plant
    .field('plant-expected-monthly-0')
    .dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
  await drawn(plant.element);
  expect(plant.household.plant?.expected).toEqual({ monthly: QUOTE });
  await plant.put('plant-expected-monthly-2', '1,200');
  expect(plant.texts('.finding .mark')).toEqual(['Still to type:']);
  await plant.leave();
  expect(plant.text('.finding')).toContain('To set right');
  expect(plant.field('plant-expected-monthly-2').getAttribute('aria-invalid')).toBe('true');
  await plant.press('Use 1,200');
  expect(plant.household.plant?.expected?.monthly?.[2]).toBe('1200');
  expect(plant.field('plant-expected-monthly-2').value).toBe('1200');
  await plant.put('plant-expected-monthly-2', '1,200.5');
  expect(plant.field('plant-expected-monthly-2').value).toBe('1,200.5');
  expect(plant.text('#plant-expected-monthly-2-echo')).toBe('Read as 1,200.5 units');
});

it('puts what was typed aside where another way to judge is chosen, and back', async () => {
  const start = demoHousehold();
  const plant = await mountPlant(start);
  await plant.choose('plant-expected', 'last-years');
  expect(plant.household.plant?.expected).toEqual({ lastYears: true });
  expect(plant.text('#plant-answer')).toContain('the same days of an earlier year are not all known');
  await plant.press('Put it back');
  expect(plant.household).toEqual(start);
});

it('opens every figure of a month to its derivation', async () => {
  const plant = await mountPlant(demoHousehold());
  await plant.press('1 June 2025');
  const lines = [...plant.root.querySelectorAll<HTMLElement>('.lines > li')];
  const labels = lines.map((line) => line.querySelector('.label')?.textContent.trim());
  expect(labels).toEqual([
    'Units the plant made',
    'Units per kWp and day',
    'Capacity utilisation',
    'Performance ratio, by the irradiation of a usual year',
    'Units expected',
    'Units made over units expected',
  ]);
  for (const line of lines) line.querySelector('summary')?.click();
  await drawn(plant.element);
  expect(lines.map((line) => line.querySelector('.how .formula')?.textContent.replace(/\s+/g, ' '))).toEqual([
    undefined,
    '= 371.7 units ÷ 3.3 kW ÷ 31 days',
    '= 371.7 units ÷ 3.3 kW ÷ 744',
    '= 371.7 units ÷ 3.3 kW ÷ 179.8',
    undefined,
    '= 371.7 units ÷ 445.005 units',
  ]);
  for (const at of [0, 4]) lines[at]?.querySelector<HTMLElement>('.steps summary')?.click();
  await drawn(plant.element);
  const steps = [0, 4].map((at) =>
    lines[at]?.querySelector('.steps .formula')?.textContent.replace(/\s+/g, ' '),
  );
  expect(steps).toEqual(['= 7,689.7 units − 7,318 units', '= 5.8 × 31 days × 3.3 kW × 0.75']);
});

it('keeps a diary: an entry is added, changed, taken out and put back', async () => {
  const start = demoHousehold();
  const plant = await mountPlant(start);
  await plant.press('New entry');
  await expect.poll(() => plant.root.activeElement?.id).toBe('plant-diary-4-date');
  expect(plant.household.plant?.diary?.[4]).toEqual({ date: '2026-05-01', did: 'other' });
  await plant.put('plant-diary-4-date', '3 Apr 2026');
  await plant.choose('plant-diary-4-did', 'repair');
  await plant.put('plant-diary-4-note', 'fan of the inverter changed');
  const entry = { date: '2026-04-03', did: 'repair', note: 'fan of the inverter changed' };
  expect(plant.household.plant?.diary?.[4]).toEqual(entry);
  await plant.leave();
  expect(plant.text('ol.diary summary')).toBe('E 3 April 2026: repair – fan of the inverter changed');
  await plant.press('Take this entry out');
  expect(plant.household).toEqual(start);
  await expect.poll(() => plant.root.activeElement?.id).toBe('plant-undo');
  await plant.press('Put it back');
  expect(plant.household.plant?.diary?.[4]).toEqual(entry);
});

it('says what upkeep is due, beside what can hurt, and notes it as done', async () => {
  const plant = await mountPlant(demoHousehold());
  const cleaning = (): string => plant.text('[data-task="cleaning"]');
  // Cleaned on 15 March, and due 15 days later.
  expect(cleaning()).toContain('due since 30 March 2026, every 15 days');
  expect(cleaning()).toContain('never in full sun');
  expect(cleaning()).toContain('Caution: Direct current is live in daylight');
  expect(plant.texts('.tasks > li .caution')).toHaveLength(5);
  await plant.press('Note it as done');
  expect(plant.household.plant?.diary?.at(-1)).toEqual({ date: '2026-05-01', did: 'cleaning' });
  expect(cleaning()).toContain('next on 16 May 2026');
});

it('has its chart as a table, and saves both as CSV', async () => {
  const plant = await mountPlant(demoHousehold());
  expect(plant.root.querySelector('svg.strip')?.getAttribute('aria-label')).toContain(
    'Units per kWp and day of every month, 1 April 2025 to 31 March 2026',
  );
  expect(plant.root.querySelectorAll('svg.strip path.made')).toHaveLength(12);
  expect(plant.texts('.entries .letter')).toEqual(['A', 'B', 'C', 'D']);
  const [table] = [...plant.root.querySelectorAll('summary')].filter(
    (one) => one.textContent.trim() === 'The chart in figures',
  );
  table?.click();
  await drawn(plant.element);
  expect(plant.texts('#plant-chart-table tbody tr:nth-child(2) > *')).toEqual([
    '1 June 2025',
    '3.63',
    '4.35',
    '3.92 to 4.79',
    'watch',
    'A cleaned',
  ]);
  const file = await saved(() => plant.press('Save as CSV'));
  expect(file.name).toBe('unitbook-plant-months.csv');
  expect(file.text.split('\n')[2]).toBe(
    '2025-05-01,2025-06-01,31,31,371.7,3.6334,3.6334,15.1,0.6265,445.0,83.5,10.0,watch',
  );
});

/** 120 days from 1 January 2025 on: 15.2 to 15.8 units, none on 10 January, and 20 January left out. */
const DAILY = `date,generation kWh\n${Array.from({ length: 120 }, (_, at) => {
  const date = new Date(Date.UTC(2025, 0, 1 + at)).toISOString().slice(0, 10);
  return at === 19 ? '' : `${date},${at === 9 ? '0.0' : `15.${String(2 + ((at * 5) % 7))}`}\n`;
}).join('')}`;

it('looks through single days of a file, and shows where a finding stands on the chart', async () => {
  const plant = await mountPlant(demoHousehold());
  await plant.openFile(DAILY);
  expect(plant.text('.files li')).toContain(
    '“days.csv”: 119 days with a value, 1 January 2025 to 30 April 2025',
  );
  const codes = [...plant.root.querySelectorAll<HTMLElement>('.day-findings > li')].map(
    ({ dataset }) => dataset['code'],
  );
  expect(codes.slice(0, 2)).toEqual(['plant/zero-days', 'plant/missing-days']);
  expect(plant.root.querySelectorAll('svg.strip')).toHaveLength(2);
  expect(plant.root.querySelectorAll('circle.zero')).toHaveLength(1);
  // 90 days of the first quarter, one of them 0 and one not known; 30 days of April.
  expect(plant.root.querySelectorAll('rect.day')).toHaveLength(88 + 30 + 1);
  await plant.press('Show on the chart');
  const strip = plant.root.activeElement;
  expect(strip?.tagName).toBe('FIGURE');
  expect(strip?.querySelectorAll('.pointed')).toHaveLength(1);
  const file = await saved(() => plant.press('Save as CSV'));
  expect(file.name).toBe('unitbook-plant-days.csv');
  // 15.2 ÷ 3.3 = 4.60606; 5.2 × 0.75 = 3.9 is expected of January, less and more by 10.0 %.
  expect(file.text.split('\n')[1]).toBe('2025-01-01,15.2,4.6061,3.9000,3.5100,4.2900,,');
  await plant.press('Close these files');
  expect(plant.root.querySelectorAll('rect.day')).toHaveLength(0);
});

it('says why a file holds no days of generation', async () => {
  const plant = await mountPlant(demoHousehold());
  await plant.openFile(DAILY.replace('generation', 'import'), 'grid.csv');
  expect(plant.text('[data-code="refused"]')).toContain(
    '“grid.csv” was not taken: It holds import kWh, and no whole day of generation.',
  );
  await expectAccessible();
});

it('asks what the columns of a table are where it leaves doubt, and reads it as a person says', async () => {
  const plant = await mountPlant(demoHousehold());
  const files = new DataTransfer();
  files.items.add(new File(['day,x\n3.4.25,14\n4.4.25,15\n5.4.25,13\n'], 'odd.csv'));
  plant.field('plant-day-files').files = files.files;
  plant.field('plant-day-files').dispatchEvent(new Event('change'));
  const question = (): ShadowRoot | null | undefined =>
    plant.root.querySelector('unitbook-table-question')?.shadowRoot;
  await expect.poll(() => question()?.querySelectorAll('.question-card').length).toBeGreaterThan(5);
  await expectAccessible();
  const settle = async (): Promise<void> => {
    await plant.root.querySelector('unitbook-table-question')?.updateComplete;
  };
  for (const [id, value] of [
    ['layout-holds', 'intervals'],
    ['layout-minutes', '1440'],
    ['layout-date-order', 'day-month-year'],
    ['column-1-is', 'generation'],
  ] as const) {
    const select = question()?.getElementById(id) as HTMLSelectElement;
    select.value = value;
    select.dispatchEvent(new Event('change'));
    await settle();
  }
  for (let open = 0; open < 12; open += 1) {
    question()?.querySelector<HTMLElement>('.question-card.open input[type="checkbox"]')?.click();
    await settle();
  }
  question()?.querySelector<HTMLElement>('#confirm-layout')?.click();
  await expect.poll(() => plant.text('.files li')).toContain('“odd.csv”: 3 days with a value');
  expect(plant.root.querySelector('unitbook-table-question')).toBeNull();
  expect(plant.root.querySelectorAll('svg.strip rect.day')).toHaveLength(3);
});

it('sends the household to the page with every edit, and none when the page sets one', async () => {
  const sent: Household[] = [];
  const listen = (event: Event): void => {
    sent.push((event as CustomEvent<Household>).detail);
  };
  document.addEventListener('unitbook-household-change', listen);
  const plant = await mountPlant(demoHousehold());
  expect(sent).toEqual([]);
  await plant.put('plant-capacity-0-kWp', '4');
  document.removeEventListener('unitbook-household-change', listen);
  expect(sent.map((household) => household.plant?.capacity)).toEqual([[{ kWp: '4' }]]);
  expect(plant.mounted.month.household).toBe(sent[0]);
});

it('is reached and used with the keyboard alone', async () => {
  const plant = await mountPlant(demoHousehold());
  plant.field('plant-new-entry').focus();
  await userEvent.keyboard('{Enter}');
  await expect.poll(() => plant.root.activeElement?.id).toBe('plant-diary-4-date');
  await userEvent.keyboard('{Tab}');
  expect(plant.root.activeElement?.id).toBe('plant-diary-4-did');
  await userEvent.keyboard('{Tab}{Tab}x');
  expect(plant.household.plant?.diary?.[4]?.note).toBe('x');
});
