import { type Browser, type BrowserContext, type Page, chromium } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach } from 'vitest';
import { launchOptions } from '../support/chromium.mjs';

/** One visit to the page: a browser without a past, and what it complained of. */
export interface Visit {
  context: BrowserContext;
  page: Page;
  problems: string[];
}

/** A new visit before each test of a file; its fields are there once a test runs. */
export function visits(): Visit {
  const visit = {} as Visit;
  let browser: Browser;
  beforeAll(async () => {
    browser = await chromium.launch(launchOptions());
  });
  afterAll(async () => {
    await browser.close();
  });
  beforeEach(async () => {
    visit.problems = [];
    visit.context = await browser.newContext({ locale: 'en-IN', timezoneId: 'Asia/Kolkata' });
    visit.page = await visit.context.newPage();
    visit.page.on('pageerror', (error) => visit.problems.push(error.message));
    visit.page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') visit.problems.push(message.text());
    });
  });
  afterEach(async () => {
    await visit.context.close();
  });
  return visit;
}
