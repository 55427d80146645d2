import { expect, it } from 'vitest';
import { combinedMargin } from './carbon.ts';

it.each([
  // (0.8 × 75 + 0.4 × 25) ÷ 100
  ['0.8', '0.4', '75', '0.7'],
  ['0.8', '0.4', '0', '0.4'],
  ['0.8', '0.4', '100', '0.8'],
  ['0.9', '0.6', '33.3', '0.6999'],
  ['0', '0', '50', '0'],
])('weighs %s and %s with %s percent', (operating, build, operatingPercent, margin) => {
  expect(combinedMargin({ operating, build, operatingPercent })).toBe(margin);
});

it.each([['-0.1'], ['100.1']])('takes no weight of %s percent', (operatingPercent) => {
  expect(() => combinedMargin({ operating: '1', build: '1', operatingPercent })).toThrow(
    `a weight from 0 to 100 percent, found ${operatingPercent}`,
  );
});
