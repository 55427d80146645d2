import { describe, expect, it } from 'vitest';
import { checkPlant, readPlant } from './check-plant.ts';
import { capacityOn, isOutage } from './plant.ts';
import type { PlantDocument } from './plant-document.ts';
import { dayOf } from '../../../../../tests/support/plant-days.ts';

const BASE: PlantDocument = { format: 'unitbook-plant-1', capacity: [{ kWp: '5' }] };
const TWELVE = Array.from({ length: 12 }, () => '1');

const codes = (more: Partial<PlantDocument>): readonly string[] =>
  checkPlant({ ...BASE, ...more }).findings.map(({ code, path }) => `${code} ${path.join('.')}`);

describe('a plant document', () => {
  it('is read into whole numbers and days', () => {
    const { value, findings } = readPlant(
      JSON.stringify({
        format: 'unitbook-plant-1',
        capacity: [{ kWp: '3.3' }, { from: '2024-05-01', kWp: '5.005' }],
        coast: true,
        inverters: { n: '8', kind: 'module' },
        expected: { irradiation: TWELVE, unit: 'kWh/m2/month', performanceRatio: '0.785', source: 'a map' },
        uncertainty: { yearToYear: '4.5' },
        meterClass: '0.5S',
        diary: [
          { date: '2025-03-02', did: 'cleaning', note: 'both rows' },
          { date: '2025-01-05', through: '2025-01-07', did: 'outage' },
        ],
      }),
    );
    expect(findings).toEqual([]);
    expect(value).toMatchObject({
      capacities: [
        { from: null, watts: 3300 },
        { from: dayOf('2024-05-01'), watts: 5005 },
      ],
      isOnCoast: true,
      inverters: { count: 8, kind: 'module' },
      expected: {
        kind: 'irradiation',
        per: 'month',
        performanceRatio: { numerator: 785, denominator: 1000 },
      },
      yearToYear: 450,
      meterClass: '0.5S',
      diary: [
        { date: dayOf('2025-01-05'), through: dayOf('2025-01-07'), did: 'outage', note: '' },
        { date: dayOf('2025-03-02'), through: dayOf('2025-03-02'), did: 'cleaning', note: 'both rows' },
      ],
    });
  });

  it('needs its capacity only', () => {
    expect(checkPlant(BASE)).toMatchObject({
      value: { expected: null, inverters: null, yearToYear: null, meterClass: null, diary: [] },
      findings: [],
    });
  });

  it('tells every problem at once, with its place, in the order of the file', () => {
    const text = [
      '{ "format": "unitbook-plant-1",',
      '  "capacity": [{ "kWp": 5 }, { "kWp": "0" }],',
      '  "roof": "flat",',
      '  "expected": { "monthly": ["1", "1"], "lastYears": true },',
      '  "meterClass": "9",',
      '  "diary": [{ "date": "2025-02-30", "did": "cleaning" }] }',
    ].join('\n');
    const { value, findings } = readPlant(text);
    expect(value).toBeNull();
    expect(findings.map(({ code, position }) => `${code} ${String(position?.line)}`)).toEqual([
      'document/number-not-text 2',
      'document/unknown-key 3',
      'document/wrong-value 5',
    ]);
    const mended = text.replace('  "meterClass": "9",\n', '');
    expect(
      readPlant(mended).findings.map(({ code, position }) => `${code} ${String(position?.line)}`),
    ).toEqual([
      'document/number-not-text 2',
      'plant/capacity-order 2',
      'plant/number-out-of-range 2',
      'document/unknown-key 3',
      'plant/one-expectation 4',
      'plant/not-twelve-months 4',
      'plant/no-such-day 5',
    ]);
  });
});

describe('bounds', () => {
  it.each(['0.001', '10000'])('a capacity of %s kWp will do', (kWp) => {
    expect(codes({ capacity: [{ kWp }] })).toEqual([]);
  });

  it.each(['0', '-1', '10000.001', '5.0001', '99999999999999'])('a capacity of %s kWp will not', (kWp) => {
    expect(codes({ capacity: [{ kWp }] })).toEqual(['plant/number-out-of-range capacity.0.kWp']);
  });

  it('inverters are whole, from 1 to 1000', () => {
    const at = (n: string) => codes({ inverters: { n, kind: 'string' } });
    expect([at('1'), at('1000')]).toEqual([[], []]);
    for (const n of ['0', '1001', '1.5']) expect(at(n)).toEqual(['plant/number-out-of-range inverters.n']);
  });

  it('a ratio is above 0 and up to 1; from 10 on a percentage was meant', () => {
    const at = (performanceRatio: string) =>
      checkPlant({
        ...BASE,
        expected: { irradiation: TWELVE, unit: 'kWh/m2/day', performanceRatio, source: 'a map' },
      }).findings.map(({ code, offer }) => `${code} ${String(offer)}`);
    expect([at('1'), at('0.001')]).toEqual([[], []]);
    for (const ratio of ['0', '1.001', '9.9', '100.1', '0.7851'])
      expect(at(ratio)).toEqual(['plant/number-out-of-range undefined']);
    expect(at('10')).toEqual(['plant/ratio-as-percent 0.1']);
    expect(at('78.5')).toEqual(['plant/ratio-as-percent 0.785']);
    expect(at('100')).toEqual(['plant/ratio-as-percent 1']);
  });

  it('irradiation is up to 15 a day, 465 a month', () => {
    const at = (unit: 'kWh/m2/day' | 'kWh/m2/month', most: string) =>
      codes({
        expected: { irradiation: [...TWELVE.slice(1), most], unit, performanceRatio: '0.8', source: 'a map' },
      });
    expect([at('kWh/m2/day', '15'), at('kWh/m2/month', '465')]).toEqual([[], []]);
    expect(at('kWh/m2/day', '15.001')).toEqual(['plant/number-out-of-range expected.irradiation.11']);
    expect(at('kWh/m2/month', '465.001')).toEqual(['plant/number-out-of-range expected.irradiation.11']);
  });

  it('a table has twelve months, and one that is not 0', () => {
    expect(codes({ expected: { monthly: TWELVE.slice(1) } })).toEqual([
      'plant/not-twelve-months expected.monthly',
    ]);
    expect(codes({ expected: { monthly: TWELVE.map(() => '0') } })).toEqual([
      'plant/nothing-expected expected.monthly',
    ]);
    expect(codes({ expected: { monthly: [...TWELVE.slice(1).map(() => '0'), '0.001'] } })).toEqual([]);
  });

  it('a table is asked about beyond 7.5 a kWp and day: 7.5 × 5 × 365 = 13,687.5', () => {
    const eleven = Array.from({ length: 11 }, () => '1000');
    expect(codes({ expected: { monthly: [...eleven, '2687.5'] } })).toEqual([]);
    const more = checkPlant({ ...BASE, expected: { monthly: [...eleven, '2687.501'] } });
    expect(more.findings.map(({ code, severity }) => [code, severity])).toEqual([
      ['plant/table-implausible', 'question'],
    ]);
    expect(more.value).not.toBeNull();
  });
});

describe('one of several', () => {
  it('expectations, no more and no fewer', () => {
    const source = { performanceRatio: '0.8', source: 'a map' };
    expect(codes({ expected: {} })).toEqual(['plant/one-expectation expected']);
    expect(codes({ expected: { lastYears: true } })).toEqual([]);
    expect(codes({ expected: { monthly: TWELVE, lastYears: true } })).toEqual([
      'plant/one-expectation expected',
    ]);
    expect(codes({ expected: source })).toEqual(['plant/irradiation-incomplete expected']);
  });

  it('capacity on a day, from the first day of each on', () => {
    const { value } = checkPlant({
      ...BASE,
      capacity: [
        { from: '2024-01-10', kWp: '3' },
        { from: '2024-02-10', kWp: '5' },
      ],
    });
    const on = (text: string) => value && capacityOn(value, dayOf(text));
    expect(['2024-01-09', '2024-01-10', '2024-02-09', '2024-02-10'].map(on)).toEqual([0, 3000, 3000, 5000]);
  });

  it('days of an outage, both ends included', () => {
    const { value } = checkPlant({
      ...BASE,
      diary: [{ date: '2024-03-02', through: '2024-03-04', did: 'outage' }],
    });
    const on = (text: string) => value && isOutage(value, dayOf(text));
    expect(['2024-03-01', '2024-03-02', '2024-03-04', '2024-03-05'].map(on)).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });

  it('days in order: a later capacity needs a day after the one before', () => {
    const at = (...from: (string | undefined)[]) =>
      codes({ capacity: from.map((day) => ({ kWp: '5', ...(day === undefined ? {} : { from: day }) })) });
    expect(at(undefined, '2024-01-01', '2024-01-02')).toEqual([]);
    expect(at('2024-01-01', '2024-01-01')).toEqual(['plant/capacity-order capacity.1']);
    expect(at('2024-01-01', undefined)).toEqual(['plant/capacity-order capacity.1']);
    expect(at(undefined, '2024-13-01')).toEqual(['plant/no-such-day capacity.1.from']);
  });
});
