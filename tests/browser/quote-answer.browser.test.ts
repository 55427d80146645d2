import { expect, it } from 'vitest';
import { expectAccessible } from './mount.ts';
import { openDemo } from './open-quote.ts';

it('stops drawing when it is told to, and draws again', async () => {
  const { quote } = await openDemo();
  await expect.poll(() => quote.text('.progress'), { timeout: 20_000 }).toMatch(/ [1-9][\d,]* of 10,000/);
  await quote.press('Stop');
  const stopped = quote.text('#quote-stopped');
  expect(stopped).toMatch(/^Stopped after [1-9][\d,]* of 10,000 draws: there is no range\. Draw again$/);
  await expectAccessible();
  await new Promise((resolve) => {
    setTimeout(resolve, 1500);
  });
  expect(quote.text('#quote-stopped')).toBe(stopped);
  expect(quote.text('#quote-answer-payback')).toBe('4.6 years');
  await quote.press('Draw again');
  await expect.poll(() => quote.text('#quote-drawn'), { timeout: 60_000 }).toContain('10,000 draws');
}, 90_000);

it('gives what the years come to in single figures, each said how', async () => {
  const { quote } = await openDemo();
  expect(quote.text('#quote-answer-present')).toBe('₹2,40,574.80');
  expect(quote.text('#quote-answer-return')).toBe('22.01 %');
  // The figures of the command, which tells how they are worked out: tests/command/quote.md.
  expect(quote.text('#quote-answer-modified')).toBe('12.00 %');
  expect(quote.text('#quote-answer-levelised')).toBe('₹3.78');
  expect(quote.text('#quote-answer-benefit')).toBe('2.13');
  expect(quote.text('#quote-answer-carbon')).toBe('4,013.04 kg');
});
