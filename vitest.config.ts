import { playwright } from '@vitest/browser-playwright';
import { defaultClientConditions, defaultServerConditions } from 'vite';
import { configDefaults, defineConfig } from 'vitest/config';
import { launchOptions } from './tests/support/chromium.mjs';

const source = '@unitbook/source';
const ZONES = ['UTC', 'Asia/Kolkata', 'America/St_Johns', 'Pacific/Apia'];
const UNIT = ['packages/*/src/**/*.test.ts', 'apps/*/src/**/*.test.ts', 'tests/**/*.test.ts'];
const LONG = '**/*.long.test.ts';
const BROWSER = '**/*.browser.test.ts';
const PAGE = 'tests/browser/**/*.page.test.ts';

/** Amounts and dates must not depend on where a computer stands: every node test runs in each zone. */
const inZone = (timeZone: string) => ({
  extends: true as const,
  test: {
    name: timeZone,
    environment: 'node' as const,
    pool: 'forks' as const,
    // One process per zone and core, not per file: our modules hold no state for a file to leave behind.
    isolate: false,
    include: UNIT,
    exclude: [...configDefaults.exclude, '**/dist/**', LONG, BROWSER, PAGE],
    env: { TZ: timeZone },
    provide: { timeZone },
    // A law draws its own cases, and a large one beside other work can take longer than a unit test may.
    testTimeout: 60_000,
  },
});

export default defineConfig({
  resolve: { conditions: [source, ...defaultClientConditions] },
  ssr: { resolve: { conditions: [source, ...defaultServerConditions] } },
  test: {
    reporters: ['default', './tests/support/count-reporter.ts'],
    allowOnly: false,
    projects: [
      ...ZONES.map(inZone),
      {
        extends: true,
        test: {
          name: 'long',
          environment: 'node',
          pool: 'forks',
          isolate: false,
          include: UNIT.map((pattern) => pattern.replace('*.test.ts', '*.long.test.ts')),
          env: { TZ: 'UTC' },
          provide: { timeZone: 'UTC' },
          testTimeout: 300_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'page',
          environment: 'node',
          include: [PAGE],
          globalSetup: ['./tests/support/serve-page.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: [BROWSER],
          // What is polled comes after work in a worker or a file, which takes longer beside other tests.
          expect: { poll: { timeout: 10_000 } },
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({ launchOptions: launchOptions() }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
    ],
  },
});
