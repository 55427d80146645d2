import { page } from 'vitest/browser';
import { afterEach, expect, it } from 'vitest';
import blocksText from '../../tariffs-examples/tarumira/taresco-time-blocks/tariff.json?raw';
import domesticText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { drawn, expectAccessible } from './mount.ts';
import { openDemo, type OpenQuote } from './open-quote.ts';

const choice = (id: string, name: string, text: string) => ({ id, name, load: () => Promise.resolve(text) });
const TARIFFS = [
  choice('tarumira-domestic', 'Tarumira D-1', domesticText),
  choice('tarumira-blocks', 'Tarumira by the hour', blocksText),
];

const HEAD = 'time,import kWh,generation kWh';

const two = (number: number): string => String(number).padStart(2, '0');

/**
 * The hours of 2025 of an invented house: 200 Wh taken in each, 1,000 from 18 to 22 h; sun from 8 to 16 h, 1,500 Wh
 * an hour.
 */
function yearFile(head = HEAD, { months = 12, mark = '' } = {}): string {
  const lines = Array.from({ length: months }, (_, month) => {
    const days = new Date(Date.UTC(2025, month + 1, 0)).getUTCDate();
    return Array.from({ length: days * 24 }, (__, at) => {
      const hour = at % 24;
      const day = `2025-${two(month + 1)}-${two(Math.floor(at / 24) + 1)}`;
      const use = hour >= 18 && hour < 22 ? '1.000' : '0.200';
      return `${day} ${two(hour)}:00${mark},${use},${hour >= 8 && hour < 16 ? '1.500' : '0.000'}`;
    });
  });
  return `${[head, ...lines.flat()].join('\n')}\n`;
}

/** Answer what is asked about the columns of a table. */
async function confirmTable(quote: OpenQuote): Promise<void> {
  const question = (): ShadowRoot | null | undefined =>
    quote.root.querySelector('unitbook-table-question')?.shadowRoot;
  await expect.poll(() => question()?.querySelector('[type=checkbox]'), { timeout: 10_000 }).toBeTruthy();
  const open = (): HTMLInputElement | undefined =>
    [...(question()?.querySelectorAll<HTMLInputElement>('[type=checkbox]') ?? [])].find(
      (box) => !box.checked,
    );
  for (let box = open(); box !== undefined; box = open()) {
    box.click();
    await quote.root.querySelector('unitbook-table-question')?.updateComplete;
  }
  const button = [...(question()?.querySelectorAll('button') ?? [])].at(-1);
  button?.click();
  await drawn(quote.element);
}

async function readYear(quote: OpenQuote): Promise<void> {
  await quote.unfold();
  quote.give('quote-profile', yearFile(), 'year.csv');
  await confirmTable(quote);
  await expect.poll(() => quote.text('#quote-profile-read'), { timeout: 10_000 }).toContain('year.csv');
}

afterEach(async () => {
  await page.viewport(414, 896);
});

it('reads intervals, says what was read, and works the quote out by them', async () => {
  const { quote } = await openDemo();
  await readYear(quote);
  const said = quote.text('#quote-profile-read');
  expect(said).toContain(
    '“year.csv”: 8,760 intervals of 60 minutes, from 1 January 2025 to 31 December 2025.',
  );
  expect(said).toContain('kept for this visit only');
  // In the eight hours of sun a fifth of a day's use falls, 8 × 200 of 8,000 Wh, and more is made in each of them:
  // of July's 430 units 86 are used as they are made. Net-metered, the bill is as before.
  await expect
    .poll(() => quote.rows('#quote-months')[3])
    .toBe('July 2025 | 430 | 380 | 86 | 344 | 294 | 50 | 0 | 3,140.70 | 344.00 | 0.00');
  // A fifth of 5,300.
  expect(quote.rows('#quote-months')[12]).toContain('Year | 5,300 | 5,520 | 1,060 | 4,240 | 4,460');
  expect(quote.text('.strip')).toContain('Own use by the intervals of “year.csv”');
  expect(quote.findings('quote-selfUse')).toContain('the share is not used');
  await expectAccessible();
});

it('charges a battery interval by interval', async () => {
  const { quote } = await openDemo();
  await readYear(quote);
  await quote.press('There is a battery');
  const texts = { capacity: '5', power: '2.5', efficiency: '100', cost: '60000' };
  for (const [key, text] of Object.entries(texts)) await quote.type(`quote-battery-${key}`, text);
  // It is full at the end of each day's sun and empty by 20 h: 30 × 5 units of April more are used at home.
  expect(quote.rows('#quote-months')[0]).toContain('April 2025 | 520 | 510 | 254 | 266 | 256 |');
  expect(quote.text('#quote-note-battery-saving')).toContain('interval by interval');
  expect(quote.findings('quote-battery')).toBe('');
});

it('draws by the intervals, too, and takes them out with a way back', async () => {
  const { quote } = await openDemo();
  await readYear(quote);
  await expect.poll(() => quote.text('#quote-drawn'), { timeout: 60_000 }).toContain('10,000 draws');
  await quote.press('Leave the intervals out');
  expect(quote.text('#quote-profile-read')).toBe('');
  expect(quote.rows('#quote-months')[3]).toContain('July 2025 | 430 | 380 | 144 |');
  await quote.press('Put it back');
  expect(quote.text('#quote-profile-read')).toContain('year.csv');
  expect(quote.rows('#quote-months')[3]).toContain('July 2025 | 430 | 380 | 86 |');
}, 90_000);

it('says of another file why it was not taken, and keeps what was read', async () => {
  const { quote } = await openDemo();
  await readYear(quote);
  quote.give('quote-profile', 'nothing of a meter', 'letter.txt');
  await expect.poll(() => quote.text('#quote-profile-refused')).toContain('“letter.txt” was not taken');
  expect(quote.text('#quote-profile-refused')).toContain('“year.csv” still counts.');
  quote.give('quote-profile', yearFile('time,import kWh,export kWh'), 'given.csv');
  await confirmTable(quote);
  await expect
    .poll(() => quote.text('#quote-profile-refused'), { timeout: 10_000 })
    .toContain('nothing of units made');
  expect(quote.rows('#quote-months')[3]).toContain('| 86 |');
  await expectAccessible();
});

it('says which months are missing, and leads to the file', async () => {
  const { quote } = await openDemo();
  await quote.unfold();
  quote.give('quote-profile', yearFile(HEAD, { months: 11 }), 'eleven.csv');
  await confirmTable(quote);
  await expect.poll(() => quote.findings('quote-profile'), { timeout: 10_000 }).toContain('without December');
  expect(quote.text('#quote-wanted')).toContain('1 still to type or set right');
  quote.root.querySelector<HTMLElement>('.wanted-list button')?.click();
  await expect.poll(() => quote.root.activeElement?.id).toBe('quote-profile');
});

it('bills time blocks once there are intervals', async () => {
  const { quote } = await openDemo({ tariffs: TARIFFS });
  await quote.unfold();
  await quote.choose('quote-tariff', 'tarumira-blocks');
  await expect.poll(() => quote.findings('quote-selfUse')).toContain('A tariff with time blocks');
  const wanted = [...quote.root.querySelectorAll<HTMLElement>('#quote-wanted li')];
  wanted
    .find((one) => one.textContent.includes('time blocks'))
    ?.querySelector('button')
    ?.click();
  await expect.poll(() => quote.root.activeElement?.id).toBe('quote-profile');
  await readYear(quote);
  expect(quote.findings('quote-selfUse')).not.toContain('A tariff with time blocks');
  // Rises are typed of charges that this tariff does not have: each has its field, and all a way out.
  expect(quote.findings('quote-escalation-charges-fuel')).toContain('fuel');
  await quote.press('Leave them out');
  expect(quote.text('#quote-answer-saving')).toContain('₹');
  expect(quote.rows('#quote-months')[12]).toContain('Year | 5,300 | 5,520 | 1,060 | 4,240 | 4,460');
  await quote.press('Put it back');
  expect(quote.field('quote-escalation-charges-fuel').value).toBe('2');
});

it('puts times that name their clock on that of the house', async () => {
  const { quote } = await openDemo();
  await quote.unfold();
  expect(quote.root.getElementById('quote-profile-zone')).toBe(null);
  quote.give('quote-profile', yearFile(HEAD, { mark: ':00Z' }), 'greenwich.csv');
  await confirmTable(quote);
  await expect
    .poll(() => quote.root.getElementById('quote-profile-zone'), { timeout: 10_000 })
    .not.toBe(null);
  const move = async (zone: string): Promise<void> => {
    quote.field('quote-profile-zone').value = zone;
    quote.field('quote-profile-zone').dispatchEvent(new Event('change'));
    await drawn(quote.element);
  };
  await move('Asia/Dubay');
  await expect
    .poll(() => quote.text('#quote-profile-refused'))
    .toContain('“Asia/Dubay” is no time zone. Expected: a name of the list of zones');
  expect(quote.field('quote-profile-zone').value).toBe('Asia/Dubay');
  await move('Asia/Dubai');
  // The last hours of the year in Greenwich are the first of the next one there, four hours ahead.
  await expect
    .poll(() => quote.text('#quote-profile-read'))
    .toContain('8,760 intervals of 60 minutes, from 1 January 2025 to 1 January 2026.');
  expect(quote.text('#quote-profile-refused')).toBe('');
  expect(quote.text('#quote-answer-saving')).toBe('₹36,673.88');
});

it('leaves the intervals with the house they are of', async () => {
  const { quote } = await openDemo();
  await readYear(quote);
  await quote.press('Start my own quote');
  expect(quote.text('#quote-profile-read')).toBe('');
  await quote.press('Put it back');
  await quote.unfold();
  expect(quote.text('#quote-profile-read')).toContain('year.csv');
});

it('fits a phone while a table is asked about and read', async () => {
  await page.viewport(360, 740);
  const { quote } = await openDemo();
  await quote.unfold();
  quote.give('quote-profile', yearFile(), 'year.csv');
  await expect.poll(() => quote.root.querySelector('unitbook-table-question')).toBeTruthy();
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(360);
  await confirmTable(quote);
  await expect.poll(() => quote.text('#quote-profile-read'), { timeout: 10_000 }).toContain('year.csv');
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(360);
});
