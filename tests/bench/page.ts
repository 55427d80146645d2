import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { measureKeystrokes, type KeystrokeReport } from '../browser/keystroke.ts';
import { launchOptions } from '../support/chromium.mjs';
import { scriptsWithPage } from '../support/page-scripts.ts';
import { measureSlider, type SliderReport } from './quote-slider.ts';

const PAGE = 'apps/web';
const ASSETS = `${PAGE}/dist/assets`;

/** What the built page weighs and how fast it answers. */
export interface PageReport {
  readonly keystrokes: KeystrokeReport;
  /** Of the quote, opened from the book. */
  readonly slider: SliderReport;
  /** The JavaScript that comes with the page, each file compressed by itself. */
  readonly gzipBytes: number;
}

function gzipBytes(): number {
  const loaded = [...scriptsWithPage(`${PAGE}/dist`)];
  return loaded.reduce(
    (sum, name) => sum + gzipSync(readFileSync(`${ASSETS}/${name}`), { level: 9 }).length,
    0,
  );
}

/**
 * Build the page, open it in Chromium with the demo's twelve months, and type.
 *
 * @returns null where there is no Chromium
 */
export async function measurePage(): Promise<PageReport | null> {
  const options = launchOptions();
  if (!('executablePath' in options)) return null;
  execFileSync(process.execPath, ['node_modules/vite/bin/vite.js', 'build', PAGE, '--logLevel', 'error'], {
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const server = await preview({ root: PAGE, preview: { host: '127.0.0.1', port: 0, open: false } });
  const browser = await chromium.launch(options);
  try {
    const page = await browser.newPage({ locale: 'en-IN' });
    await page.goto(server.resolvedUrls?.local[0] ?? '');
    await page.locator('#answer-payable').waitFor();
    const keystrokes = await measureKeystrokes(page);
    return { keystrokes, slider: await measureSlider(page), gzipBytes: gzipBytes() };
  } finally {
    await browser.close();
    await server.close();
  }
}
