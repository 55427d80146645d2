import { expect, inject, it } from 'vitest';
import { visits } from './visit.ts';

const visit = visits();

const LIST = '2025-04-01\n1.8.0 4120.6 kWh\n2.8.0 2655.2 kWh\nGEN 6890.4 kWh\n';

/** Open the panel for meter files in a book of one's own. */
async function openPanel(): Promise<void> {
  await visit.page.getByRole('button', { name: 'Start my own book' }).click();
  await visit.page.getByText('From a meter file').click();
  await visit.page.locator('#meter-file').waitFor();
}

it('fetches what reads files once somebody wants it, and reads under the page’s policy', async () => {
  const scripts: string[] = [];
  visit.page.on('request', (request) => {
    if (request.resourceType() === 'script') scripts.push(request.url());
  });
  await visit.page.goto(inject('pageUrl'));
  await visit.page.getByRole('button', { name: 'Start my own book' }).waitFor();
  expect(scripts.filter((url) => url.includes('meter-file'))).toEqual([]);
  await openPanel();
  expect(scripts.filter((url) => url.includes('meter-file'))).not.toEqual([]);
  const buffer = Buffer.from('day;import kWh;export kWh\n13.5.2025;1,5;2,5\n14.5.2025;2,5;2,5\n');
  await visit.page.locator('#meter-file').setInputFiles({ name: 'a.csv', mimeType: 'text/csv', buffer });
  await visit.page.getByText('How this table is to be read').waitFor();
  await visit.page.locator('#meter-text').fill(LIST);
  await visit.page.getByRole('button', { name: 'Read what is typed' }).click();
  await visit.page.getByRole('button', { name: 'Take over 1 reading' }).click();
  expect(await visit.page.locator('#reading-0-import').inputValue()).toBe('4120.6');
  expect(visit.problems).toEqual([]);
});

it('reads files without a network, once the page was there', async () => {
  await visit.page.goto(inject('pageUrl'));
  await visit.page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await visit.context.setOffline(true);
  await visit.page.reload();
  await openPanel();
  await visit.page.locator('#meter-text').fill(LIST);
  await visit.page.getByRole('button', { name: 'Read what is typed' }).click();
  await visit.page.getByRole('button', { name: 'Take over 1 reading' }).waitFor();
  expect(visit.problems).toEqual([]);
});

it('says so where what reads files cannot be fetched, and tries again', async () => {
  // Without the offline worker, which would have kept it.
  await visit.page.addInitScript(() => {
    Reflect.deleteProperty(Navigator.prototype, 'serviceWorker');
  });
  await visit.page.route('**/assets/meter-file-*.js', (route) => route.abort());
  await visit.page.goto(inject('pageUrl'));
  await visit.page.getByRole('button', { name: 'Start my own book' }).click();
  await visit.page.getByText('From a meter file').click();
  await visit.page.getByText('could not be fetched').waitFor();
  await visit.page.unroute('**/assets/meter-file-*.js');
  await visit.page.getByRole('button', { name: 'Try again' }).click();
  await visit.page.locator('#meter-file').waitFor();
});
