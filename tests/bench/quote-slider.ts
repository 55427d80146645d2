import type { Page } from 'playwright-core';

/** How long a move of a slider took, in milliseconds. */
export interface SliderReport {
  readonly moves: number;
  /** From the input event until the frame with the new answer in it begins: above 16.7 it misses the next one. */
  readonly frame: { readonly median: number; readonly percentile95: number };
  /** From the input event until that frame was produced, waiting for it included. */
  readonly painted: { readonly median: number; readonly percentile95: number };
  /** The work of a move: from the input event to the end of its script, style and layout. */
  readonly work: { readonly median: number; readonly percentile95: number };
}

interface Moved {
  readonly frame: number[];
  readonly painted: number[];
  readonly work: number[];
  /** Moves after which the answer was not another one: they would measure nothing. */
  same: number;
}

declare global {
  interface Window {
    unitbookMoved?: Moved;
  }
}

/** Note how long each move took; runs in the page. */
function watch(): void {
  const moved: Moved = { frame: [], painted: [], work: [], same: 0 };
  window.unitbookMoved = moved;
  const quote = document.querySelector('unitbook-book')?.shadowRoot?.querySelector('unitbook-quote');
  const saving = (): string => quote?.shadowRoot?.querySelector('#quote-answer-saving')?.textContent ?? '';
  let [start, before] = [0, ''];
  const noteWork = async (): Promise<void> => {
    await quote?.updateComplete;
    // Reading a height makes the browser finish style and layout now.
    document.body.getBoundingClientRect();
    moved.work.push(performance.now() - start);
    if (saving() === before) moved.same += 1;
  };
  window.addEventListener(
    'input',
    () => {
      [start, before] = [performance.now(), saving()];
      requestAnimationFrame((begun) => {
        moved.frame.push(begun - start);
        // A message sent within a frame is handled once that frame was produced.
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => {
          moved.painted.push(performance.now() - start);
        };
        port2.postMessage(null);
      });
    },
    { capture: true },
  );
  // On its way back up the event has passed every listener of the page.
  window.addEventListener('input', () => void noteWork());
}

function spread(values: readonly number[]): SliderReport['work'] {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number =>
    Math.round((sorted[Math.ceil(sorted.length * share) - 1] ?? 0) * 100) / 100;
  return { median: at(0.5), percentile95: at(0.95) };
}

/**
 * Move the slider of the size back and forth, and time each move until its answer was painted. What is worked out
 * later (cases, sizes, draws) waits until a slider stands still, and is not part of a move.
 *
 * @param page   with the demo book open
 * @param count  of moves
 */
export async function measureSlider(page: Page, count = 60): Promise<SliderReport> {
  await page.getByRole('button', { name: 'Work out a quote' }).click();
  await page.locator('#quote-answer-saving').waitFor();
  await page.locator('#quote-trial-slider').focus();
  await page.evaluate(watch);
  for (let index = 0; index < count; index += 1) {
    await page.keyboard.press(index % 20 < 10 ? 'ArrowRight' : 'ArrowLeft');
    await page.waitForFunction((done) => (window.unitbookMoved?.painted.length ?? 0) > done, index);
  }
  const moved = await page.evaluate(() => window.unitbookMoved);
  if (moved === undefined || moved.same > 0) throw new Error('A move of the slider changed no answer.');
  return {
    moves: moved.work.length,
    frame: spread(moved.frame),
    painted: spread(moved.painted),
    work: spread(moved.work),
  };
}
