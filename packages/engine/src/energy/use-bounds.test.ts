import { expect, it } from 'vitest';
import { accountOf } from '../../../../tests/support/demo.ts';
import { energyOf, valueOf } from '../../../../tests/support/make.ts';
import { unexplained } from '../../../../tests/support/recompute.ts';
import { useBounds, type UseBounds } from './use-bounds.ts';

const account = accountOf({ plantCapacity: '5' });
const texts = (bounds: UseBounds | null): readonly string[] => {
  if (bounds === null) return [];
  const { selfConsumption, totalUse } = bounds;
  const figures = [selfConsumption.least, selfConsumption.most, totalUse.least, totalUse.most];
  expect(figures.flatMap(unexplained)).toEqual([]);
  return figures.map(valueOf);
};

it('says between what the use lies where no meter counts generation', () => {
  // 5 kWp × 7.5 × 30 days = 1125 at most; 278 were given: 0 to 847, and 412 were taken.
  expect(texts(useBounds(energyOf({ import: '412', export: '278' }), account))).toEqual([
    '0',
    '847',
    '412',
    '1259',
  ]);
});

it('has no room where more was given than a plant can make', () => {
  expect(texts(useBounds(energyOf({ import: '5', export: '1200' }), account))).toEqual(['0', '0', '5', '5']);
});

it('begins at what was counted since a counter began anew', () => {
  const energy = { ...energyOf({ import: '412', export: '278' }) };
  const made = energyOf({ import: '0', export: '0', generation: '300' }).generation;
  const bounds = useBounds({ ...energy, ...(made === null ? {} : { generationAtLeast: made }) }, account);
  expect(texts(bounds)).toEqual(['22', '847', '434', '1259']);
});

it('is for what is not known alone', () => {
  expect(useBounds(energyOf({ import: '412', export: '278', generation: '580' }), account)).toBeNull();
});

it('cuts the most to whole watt-hours', () => {
  const small = accountOf({ plantCapacity: '3.333' });
  // 3.333 × 7.5 × 30 = 749.925.
  expect(texts(useBounds(energyOf({ import: '0', export: '0' }), small))).toEqual([
    '0',
    '749.925',
    '0',
    '749.925',
  ]);
});
