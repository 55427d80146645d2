import { expect, it } from 'vitest';
import tariffText from '../../../../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { readTariff } from '../../tariff/index.ts';
import { nearestCauses, nearestWords } from './nearest.ts';

const near = (reproduced: number, missed: readonly string[], ...names: readonly string[]) => ({
  reproduced,
  missed,
  steps: names.map((name) => ({ cause: { name } })),
});

function told(...attempts: readonly ReturnType<typeof near>[]): readonly string[] {
  const { value } = readTariff(tariffText);
  if (value === null) throw new Error('the example cannot be read');
  return nearestCauses(attempts, value.document).map(nearestWords);
}

it('tells of what is near by the names of figures', () => {
  expect(told(near(6, ['units.billed', 'line.fuel'], 'Factor ignored', 'Digits cut off'))).toEqual([
    'Factor ignored and Digits cut off: 6 printed figures, but not Units billed, Fuel surcharge',
  ]);
});

it('counts one figure as one', () => {
  expect(told(near(1, ['payable'], 'Factor ignored'))).toEqual([
    'Factor ignored: 1 printed figure, but not To be paid',
  ]);
});

it('says the same once, and nothing of what makes no printed figure', () => {
  const twice = near(2, ['payable'], 'Factor ignored');
  expect(told(twice, { ...twice }, near(0, ['payable'], 'Digits cut off'))).toEqual([
    'Factor ignored: 2 printed figures, but not To be paid',
  ]);
});
