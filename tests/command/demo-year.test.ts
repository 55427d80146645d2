import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.ts';
import { sessionIo } from './session-io.ts';

/**
 * The demo year worked out a second time, in whole paise, without the engine: the tariff order of 2024 as
 * the invented place publishes it, for a sanctioned load of 3 kW and periods of 27 to 33 days.
 */
interface Row {
  readonly date: string;
  readonly import: string;
  readonly export: string;
  readonly generation: string;
}

const SLABS = [
  [50, 300],
  [100, 480],
  [150, 650],
  [Infinity, 800],
] as const;

/** Half up to whole units of `unit`, for amounts not below 0. */
const roundTo = (amount: number, unit: number): number => Math.floor((amount + unit / 2) / unit) * unit;

function payable(units: number): number {
  let left = units;
  let energy = 0;
  for (const [width, rate] of SLABS) {
    energy += Math.min(left, width) * rate;
    left = Math.max(0, left - width);
  }
  const fixed = 3 * 6000;
  const shortfall = Math.max(0, 15000 - fixed - energy);
  const fuel = units * 40;
  const tax = roundTo(energy * 6, 100) / 100;
  const subsidy = Math.min(units, 50) * 150;
  return roundTo(fixed + energy + shortfall + fuel + tax - subsidy, 100) / 100;
}

const household = JSON.parse(
  readFileSync(new URL('../../tariffs-examples/households/demo.json', import.meta.url), 'utf8'),
) as { readings: readonly Row[] };
const whole = (text: string): number => Number.parseInt(text, 10);

let bank = 0;
const months = household.readings.slice(1).map((row, index) => {
  const before = household.readings[index] as Row;
  const taken = whole(row.import) - whole(before.import);
  const given = whole(row.export) - whole(before.export);
  const made = whole(row.generation) - whole(before.generation);
  const billed = Math.max(0, taken - given - bank);
  bank = Math.max(0, bank + given - taken);
  // 31 March: what is left is paid and the bank begins again.
  const surplus = row.date.slice(5) === '04-01' ? bank : 0;
  bank -= surplus;
  const without = payable(taken + made - given);
  const bill = payable(billed);
  return { taken, given, made, billed, credit: bank, bill, without, saved: without - bill, surplus };
});

const written = (amount: number): string => amount.toLocaleString('en-IN');

it('prints twelve bills and their sums as worked out by hand', async () => {
  const { io, printed } = sessionIo(new Map(), '');
  expect(await run(['demo'], io)).toBe(0);
  const rows = printed.out.split('\n').filter((line) => /^ ?\d+ \w+ – .* \d+ +\d+ +\d/.test(line));
  const numbers = (line: string): readonly string[] => line.trim().split(/\s+/).slice(6);
  const table = rows.slice(0, 12).map((line) => numbers(line).slice(1));
  expect(table).toEqual(
    months.map(({ taken, given, made, billed, credit, bill, without, saved }) =>
      [taken, given, made, billed, credit, bill, without, saved].map(written),
    ),
  );
  const sums = /12 bills +(.*)/.exec(printed.out)?.[1]?.split(/\s+/);
  const sum = (key: 'taken' | 'given' | 'made' | 'billed' | 'bill' | 'without' | 'saved'): string =>
    written(months.reduce((total, month) => total + month[key], 0));
  expect(sums).toEqual([
    '365',
    ...(['taken', 'given', 'made', 'billed', 'bill', 'without', 'saved'] as const).map(sum),
  ]);
  expect(months.at(-1)?.surplus).toBe(417);
  expect(printed.out).toContain('417 × 2.60 =\n1,084.20 [NMR-2021 r. 7.3]');
});

it('agrees with the published month: 180 in April, 230 in May', () => {
  expect(months.slice(0, 2).map(({ bill, credit }) => [bill, credit])).toEqual([
    [180, 58],
    [230, 0],
  ]);
});

it('stays within 80 columns', async () => {
  const { io, printed } = sessionIo(new Map(), '');
  await run(['demo'], io);
  expect(printed.out.split('\n').filter((line) => Array.from(line).length > 80)).toEqual([]);
});
