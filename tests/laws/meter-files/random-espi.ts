import type { DayNumber } from '@unitbook/engine';
import {
  localMinute,
  type DstRule,
  type LocalTimeParameters,
} from '../../../packages/meter-files/src/espi/index.ts';
import { VALUE_QUALITIES, type Stream } from '../../../packages/meter-files/src/stream.ts';
import type { Random } from '../../support/random.ts';
import {
  printEntries,
  type PrintedEntry,
  type ReadChunk,
  type ReadFeed,
  type ReadStream,
} from './print-espi.ts';

/** The earliest time of a generated reading: 2000-01-01 00:00 UTC, in minutes. */
const FIRST_MINUTE = 946_684_800 / 60;
/** Minutes of 40 years. */
const YEARS = 40 * 365 * 1440;

function randomRule(random: Random): DstRule {
  const operator = random.below(8);
  return {
    month: 1 + random.below(12),
    operator,
    dayOfMonth: operator < 2 ? 1 + random.below(28) : 0,
    dayOfWeek: operator === 0 ? 0 : 1 + random.below(7),
    hour: random.below(24),
    second: random.pick([0, 0, 1800, 2700, 3599]),
  };
}

/** Local time anywhere, north or south, with whole and half hours. */
function randomLocalTime(random: Random): LocalTimeParameters {
  const offset = (random.below(105) - 48) * 15;
  if (random.chance(30)) return { offset, dstOffset: 0, dstStart: null, dstEnd: null };
  const [dstStart, dstEnd] = [randomRule(random), randomRule(random)];
  return { offset, dstOffset: random.pick([60, 30, 120]), dstStart, dstEnd };
}

/** Powers of ten of a unit: all that kWh with 0 to 9 places, or whole kWh, can show. */
const UNITS: readonly (readonly [string, number])[] = [
  ['µWh', -6],
  ['mWh', -3],
  ['10^-2 Wh', -2],
  ['Wh', 0],
  ['10^1 Wh', 1],
  ['kWh', 3],
  ['10^4 Wh', 4],
  ['MWh', 6],
  ['GWh', 9],
];

interface Shape {
  readonly power: number;
  readonly isNet: boolean;
}

function randomValue({ power, isNet }: Shape, random: Random): number {
  const digits = random.pick([1, 2, 4, 4, 4, 8, power > 0 ? 6 : 15]);
  let value = 0;
  for (let count = 0; count < digits; count += 1) value = value * 10 + random.below(10);
  const scaled = value * 10 ** Math.max(0, power);
  return isNet && random.chance(40) && scaled > 0 ? -scaled : scaled;
}

function randomChunk(shape: Shape, random: Random): ReadChunk {
  const minutes = random.pick([1, 5, 15, 30, 60, 1440]);
  const count = random.chance(3) ? 200 : 1 + random.below(8);
  const start = FIRST_MINUTE + random.below(YEARS);
  const isActual = random.chance(50);
  return {
    start,
    minutes,
    places: Math.max(0, -shape.power),
    values: Array.from({ length: count }, () => randomValue(shape, random)),
    qualities: Array.from({ length: count }, () => (isActual ? 0 : random.below(4))),
  };
}

/** A register value as the reader writes it, worked out from the digits alone. */
function registerText(value: number, power: number): string {
  const sign = value < 0 ? '-' : '';
  const whole = (BigInt(Math.abs(value)) * 10n ** BigInt(Math.max(0, power))).toString();
  if (power >= 0) return sign + whole;
  const scale = 10n ** BigInt(-power);
  const fraction = (BigInt(Math.abs(value)) % scale).toString().padStart(-power, '0');
  return `${sign}${(BigInt(Math.abs(value)) / scale).toString()}.${fraction}`;
}

function randomRegisters(
  shape: Shape,
  localTime: LocalTimeParameters,
  random: Random,
): ReadStream['registers'] {
  return Array.from({ length: 1 + random.below(4) }, () => {
    const minute = localMinute(localTime, FIRST_MINUTE + random.below(YEARS));
    const day = Math.floor(minute / 1440) as DayNumber;
    const value = registerText(randomValue({ ...shape, power: 0 }, random), shape.power);
    return { day, minute: minute - day * 1440, value, quality: VALUE_QUALITIES[random.below(4)] ?? 'actual' };
  });
}

/** Titles with everything that has to be written otherwise in XML, and letters outside the basic plane. */
const WORDS = ['Main', 'meter & more', '<Solar>', '"roof"', 'Ähre', 'शक्ति', '🌞', "it's"] as const;

const randomTitle = (name: string, random: Random): string => `${random.pick(WORDS)} ${name}`;

function randomStreams(
  name: Pick<Stream, 'point' | 'register'>,
  localTime: LocalTimeParameters,
  random: Random,
): ReadStream[] {
  const quantity = random.pick(['import', 'import', 'export', 'export', 'net'] as const);
  const [unit, multiplier] = random.pick(UNITS);
  const shape = { power: multiplier - 3, isNet: quantity === 'net' };
  const isRegister = random.chance(30);
  const rates = random.pick([[null], [null], ['1', '2'], [null, '7']] as const);
  return rates.map((rate) => ({
    stream: { ...name, meter: '', quantity, rate, unit },
    chunks: isRegister ? [] : Array.from({ length: 1 + random.below(3) }, () => randomChunk(shape, random)),
    registers: isRegister ? randomRegisters(shape, localTime, random) : [],
  }));
}

/** A feed with everything that this project reads of it, and nothing that would be told as a finding. */
export function randomFeed(random: Random): Pick<ReadFeed, 'localTime' | 'streams'> {
  const localTime = randomLocalTime(random);
  const streams: ReadStream[] = [];
  for (let point = 0; point <= random.below(2); point += 1) {
    const title = randomTitle(`point ${String(point)}`, random);
    for (let register = 0; register <= random.below(3); register += 1) {
      const name = randomTitle(`register ${String(point)}-${String(register)}`, random);
      streams.push(...randomStreams({ point: title, register: name }, localTime, random));
    }
  }
  return { localTime, streams };
}

/** Entries in another order: blocks of one MeterReading as they were, local time and points first. */
export function shuffled(entries: readonly PrintedEntry[], random: Random): PrintedEntry[] {
  const isFirst = ({ group }: PrintedEntry): boolean => group === 'local' || group === 'points';
  const left = entries.filter((entry) => !isFirst(entry));
  const result = entries.filter(isFirst);
  while (left.length > 0) {
    const { group } = random.pick(left);
    const at = left.findIndex((entry) => entry.group === group);
    result.push(...left.splice(at, 1));
  }
  return result;
}

/** A text in pieces, some of them empty, that end anywhere. */
export function pieces(text: string, random: Random): string[] {
  const size = random.pick([1, 3, 17, 400, 20_000]);
  const parts: string[] = [];
  for (let at = 0; at < text.length;) {
    const end = at + random.below(size + 1);
    parts.push(text.slice(at, end));
    at = end;
  }
  return parts;
}

/** A printed feed with its entries in any order. */
export const randomEntries = (random: Random): PrintedEntry[] =>
  shuffled(printEntries(randomFeed(random)), random);
