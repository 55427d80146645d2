import { expect, it } from 'vitest';
import { emptyHousehold, householdText } from '../../household/household.ts';
import { readHousehold } from '../../household/read-household.ts';

/** A household with a plant of any shape, read back from its text. */
function readBack(plant: unknown): ReturnType<typeof readHousehold> {
  return readHousehold(householdText({ ...emptyHousehold('en-IN'), plant } as never));
}

function told(plant: unknown): readonly string[] {
  const read = readBack(plant);
  return read.kind === 'damaged' ? read.findings.map(({ path }) => path.join('.')) : [read.kind];
}

const plant = { format: 'unitbook-plant-1', capacity: [{ kWp: '3.3' }] };

it('keeps a plant that is half typed, as typed', () => {
  const half = {
    ...plant,
    capacity: [{ kWp: '3,' }, { from: 'May', kWp: '' }],
    expected: { monthly: ['400', '', 'x'] },
    diary: [{ date: '', did: 'cleaning' }],
  };
  const read = readBack(half);
  expect(read.kind === 'household' ? read.household.plant : null).toEqual(half);
});

it('says where a plant has not the right shape', () => {
  expect(told(plant)).toEqual(['household']);
  expect(told('3.3 kWp')).toEqual(['plant']);
  expect(told({ ...plant, capacity: [] })).toEqual(['plant.capacity']);
  expect(told({ ...plant, capacity: [{ kWp: 3.3 }] })).toEqual(['plant.capacity.0.kWp']);
  expect(told({ ...plant, expected: { monthly: [400] }, coast: 'yes' })).toEqual([
    'plant.coast',
    'plant.expected.monthly.0',
  ]);
  expect(told({ ...plant, format: 'unitbook-plant-2', diary: [{ date: '2026-05-01' }] })).toEqual([
    'plant.format',
    'plant.diary.0.did',
  ]);
});
