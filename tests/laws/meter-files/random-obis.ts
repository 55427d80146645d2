import { addDays, dayNumber } from '@unitbook/engine';
import type { Random } from '../../support/random.ts';
import { characters } from './read-obis.ts';
import { printList, printTelegram, type PrintedReadout, type PrintedRegister } from './print-obis.ts';

const FIRST_DAY = dayNumber({ year: 2016, month: 1, day: 1 });
const UNITS = ['kWh', 'kWh', 'kWh', 'Wh', 'MWh'] as const;
const PLACES = [0, 1, 3] as const;

/** How one register of a meter is printed. */
interface Shape {
  readonly register: string;
  readonly unit: (typeof UNITS)[number];
  readonly places: number;
  readonly width: number;
}

/** Registers of a meter: rates without a total, so that no sum is asked about. */
function randomShapes(random: Random): readonly Shape[] {
  const channel = random.below(3);
  const rates = 1 + random.below(4);
  const names = ['1', '2'].flatMap((direction) =>
    Array.from({ length: rates }, (_, rate) => {
      const code = `1-${String(channel)}:${direction}.8.${String(rates === 1 ? 0 : rate + 1)}`;
      return random.chance(20) ? `${code}*255` : code;
    }),
  );
  return names.map((register) => ({
    register,
    unit: random.pick(UNITS),
    places: random.pick(PLACES),
    width: 5 + random.below(4),
  }));
}

/** A whole number of the last digit as the display shows it, zeros before it. */
function digitsOf(count: number, { places, width }: Shape): string {
  const text = String(count).padStart(width + places, '0');
  return places === 0 ? text : `${text.slice(0, -places)}.${text.slice(-places)}`;
}

/** What a meter showed at some moments one after the other: its registers count up. */
export function randomLog(random: Random): readonly PrintedReadout[] {
  const meter = `M-${String(random.below(100_000))}`;
  const shapes = randomShapes(random);
  const counts = shapes.map(() => random.below(50_000));
  let day = addDays(FIRST_DAY, random.below(4_000));
  return Array.from({ length: 1 + random.below(4) }, () => {
    day = addDays(day, 1 + random.below(40));
    const registers: PrintedRegister[] = shapes.map((shape, at) => {
      counts[at] = (counts[at] ?? 0) + random.below(5_000);
      return { register: shape.register, unit: shape.unit, digits: digitsOf(counts[at] ?? 0, shape) };
    });
    return { meter, day, minute: random.below(1_440), registers };
  });
}

/** A log as telegrams, in one of the forms that telegrams have. */
export function randomTelegrams(random: Random, log: readonly PrintedReadout[]): string {
  const version = random.pick(['42', '50']);
  const lineEnd = random.pick(['\r\n', '\r\n', '\n']);
  return log.map((readout) => printTelegram(readout, { version, lineEnd })).join('');
}

/** A log as a list. */
export function randomList(random: Random, log: readonly PrintedReadout[]): string {
  const style = random.pick(['readout', 'written'] as const);
  return log.map((readout) => printList(readout, style)).join(random.pick(['', '\n']));
}

/** Cut a text anywhere, also into single characters. */
export function randomPieces(random: Random, text: string): readonly string[] {
  if (random.chance(10)) return characters(text);
  const pieces: string[] = [];
  for (let from = 0; from < text.length;) {
    const to = from + 1 + random.below(Math.max(1, Math.floor(text.length / 3)));
    pieces.push(text.slice(from, to));
    from = to;
  }
  return pieces;
}

/** What a slip or a bad line puts into a text. */
const SCRAPS = [
  '/XXX5',
  '!',
  '!6796',
  '(',
  ')',
  '*',
  '*kWh',
  '.',
  ',',
  '\r',
  '\n',
  '\0',
  '1-0:1.8.0(',
  '1.8.0 ',
  '2025-05-01\n',
  '0.9.2(250501)\n',
  '0-0:1.0.0(250501183000S)\n',
  'IMP ',
  '-',
  'é',
  '\ud83d',
  '४',
  '9'.repeat(50),
  ' '.repeat(3_000),
] as const;

/** Damage a text in a few places: characters changed, put in, left out, lines taken twice or away. */
export function mutated(random: Random, text: string): string {
  let result = text;
  for (let count = 1 + random.below(6); count > 0; count -= 1) {
    const at = random.below(result.length + 1);
    const to = Math.min(result.length, at + random.below(random.chance(20) ? 200 : 3));
    const put = random.pick([
      () => random.pick(SCRAPS),
      () => String.fromCharCode(32 + random.below(95)),
      () => result.slice(at, Math.min(result.length, at + random.below(400))).repeat(2),
      () => '',
    ])();
    result = result.slice(0, at) + put + result.slice(to);
  }
  return result;
}
