import { cdp, page, userEvent } from 'vitest/browser';
import { expect, it } from 'vitest';
import type { Household } from '@unitbook/form';
import { blankBook, memoryLayouts, openPanel, type FilesPanel } from './files-panel.ts';
import { expectAccessible, householdWith } from './mount.ts';
// See the SOURCE.txt beside each.
import nemText from '../published/data/nem/solar_month_5min_E1_B1.csv?raw';
import telegramText from '../published/data/obis/telegram_v5.txt?raw';
import homesText from '../published/data/tables/konstanz-registers.csv?raw';
import blocksText from '../../tariffs-examples/tarumira/taresco-time-blocks/tariff.json?raw';

/** The first two readings of the demo household, as a display shows them. Its first bill is of 180. */
const LIST = `2025-04-01
1.8.0 004120.6 kWh
2.8.0 2655.2 kWh
GEN 6890,4 kWh
2025-05-01
1.8.0 004342.1 kWh
2.8.0 2935.8 kWh
GEN 7318,0 kWh
`;

const dates = ({ readings }: Household): string[] => readings.map(({ date }) => date);

it('is accessible at every stage', async () => {
  const panel = await openPanel(blankBook(), memoryLayouts().layouts);
  await expectAccessible();
  await panel.open(LIST);
  await expectAccessible();
  await panel.press('Take over 2 readings');
  await expectAccessible();
  await panel.open('Zeit;Netzbezug kWh\n1.5.2025 0:15;0,250\n1.5.2025 0:30;1,125\n');
  await expectAccessible();
  await panel.open(nemText);
  await panel.choose('cycle-day', '1');
  await panel.type('meter-zone', 'Australia/Brisbane');
  await expectAccessible();
  await panel.open('\u0089PNG\r\n');
  await expectAccessible();
});

it('says what a file is, what is in it, and what was found, line by line', async () => {
  const panel = await openPanel(blankBook());
  await panel.open(`${LIST}nothing that can be read\n`, 'display.txt');
  expect(panel.text).toContain('“display.txt”: A list of registers by their OBIS codes.');
  expect(panel.rows('Registers of the file')).toEqual([
    ['taken from the grid1.8.0', '4,120.6 on 1 April 2025', '4,342.1 on 1 May 2025', '221.5 units'],
    ['given to the grid2.8.0', '2,655.2 on 1 April 2025', '2,935.8 on 1 May 2025', '280.6 units'],
    ['made by the plantgeneration', '6,890.4 on 1 April 2025', '7,318 on 1 May 2025', '427.6 units'],
  ]);
  expect(panel.text).toContain('Each register: 2 readings, none estimated.');
  expect(panel.root.querySelector('.finding.error')?.textContent).toContain('Line 9, column 1');
});

it('takes readings over, and puts them back', async () => {
  const start = blankBook();
  const panel = await openPanel(start);
  await panel.open(LIST);
  expect(panel.rows('Readings to take over')).toEqual([
    ['1 April 2025', '4,120.6', '2,655.2', '6,890.4', 'new'],
    ['1 May 2025', '4,342.1', '2,935.8', '7,318', 'new'],
  ]);
  await panel.press('Take over 2 readings');
  expect(dates(panel.household)).toEqual(['2025-04-01', '2025-05-01']);
  expect(panel.mounted.text('answer-payable')).toBe('₹180');
  expect(panel.text).toContain('2 readings were taken over.');
  expect(panel.rows('Readings to take over').map((cells) => cells.at(-1))).toEqual([
    'there already, the same',
    'there already, the same',
  ]);
  await panel.press('Put it back');
  expect(panel.household).toEqual(start);
  expect(panel.text).not.toContain('taken over.');
});

it('shows the month of the last reading that was taken over', async () => {
  const panel = await openPanel(blankBook());
  await panel.open(`${LIST}2025-06-01\n1.8.0 4640.3 kWh\n2.8.0 3151 kWh\nGEN 7689.7 kWh\n`);
  await panel.press('Take over 3 readings');
  await panel.drawn();
  // The second bill of the demo household is of 230.
  await expect.poll(() => panel.mounted.text('answer-payable')).toBe('₹230');
});

it('puts back what was taken over, and keeps what was typed since', async () => {
  const panel = await openPanel(blankBook());
  await panel.open(LIST);
  await panel.press('Take over 2 readings');
  await panel.mounted.type('reading-1-import', '4343');
  await panel.press('Put it back');
  expect(panel.household.readings).toEqual([
    { date: '2025-05-01', import: '4343', export: '2935.8', generation: '7318.0' },
  ]);
});

it('asks about a day that has another number, and takes it only then', async () => {
  const panel = await openPanel(householdWith(2, { import: '4342.5', export: '' }));
  await panel.open(LIST);
  const [first, second] = panel.rows('Readings to take over');
  expect(first?.at(-1)).toBe('there already, the same');
  expect(second?.at(-1)).toContain('use the file: taken 4,342.1 in place of 4,342.5');
  expect(panel.text).toContain('Nothing to take over');
  await panel.tick('replace-registers-20209');
  await panel.press('Take over 1 reading');
  expect(panel.household.readings[1]).toMatchObject({ import: '004342.1', export: '2935.8' });
  expect(panel.mounted.text('answer-payable')).toBe('₹180');
  await panel.press('Put it back');
  expect(panel.household.readings[1]).toMatchObject({ import: '4342.5', export: '' });
});

it('reads what is typed, and asks for the day where it is missing', async () => {
  const panel = await openPanel(blankBook());
  await panel.type('meter-text', '1.8.0 4342.1\n2.8.0 2935.8\n');
  await panel.press('Read what is typed');
  expect(panel.text).toContain('On which day was the meter read?');
  await panel.press('Type the day');
  expect(panel.root.activeElement?.id).toBe('meter-day');
  await panel.type('meter-day', '1/5/2025');
  await panel.press('Read it again with the day');
  expect(panel.rows('Readings to take over')).toEqual([['1 May 2025', '4,342.1', '2,935.8', 'new']]);
  expect(panel.text).toContain('The file has no generation: copy it from the display.');
  await panel.press('Take over 1 reading');
  expect(panel.household.readings).toEqual([{ date: '2025-05-01', import: '4342.1', export: '2935.8' }]);
});

it('takes the readings of our own list over as they were typed', async () => {
  const panel = await openPanel(blankBook());
  await panel.open(
    'date;import;export;generation\n1/4/2025;4120,6;2655,2;6890,4\n1/5/2025;4342,1;29x;7318\n',
  );
  expect(panel.text).toContain('A list of readings with the columns date, import and export.');
  await panel.press('Take over 2 readings');
  expect(panel.household.readings[1]).toMatchObject({ date: '1/5/2025', import: '4342,1', export: '29x' });
  // What cannot be read is asked about where it stands in the book, as if it had been typed there.
  expect(panel.mounted.codes('error')).toContain('reading/not-a-number');
});

it('offers the readings of one day of each month, and days that are ticked', async () => {
  const days = Array.from({ length: 40 }, (_, at) => {
    const day = new Date(Date.UTC(2025, 3, 20 + at)).toISOString().slice(0, 10);
    return `${day}\n1.8.0 ${String(100 + at)} kWh\n2.8.0 0 kWh\nGEN 0 kWh\n`;
  });
  const panel = await openPanel(blankBook());
  await panel.open(days.join(''));
  // 20 April is the first of the 40 days, so 1 May is the twelfth.
  expect(panel.rows('Readings to take over').map(([day, taken]) => [day, taken])).toEqual([
    ['1 May 2025', '111'],
  ]);
  await panel.choose('month-day', '25');
  expect(panel.rows('Readings to take over').map(([day]) => day)).toEqual(['25 April 2025', '25 May 2025']);
  await panel.choose('offer-mode', 'picked');
  expect(panel.text).toContain('Nothing to take over');
  await panel.tick('pick-20200');
  await panel.press('Take over 1 reading');
  expect(dates(panel.household)).toEqual(['2025-04-22']);
});

it('takes a telegram with rates once the account has them', async () => {
  const panel = await openPanel(blankBook());
  await panel.open(telegramText, 'telegram.txt');
  expect(panel.text).toContain('“telegram.txt”: A telegram of a meter.');
  expect(panel.rows('Registers of the file')).toEqual([
    ['taken from the grid, rate 11-0:1.8.1', '4.426 on 2 January 2017, 19:20'],
    ['taken from the grid, rate 21-0:1.8.2', '2.399 on 2 January 2017, 19:20'],
    ['given to the grid, rate 11-0:2.8.1', '2.444 on 2 January 2017, 19:20'],
    ['given to the grid, rate 21-0:2.8.2', '0 on 2 January 2017, 19:20'],
  ]);
  expect(panel.text).toContain('Set 2 rates of import and export in “This account”');
  await panel.press('Go to “This account”');
  const count = 'account-meters-grid-import-rates-count';
  await expect.poll(() => panel.mounted.root.activeElement?.id).toBe(count);
  const select = panel.mounted.field(count);
  select.value = '2';
  select.dispatchEvent(new Event('change'));
  await panel.drawn();
  expect(panel.text).not.toContain('Set 2 rates');
  await panel.tick('set-account-registers');
  await panel.press('Take over 1 reading');
  expect(panel.household.readings).toEqual([
    {
      date: '2017-01-02',
      rates: {
        import: { 1: '000004.426', 2: '000002.399' },
        export: { 1: '000002.444', 2: '000000.000' },
      },
    },
  ]);
  expect(panel.household.account.meters.grid.import).toMatchObject({ digits: '5', decimals: '3' });
});

/** The month of the NEM12 sample on the clock of its place, closed on the first. */
async function openNem(panel: FilesPanel): Promise<void> {
  await panel.open(nemText, 'solar.csv');
  expect(panel.root.getElementById('take-totals')).toBeNull();
  await panel.choose('cycle-day', '1');
  expect(panel.rows('Units by month')).toEqual([]);
  await panel.type('meter-zone', 'Australia/Bris');
  expect(panel.rows('Units by month')).toEqual([]);
  await panel.type('meter-zone', 'Australia/Brisbane');
}

it('sums intervals up to months on the clock of the place, and takes the sums over as readings', async () => {
  const start = blankBook();
  const panel = await openPanel(start);
  await openNem(panel);
  // The values of the records, added up by another program: 270.738 of E1, 589.172 of B1.
  expect(panel.rows('Registers of the file')).toEqual([
    ['taken from the gridE1', '1 March 2023, 00:00', '31 March 2023, 24:00', '270.738 units'],
    ['given to the gridB1', '1 March 2023, 00:00', '31 March 2023, 24:00', '589.172 units'],
  ]);
  expect(panel.text).toContain('Times of intervals are by UTC+10:00 all year');
  expect(panel.rows('Units by month')).toEqual([['1 March 2023 to 1 April 2023', '270.738', '589.172']]);
  expect(panel.text).toContain('sums of the download, not what the meter’s display shows');
  await panel.tick('set-account-totals');
  await panel.press('Take over 2 readings');
  expect(panel.household.readings).toEqual([
    { date: '2023-03-01', import: '0.000', export: '0.000' },
    { date: '2023-04-01', import: '270.738', export: '589.172' },
  ]);
  const { grid, generation } = panel.household.account.meters;
  expect([grid.import, grid.export]).toEqual(Array(2).fill({ digits: '7', decimals: '3' }));
  expect(generation?.generation).toEqual({ digits: '5', decimals: '1' });
  await panel.press('Put it back');
  expect(panel.household).toEqual(start);
});

it('sets nothing in the account unasked', async () => {
  const start = blankBook();
  const panel = await openPanel(start);
  await openNem(panel);
  await panel.press('Take over 2 readings');
  expect(panel.household.account).toEqual(start.account);
});

it('goes on from a reading of the book, and never puts sums among other readings', async () => {
  const blank = blankBook();
  const first = { date: '1 March 2023', import: '4120.6', export: '2655.2', generation: '6890.4' };
  const panel = await openPanel({ ...blank, readings: [first] });
  await openNem(panel);
  expect(panel.text).toContain('They go on from the reading of 1 March 2023 in this book.');
  expect(panel.rows('Readings to take over').map((cells) => cells.slice(0, 4))).toEqual([
    ['1 March 2023', '4,120.6', '2,655.2', 'there already, the same'],
    // 4120.6 + 270.738 and 2655.2 + 589.172
    ['1 April 2023', '4,391.338', '3,244.372', 'new'],
  ]);
  const other = await openPanel({ ...blank, readings: [{ ...first, date: '2 March 2023' }] });
  await openNem(other);
  expect(other.text).toContain('sums of a download cannot be put among them');
  expect(other.root.getElementById('take-totals')).toBeNull();
});

it('says that a tariff of time blocks needs the command, and shows the months', async () => {
  const tariff = JSON.parse(blocksText) as Exclude<Household['tariff'], string>;
  const panel = await openPanel({ ...blankBook(), tariff });
  await openNem(panel);
  expect(panel.text).toContain('unitbook bill --intervals');
  expect(panel.rows('Units by month')).toHaveLength(1);
  expect(panel.root.getElementById('take-totals')).toBeNull();
});

/** The order of day and month, the clock and what the numbers are stay in doubt. */
const TABLE = `Zeit;Netzbezug kWh;Einspeisung kWh;Stufe
1.5.2025 0:15;0,250;0,000;1
1.5.2025 0:30;1,125;0,100;1
`;

it('asks how a table is to be read, and reads it as it is confirmed', async () => {
  const { layouts, texts } = memoryLayouts();
  const panel = await openPanel(blankBook(), layouts);
  await panel.open(TABLE, 'zaehler.csv');
  expect(panel.openQuestions()).toEqual(['date-order', 'clock', 'holds', 'column-3']);
  expect(panel.text).toContain('No part above 12 tells day and month apart');
  await panel.choose('layout-holds', 'intervals');
  expect(panel.openQuestions()).toEqual(['date-order', 'clock', 'minutes', 'label', 'column-3']);
  await panel.choose('layout-minutes', '15');
  await panel.choose('layout-label', 'end');
  expect(panel.rows('The first rows as they would be read')).toEqual([
    ['1 May 2025, 00:00 to 00:15', '0.25', '0'],
    ['1 May 2025, 00:15 to 00:30', '1.125', '0.1'],
  ]);
  await panel.choose('layout-date-order', 'month-day-year');
  expect(panel.rows('The first rows as they would be read')[0]?.[0]).toBe('5 January 2025, 00:00 to 00:15');
  await panel.choose('layout-date-order', 'day-month-year');
  for (const key of panel.openQuestions()) {
    expect(panel.root.getElementById('confirm-layout')).toBeNull();
    await panel.tick(`confirm-${key}`);
  }
  await panel.press('That is right: read it');
  expect(panel.text).toContain('The table was read as you confirmed.');
  expect(panel.rows('Registers of the file')[0]).toEqual([
    'taken from the gridNetzbezug kWh',
    '1 May 2025, 00:00',
    '1 May 2025, 00:30',
    '1.375 units',
  ]);
  expect([...texts.keys()]).toEqual(['unitbook-columns-["zeit","netzbezug kwh","einspeisung kwh","stufe"]']);
});

it('remembers how a table was confirmed, says so, and forgets it when asked', async () => {
  const { layouts, texts } = memoryLayouts();
  const first = await openPanel(blankBook(), layouts);
  await first.open(TABLE);
  for (const key of first.openQuestions()) await first.tick(`confirm-${key}`);
  await first.press('That is right: read it');
  const second = await openPanel(blankBook(), layouts);
  await second.open(TABLE.replaceAll('1.5.2025', '13.6.2025'));
  expect(second.text).toContain('The table was read as you confirmed on an earlier file.');
  await second.press('Look at how it is read');
  expect(second.openQuestions()).toEqual([]);
  await second.press('That is right: read it');
  await second.open(TABLE);
  await second.press('Forget it and ask again');
  expect(texts.size).toBe(0);
  expect(second.openQuestions()).toEqual(['date-order', 'clock', 'holds', 'column-3']);
});

it('asks which connection is meant, and counts a register otherwise', async () => {
  const panel = await openPanel(blankBook());
  await panel.open(homesText);
  for (const key of panel.openQuestions()) await panel.tick(`confirm-${key}`);
  await panel.press('That is right: read it');
  expect(panel.rows('Readings to take over')).toEqual([]);
  await panel.choose('meter-point', 'DE_KN_residential1');
  expect(panel.rows('Readings to take over')[0]?.slice(0, 3)).toEqual([
    '5 May 2016',
    '4,768.22',
    '8,879.444',
  ]);
  // Its two registers with readings are generation and import, in the order of their names.
  await panel.choose('count-0', 'nothing');
  expect(panel.rows('Readings to take over')[0]?.slice(0, 2)).toEqual(['5 May 2016', '4,768.22']);
});

it('reads on past damage, and counts what is like it', async () => {
  const lines = nemText.split('\n');
  const damaged = lines.map((line, at) => (at >= 4 && at < 34 ? line.replace(/^300,\d{8}/, '300,x') : line));
  const panel = await openPanel(blankBook());
  await panel.open(damaged.join('\n'));
  const [error] = panel.root.querySelectorAll('.finding.error');
  // Records 300 stand in lines 3 to 33 and 35 to 65: 29 of the 31 of B1 have no day, the first in line 5.
  expect(error?.textContent).toContain('Line 5, column 5');
  expect(error?.textContent).toContain('And 28 more like it, on lines 6, 7, 8, 9, 10, 11 and further on.');
  expect(panel.rows('Registers of the file')[0]?.[3]).toBe('270.738 units');
});

it.each([
  ['a picture', '\u0089PNG\r\n\u001a\n\u0000', 'was not read'],
  ['nothing', '', 'was not read: an empty file'],
  ['a letter', 'Dear Sir or Madam,\nwe are sorry.\n', 'was not read'],
  ['a book', '{\n  "format": "unitbook-household-1"\n}', 'was saved from this page, and is no meter file'],
])('says of %s that it is no meter file, and leaves the book alone', async (_, text, told) => {
  const start = blankBook();
  const panel = await openPanel(start);
  await panel.open(text, 'some.bin');
  expect(panel.text).toContain(`“some.bin” ${told}`);
  expect(panel.household).toEqual(start);
});

it('tells a fault of ours as ours, with a text to report, and goes on with the next file', async () => {
  const start = blankBook();
  const panel = await openPanel(start, {
    load: () => {
      throw new RangeError('made for this test');
    },
    save: () => false,
    forget: () => false,
  });
  await panel.open(TABLE);
  expect(panel.text).toContain('A fault of ours');
  expect(panel.text).toContain('RangeError: made for this test');
  expect(panel.text).not.toContain('.ts:');
  await expectAccessible();
  expect(panel.household).toEqual(start);
  await panel.open(LIST);
  expect(panel.rows('Readings to take over')).toHaveLength(2);
});

it('takes a file that is dropped', async () => {
  const panel = await openPanel(blankBook());
  const drop = panel.root.querySelector('.drop');
  const files = new DataTransfer();
  files.items.add(new File([LIST], 'dropped.txt'));
  const over = new DragEvent('dragover', { dataTransfer: files, bubbles: true, cancelable: true });
  drop?.dispatchEvent(over);
  expect(over.defaultPrevented).toBe(true);
  drop?.dispatchEvent(new DragEvent('drop', { dataTransfer: files, bubbles: true, cancelable: true }));
  await panel.settled();
  expect(panel.text).toContain('“dropped.txt”');
});

it('fits a phone 360 px wide without scrolling sideways', async () => {
  await page.viewport(360, 740);
  const panel = await openPanel(householdWith(2, { import: '4342.5' }), memoryLayouts().layouts);
  for (const text of [LIST, telegramText, nemText, TABLE]) {
    await panel.open(text);
    for (const summary of panel.root.querySelectorAll('summary')) summary.click();
    await panel.drawn();
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(360);
  }
  await page.viewport(1280, 900);
});

/** The focused element, through the shadow roots. */
function focused(): Element | null {
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement != null) active = active.shadowRoot.activeElement;
  return active;
}

async function tabTo(isThere: (element: Element) => boolean): Promise<void> {
  for (let count = 0; count < 80; count += 1) {
    await userEvent.keyboard('{Tab}');
    const active = focused();
    if (active !== null && isThere(active)) return;
  }
  throw new Error('Tab did not get there.');
}

it('goes from what is typed into the book and back by keyboard alone', async () => {
  const start = blankBook();
  const panel = await openPanel(start);
  await tabTo(({ id }) => id === 'meter-text');
  await userEvent.keyboard('1 May 2025{Enter}1.8.0 4342.1{Enter}2.8.0 2935.8');
  await tabTo(({ id }) => id === 'read-text');
  await userEvent.keyboard('{Enter}');
  await panel.settled();
  await tabTo(({ id }) => id === 'take-registers');
  await userEvent.keyboard('{Enter}');
  await panel.drawn();
  expect(dates(panel.household)).toEqual(['2025-05-01']);
  await expect.poll(() => focused()?.id).toBe('put-back');
  await userEvent.keyboard('{Enter}');
  await panel.drawn();
  expect(panel.household).toEqual(start);
  await expect.poll(() => focused()?.id).toBe('take-registers');
});

it('stays off paper', async () => {
  const panel = await openPanel(blankBook());
  await panel.open(LIST);
  expect(panel.element.getBoundingClientRect().height).toBeGreaterThan(0);
  const session = cdp() as { send: (method: string, parameters: object) => Promise<unknown> };
  await session.send('Emulation.setEmulatedMedia', { media: 'print' });
  expect(panel.element.getBoundingClientRect().height).toBe(0);
  await session.send('Emulation.setEmulatedMedia', { media: '' });
});
