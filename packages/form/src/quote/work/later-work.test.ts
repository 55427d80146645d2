import { readFileSync } from 'node:fs';
import { readTariff, type QuoteDocument } from '@unitbook/engine';
import { expect, it, vi } from 'vitest';
import { LaterWork, NOTHING_LATER, type LaterResults } from './later-work.ts';
import { QuoteBench } from './quote-bench.ts';

const text = (path: string): string =>
  readFileSync(new URL(`../../../../../tariffs-examples/${path}`, import.meta.url), 'utf8');
const demo = JSON.parse(text('quotes/rooftop-4-kilowatt.json')) as QuoteDocument;
const { value: tariff } = readTariff(text('tarumira/taresco-domestic/tariff.json'));
if (tariff === null) throw new Error('The tariff cannot be read.');
const basis = { tariff, profile: null };

/** What is told of the draws of the demo, its bills and cases done at once. */
function laterWork() {
  const { quote, prepared } = new QuoteBench().workOut(demo, basis, null);
  if (quote === null || prepared === null) throw new Error('The demo cannot be worked out.');
  const told: LaterResults[] = [];
  const work = new LaterWork((now) => told.push(now));
  work.start({ quote, prepared, document: demo, ...basis, watts: null, others: [] });
  return { work, last: () => told.at(-1) ?? NOTHING_LATER };
}

it('does not begin draws that were stopped before it was their turn, and draws them when asked again', async () => {
  const { work, last } = laterWork();
  work.stopDraws();
  work.finish();
  expect(last()).toMatchObject({ isStopped: true, drawn: 0, draws: null });
  expect(last().cases).not.toBeNull();
  work.drawAgain();
  expect(last().isStopped).toBe(false);
  await vi.waitFor(() => {
    expect(last().drawn).toBeGreaterThan(0);
  });
  work.stopDraws();
  const { drawn } = last();
  await new Promise((resolve) => setTimeout(resolve, 100));
  expect(last()).toMatchObject({ isStopped: true, drawn, draws: null });
  work.close();
});

it('looks at forty sizes', () => {
  const { work, last } = laterWork();
  work.finish();
  // A twentieth of 4 kWp is 0.2 kWp: from there up to twice the offer.
  const watts = last().sizes?.points.map((point) => point.watts);
  expect(watts).toEqual(Array.from({ length: 40 }, (_, at) => 200 * (at + 1)));
  work.close();
});
