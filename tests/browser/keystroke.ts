import type { Page } from 'playwright-core';

/** The middle and the slow end of some times, in milliseconds. */
interface Spread {
  readonly median: number;
  readonly percentile95: number;
}

/** How long keystrokes took. */
export interface KeystrokeReport {
  readonly keystrokes: number;
  /** The work of one: from the input event to the end of its script, style and layout. */
  readonly work: Spread;
  /** From the input event until the frame with the redraw in it was produced; waiting for it included. */
  readonly painted: Spread;
}

interface Times {
  readonly work: number[];
  readonly painted: number[];
}

declare global {
  interface Window {
    unitbookKeystrokes?: Times;
  }
}

/** Note how long each input event took; runs in the page. */
function watch(): void {
  const times: Times = { work: [], painted: [] };
  window.unitbookKeystrokes = times;
  const book = document.querySelector('unitbook-book');
  const month = book?.shadowRoot?.querySelector('unitbook-month');
  let start = 0;
  const noteWork = async (): Promise<void> => {
    await Promise.all([book?.updateComplete, month?.updateComplete]);
    // Reading a height makes the browser finish style and layout now.
    document.body.getBoundingClientRect();
    times.work.push(performance.now() - start);
  };
  const notePainted = (): void => {
    // A message sent within a frame is handled once that frame was produced.
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      times.painted.push(performance.now() - start);
    };
    port2.postMessage(null);
  };
  const options = { capture: true };
  window.addEventListener(
    'input',
    () => {
      start = performance.now();
      requestAnimationFrame(notePainted);
    },
    options,
  );
  // On its way back up the event has passed every listener of the page: all that it asks for was asked.
  window.addEventListener('input', () => void noteWork());
}

function spread(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number =>
    Math.round((sorted[Math.ceil(sorted.length * share) - 1] ?? 0) * 100) / 100;
  return { median: at(0.5), percentile95: at(0.95) };
}

/**
 * Type into the last reading of the page, key by key, and time each.
 *
 * @param page   with the demo open
 * @param count  of keystrokes
 */
export async function measureKeystrokes(page: Page, count = 80): Promise<KeystrokeReport> {
  const field = page.locator('[id^="reading-"][id$="-import"]').last();
  await field.focus();
  await page.evaluate(watch);
  for (let index = 0; index < count; index += 1) {
    await page.keyboard.press(index % 2 === 0 ? 'Backspace' : '3');
    await page.waitForFunction((done) => (window.unitbookKeystrokes?.painted.length ?? 0) > done, index);
  }
  const { work, painted } = (await page.evaluate(() => window.unitbookKeystrokes)) ?? {
    work: [],
    painted: [],
  };
  return { keystrokes: work.length, work: spread(work), painted: spread(painted) };
}
