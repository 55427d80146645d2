import { expect, inject, it } from 'vitest';
import { measureKeystrokes } from './keystroke.ts';
import { visits } from './visit.ts';

const visit = visits();

async function payable(): Promise<string | null> {
  return visit.page.locator('#answer-payable').textContent();
}

it('works through a visit without a complaint from the policy or in the console', async () => {
  const outside: string[] = [];
  visit.page.on('request', (request) => {
    if (!request.url().startsWith(inject('pageUrl')) && !request.url().startsWith('blob:'))
      outside.push(request.url());
  });
  await visit.page.goto(inject('pageUrl'));
  await visit.page.locator('#month').selectOption('2');
  await visit.page.locator('#bill-lines summary').nth(1).click();
  await visit.page.locator('#reading-2-import').fill('46403');
  await visit.page.getByRole('button', { name: 'Use 4,640.3' }).click();
  expect((await payable())?.trim()).toBe('₹230');
  const download = visit.page.waitForEvent('download');
  await visit.page.getByRole('button', { name: 'Save as a file' }).click();
  expect((await download).suggestedFilename()).toBe('unitbook-TAR-30-00417.json');
  await visit.page.locator('#open-file').setInputFiles(await (await download).path());
  await visit.page.getByText('Your own book').waitFor();
  expect((await payable())?.trim()).toBe('₹180');
  expect(visit.problems).toEqual([]);
  expect(outside).toEqual([]);
});

it('keeps what was typed over a reload without a network', async () => {
  await visit.page.goto(inject('pageUrl'));
  await visit.page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await visit.page.getByRole('button', { name: 'Start my own book' }).click();
  await visit.page.locator('#reading-1-import').fill('4342,');
  await visit.context.setOffline(true);
  await visit.page.reload();
  expect(await visit.page.locator('#reading-1-import').inputValue()).toBe('4342,');
  await visit.page.getByRole('button', { name: 'Show the demo' }).click();
  await visit.page.locator('#answer-payable').waitFor();
  expect((await payable())?.trim()).toBe('₹180');
  expect(visit.problems).toEqual([]);
});

it('prints the bill on paper, without anything to press', async () => {
  await visit.page.goto(inject('pageUrl'));
  await visit.page.locator('#answer-payable').waitFor();
  await visit.page.locator('#bill-lines summary').nth(0).click();
  await visit.page.emulateMedia({ media: 'print' });
  expect(await visit.page.locator('#bill-lines').isVisible()).toBe(true);
  expect(await visit.page.locator('#bill-lines .how').isVisible()).toBe(true);
  expect(await visit.page.getByRole('table').isVisible()).toBe(true);
  // The readings are what a bill is argued over: they go on paper, without what is there to press.
  expect(await visit.page.locator('#reading-12-import').isVisible()).toBe(true);
  expect(await visit.page.locator('#add-month').isVisible()).toBe(false);
  expect(await visit.page.locator('#save-file').isVisible()).toBe(false);
  const pdf = await visit.page.pdf({ preferCSSPageSize: true });
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0).toBeLessThanOrEqual(2);
});

it('answers every keystroke of a twelve-month book', async () => {
  await visit.page.goto(inject('pageUrl'));
  await visit.page.locator('#answer-payable').waitFor();
  expect(await visit.page.locator('tbody tr').count()).toBe(12);
  // How fast is shown by the benchmark, never by a test.
  const report = await measureKeystrokes(visit.page, 20);
  expect(report.keystrokes).toBe(20);
});
