import { expect, it } from 'vitest';
import { amountOf, type SensitivityData, type SensitivityInput } from './chart-data.ts';
import { bySpan, planSensitivity } from './sensitivity-plan.ts';
import { sensitivityTable } from './sensitivity.ts';
import { chartCsv } from './table.ts';

const money = (decimal: string) => amountOf(decimal, (text) => `Rs ${text}`);
const input = (label: string, low: string, high: string): SensitivityInput => ({
  label,
  low: { input: 'little', result: money(low) },
  high: { input: 'much', result: money(high) },
});
const data = (inputs: readonly SensitivityInput[], base = '100'): SensitivityData => ({
  title: 'What matters',
  says: 'Much does.',
  base: money(base),
  baseName: 'as quoted',
  inputs,
});
const narrow = { size: 'narrow' } as const;

it('has the widest span first, whichever way it goes; equals keep their order', () => {
  const inputs = [input('a', '90', '110'), input('b', '150', '50'), input('c', '80', '100')];
  expect(bySpan(inputs).map(({ label }) => label)).toEqual(['b', 'a', 'c']);
  expect(inputs[0]?.label).toBe('a');
});

it('draws bars from the base to either side, and beside each other where both go one way', () => {
  const plan = planSensitivity(data([input('a', '50', '200'), input('b', '120', '140')]), narrow);
  const x = plan?.base.x ?? 0;
  const [first, second] = plan?.rows ?? [];
  expect(Math.abs((first?.low.x ?? 0) + (first?.low.width ?? 0) - x) < 0.05).toBe(true);
  expect([first?.high.x, second?.low.x, second?.high.x]).toEqual([x, x, x]);
  expect(Math.abs((first?.high.width ?? 0) - 2 * (first?.low.width ?? 0)) <= 0.4).toBe(true);
  expect((second?.high.y ?? 0) > (second?.low.y ?? 0)).toBe(true);
});

it('keeps everything in the drawing, the longest texts too', () => {
  const long = 'a name of an input that takes far more than one line of a narrow drawing';
  const plan = planSensitivity(data([{ ...input(long, '-500000', '900000') }]), narrow);
  expect((plan?.rows[0]?.names.length ?? 0) > 1).toBe(true);
  expect((plan?.columns.result ?? 0) < (plan?.rows[0]?.low.x ?? 0)).toBe(true);
  expect((plan?.rows[0]?.high.x ?? 0) + (plan?.rows[0]?.high.width ?? 0) <= 320).toBe(true);
  const wordy = {
    ...input('a', '1', '2'),
    low: { input: 'as little as there ever was in a year', result: money('1') },
  };
  expect(planSensitivity(data([wordy]), narrow)?.rows[0]?.low.squeezed).toBe(102.4);
});

it('draws nothing of no input, and no width of what changes nothing', () => {
  expect(planSensitivity(data([]), narrow)).toBe(null);
  const plan = planSensitivity(data([input('a', '0', '0')], '0'), narrow);
  expect([plan?.rows[0]?.low.width, plan?.rows[0]?.high.width]).toEqual([0, 0]);
});

it('writes its table in its order, and the base, as CSV text', () => {
  expect(chartCsv(sensitivityTable(data([input('a', '90', '110'), input('b, c', '-5', '50')])))).toBe(
    [
      'Input,Low case,Result of the low case,High case,Result of the high case',
      '"b, c",little,-5,much,50',
      'a,little,90,much,110',
      'as quoted: Rs 100,,,,',
      '',
    ].join('\n'),
  );
});
