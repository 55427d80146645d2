import type { Page } from 'playwright-core';

/** How long keystrokes took from the input event to the next painted frame, in milliseconds. */
export interface KeystrokeReport {
  readonly keystrokes: number;
  readonly medianMilliseconds: number;
  readonly slowestMilliseconds: number;
}

declare global {
  interface Window {
    unitbookKeystrokes?: number[];
  }
}

/** Note how long each input event took to the frame after the one it was drawn in. */
function watch(): void {
  const times: number[] = [];
  window.unitbookKeystrokes = times;
  document.addEventListener(
    'input',
    () => {
      const start = performance.now();
      requestAnimationFrame(() => {
        requestAnimationFrame(() => {
          times.push(performance.now() - start);
        });
      });
    },
    { capture: true },
  );
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

const inHundredths = (value: number): number => Math.round(value * 100) / 100;

/**
 * Type into the last reading of the page, key by key, and time each from input event to painted frame.
 * The second animation frame after an event begins when the first, with the redraw in it, was painted.
 *
 * @param page   with the demo open
 * @param count  of keystrokes
 */
export async function measureKeystrokes(page: Page, count = 30): Promise<KeystrokeReport> {
  const field = page.locator('[id^="reading-"][id$="-import"]').last();
  await field.focus();
  await page.evaluate(watch);
  for (let index = 0; index < count; index += 1) {
    await page.keyboard.press(index % 2 === 0 ? 'Backspace' : '3');
    await page.waitForFunction((done) => (window.unitbookKeystrokes?.length ?? 0) > done, index);
  }
  const times = await page.evaluate(() => window.unitbookKeystrokes ?? []);
  return {
    keystrokes: times.length,
    medianMilliseconds: inHundredths(median(times)),
    slowestMilliseconds: inHundredths(Math.max(...times)),
  };
}
