import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DayNumber } from '@unitbook/engine';
import type {
  IntervalChunk,
  MeteredQuantity,
  RegisterValue,
  Stream,
} from '../../../packages/meter-files/src/stream.ts';
import { energyOf, readNem12, readNem13 } from '../../support/nem.ts';
import { makeRandom } from '../../support/random.ts';
import { fuzzNem, nemProblems } from './fuzz-nem.ts';
import { printNem12, printNem13, type WriteNumber } from './print-nem.ts';

const RUNS = 200;
const LARGEST = 999_999_999_999_999;

/** Suffixes with what they count, and the places a kWh needs at the least for a unit. */
const SUFFIXES: readonly (readonly [string, MeteredQuantity])[] = [
  ['E1', 'import'],
  ['E2', 'import'],
  ['B1', 'export'],
  ['X1', 'other'],
];
const UNITS = [
  ['kWh', 0],
  ['Wh', 3],
  ['MWh', 0],
] as const;

/** A stream, and the least places of its values. */
const stream = fc
  .record({
    suffix: fc.constantFrom(...SUFFIXES),
    unit: fc.constantFrom(...UNITS),
    point: fc.constantFrom('N1', 'N2'),
  })
  .map(({ suffix: [register, quantity], unit: [unit, least], point }) => {
    const own: Stream = { point, meter: 'M1', register, quantity, rate: null, unit };
    return { stream: own, least: quantity === 'other' ? 0 : least };
  });

/** Qualities in runs: whole stretches of a day are estimated or missing together. */
const runs = fc.array(
  fc.record({ length: fc.integer({ min: 1, max: 60 }), quality: fc.constantFrom(0, 0, 1, 2, 4) }),
  {
    minLength: 1,
    maxLength: 8,
  },
);

function chunkOf(
  own: { readonly stream: Stream; readonly least: number },
  [minutes, day, more]: readonly [number, number, number],
  values: Float64Array,
  qualities: Uint8Array,
): IntervalChunk {
  values.forEach((_, at) => {
    if (qualities[at] === 4) values[at] = NaN;
  });
  const places = values.every(Number.isNaN) ? own.least : own.least + more;
  const areAllActual = qualities.every((quality) => quality === 0);
  return {
    stream: own.stream,
    start: day * 1440,
    minutes,
    places,
    values,
    qualities: areAllActual ? null : qualities,
    line: 0,
  };
}

const chunk = fc
  .tuple(
    stream,
    fc.tuple(fc.constantFrom(5, 15, 30), fc.integer({ min: 0, max: 40_000 }), fc.integer({ min: 0, max: 6 })),
    runs,
  )
  .chain(([own, shape, stretches]) => {
    const count = 1440 / shape[0];
    const qualities = Uint8Array.from(
      stretches.flatMap(({ length, quality }) => Array<number>(length).fill(quality)),
    );
    const whole = Uint8Array.from({ length: count }, (_, at) => qualities[at % qualities.length] ?? 0);
    const value = fc.oneof(
      fc.constant(0),
      fc.integer({ min: 0, max: 5000 }),
      fc.integer({ min: 0, max: LARGEST }),
    );
    return fc
      .array(value, { minLength: count, maxLength: count })
      .map((values) => chunkOf(own, shape, Float64Array.from(values), whole.slice()));
  });

const chunks = fc.array(chunk, { minLength: 1, maxLength: 4 });

const withoutLines = <Item extends { readonly line: number }>(items: readonly Item[]): readonly Item[] =>
  items.map((item) => ({ ...item, line: 0 }));

/** Without the zeros that may be left out: ".5" and "1." for 0.50 and 1.00. */
const shortest: WriteNumber = (whole, places) => {
  const text = whole.toString().padStart(places + 1, '0');
  const cut = text.length - places;
  const [before, after] = [text.slice(0, cut).replace(/^0+/, ''), text.slice(cut).replace(/0+$/, '')];
  return before === '' && after === '' ? '0' : `${before}.${after}`;
};

describe('a NEM12 file', () => {
  it('printed from any days of any streams reads back as the same', () => {
    fc.assert(
      fc.property(chunks, (days) => {
        const file = readNem12(printNem12(days));
        expect(file.findings).toEqual([]);
        expect(withoutLines(file.chunks)).toEqual(days);
        expect(readNem12(printNem12(file.chunks))).toEqual(file);
      }),
      { numRuns: RUNS },
    );
  });

  it('reads as the same energy however its numbers are written', () => {
    fc.assert(
      fc.property(chunks, (days) => {
        const file = readNem12(printNem12(days, shortest));
        expect(file.findings).toEqual([]);
        for (const [suffix] of SUFFIXES)
          expect(energyOf(file.chunks, suffix, 15)).toBe(energyOf(days, suffix, 15));
      }),
      { numRuns: RUNS },
    );
  });

  it('reads as the same cut in two anywhere', () => {
    fc.assert(
      fc.property(chunks, fc.nat(), (days, place) => {
        const text = printNem12(days).replaceAll('\n', '\r\n');
        const at = place % text.length;
        const file = readNem12(text.slice(0, at), text.slice(at));
        expect(file).toEqual(readNem12(text));
        for (const [suffix] of SUFFIXES)
          expect(energyOf(file.chunks, suffix, 15)).toBe(energyOf(days, suffix, 15));
      }),
      { numRuns: RUNS },
    );
  });
});

/** Digits with zeros in front, as a register shows them, and decimals. */
const shownDigits = fc
  .tuple(fc.integer({ min: 1000, max: 99_999_999 }), fc.integer({ min: 0, max: 4 }), fc.boolean())
  .map(([whole, decimals, hasZeros]) => {
    const text = `${hasZeros ? '000' : ''}${whole}`;
    return decimals === 0 || decimals >= text.length - 4
      ? text
      : `${text.slice(0, -decimals)}.${text.slice(-decimals)}`;
  });

const read = fc.record({
  value: shownDigits,
  minute: fc.option(fc.integer({ min: 0, max: 1439 })),
  quality: fc.constantFrom('actual' as const, 'estimated' as const, 'substituted' as const),
});

/** The two reads of a record, the second a day or more after the first. */
const pair = fc
  .tuple(stream, read, read, fc.integer({ min: 0, max: 20_000 }), fc.integer({ min: 1, max: 100 }))
  .map(([{ stream: own }, first, second, day, days]): readonly RegisterValue[] => {
    // A direction is all there is: what is neither import nor export cannot be printed.
    const quantity = own.quantity === 'other' ? 'export' : own.quantity;
    const unit = own.unit === 'Wh' ? 'kWh' : own.unit;
    const common = { stream: { ...own, quantity, unit }, line: 0 };
    return [
      { ...common, ...first, day: day as DayNumber },
      { ...common, ...second, day: (day + days) as DayNumber },
    ];
  });

describe('a NEM13 file', () => {
  it('printed from any reads of any registers reads back as the same', () => {
    fc.assert(
      fc.property(fc.array(pair, { minLength: 1, maxLength: 6 }), (pairs) => {
        const reads = pairs.flat();
        const file = readNem13(printNem13(reads));
        expect(file.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
        expect(withoutLines(file.registers)).toEqual(reads);
        expect(readNem13(printNem13(file.registers))).toEqual(file);
      }),
      { numRuns: RUNS },
    );
  });
});

describe('a NEM12 or NEM13 file with anything changed in it', () => {
  it('is read without throwing; every value is whole, or marked as missing; pieces change nothing', () => {
    const random = makeRandom(20_171_201);
    for (let run = 0; run < 500; run += 1) {
      const text = fuzzNem(random);
      expect({ text, problems: nemProblems(text, random) }).toEqual({ text, problems: [] });
    }
  });
});
