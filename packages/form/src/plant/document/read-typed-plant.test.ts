import type { PlantDocument } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { readTypedPlant } from './read-typed-plant.ts';

const plant: PlantDocument = { format: 'unitbook-plant-1', capacity: [{ kWp: '3.3' }] };
const year = (text: string): string[] => Array.from({ length: 12 }, () => text);
const told = (document: PlantDocument): readonly (readonly [string, string])[] =>
  readTypedPlant(document).findings.map(({ code, path }) => [code, path.join('.')]);

it('reads a plant of which only the size is known', () => {
  const { plant: read, findings } = readTypedPlant(plant);
  expect(read?.capacities).toEqual([{ from: null, watts: 3300 }]);
  expect(findings).toEqual([]);
});

it('has no plant while its size cannot be read, and says so at the field', () => {
  expect(readTypedPlant({ ...plant, capacity: [{ kWp: '' }] }).plant).toBeNull();
  expect(told({ ...plant, capacity: [{ kWp: '' }] })).toEqual([['account/number-missing', 'capacity.0.kWp']]);
  expect(told({ ...plant, capacity: [{ kWp: '3x' }] })).toEqual([['reading/not-a-number', 'capacity.0.kWp']]);
  expect(told({ ...plant, capacity: [{ kWp: '0' }] })).toEqual([
    ['plant/number-out-of-range', 'capacity.0.kWp'],
  ]);
});

it('tells the months that are missing in one breath, and does without the table meanwhile', () => {
  const monthly = year('400').map((text, month) => (month === 1 || month === 11 ? '' : text));
  const { plant: read, findings } = readTypedPlant({ ...plant, expected: { monthly } });
  expect(read?.expected).toBeNull();
  expect(findings.map(({ path, remedy }) => [path.join('.'), remedy])).toEqual([
    ['expected.monthly', 'the units of February and December.'],
  ]);
  const [none] = readTypedPlant({ ...plant, expected: { monthly: year('') } }).findings;
  expect(none?.remedy).toBe('the units of every month, January to December.');
});

it('offers both readings of a comma that can be either', () => {
  const monthly = year('400').map((text, month) => (month === 4 ? '1,200' : text));
  const [finding] = readTypedPlant({ ...plant, expected: { monthly } }).findings;
  expect([finding?.code, finding?.path.join('.')]).toEqual(['reading/comma-unclear', 'expected.monthly.4']);
  expect([finding?.values['grouped'], finding?.values['decimal']]).toEqual(['1200', '1.200']);
});

it('reads what another program wrote as people do', () => {
  const document: PlantDocument = {
    ...plant,
    capacity: [{ kWp: '3,3' }, { from: '1 May 2025', kWp: '4' }],
    diary: [{ date: '1 June 2025', did: 'cleaning' }],
  };
  const { plant: read, findings } = readTypedPlant(document);
  expect(findings).toEqual([]);
  // 1 May 2025 is day 20209 and 1 June day 20240: 55 years of 365 days, 14 leap days and 120 days; 31 more.
  expect(read?.capacities).toEqual([
    { from: null, watts: 3300 },
    { from: 20209, watts: 4000 },
  ]);
  expect(read?.diary[0]?.date).toBe(20240);
});

it('leaves out only the entry of the diary whose day cannot be read', () => {
  const diary: PlantDocument['diary'] = [
    { date: '2025-02-30', did: 'cleaning' },
    { date: '', did: 'cleaning' },
    { date: '2025-05-01', did: 'outage', through: '2025-04-01' },
    { date: '2025-05-20', did: 'repair' },
  ];
  const { plant: read } = readTypedPlant({ ...plant, diary });
  expect(read?.diary.map(({ did }) => did)).toEqual(['repair']);
  expect(told({ ...plant, diary })).toEqual([
    ['account/number-missing', 'diary.1.date'],
    ['plant/no-such-day', 'diary.0.date'],
    ['plant/through-before-date', 'diary.2.through'],
  ]);
});

it('asks where irradiation was taken from, and uses it meanwhile', () => {
  const expected: PlantDocument['expected'] = {
    irradiation: year('5'),
    unit: 'kWh/m2/day',
    performanceRatio: '0.75',
    source: ' ',
  };
  const { plant: read, findings } = readTypedPlant({ ...plant, expected });
  expect(read?.expected?.kind).toBe('irradiation');
  expect(findings.map(({ remedy }) => remedy)).toEqual(['where the irradiation was taken from.']);
});

it('takes a ratio of 78 for a percentage and offers it as a ratio', () => {
  const expected: PlantDocument['expected'] = {
    irradiation: year('5'),
    unit: 'kWh/m2/day',
    performanceRatio: '78',
    source: 'x',
  };
  const [finding] = readTypedPlant({ ...plant, expected }).findings;
  expect([finding?.code, finding?.offer]).toEqual(['plant/ratio-as-percent', '0.78']);
});

it('wants the first day of a later size, and does without inverters that cannot be', () => {
  expect(told({ ...plant, capacity: [{ kWp: '3' }, { from: '', kWp: '4' }] })).toEqual([
    ['account/number-missing', 'capacity.1.from'],
  ]);
  const { plant: read, findings } = readTypedPlant({ ...plant, inverters: { n: '1.5', kind: 'string' } });
  expect([read?.inverters, findings.length]).toEqual([null, 1]);
});
