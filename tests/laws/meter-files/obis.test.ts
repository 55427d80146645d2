import { dayText } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { makeRandom, type Random } from '../../support/random.ts';
import { fuzzObis } from './fuzz-obis.ts';
import { sample, SAMPLES } from './obis-samples.ts';
import { printList, printTelegram, type PrintedReadout } from './print-obis.ts';
import { randomList, randomLog, randomPieces, randomTelegrams } from './random-obis.ts';
import {
  codesOf,
  listsOf,
  readList,
  readPieces,
  readTelegrams,
  shownValues,
  telegramsOf,
  type ReadObis,
} from './read-obis.ts';

const LOGS = 200;
const FUZZED = 500;

/** Digits moved by so many places, by hand: the text is taken apart and put together again. */
function inKilowattHours(digits: string, unit: string): string {
  const [whole = '', decimals = ''] = digits.split('.');
  if (unit === 'kWh') return digits;
  if (unit === 'MWh') {
    const padded = decimals.padEnd(3, '0');
    return `${whole}${padded.slice(0, 3)}${padded.length > 3 ? `.${padded.slice(3)}` : ''}`;
  }
  return `${whole.slice(0, -3)}.${whole.slice(-3)}${decimals}`;
}

/** What has to come of a log: a line for each register of each readout. */
const expectedOf = (log: readonly PrintedReadout[]): readonly string[] =>
  log.flatMap(({ meter, day, minute, registers }) =>
    registers.map(
      ({ register, digits, unit }) =>
        `${meter} ${dayText(day)} ${String(minute)} ${register} ${inKilowattHours(digits, unit)} ${unit}`,
    ),
  );

const readOf = ({ values }: ReadObis): readonly string[] =>
  values.map(
    ({ stream, day, minute, value }) =>
      `${stream.meter} ${dayText(day)} ${String(minute)} ${stream.register} ${value} ${stream.unit}`,
  );

function forLogs(seed: number, check: (log: readonly PrintedReadout[], random: Random) => void): void {
  const random = makeRandom(seed);
  for (let count = 0; count < LOGS; count += 1) check(randomLog(random), random);
}

/** What was read, as something that can be printed again, readout by readout. */
function printable({ values }: ReadObis): readonly PrintedReadout[] {
  const readouts = new Map<string, PrintedReadout>();
  for (const { stream, day, minute, value } of values) {
    const key = `${stream.meter} ${String(day)} ${String(minute)}`;
    const { registers } = readouts.get(key) ?? { registers: [] };
    const register = { register: stream.register, digits: value, unit: 'kWh' };
    readouts.set(key, { meter: stream.meter, day, minute: minute ?? 0, registers: [...registers, register] });
  }
  return [...readouts.values()];
}

describe('what is printed', () => {
  it('as telegrams is read again, digit for digit', () => {
    forLogs(1, (log, random) => {
      const read = readTelegrams(randomTelegrams(random, log));
      expect(readOf(read)).toEqual(expectedOf(log));
      expect(codesOf(read).filter((code) => code !== 'obis/rates-numbered')).toEqual([]);
    });
  });

  it('as a list is read again, digit for digit', () => {
    forLogs(2, (log, random) => {
      const read = readList(randomList(random, log));
      expect(readOf(read)).toEqual(expectedOf(log));
      expect(codesOf(read).filter((code) => code !== 'obis/rates-numbered')).toEqual([]);
    });
  });

  it.each([...SAMPLES.keys()])('of what was read of %s gives the same again', (name) => {
    const read = readTelegrams(SAMPLES.get(name) ?? '');
    const [first] = printable(read);
    if (first === undefined) throw new RangeError('nothing was read');
    const expected = readOf(read);
    expect(expected.length >= 4).toBe(true);
    expect(readOf(readTelegrams(printTelegram(first)))).toEqual(expected);
    expect(readOf(readList(printList(first, 'readout')))).toEqual(expected);
    expect(readOf(readList(printList(first, 'written')))).toEqual(expected);
  });
});

describe('a file in pieces', () => {
  it('is the same as the whole, wherever it is cut', () => {
    forLogs(3, (log, random) => {
      const telegrams = randomTelegrams(random, log);
      expect(readPieces(telegramsOf(), randomPieces(random, telegrams))).toEqual(readTelegrams(telegrams));
      const list = randomList(random, log);
      expect(readPieces(listsOf(), randomPieces(random, list))).toEqual(readList(list));
    });
  });

  it('is the same for every place of a published telegram', () => {
    const text = sample('v5');
    const expected = readTelegrams(text);
    for (let at = 0; at <= text.length; at += 1) {
      expect(readPieces(telegramsOf(), [text.slice(0, at), text.slice(at)])).toEqual(expected);
    }
  });
});

describe('a telegram with a checksum', () => {
  it.each([...SAMPLES.keys()])('gives its own values or none when one character changes: %s', (name) => {
    const text = SAMPLES.get(name) ?? '';
    const random = makeRandom(4);
    const expected = shownValues(readTelegrams(text));
    for (let at = 0; at < text.trimEnd().length; at += 1) {
      const other = String.fromCharCode(32 + random.below(95));
      const read = readTelegrams(text.slice(0, at) + other + text.slice(at + 1));
      const values = shownValues(read);
      // The last digits of the checksum, in small letters, are the same digits.
      const isSame = other.toUpperCase() === text[at];
      expect(values).toEqual(isSame && values.length > 0 ? expected : []);
      expect(isSame || read.findings.some(({ severity }) => severity === 'error')).toBe(true);
    }
  });
});

describe('a damaged text', () => {
  it('never throws, never gives a value that is none, and is never passed over in silence', () => {
    const random = makeRandom(5);
    for (let count = 0; count < FUZZED; count += 1) expect(fuzzObis(random)).toBeNull();
  });
});
