import { emptyHousehold, householdText, keepIn, readHousehold } from '@unitbook/form';
import { expect, it } from 'vitest';
import { demoHousehold, drawn, expectAccessible, householdWith, memoryStorage, mountBook } from './mount.ts';
import { chooseFile, saved } from './opened.ts';

function press(shelf: ShadowRoot, id: string): void {
  shelf.getElementById(id)?.click();
}

function openFile(shelf: ShadowRoot, text: string): void {
  chooseFile(shelf.getElementById('open-file') as HTMLInputElement, text, 'saved.json');
}

it('is accessible with the demo note and with notices', async () => {
  await mountBook(memoryStorage().keep);
  await expectAccessible();
  await mountBook(memoryStorage({ 'unitbook-open': 'own', 'unitbook-own': '{' }).keep);
  await expectAccessible();
});

it('shows the demo on the first visit, and starts a book of one’s own without asking', async () => {
  const { keep, texts } = memoryStorage();
  const { book, shelf, mounted } = await mountBook(keep);
  expect(shelf.textContent).toContain('invented place');
  press(shelf, 'start-own');
  await drawn(book);
  expect(mounted().month.household).toEqual(emptyHousehold('en-IN'));
  await mounted().type('reading-0-import', '41');
  expect(texts.get('unitbook-own')).toContain('"import": "41"');
  press(shelf, 'show-demo');
  await drawn(book);
  expect(mounted().month.household).toEqual(demoHousehold());
  press(shelf, 'start-own');
  await drawn(book);
  expect(mounted().month.household.readings[0]?.import).toBe('41');
});

it('opens a book of one’s own where there is no demo', async () => {
  const { book, shelf, mounted } = await mountBook(memoryStorage().keep);
  book.demo = null;
  await drawn(book);
  expect(shelf.textContent).toContain('Your own book');
  expect(mounted().month.household).toEqual(emptyHousehold('en-IN'));
});

it('keeps half-typed text and opens it again', async () => {
  const { keep } = memoryStorage();
  const first = await mountBook(keep);
  await first.mounted().type('reading-12-import', '69,');
  const second = await mountBook(keep);
  expect(second.mounted().field('reading-12-import').value).toBe('69,');
});

it('saves a file and opens it again, identical', async () => {
  const half = householdWith(3, { import: '46,', date: 'Ju', confirmed: ['reading/large-advance:import'] });
  const { keep } = memoryStorage({ 'unitbook-open': 'own', 'unitbook-own': householdText(half) });
  const first = await mountBook(keep);
  const file = await saved(() => {
    press(first.shelf, 'save-file');
  });
  expect(file.name).toBe('unitbook-TAR-30-00417.json');
  const second = await mountBook(memoryStorage().keep);
  openFile(second.shelf, file.text);
  await expect.poll(() => second.mounted().month.household).toEqual(half);
  const again = await saved(() => {
    press(second.shelf, 'save-file');
  });
  expect(again.text).toBe(file.text);
});

it('puts the book aside that an opened file takes the place of', async () => {
  const before = householdText(householdWith(4));
  const { keep, texts } = memoryStorage({ 'unitbook-open': 'own', 'unitbook-own': before });
  const { shelf } = await mountBook(keep);
  openFile(shelf, householdText(householdWith(2)));
  await expect.poll(() => shelf.getElementById('asides')?.textContent).toContain('up to 2025-07-01');
  expect(texts.get('unitbook-aside-1')).toBe(before);
});

it('says why a file is not opened, and leaves the book as it is', async () => {
  const { shelf, mounted } = await mountBook(memoryStorage().keep);
  const odd = householdText(demoHousehold()).replace('"4120.6"', '4120.6').replace('"5"', '"9"');
  openFile(shelf, odd);
  const told = (): string => shelf.getElementById('refused')?.textContent ?? '';
  await expect.poll(told).toContain('readings.0.import: 4120.6');
  expect(told()).toContain('account.meters.grid.import.digits');
  expect(mounted().month.household).toEqual(demoHousehold());
  openFile(shelf, '{"format":"unitbook-household-9"}');
  await expect.poll(told).toContain('“unitbook-household-9”');
});

it('starts another book, and opens the one put aside again', async () => {
  const first = householdText(householdWith(4));
  const { keep, texts } = memoryStorage({ 'unitbook-open': 'own', 'unitbook-own': first });
  const { book, shelf, mounted } = await mountBook(keep);
  press(shelf, 'start-another');
  await drawn(book);
  expect(mounted().month.household).toEqual(emptyHousehold('en-IN'));
  await expect.poll(() => mounted().root.activeElement?.id).toBe('tariff');
  expect(texts.get('unitbook-aside-1')).toBe(first);
  await mounted().type('reading-0-import', '41');
  const file = await saved(() => {
    shelf.querySelector<HTMLButtonElement>('#asides button:last-child')?.click();
  });
  expect(file).toEqual({ name: 'unitbook-aside-1.json', text: first });
  const [again] = shelf.querySelectorAll<HTMLButtonElement>('#asides button');
  again?.click();
  await drawn(book);
  expect(householdText(mounted().month.household)).toBe(first);
  expect(texts.get('unitbook-aside-1')).toContain('"import": "41"');
  await expectAccessible();
});

it.each([
  ['an empty file', '', 'It is empty.'],
  ['a picture', '\u0089PNG\r\n\u001a\n', 'no book saved from this page'],
  ['a text in another encoding', '\ufffd\ufffd{\u0000', 'no book saved from this page'],
  ['half a file', '{"format":"unitbook-household-1",', 'damaged or cut off'],
  ['a tariff', '{"format":"unitbook-tariff-1"}', 'This is a tariff. Open it under “This account”.'],
  ['readings', '{"format":"unitbook-readings-1"}', 'This is the readings alone'],
  ['an account', '{"format":"unitbook-account-1"}', 'This is the account alone'],
])('says in its own words that %s is no household', async (_, text, told) => {
  const { shelf, mounted } = await mountBook(memoryStorage().keep);
  openFile(shelf, text);
  await expect.poll(() => shelf.getElementById('refused')?.textContent).toContain(told);
  expect(shelf.getElementById('refused')?.textContent).not.toContain('JSON');
  expect(mounted().month.household).toEqual(demoHousehold());
  await expectAccessible();
});

it.each([
  ['damaged', '{"format":"unitbook-household-1","read', 'could not be opened'],
  ['another version', '{"format":"unitbook-household-2"}', '“unitbook-household-2”'],
])('keeps saved data aside that is %s, and offers it as a file', async (_, text, told) => {
  const { keep, texts } = memoryStorage({ 'unitbook-open': 'own', 'unitbook-own': text });
  const { book, shelf, mounted } = await mountBook(keep);
  expect(texts.get('unitbook-aside-1')).toBe(text);
  expect(shelf.getElementById('asides')?.textContent).toContain(told);
  expect(mounted().month.household).toEqual(demoHousehold());
  const file = await saved(() => {
    shelf.querySelector<HTMLButtonElement>('#asides button')?.click();
  });
  expect(file.text).toBe(text);
  press(shelf, 'start-own');
  await drawn(book);
  expect(mounted().month.household).toEqual(emptyHousehold('en-IN'));
  expect(texts.get('unitbook-aside-1')).toBe(text);
});

it('says so when the browser keeps nothing', async () => {
  const refuse = keepIn(() => {
    throw new Error('refused');
  });
  const { shelf, mounted, book } = await mountBook(refuse);
  await mounted().type('reading-12-import', '7');
  await drawn(book);
  expect(shelf.getElementById('not-kept')).not.toBeNull();
});

it('writes households that read back as themselves', () => {
  for (const household of [demoHousehold(), emptyHousehold('de-DE')])
    expect(readHousehold(householdText(household))).toEqual({ kind: 'household', household });
});
