import { parseDay } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { energyOf, placedIn, readNem12, readNem13 } from '../support/nem.ts';

// AEMO, Meter Data File Format Specification NEM12 & NEM13, v1.06 (2017): see data/nem/SOURCE.txt.
const FILES = import.meta.glob<string>('./data/nem/*.csv', { query: '?raw', import: 'default', eager: true });

const textOf = (name: string): string => {
  const text = FILES[`./data/nem/${name}.csv`];
  if (text === undefined) throw new RangeError(`no file ${name}`);
  return text.replaceAll('\r\n', '\n');
};

/** Millionths of a kWh. */
const PLACES = 6;

/** A decimal text as a whole number of millionths, by its digits alone. */
function millionths(text: string): bigint {
  const [whole = '', decimals = ''] = text.split('.');
  return BigInt(`0${whole}${decimals.padEnd(PLACES, '0')}`);
}

/** The sums of a file by NMI and suffix, added up from its lines without our reader. */
function sumsOf(text: string): ReadonlyMap<string, { readonly count: number; readonly sum: bigint }> {
  const sums = new Map<string, { count: number; sum: bigint }>();
  let [key, perDay, divisor] = ['', 0, 1n];
  for (const line of text.split('\n')) {
    const cells = line.split(',');
    if (cells[0] === '200') {
      key = `${cells[1] ?? ''} ${cells[4] ?? ''}`;
      perDay = 1440 / Number.parseInt(cells[8] ?? '', 10);
      divisor = cells[7] === 'Wh' ? 1000n : 1n;
    }
    if (cells[0] !== '300') continue;
    const own = sums.get(key) ?? { count: 0, sum: 0n };
    for (const cell of cells.slice(2, 2 + perDay)) own.sum += millionths(cell) / divisor;
    own.count += perDay;
    sums.set(key, own);
  }
  return sums;
}

/** The same from what our reader hands on. */
function readSumsOf(text: string): ReturnType<typeof sumsOf> {
  const { chunks } = readNem12(text);
  const streams = [...new Set(chunks.map(({ stream }) => stream))];
  return new Map(
    streams.map((stream) => {
      const own = chunks.filter((chunk) => chunk.stream === stream);
      const count = own.reduce((sum, { values }) => sum + values.length, 0);
      return [`${stream.point} ${stream.register}`, { count, sum: energyOf(own, stream.register, PLACES) }];
    }),
  );
}

const startOf = (day: string): number => (parseDay(day) ?? NaN) * 1440;

describe('the sample files of NEM12', () => {
  it.each([
    'aemo_example_multiple_meters',
    'aemo_example_multiple_quality',
    'aemo_example_substituted_interval',
    'solar_month_5min_E1_B1',
  ])('%s is read without findings, and adds up as its text does', (name) => {
    const text = textOf(name);
    expect(readNem12(text).findings).toEqual([]);
    expect(readSumsOf(text)).toEqual(sumsOf(text));
    expect(readSumsOf(text).size).toBeGreaterThan(0);
  });

  it('the measured month holds 270.738 kWh to the customer and 589.172 kWh to the grid', () => {
    // Totals published with the file.
    const { chunks } = readNem12(textOf('solar_month_5min_E1_B1'));
    expect([energyOf(chunks, 'E1', 3), energyOf(chunks, 'B1', 3)]).toEqual([270_738n, 589_172n]);
    expect(chunks.map(({ stream }) => stream.quantity)).toEqual([
      ...Array<string>(31).fill('export'),
      ...Array<string>(31).fill('import'),
    ]);
    expect(chunks.map(({ start }) => start)).toEqual(
      [0, 0].flatMap(() => Array.from({ length: 31 }, (_, day) => startOf('2023-03-01') + 1440 * day)),
    );
    // The first value above 0 is the 77th of 1 March (cells counted with grep): it begins at 76 × 5 minutes.
    expect(chunks[0]?.values.findIndex((value) => value > 0)).toBe(76);
  });

  it('several meters: by hand, 96 values a day on two days', () => {
    // 10 Wh: 2 × 96 × 10 = 1920 Wh; 100 Wh: 19,200 Wh; 20 Wh: 3840 Wh; 50 VArh: 9600.
    expect(readSumsOf(textOf('aemo_example_multiple_meters'))).toEqual(
      new Map([
        ['NCDE001111 E1', { count: 192, sum: 1_920_000n }],
        ['NCDE001111 B1', { count: 192, sum: 1_920_000n }],
        ['NCDE001111 Q1', { count: 192, sum: 9_600_000_000n }],
        ['NCDE001111 E2', { count: 192, sum: 19_200_000n }],
        ['NDDD001888 B1', { count: 192, sum: 3_840_000n }],
        ['NDDD001888 K2', { count: 192, sum: 9_600_000_000n }],
      ]),
    );
    const { chunks } = readNem12(textOf('aemo_example_multiple_meters'));
    const quantities = new Set(chunks.map(({ stream }) => `${stream.register} ${stream.quantity}`));
    expect([...quantities]).toEqual(['E1 import', 'B1 export', 'Q1 other', 'E2 import', 'K2 other']);
    expect(chunks.every(({ qualities, places }) => qualities === null && places <= 3)).toBe(true);
  });

  it('a substituted day: by hand, 48 × 2.312', () => {
    const { chunks } = readNem12(textOf('aemo_example_substituted_interval'));
    expect(energyOf(chunks, 'E1', 3)).toBe(110_976n);
    expect(chunks.map(({ start }) => start)).toEqual([startOf('2003-08-01'), startOf('2003-08-01')]);
    // F14, a final substitute: 2 in VALUE_QUALITIES.
    for (const { qualities } of chunks) expect([...(qualities ?? [])]).toEqual(Array<number>(48).fill(2));
  });

  it('a day of several qualities: 1 to 20 F14, 21 to 24 A, 25 to 48 S14', () => {
    const { chunks } = readNem12(textOf('aemo_example_multiple_quality'));
    const of = (count: number, quality: number): number[] => Array<number>(count).fill(quality);
    expect(chunks.map(({ qualities }) => [...(qualities ?? [])])).toEqual([
      [...of(20, 2), ...of(4, 0), ...of(24, 2)],
    ]);
    expect(chunks[0]).toMatchObject({ start: startOf('2004-04-17'), minutes: 30, places: 3, line: 3 });
  });

  it.each(Object.keys(FILES))('%s is the same with CR LF and in pieces', (path) => {
    const text = (FILES[path] ?? '').replaceAll('\r\n', '\n');
    for (const read of [readNem12, readNem13]) {
      const whole = read(text);
      expect(read(text.replaceAll('\n', '\r\n'))).toEqual(whole);
      expect(read(...Array.from(text))).toEqual(whole);
    }
  });

  it('a small one is the same cut in two anywhere', () => {
    const text = textOf('aemo_example_multiple_quality').replaceAll('\n', '\r\n');
    const whole = readNem12(text);
    for (let at = 0; at <= text.length; at += 1)
      expect(readNem12(text.slice(0, at), text.slice(at))).toEqual(whole);
  });
});

describe('the sample files of NEM13', () => {
  const minute = (hour: number, past: number): number => hour * 60 + past;

  it('a plain read: both, and nothing to ask', () => {
    const { registers, findings } = readNem13(textOf('aemo_example_consumption_data'));
    expect(findings).toEqual([]);
    expect(registers.map(({ day, minute: at, value, quality }) => [day, at, value, quality])).toEqual([
      [parseDay('2003-10-05'), minute(9, 30), '006342.8', 'actual'],
      [parseDay('2004-01-07'), minute(10, 3), '007654.9', 'actual'],
    ]);
    expect(registers[0]?.stream).toEqual({
      point: 'VABC005890',
      meter: 'METSER123',
      register: '11',
      quantity: 'import',
      rate: null,
      unit: 'kWh',
    });
  });

  it('forward estimates: two registers, and a printed quantity that is not what its own reads say', () => {
    const text = textOf('aemo_example_forward_estimate');
    const { registers, findings } = readNem13(text);
    expect(registers.map(({ stream, value, quality }) => [stream.register, value, quality])).toEqual([
      ['11', '000888', 'actual'],
      ['11', '000999', 'estimated'],
      ['41', '0000950', 'actual'],
      ['41', '0010015', 'estimated'],
    ]);
    expect(placedIn(text, findings)).toEqual([
      'nem/forward-estimate 2 20040408000000',
      'nem/quantity-differs 4 65',
      'nem/forward-estimate 4 20040408000000',
    ]);
    // By hand: 10015 − 950 = 9065.
    expect(findings[1]).toMatchObject({
      severity: 'question',
      found: 'reads of 0000950 and 0010015, 9065 apart',
      expected: '65 apart, the quantity printed beside them',
    });
  });
});
