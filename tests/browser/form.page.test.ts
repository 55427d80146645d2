import { type Browser, type BrowserContext, type Page, chromium } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, it } from 'vitest';
import { launchOptions } from '../support/chromium.mjs';
import { measureKeystrokes } from './keystroke.ts';

let browser: Browser;
let context: BrowserContext;
let page: Page;
let problems: string[];

beforeAll(async () => {
  browser = await chromium.launch(launchOptions());
});

afterAll(async () => {
  await browser.close();
});

beforeEach(async () => {
  problems = [];
  context = await browser.newContext({ locale: 'en-IN', timezoneId: 'Asia/Kolkata' });
  page = await context.newPage();
  page.on('pageerror', (error) => problems.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') problems.push(message.text());
  });
});

afterEach(async () => {
  await context.close();
});

async function payable(): Promise<string | null> {
  return page.locator('#answer-payable').textContent();
}

it('works through a visit without a complaint from the policy or in the console', async () => {
  const outside: string[] = [];
  page.on('request', (request) => {
    if (!request.url().startsWith(inject('pageUrl')) && !request.url().startsWith('blob:'))
      outside.push(request.url());
  });
  await page.goto(inject('pageUrl'));
  await page.locator('#month').selectOption('2');
  await page.locator('#bill-lines summary').nth(1).click();
  await page.locator('#reading-2-import').fill('46403');
  await page.getByRole('button', { name: 'Use 4,640.3' }).click();
  expect((await payable())?.trim()).toBe('₹230');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a file' }).click();
  expect((await download).suggestedFilename()).toBe('unitbook-TAR-30-00417.json');
  await page.locator('#open-file').setInputFiles(await (await download).path());
  await page.getByText('Your own book').waitFor();
  expect((await payable())?.trim()).toBe('₹180');
  expect(problems).toEqual([]);
  expect(outside).toEqual([]);
});

it('keeps what was typed over a reload without a network', async () => {
  await page.goto(inject('pageUrl'));
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await page.getByRole('button', { name: 'Start my own book' }).click();
  await page.locator('#reading-1-import').fill('4342,');
  await context.setOffline(true);
  await page.reload();
  expect(await page.locator('#reading-1-import').inputValue()).toBe('4342,');
  await page.getByRole('button', { name: 'Show the demo' }).click();
  await page.locator('#answer-payable').waitFor();
  expect((await payable())?.trim()).toBe('₹180');
  expect(problems).toEqual([]);
});

it('prints the bill on paper, without anything to press', async () => {
  await page.goto(inject('pageUrl'));
  await page.locator('#answer-payable').waitFor();
  await page.locator('#bill-lines summary').nth(0).click();
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('#bill-lines').isVisible()).toBe(true);
  expect(await page.locator('#bill-lines .how').isVisible()).toBe(true);
  expect(await page.getByRole('table').isVisible()).toBe(true);
  // The readings are what a bill is argued over: they go on paper, without what is there to press.
  expect(await page.locator('#reading-12-import').isVisible()).toBe(true);
  expect(await page.locator('#add-month').isVisible()).toBe(false);
  expect(await page.locator('#save-file').isVisible()).toBe(false);
  const pdf = await page.pdf({ preferCSSPageSize: true });
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0).toBeLessThanOrEqual(2);
});

it('answers every keystroke of a twelve-month book', async () => {
  await page.goto(inject('pageUrl'));
  await page.locator('#answer-payable').waitFor();
  expect(await page.locator('tbody tr').count()).toBe(12);
  // How fast is shown by the benchmark, never by a test.
  const report = await measureKeystrokes(page, 20);
  expect(report.keystrokes).toBe(20);
});
