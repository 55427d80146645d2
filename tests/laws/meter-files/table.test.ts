import { describe, expect, it } from 'vitest';
import { VALUE_QUALITIES } from '../../../packages/meter-files/src/stream.ts';
import { proposeTable, readTableLayout } from '../../../packages/meter-files/src/table/index.ts';
import { makeRandom } from '../../support/random.ts';
import { readTable, type TableFile } from '../../support/table.ts';
import { fuzzTable } from './fuzz-table.ts';
import { printTable } from './print-table.ts';
import { randomPieces, randomTable, type ExpectedValue } from './random-table.ts';

const RUNS = 300;
const SEEDS = [...Array(RUNS).keys()];
const SOME = SEEDS.slice(0, 100);
const PLACES = 18;

/** What was read, in the order of the expected values. */
function valuesOf({ chunks, registers }: TableFile): readonly ExpectedValue[] {
  const intervals = chunks.flatMap(({ stream, start, minutes, places, values, qualities }) =>
    Array.from(values, (value, at): ExpectedValue => {
      const amount = Number.isNaN(value) ? null : BigInt(value) * 10n ** BigInt(PLACES - places);
      const quality = VALUE_QUALITIES[qualities?.[at] ?? 0] ?? '';
      return {
        point: stream.point,
        register: stream.register,
        minute: start + at * minutes,
        amount,
        quality,
      };
    }),
  );
  const readings = registers.map(({ stream, day, minute, value, quality }): ExpectedValue => {
    const [whole = '', decimals = ''] = value.split('.');
    const amount = BigInt(whole + decimals.padEnd(PLACES, '0'));
    return {
      point: stream.point,
      register: stream.register,
      minute: day * 1440 + (minute ?? 0),
      amount,
      quality,
    };
  });
  return [...intervals, ...readings];
}

/** As texts, and by point, register and time: a table goes row by row, chunks come stream by stream. */
const sorted = (values: readonly ExpectedValue[]): readonly string[] =>
  values
    .map(({ point, register, minute, amount, quality }) =>
      [point, register, String(minute).padStart(12, '0'), String(amount), quality].join('|'),
    )
    .sort();

const withoutLines = ({ chunks, registers, findings, clock }: TableFile): unknown => ({
  chunks: chunks.map((chunk) => ({ ...chunk, line: 0 })),
  registers: registers.map((value) => ({ ...value, line: 0 })),
  findings,
  clock,
});

describe('a table', () => {
  it('written in any way that its layout allows is read to what it says', () => {
    for (const seed of SEEDS) {
      const { layout, text, expected } = randomTable(makeRandom(seed));
      const file = readTable(layout, text);
      expect([seed, file.findings.filter(({ code }) => code !== 'table/no-value')]).toEqual([seed, []]);
      expect([seed, ...sorted(valuesOf(file))]).toEqual([seed, ...sorted(expected)]);
    }
  });

  it('printed from what was read reads back as the same', () => {
    for (const seed of SEEDS) {
      const { layout, text } = randomTable(makeRandom(seed));
      const file = readTable(layout, text);
      const printed = readTable(layout, printTable(layout, file));
      const plain = { ...file, findings: printed.findings };
      expect([seed, withoutLines(printed)]).toEqual([seed, withoutLines(plain)]);
      expect([seed, printTable(layout, printed)]).toEqual([seed, printTable(layout, file)]);
    }
  });

  it('split anywhere is the same', () => {
    for (const seed of SEEDS) {
      const random = makeRandom(seed);
      const { layout, text } = randomTable(random);
      expect([seed, readTable(layout, ...randomPieces(text, random))]).toEqual([
        seed,
        readTable(layout, text),
      ]);
    }
  });

  it('has a layout that reads back from its document', () => {
    for (const seed of SOME) {
      const { layout } = randomTable(makeRandom(seed));
      expect(readTableLayout(JSON.stringify(layout))).toEqual({ value: layout, findings: [] });
    }
  });

  it('has a proposal with its delimiter and its columns of time', () => {
    for (const seed of SOME) {
      const { layout, text } = randomTable(makeRandom(seed));
      const proposed = proposeTable(text).layout;
      expect([seed, proposed.delimiter]).toEqual([seed, layout.delimiter]);
      const times = ({ columns }: typeof layout): readonly number[] =>
        [...columns.keys()].filter((at) => ['date-time', 'date', 'time'].includes(columns[at]?.is ?? ''));
      expect([seed, times(proposed)]).toEqual([seed, times(layout)]);
    }
  });
});

describe('a spoilt table', () => {
  it('neither throws nor gives anything but whole numbers and findings', () => {
    for (const seed of SEEDS) expect([seed, fuzzTable(makeRandom(seed))]).toEqual([seed, []]);
  });
});
