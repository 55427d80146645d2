import { describe, expect, it } from 'vitest';
import domestic from '../../../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { parseDay, type DayNumber } from '../quantity/index.ts';
import { makeRegister } from '../readings/index.ts';
import { readTariff, type TariffDocument } from '../tariff/index.ts';
import { squaredFactor, withFactor } from './factor-changed.ts';
import type { BillFacts, RegisterFacts } from './facts.ts';
import { fitsPrinted, printedThousandths, withShownReadings } from './printed-readings.ts';
import {
  countedBy,
  isPossible,
  scaledUnits,
  withChannel,
  withCounts,
  withReadings,
} from './readings-changed.ts';

const document = readTariff(domestic).value?.document as TariffDocument;
const register = (id: 'import' | 'export', rate?: string, block?: string, multiplyingFactor = '1') =>
  makeRegister({
    id,
    digits: '5',
    decimals: '1',
    multiplyingFactor,
    ...(rate === undefined ? {} : { rate, block }),
  });
const shows = (own: RegisterFacts['register'], previous: number, present: number): RegisterFacts => ({
  register: own,
  previous,
  present,
  passed: false,
});
const day = (value: string): DayNumber => parseDay(value) as DayNumber;

function factsOf(registers: readonly RegisterFacts[], units: Readonly<Record<string, number>>): BillFacts {
  return {
    tariff: document,
    period: { from: day('2025-05-01'), to: day('2025-05-31') },
    registers: Object.fromEntries(registers.map((own) => [own.register.key, own])),
    units,
    powers: {},
    opening: {},
    surplus: { kind: 'as-due' },
    accountLines: [],
    shown: {},
  };
}

const PLAIN = factsOf(
  [shows(register('import'), 12_480_000, 12_892_400), shows(register('export'), 8_310_000, 8_588_000)],
  { import: 412_000, export: 278_000 },
);
/** 250 by day and 162 by night. */
const RATES = factsOf(
  [
    shows(register('import', '1', 'day'), 1_000_000, 1_250_000),
    shows(register('import', '2', 'night'), 2_000_000, 2_162_000),
  ],
  { import: 412_000, 'import@day': 250_000, 'import@night': 162_000 },
);
/** Blocks that no register of their own counts. */
const BLOCKS: BillFacts = {
  ...PLAIN,
  units: { ...PLAIN.units, 'import@day': 250_000, 'import@night': 162_000 },
};

describe('readings that are changed', () => {
  it('are counted again by the rule of the tariff, which cuts each reading', () => {
    // 12,982.9 is cut to 12,982: 502.
    const changed = withReadings(PLAIN, { import: { present: 12_982_900 } });
    expect(changed.units).toEqual({ import: 502_000, export: 278_000 });
    expect(changed.registers['import']?.present).toBe(12_982_900);
    expect(PLAIN.units['import']).toBe(412_000);
  });

  it('change their block and the channel by as much', () => {
    const changed = withReadings(RATES, { 'import-2': { previous: 1_900_000 } });
    expect(changed.units).toEqual({ import: 512_000, 'import@day': 250_000, 'import@night': 262_000 });
  });

  it('scale blocks that have no register of their own', () => {
    // 824 is twice 412.
    const changed = withReadings(BLOCKS, { import: { previous: 12_068_000 } });
    expect(changed.units).toEqual({
      import: 824_000,
      export: 278_000,
      'import@day': 500_000,
      'import@night': 324_000,
    });
  });

  it('pass the full scale where that is the change', () => {
    const low = withReadings(PLAIN, { import: { present: 12_400_000, passed: true } });
    // 112,400 − 12,480.
    expect(low.units['import']).toBe(99_920_000);
  });

  it('are left out where no such register is known', () => {
    expect(withReadings(PLAIN, { 'import-1': { present: 1 } })).toEqual(PLAIN);
  });
});

describe('counts that are changed', () => {
  it('leave what registers show', () => {
    const changed = withCounts(PLAIN, { import: 99_000 });
    expect(changed.units['import']).toBe(99_000);
    expect(changed.registers).toEqual(PLAIN.registers);
  });

  it('are those of one register among several', () => {
    expect(countedBy(RATES.registers['import-1'] as RegisterFacts, RATES)).toBe(250_000);
    expect(withCounts(RATES, { 'import-1': 0 }).units).toEqual({
      import: 162_000,
      'import@day': 0,
      'import@night': 162_000,
    });
  });

  it('are not possible below 0', () => {
    expect(isPossible(PLAIN)).toBe(true);
    expect(isPossible(withChannel(PLAIN, 'export', -1000))).toBe(false);
  });
});

describe('own use', () => {
  const made = { ...PLAIN, units: { ...PLAIN.units, generation: 580_000 } };

  it('falls below 0 where less is made than given, as a program that only subtracts has it', () => {
    // "Why a net-metered bill is wrong, or right but surprising" (project reference, 2025), C15: 193 − 278.
    const third = withChannel(made, 'generation', 193_000);
    expect(third.units['self-consumption']).toBe(-85_000);
    expect(withChannel(third, 'generation', 300_000).units).toEqual({ ...made.units, generation: 300_000 });
  });

  it('is left to the bill where enough is made, or nobody knows how much', () => {
    expect(withChannel(made, 'generation', 278_000).units).not.toHaveProperty('self-consumption');
    expect(withChannel(PLAIN, 'export', 0).units).not.toHaveProperty('self-consumption');
  });
});

describe('units of a channel that is scaled', () => {
  it('stay whole units that sum to it', () => {
    // 100 × 250/412 = 60.67 and 100 × 162/412 = 39.32: 60 and 39, and the one left over to the larger rest.
    expect(scaledUnits(BLOCKS, 'import', 100_000)).toEqual({
      import: 100_000,
      'import@day': 61_000,
      'import@night': 39_000,
    });
  });

  it('keep what is finer than the tariff counts', () => {
    const { import: total, ...blocks } = scaledUnits(BLOCKS, 'import', 100_500);
    expect(total).toBe(100_500);
    expect(Object.values(blocks).reduce((sum, units) => sum + units, 0)).toBe(100_500);
  });

  it('stand in the first block where none counted anything', () => {
    const none = { ...BLOCKS, units: { import: 0, 'import@day': 0, 'import@night': 0 } };
    expect(scaledUnits(none, 'import', 5000)).toEqual({
      import: 5000,
      'import@day': 5000,
      'import@night': 0,
    });
  });
});

describe('a factor that is changed', () => {
  const twenty = factsOf(
    [
      shows(register('import', undefined, undefined, '20'), 1_210_500, 1_236_000),
      shows(register('export', undefined, undefined, '20'), 402_000, 410_500),
    ],
    { import: 510_000, export: 170_000 },
  );
  const printedFactor = (factor: number) => ({
    printed: new Map([['factor', { numerator: factor, denominator: 1 }]]),
  });

  it('is squared exactly', () => {
    expect(squaredFactor({ numerator: 15, denominator: 10, text: '1.5' })).toEqual({
      numerator: 225,
      denominator: 100,
      text: '2.25',
    });
  });

  it('is shown as printed, where that is the right one', () => {
    const one = { numerator: 1, denominator: 1, text: '1' };
    const changed = withFactor(twenty, printedFactor(20), ['import', 'export'], () => one);
    // 1,236 − 1,210 and 410 − 402: each reading is cut.
    expect([changed?.units['import'], changed?.units['export']]).toEqual([26_000, 8_000]);
    expect(changed?.shown).toEqual({ factor: { numerator: 20, denominator: 1 } });
    expect(withFactor(twenty, printedFactor(1), ['import'], () => one)?.shown).toEqual({});
  });

  it('changes nothing where it is 1', () => {
    expect(withFactor(PLAIN, { printed: new Map() }, ['import'], squaredFactor)).toBeNull();
  });
});

describe('what a bill prints of readings', () => {
  const printed = (present: number, units?: number) => ({
    printed: new Map([
      ['reading.import.present', { numerator: present, denominator: 10 }],
      ...(units === undefined ? [] : [['units.import', { numerator: units, denominator: 1 }] as const]),
    ]),
  });

  it('is in thousandths, or not at all', () => {
    expect(printedThousandths(printed(128_924), 'reading.import.present')).toBe(12_892_400);
    expect(printedThousandths(printed(128_924), 'reading.export.present')).toBeNull();
    const finer = { printed: new Map([['days', { numerator: 1, denominator: 10_000 }]]) };
    expect(printedThousandths(finer, 'days')).toBeNull();
  });

  it('is no contradiction where it is not printed', () => {
    expect(fitsPrinted(PLAIN, printed(128_924), ['import', 'export'])).toBe(true);
    expect(fitsPrinted(PLAIN, printed(128_924, 412), ['import'])).toBe(true);
    expect(fitsPrinted(PLAIN, printed(128_924, 413), ['import'])).toBe(false);
    expect(fitsPrinted(PLAIN, printed(128_925), ['import'])).toBe(false);
  });

  it('stays as read where the bill prints it so: the mistake is behind the readings', () => {
    const other = { import: { previous: 1000, present: 2000 } };
    expect(withShownReadings(PLAIN, printed(128_924), other).shown).toEqual({});
    expect(withShownReadings(PLAIN, printed(20), other).shown).toEqual({
      'reading.import.previous': { numerator: 1000, denominator: 1000 },
      'reading.import.present': { numerator: 2000, denominator: 1000 },
    });
  });
});
