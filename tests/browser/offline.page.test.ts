import { expect, inject, it } from 'vitest';
import { visits } from './visit.ts';

const visit = visits();

it('opens without a complaint from its content security policy', async () => {
  const response = await visit.page.goto(inject('pageUrl'));
  expect(response?.headers()['content-security-policy']).toContain("frame-ancestors 'none'");
  expect(await visit.page.getByRole('heading', { level: 1 }).textContent()).toBe('Unitbook');
  expect(visit.problems).toEqual([]);
});

it('opens again without a network', async () => {
  await visit.page.goto(inject('pageUrl'));
  await visit.page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await visit.context.setOffline(true);
  await visit.page.reload();
  expect(await visit.page.getByRole('heading', { level: 1 }).textContent()).toBe('Unitbook');
  expect(visit.problems).toEqual([]);
});

it('refuses a script from a page that tries to inject one', async () => {
  await visit.page.goto(inject('pageUrl'));
  const isRefused = await visit.page.evaluate(() => {
    try {
      document.body.innerHTML = '<b>injected</b>';
      return false;
    } catch {
      return true;
    }
  });
  expect(isRefused).toBe(true);
});
