import { expect, inject, it } from 'vitest';
import { visits } from './visit.ts';

const visit = visits();

it('prints a letter that is headed by nothing but itself', async () => {
  await visit.page.goto(inject('pageUrl'));
  await visit.page.getByRole('button', { name: 'Check a printed bill' }).click();
  // The browser's own window for printing would wait for somebody.
  await visit.page.evaluate(() => {
    window.print = () => undefined;
  });
  await visit.page.locator('#check-print-letter').click();
  await visit.page.emulateMedia({ media: 'print' });
  expect(await visit.page.locator('div.letter').isVisible()).toBe(true);
  expect(await visit.page.locator('h1').isVisible()).toBe(false);
  const said = await visit.page.evaluate(() => document.body.innerText);
  expect(said).not.toContain('Unitbook');
  expect(visit.problems).toEqual([]);
});

it('asks ahead for the styles of the form alone', async () => {
  await visit.page.goto(inject('pageUrl'));
  const hrefs = (rel: string): Promise<string[]> =>
    visit.page
      .locator(`link[rel="${rel}"]`)
      .evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''));
  const [ahead, sheets] = [await hrefs('preload'), await hrefs('stylesheet')];
  expect(ahead).toHaveLength(1);
  // The page's own sheet is fetched as such.
  expect(sheets.filter((href) => ahead.includes(href))).toEqual([]);
});
