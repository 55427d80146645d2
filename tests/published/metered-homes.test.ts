import { readFileSync } from 'node:fs';
import {
  calendarDay,
  checkAccount,
  dayText,
  keepBook,
  wholeToDecimal,
  type AccountDocument,
  type ReadingRow,
} from '@unitbook/engine';
import {
  energyByDay,
  proposeTable,
  readingRows,
  readMeterFile,
  type CollectedFile,
  type DayEnergy,
} from '@unitbook/meter-files';
import { describe, expect, it } from 'vitest';
import { goodTariff } from '../support/demo.ts';
import { tariffText } from './load-tariffs.ts';

const textOf = (name: string): string =>
  readFileSync(new URL(`./data/homes/${name}.csv`, import.meta.url), 'utf8');

/** A file read by the layout that is proposed for it, as if a person had confirmed it. */
function opened(name: string): CollectedFile {
  const text = textOf(name);
  const { layout } = proposeTable(text.slice(0, 65_536));
  const { file, findings } = readMeterFile(text, { layout: { ...layout, confirmed: true } });
  if (file === null) throw new Error(JSON.stringify(findings));
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return file;
}

/** A column of the text, in thousandths: summed apart from our readers. */
function thousandthsOf(name: string, column: number): readonly bigint[] {
  const lines = textOf(name).trim().split('\n').slice(1);
  return lines.map((line) => {
    const [whole = '', decimals = ''] = (line.split(',')[column] ?? '').split('.');
    return BigInt(whole + decimals.padEnd(3, '0'));
  });
}

const sum = (values: readonly bigint[]): bigint => values.reduce((all, value) => all + value, 0n);

/** The demo tariff from 2019 on, with every thousandth of a unit counted. */
const TARIFF = goodTariff(
  tariffText('tarumira-domestic')
    .replace('"from": "2023-04-01"', '"from": "2019-01-01"')
    .replaceAll('"from": "2021-04-01"', '"from": "2019-01-01"')
    .replace('"decimals": "0"', '"decimals": "3"')
    .replace('"roundedAt": "reading"', '"roundedAt": "difference"'),
);

/** The energy of every day of a file. */
function daysOf(name: string, zone: string | null): DayEnergy {
  const { value } = energyByDay(opened(name), { zone });
  if (value === null) throw new Error('no days');
  return value;
}

/** Running sums on the first day of every month, as registers. */
function monthlyRows({ days, places, ...channels }: DayEnergy): readonly ReadingRow[] {
  const rows: ReadingRow[] = [];
  const shown = { import: 0, export: 0, generation: 0 };
  days.forEach((day, at) => {
    const isFirst = calendarDay(day).day === 1;
    if (isFirst) {
      const text = (value: number): string => wholeToDecimal(value, places);
      const { import: taken, export: given, generation } = shown;
      rows.push({
        date: dayText(day),
        import: text(taken),
        export: text(given),
        generation: text(generation),
      });
    }
    for (const channel of ['import', 'export', 'generation'] as const)
      shown[channel] += channels[channel]?.energy[at] ?? 0;
  });
  return rows;
}

const REGISTER = { digits: '6', decimals: '3' } as const;

function accountOf(plant: string, more: Partial<AccountDocument> = {}) {
  const meter = { serial: 'M', multiplyingFactor: '1' };
  const { value } = checkAccount({
    format: 'unitbook-account-1',
    id: 'home',
    sanctionedLoad: '20',
    plantCapacity: plant,
    openingCredit: '0',
    meters: {
      grid: { ...meter, import: REGISTER, export: REGISTER },
      generation: { ...meter, generation: REGISTER },
    },
    ...more,
  });
  if (value === null) throw new Error('the account cannot be used');
  return value;
}

describe('a home with an 11 kW plant and a battery of 40 kWh, over all its days', () => {
  const name = 'home-1-battery-daily';
  // The days of the file begin at 01:00 on the clock of the house, in summer and in winter.
  const days = daysOf(name, 'Etc/GMT+8');
  const rows = monthlyRows(days);

  it('is read whole', () => {
    const own = [days.import, days.export, days.generation].map((values) =>
      sum((values?.energy ?? []).map((value) => BigInt(value ?? 0))),
    );
    const expected = [1, 2, 3].map((column) => sum(thousandthsOf(name, column)));
    const scale = 10n ** BigInt(3 - days.places);
    expect(own.map((value) => value * scale)).toEqual(expected);
    expect(days.import?.energy.filter((value) => value !== null)).toHaveLength(975);
  });

  it('raises no alarm in any month, battery losses or not', () => {
    const account = accountOf('11', { batteryCapacity: '40' });
    const { value, findings } = keepBook({ account, tariff: TARIFF, readings: rows });
    expect(value.months).toHaveLength(rows.length - 1);
    const told = findings.filter(
      ({ severity, code }) => severity !== 'note' && !code.startsWith('reading/same'),
    );
    expect(told.map(({ code, path }) => `${code} ${path.join('.')}`)).toEqual([]);
  });

  it('used what it took and made less what it gave, battery losses included', () => {
    // Those losses are 5 to 7 percent of its use (see SOURCE.txt): no meter is at fault, and none is said to be.
    const account = accountOf('11', { batteryCapacity: '40' });
    const { months } = keepBook({ account, tariff: TARIFF, readings: rows }).value;
    const [from = '', to = ''] = [rows[0]?.date, rows.at(-1)?.date];
    const kept = textOf(name)
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => line.slice(0, 10) >= from && line.slice(0, 10) < to);
    const within = (column: number): bigint =>
      sum(thousandthsOf(name, column).filter((_, at) => kept[at] === true));
    const use = months.reduce((all, { energy }) => all + BigInt(energy.totalUse?.numerator ?? 0), 0n);
    expect(months.every(({ energy }) => energy.totalUse !== null)).toBe(true);
    expect(use).toBe(within(1) + within(3) - within(2));
  });
});

describe('a home in Italy, over all its days', () => {
  const name = 'home-2-daily';
  const days = daysOf(name, null);

  it('is read whole, and raises no alarm in any month', () => {
    const made = sum((days.generation?.energy ?? []).map((value) => BigInt(value ?? 0)));
    expect(made).toBe(sum(thousandthsOf(name, 3)));
    const rows = monthlyRows(days);
    // Its best day made some 31 units: a plant of about 5 kWp.
    const { value, findings } = keepBook({ account: accountOf('5'), tariff: TARIFF, readings: rows });
    expect(value.months).toHaveLength(rows.length - 1);
    expect(findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code)).toEqual([]);
  });
});

type Rated = 'import' | 'export';

/** What the registers of a rate counted from the first row to the last, in thousandths. */
function advanceOf(name: string, column: number): bigint {
  const values = thousandthsOf(name, column);
  return (values.at(-1) ?? 0n) - (values[0] ?? 0n);
}

describe.each([
  { name: 'home-6-two-rate-registers-15min', rates: ['1', '2'], every: 7, decimals: '3' },
  { name: 'home-7-two-rate-registers-daily', rates: ['normal', 'low'], every: 1, decimals: '0' },
] as const)('$name, by rate', ({ name, rates, every, decimals }) => {
  const read = readingRows(opened(name));
  const all = read.value;
  const kept = all.filter((_, at) => at % every === 0 || at === all.length - 1);
  const rows = kept.map(({ day, values }): ReadingRow => {
    const own = (id: Rated): Readonly<Record<string, string>> => values.rates?.[id] ?? {};
    return { date: dayText(day), rates: { import: own('import'), export: own('export') } };
  });
  const shape = { digits: '5', decimals, rates: rates.map((id) => ({ id })) } as const;
  const account = accountOf('6', {
    meters: { grid: { serial: 'M', multiplyingFactor: '1', import: shape, export: shape } },
  });
  const { value, findings } = keepBook({ account, tariff: TARIFF, readings: rows });

  it('bills every period, and its rates sum to last less first', () => {
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(value.months).toHaveLength(rows.length - 1);
    const first = new Map(Object.entries({ import: [1, 2], export: [3, 4] }));
    for (const id of ['import', 'export'] as const) {
      const counted = value.months.reduce((total, { energy }) => total + BigInt(energy[id].numerator), 0n);
      const columns = first.get(id) ?? [];
      const firstRow = rows[0]?.rates?.[id] ?? {};
      const lastRow = rows.at(-1)?.rates?.[id] ?? {};
      const shown = rates.map((rate) => [firstRow[rate] ?? '', lastRow[rate] ?? '']);
      const ends = shown.map(([from = '', to = '']) => thousandths(to) - thousandths(from));
      expect(counted).toBe(sum(ends));
      if (name.startsWith('home-7')) expect(ends).toEqual(columns.map((column) => advanceOf(name, column)));
    }
  });
});

function thousandths(text: string): bigint {
  const [whole = '', decimals = ''] = text.split('.');
  return BigInt(whole + decimals.padEnd(3, '0'));
}
