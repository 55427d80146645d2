import { type Browser, type BrowserContext, type Page, chromium } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, it } from 'vitest';
import { launchOptions } from '../support/chromium.mjs';

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

it('opens without a complaint from its content security policy', async () => {
  const response = await page.goto(inject('pageUrl'));
  expect(response?.headers()['content-security-policy']).toContain("frame-ancestors 'none'");
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Unitbook');
  expect(problems).toEqual([]);
});

it('opens again without a network', async () => {
  await page.goto(inject('pageUrl'));
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await context.setOffline(true);
  await page.reload();
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Unitbook');
  expect(problems).toEqual([]);
});

it('refuses a script from a page that tries to inject one', async () => {
  await page.goto(inject('pageUrl'));
  const isRefused = await page.evaluate(() => {
    try {
      document.body.innerHTML = '<b>injected</b>';
      return false;
    } catch {
      return true;
    }
  });
  expect(isRefused).toBe(true);
});
