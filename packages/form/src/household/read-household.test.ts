import { expect, it } from 'vitest';
import { emptyHousehold, householdText, type Household } from './household.ts';
import { readHousehold } from './read-household.ts';

const blank = emptyHousehold('en-IN');

function problems(change: (document: Record<string, unknown>) => void): string[] {
  const document = JSON.parse(householdText(blank)) as Record<string, unknown>;
  change(document);
  const read = readHousehold(JSON.stringify(document));
  return read.kind === 'damaged' ? read.findings.map(({ path }) => path.join('.')) : [read.kind];
}

it('reads back what it wrote, half-typed text and unknown notes included', () => {
  const half = { ...blank, readings: [{ date: 'Ju', import: '46,', export: '' }], note: 'mine' };
  expect(readHousehold(householdText(half))).toEqual({ kind: 'household', household: half });
});

it('reads back what later meters, rates, estimates and edits say', () => {
  const rates = [{ id: '1', block: 'peak' }, { id: 'T2' }];
  const register = { digits: '6', decimals: '0' } as const;
  const meter = { serial: 'PB-9', multiplyingFactor: '1', import: { ...register, rates }, export: register };
  const generation = { serial: 'GN-1', multiplyingFactor: '1', generation: register } as const;
  const account = {
    ...blank.account,
    since: '2024-01-01',
    batteryCapacity: '5 kWh',
    meters: {
      grid: { ...meter, accuracyClass: '0.5S', later: [{ ...meter, from: '16 A' }] },
      generation: { ...generation, later: [{ ...generation, from: '2025-04-16', accuracyClass: 'B' }] },
    },
  };
  const readings = [
    { date: '16 Apr', event: 'final', import: '12690', export: '' },
    { date: '16 Apr', event: 'first', generation: '0' },
    { date: '', rates: { import: { '1': '5', T2: '' } }, estimated: ['export'] },
    {
      date: '1 May 2025',
      import: '12892',
      edits: [
        { register: 'import', raw: '12910', wasEstimated: true, method: 'own-reading', note: 'photo' },
        { register: 'import', raw: '12868.5', method: 'by-days' },
      ],
    },
  ];
  const household = { ...blank, account, readings } as unknown as Household;
  expect(readHousehold(householdText(household))).toEqual({ kind: 'household', household });
});

it('names another version', () => {
  expect(readHousehold('{"format":"unitbook-household-2"}')).toEqual({
    kind: 'other-version',
    found: 'unitbook-household-2',
  });
});

it('says in words why a text is no document', () => {
  const reasons = ['{"format":', ' ', '\ufffdPNG', 'date,import'].map((text) => readHousehold(text));
  expect(reasons.map((read) => (read.kind === 'unreadable' ? read.reason : read.kind))).toEqual([
    'It is damaged or cut off.',
    'It is empty.',
    'It is no book saved from this page.',
    'It is no book saved from this page.',
  ]);
  expect(
    problems((document) => {
      document['format'] = undefined;
    }),
  ).toEqual(['format']);
  expect(readHousehold('7').kind).toBe('damaged');
});

it('lists everything that is wrong, by path', () => {
  expect(
    problems((document) => {
      document['tariff'] = 7;
      document['readings'] = [{ date: '', import: 1, export: '', status: 'guessed', confirmed: [2] }, 'x'];
      (document['account'] as Record<string, unknown>)['confirmed'] = 'yes';
    }),
  ).toEqual([
    'account.confirmed',
    'readings.0.import',
    'readings.0.status',
    'readings.0.confirmed.0',
    'readings.1',
    'tariff',
  ]);
  expect(
    problems((document) => {
      document['readings'] = [
        { date: '', event: 'last', rates: { import: { '1': 5 }, export: 'x' }, estimated: ['all'] },
        { date: '', edits: [{ register: 'import', raw: '1', wasEstimated: 'yes', method: 'guess' }] },
      ];
      const { meters } = document['account'] as { meters: Record<string, Record<string, unknown>> };
      meters['grid'] = {
        ...meters['grid'],
        accuracyClass: '3',
        import: { digits: '5', decimals: '1', rates: [{ id: '1' }] },
        later: [{ from: '2025-04-16' }],
      };
    }),
  ).toEqual([
    'account.meters.grid.accuracyClass',
    'account.meters.grid.import.rates',
    'account.meters.grid.later.0.serial',
    'account.meters.grid.later.0.multiplyingFactor',
    'account.meters.grid.later.0.import',
    'account.meters.grid.later.0.export',
    'readings.0.rates.import.1',
    'readings.0.rates.export',
    'readings.0.event',
    'readings.0.estimated.0',
    'readings.1.edits.0.wasEstimated',
    'readings.1.edits.0.method',
  ]);
  expect(
    problems((document) => {
      document['account'] = null;
    }),
  ).toContain('account');
  expect(
    problems((document) => {
      document['readings'] = {};
    }),
  ).toEqual(['readings']);
});
