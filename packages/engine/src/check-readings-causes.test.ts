import { describe, expect, it } from 'vitest';
import { givenFigure, parseDay, type DayNumber } from './quantity/index.ts';
import { makeRegister, readAccount, readReadings, type ReadingRow } from './readings/index.ts';
import { readTariff, type TariffDocument } from './tariff/index.ts';
import { CAUSES, type BillFacts, type CauseContext, type RegisterFacts } from './audit/index.ts';
import { factsOfPair } from './check-facts.ts';
import { runBill, type RunBasis } from './check-run.ts';
import { beginWith } from './month.ts';

const TARIFFS = Object.entries(
  import.meta.glob<string>('../../../tariffs-examples/*/*/tariff.json', {
    query: '?raw',
    import: 'default',
    eager: true,
  }),
).map(([path, text]) => [path.split('/').slice(-3, -1).join('/'), text] as const);

const READINGS_CAUSES = CAUSES.filter(({ stage }) => stage === 'readings');

const NOTHING_KNOWN: CauseContext = {
  printed: new Map(),
  status: null,
  before: null,
  printedBefore: null,
  closingBefore: null,
  otherTariffs: [],
  connected: null,
  paidBefore: undefined,
  serials: {},
};

const BASIS: RunBasis = {
  account: { since: '2020-01-01', settlementDay: '03-31' },
  carried: beginWith(
    givenFigure({ id: 'o', label: '', unit: 'kWh', numerator: 0, denominator: 1000, clause: '' }),
  ),
};

const register = (id: 'import' | 'export' | 'generation', rate: string | null, block: string | null) =>
  makeRegister({
    id,
    digits: '6',
    decimals: '1',
    multiplyingFactor: '2',
    ...(rate === null ? {} : { rate, block: block ?? undefined }),
  });

/** A register that counted so many units: by half as much on its display. */
const counted = (own: RegisterFacts['register'], from: number, units: number): RegisterFacts => ({
  register: own,
  previous: from * 1000,
  present: from * 1000 + units * 500,
  passed: false,
});

/** A month under a tariff: 40 units in each block, or 400 in all; half of that given; the plant made 500. */
function factsUnder(tariff: TariffDocument, withRegisters: boolean): BillFacts {
  const version = tariff.versions.at(-1);
  const from = parseDay(version?.from ?? '2025-05-01') as DayNumber;
  const blocks = (tariff.timeBlocks?.blocks ?? []).map(({ id }) => id);
  const channels = [
    { id: 'import', units: blocks.length === 0 ? 400 : 40 },
    { id: 'export', units: blocks.length === 0 ? 200 : 20 },
  ] as const;
  const registers: RegisterFacts[] = [counted(register('generation', null, null), 9000, 500)];
  const units: Record<string, number> = { generation: 500_000 };
  for (const { id, units: count } of channels) {
    if (blocks.length === 0) registers.push(counted(register(id, null, null), 5000, count));
    blocks.forEach((block, at) => {
      registers.push(counted(register(id, String(at + 1), block), 1000 + at * 700, count));
      units[`${id}@${block}`] = count * 1000;
    });
    units[id] = count * 1000 * Math.max(1, blocks.length);
  }
  return {
    tariff,
    period: { from, to: (from + 30) as DayNumber },
    registers: withRegisters ? Object.fromEntries(registers.map((own) => [own.register.key, own])) : {},
    units,
    powers: { 'sanctioned-load': 4000, 'plant-capacity': 5000 },
    opening: {},
    surplus: { kind: 'as-due' },
    accountLines: [],
    shown: {},
  };
}

/** Units of a channel less those of its blocks; 0 where it has none. */
function blocksOff({ units }: BillFacts, channel: string): number {
  const blocks = Object.entries(units).filter(([name]) => name.startsWith(`${channel}@`));
  const sum = blocks.reduce((total, [, count]) => total + count, 0);
  return blocks.length === 0 ? 0 : (units[channel] ?? 0) - sum;
}

describe('causes in the readings, under every example tariff', () => {
  const billed = TARIFFS.flatMap(([name, text]) => {
    const document = readTariff(text).value?.document;
    if (document === undefined) return [];
    return [true, false].flatMap((withRegisters) => {
      const facts = factsUnder(document, withRegisters);
      return runBill(facts, BASIS) === null ? [] : [{ name, facts, withRegisters }];
    });
  });

  it('has enough of them, with and without time blocks', () => {
    expect(billed.length).toBeGreaterThan(60);
    expect(billed.filter(({ facts }) => facts.tariff.timeBlocks !== undefined).length).toBeGreaterThan(5);
  });

  it.each(billed)('bills what each makes: $name, registers $withRegisters', ({ facts }) => {
    const made = READINGS_CAUSES.flatMap(({ id, variants }) =>
      variants(facts, NOTHING_KNOWN).map((variant) => ({ id: `${id} ${variant.id}`, facts: variant.facts })),
    );
    expect(made.length).toBeGreaterThan(8);
    expect(made.filter((one) => runBill(one.facts, BASIS) === null).map(({ id }) => id)).toEqual([]);
    const off = made.filter((one) =>
      ['import', 'export'].some((channel) => blocksOff(one.facts, channel) !== 0),
    );
    expect(off.map(({ id }) => id)).toEqual([]);
    expect(made.every((one) => one.facts.tariff === facts.tariff)).toBe(true);
  });
});

describe('a meter that is replaced inside a period', () => {
  const shape = { digits: '5', decimals: '1' };
  const meter = { multiplyingFactor: '1', import: shape, export: shape };
  const account = readAccount(
    JSON.stringify({
      format: 'unitbook-account-1',
      id: 'TAR-30-00417',
      sanctionedLoad: '4',
      plantCapacity: '5',
      openingCredit: '0',
      meters: {
        grid: { serial: 'PB-77120', ...meter, later: [{ from: '2025-05-16', serial: 'PB-90001', ...meter }] },
        generation: { serial: 'GN-40316', multiplyingFactor: '1', generation: shape },
      },
    }),
  ).value;
  const rows: readonly ReadingRow[] = [
    { date: '2025-05-01', import: '12480', export: '8310', generation: '15225' },
    { date: '2025-05-16', import: '12690', export: '8450', event: 'final' },
    { date: '2025-05-16', import: '7', export: '0', event: 'first' },
    { date: '2025-05-31', import: '209', export: '138', generation: '15805' },
  ];
  const text = TARIFFS.find(([name]) => name === 'tarumira/taresco-domestic')?.[1] ?? '';
  const tariff = readTariff(text).value?.document;
  if (account === null || tariff === undefined) throw new Error('the example cannot be read');
  const pair = readReadings(rows, account).value[0];
  if (pair === undefined) throw new Error('the readings make no pair');
  const facts: BillFacts = { ...factsOfPair(pair, account, tariff).facts, opening: { credit: 35_000 } };

  it('is told meter by meter; the meter beside it as ever', () => {
    expect(Object.keys(facts.registers)).toEqual(['generation']);
    expect(
      facts.stretches?.map(({ register: { key }, previous, present }) => [key, previous, present]),
    ).toEqual([
      ['import', 12_480_000, 12_690_000],
      ['export', 8_310_000, 8_450_000],
      ['import', 7_000, 209_000],
      ['export', 0, 138_000],
    ]);
    // 210 + 202 and 140 + 138.
    expect([facts.units['import'], facts.units['export']]).toEqual([412_000, 278_000]);
  });

  it('shows where the old one began and where the new one ended', () => {
    const figures = runBill(facts, BASIS)?.figures;
    const reading = (name: string): number => Number(figures?.get(name)?.numerator);
    expect([reading('reading.import.previous'), reading('reading.import.present')]).toEqual([
      12_480_000, 209_000,
    ]);
    expect([reading('reading.export.previous'), reading('reading.export.present')]).toEqual([
      8_310_000, 138_000,
    ]);
    expect(reading('reading.generation.previous')).toBe(15_225_000);
  });
});
