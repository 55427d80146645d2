import { describe, expect, it } from 'vitest';
import { placedIn, readNem12 } from '../../../../tests/support/nem.ts';
import { nem12Reader, nem13Reader } from './index.ts';

const HEAD = '100,NEM12,202401010900,SENDER,RECEIVER\n';
const END = '900\n';
const stream = (suffix = 'E1', unit = 'kWh', minutes = '30'): string =>
  `200,N1,E1B1,1,${suffix},N1,M1,${unit},${minutes},\n`;

/** A record 300 with these values at the beginning and 0 for the rest of the day. */
function day(values: readonly string[], quality = 'A', count = 48, date = '20240102'): string {
  const all = Array.from({ length: count }, (_, at) => values[at] ?? '0');
  return `300,${date},${all.join(',')},${quality},,,20240103000000,\n`;
}

/** What is left of a file that is as it should be: no findings, and the first chunk. */
function chunkOf(text: string) {
  const { chunks, findings } = readNem12(text);
  expect(findings).toEqual([]);
  expect(chunks).toHaveLength(1);
  const [chunk] = chunks;
  if (chunk === undefined) throw new RangeError('no chunk');
  return chunk;
}

const codesOf = (text: string): readonly string[] => placedIn(text, readNem12(text).findings);

describe('a day of NEM12', () => {
  it('begins at 00:00 in market time, and names its line', () => {
    // 1 January 2024 is day 19723 since 1970 (spreadsheet serial 45292 less 25569); the day is the next.
    const { start, minutes, line, values } = chunkOf(HEAD + stream() + day(['1']) + END);
    expect({ start, minutes, line, count: values.length }).toEqual({
      start: 19724 * 1440,
      minutes: 30,
      line: 3,
      count: 48,
    });
  });

  it.each([
    ['5', 288],
    ['15', 96],
    ['30', 48],
  ])('of %s minutes has %d values', (minutes, count) => {
    const chunk = chunkOf(HEAD + stream('E1', 'kWh', minutes) + day([], 'A', count) + END);
    expect([chunk.minutes * chunk.values.length, chunk.values.length]).toEqual([1440, count]);
  });

  it.each([
    ['kWh', ['.005', '1.', '2.50', '3'], 3, [5, 1000, 2500, 3000]],
    ['kWh', ['1', '2', '3', '40'], 0, [1, 2, 3, 40]],
    ['Wh', ['10', '1500', '0', '1'], 3, [10, 1500, 0, 1]],
    ['wh', ['10.5', '1', '0', '0'], 4, [105, 10, 0, 0]],
    ['MWh', ['0.0005', '1', '0', '0'], 1, [5, 10_000, 0, 0]],
    ['MWh', ['0.05', '1', '2.5', '0'], 0, [50, 1000, 2500, 0]],
    ['kWh', ['999999999999999', '1', '0', '0'], 0, [999_999_999_999_999, 1, 0, 0]],
  ])('in %s with %j has %d places', (unit, texts, places, first) => {
    const chunk = chunkOf(HEAD + stream('E1', unit) + day(texts) + END);
    expect([chunk.places, [...chunk.values.slice(0, 4)]]).toEqual([places, first]);
  });

  it('is all actual, or has a quality for each value', () => {
    expect(chunkOf(HEAD + stream() + day(['1']) + END).qualities).toBeNull();
    expect([...(chunkOf(HEAD + stream() + day(['1'], 'E64') + END).qualities ?? [])]).toEqual(
      Array<number>(48).fill(1),
    );
  });

  it('has no value where a cell is empty, and none at all with the quality N', () => {
    const some = chunkOf(HEAD + stream() + day(['', '2', ' ']) + END);
    expect([...some.values.slice(0, 4)]).toEqual([NaN, 2, NaN, 0]);
    expect([...(some.qualities ?? []).slice(0, 4)]).toEqual([4, 0, 4, 0]);
    const none = chunkOf(HEAD + stream() + day(['', '0', '0.00'], 'N') + END);
    expect([...none.values].every(Number.isNaN)).toBe(true);
    expect([...(none.qualities ?? [])]).toEqual(Array<number>(48).fill(4));
  });

  it('takes its qualities from the records 400 below it', () => {
    const ranges = '400,1,20,F14,76,\n400,21,24,A,,\n400,25,47,E52,1,\n400,48,48,N,,\n';
    const chunk = chunkOf(HEAD + stream() + day(['1'], 'V') + ranges + END);
    const of = (count: number, quality: number): number[] => Array<number>(count).fill(quality);
    expect([...(chunk.qualities ?? [])]).toEqual([...of(20, 2), ...of(4, 0), ...of(23, 1), 4]);
    expect([...chunk.values].map(Number.isNaN).indexOf(true)).toBe(47);
    expect(chunkOf(HEAD + stream() + day(['1'], 'V') + '400,1,48,A,,\n' + END).qualities).toBeNull();
  });

  it('with V is handed on at whatever follows, in the order of the file', () => {
    const first = day(['1'], 'V') + '400,1,48,S14,,\n';
    const next = day(['2'], 'A', 48, '20240103');
    for (const between of ['', '500,O,,,\n', stream(), END]) {
      const { chunks } = readNem12(HEAD + stream() + first + between + next);
      expect(chunks.map(({ values, line }) => [values[0], line])).toEqual([
        [1, 3],
        [2, between === '' ? 5 : 6],
      ]);
    }
    expect(readNem12(HEAD + stream() + first).chunks).toHaveLength(1);
  });
});

describe('a stream of NEM12', () => {
  it.each([
    ['E1', 'kWh', 'import'],
    ['E2', 'Wh', 'import'],
    ['e1', 'kWh', 'import'],
    ['B1', 'MWh', 'export'],
    ['Q1', 'kVArh', 'other'],
    ['K2', 'VArh', 'other'],
    ['X1', 'kWh', 'other'],
    ['N1', 'kWh', 'other'],
  ])('%s in %s is %s', (suffix, unit, quantity) => {
    const chunk = chunkOf(HEAD + stream(suffix, unit) + day(['7']) + END);
    expect(chunk.stream).toEqual({ point: 'N1', meter: 'M1', register: suffix, quantity, rate: null, unit });
  });

  it('that is no active energy keeps its values as they are', () => {
    const chunk = chunkOf(HEAD + stream('X1', 'Wh') + day(['7.5']) + END);
    expect([chunk.places, chunk.values[0]]).toEqual([1, 75]);
  });

  it('is one object in the whole file', () => {
    const days = day(['1']) + day(['2'], 'A', 48, '20240103');
    const { chunks } = readNem12(HEAD + stream() + days + stream('E2') + days + stream() + days + END);
    expect(chunks.map((chunk) => chunks.findIndex((one) => one.stream === chunk.stream))).toEqual([
      0, 0, 2, 2, 0, 0,
    ]);
  });
});

describe('what is wrong in a NEM12 file', () => {
  it('is told for each line, and every good line is kept', () => {
    const text =
      day(['1']) + // 1: before any 200
      stream() +
      day(['1'], 'A', 48, '20240230') + // 3: no such day
      day(['1'], 'A', 47) + // 4: too few
      day(['1'], 'A', 49) + // 5: too many
      '999,x\n' + // 6: unknown
      day(['1', 'x', '-2', 'y', '1e3'], 'A') + // 7
      day(['5']) + // 8: good
      stream('E1', 'kWh', '10') + // 9
      day(['1']) +
      END;
    expect(codesOf(text)).toEqual([
      'nem/no-header 1 300',
      'nem/no-stream 1 300',
      'nem/day 3 20240230',
      'nem/too-few-values 4 A',
      'nem/too-many-values 5 A',
      'nem/unknown-record 6 999',
      'nem/value 7 x',
      'nem/negative-value 7 -2',
      'nem/interval-length 9 10',
    ]);
    const { chunks } = readNem12(text);
    expect(chunks.map(({ line }) => line)).toEqual([7, 8]);
    expect([...(chunks[0]?.values.slice(0, 6) ?? [])]).toEqual([1, NaN, NaN, NaN, NaN, 0]);
    expect([...(chunks[0]?.qualities?.slice(0, 6) ?? [])]).toEqual([0, 4, 4, 4, 4, 0]);
  });

  it('is said once for all values of a kind on a line', () => {
    const { findings } = readNem12(HEAD + stream() + day(['-1', '-2', '-3']) + END);
    expect(findings.map(({ found }) => found)).toEqual(['"-1" as a value, and 2 more such on this line']);
  });

  it('leaves out a value that would not be exact beside a finer one', () => {
    const text = HEAD + stream() + day(['100000000000000', '0.01', '7']) + END;
    const { chunks } = readNem12(text);
    expect(codesOf(text)).toEqual(['nem/too-many-digits 3 100000000000000']);
    expect([...(chunks[0]?.values.slice(0, 3) ?? [])]).toEqual([NaN, 1, 700]);
    const fits = chunkOf(HEAD + stream() + day(['9999999999999', '0.01']) + END);
    expect(fits.values[0]).toBe(999_999_999_999_900);
  });

  it('counts decimals of a kWh in any unit', () => {
    expect(codesOf(HEAD + stream('E1', 'Wh') + day(['0.0000000000001']) + END)).toEqual([
      'nem/too-many-digits 3 0.0000000000001',
    ]);
    const { places, values } = chunkOf(HEAD + stream('E1', 'Wh') + day(['0.000000000001']) + END);
    expect([places, values[0]]).toEqual([15, 1]);
  });

  it('tells which intervals records 400 leave out or have twice', () => {
    const ranges = '400,1,10,S14,,\n400,10,20,A,,\n400,31,47,A,,\n';
    const text = HEAD + stream() + day(['1'], 'V') + ranges + END;
    const { findings, chunks } = readNem12(text);
    expect(codesOf(text)).toEqual(['nem/range-missing 3 V', 'nem/range-twice 3 V']);
    expect(findings.map(({ found }) => found)).toEqual([
      'no record 400 that tells the quality of 11 intervals, the first 21, the last 48',
      'several records 400 that tell the quality of interval 10',
    ]);
    const of = (count: number, quality: number): number[] => Array<number>(count).fill(quality);
    expect([...(chunks[0]?.qualities ?? [])]).toEqual([
      ...of(9, 2),
      ...of(11, 0),
      ...of(10, 1),
      ...of(17, 0),
      1,
    ]);
  });

  it.each(['0,5', '5,4', '1,49', 'x,5', '1,', '1.5,2', '-1,2', ' 1 ,1000'])(
    'is told of a record 400 from and to %s',
    (range) => {
      const text = HEAD + stream() + day(['1'], 'V') + `400,1,48,A,,\n400,${range},A,,\n` + END;
      expect(codesOf(text)).toEqual([`nem/range 5 ${range.split(',')[0] ?? ''}`]);
    },
  );

  it('says nothing of records 400 and 300 whose own record above was refused', () => {
    const ranges = '400,1,48,A,,\n';
    expect(codesOf(HEAD + stream() + day([], 'V', 47) + ranges + END)).toEqual(['nem/too-few-values 3 V']);
    expect(codesOf(HEAD + stream('E1', 'kWh', '60') + day([], 'V') + ranges + END)).toEqual([
      'nem/interval-length 2 60',
    ]);
    expect(codesOf(HEAD + day([], 'V') + ranges + END)).toEqual(['nem/no-stream 2 300']);
  });

  it('holds a day with V back over lines that cannot be read', () => {
    const text = HEAD + stream() + day([], 'V') + '400,1,20,A,,\n4O0,21,24,A,,\n400,21,48,A,,\n' + END;
    expect(codesOf(text)).toEqual(['nem/unknown-record 5 4O0']);
  });

  it('refuses days after a second header until a record 200', () => {
    expect(codesOf(HEAD + stream() + day([]) + HEAD + day([]) + END)).toEqual([
      'nem/second-header 4 100',
      'nem/no-stream 5 300',
    ]);
  });
});

describe('the text of a NEM12 file', () => {
  const text = HEAD + stream() + day(['1', '2.5'], 'V') + '400,1,48,S14,76,"a, b"\n' + day(['3']) + END;

  it.each([
    ['CR LF', text.replaceAll('\n', '\r\n')],
    ['CR', text.replaceAll('\n', '\r')],
    ['a mark at the beginning', `\ufeff${text}`],
    ['no line end at the end', text.trimEnd()],
    ['every cell in quotation marks', text.replace(/[^,\n"]+(?=,[^"]*$|,\d|\n)/gm, '"$&"')],
    ['spaces around cells', text.replaceAll(',2.5,', ', 2.5 ,').replace('kWh', ' kWh ')],
  ])('may have %s', (_what, other) => {
    expect(other).not.toBe(text);
    expect(readNem12(other)).toEqual(readNem12(text));
    expect(readNem12(other).chunks).toHaveLength(2);
  });

  it('may have blank lines and lines of commas', () => {
    const blank = text.replaceAll('\n', '\n\n ,,\n');
    const plain = readNem12(text).chunks.map(({ values }) => values);
    expect(readNem12(blank).chunks.map(({ values }) => values)).toEqual(plain);
    expect(readNem12(blank).findings).toEqual([]);
  });

  it('may be cut into pieces anywhere', () => {
    const whole = readNem12(text);
    for (let at = 0; at <= text.length; at += 1)
      expect(readNem12(text.slice(0, at), text.slice(at))).toEqual(whole);
    expect(readNem12(...Array.from(text))).toEqual(whole);
  });
});

describe('the clock of both readers', () => {
  it('is market time, 10 hours east of UTC', () => {
    const nothing = (): void => undefined;
    const sink = { intervals: nothing, register: nothing, finding: nothing };
    expect([nem12Reader(sink).clock, nem13Reader(sink).clock]).toEqual([{ offset: 600 }, { offset: 600 }]);
  });
});
