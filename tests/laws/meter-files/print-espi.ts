import type { Finding } from '@unitbook/engine';
import {
  espiReader,
  localMinute,
  type DstRule,
  type LocalTimeParameters,
} from '../../../packages/meter-files/src/espi/index.ts';
import type { RegisterValue, Stream, ValueQuality } from '../../../packages/meter-files/src/stream.ts';

/** A chunk as it was handed on, its columns copied; qualities spelled out. */
export interface ReadChunk {
  readonly start: number;
  readonly minutes: number;
  readonly places: number;
  readonly values: readonly number[];
  readonly qualities: readonly number[];
}

/** What was read of one stream. */
export interface ReadStream {
  readonly stream: Stream;
  readonly chunks: ReadChunk[];
  readonly registers: Pick<RegisterValue, 'day' | 'minute' | 'value' | 'quality'>[];
}

/** A feed that was read, or is to be printed. */
export interface ReadFeed {
  readonly localTime: LocalTimeParameters | null;
  readonly streams: readonly ReadStream[];
  readonly findings: readonly Finding[];
  /** The lines of chunks and of register values, as they were handed on. */
  readonly lines: readonly number[];
}

/** Read a feed that comes in pieces. */
export function readFeed(pieces: Iterable<string>): ReadFeed {
  const streams = new Map<Stream, ReadStream>();
  const findings: Finding[] = [];
  const lines: number[] = [];
  const of = (stream: Stream): ReadStream => {
    const known = streams.get(stream) ?? { stream, chunks: [], registers: [] };
    streams.set(stream, known);
    return known;
  };
  const reader = espiReader({
    intervals: ({ stream, start, minutes, places, values, qualities, line }) => {
      const marks = qualities === null ? values.map(() => 0) : qualities;
      of(stream).chunks.push({ start, minutes, places, values: [...values], qualities: [...marks] });
      lines.push(line);
    },
    register: ({ stream, line, ...value }) => {
      of(stream).registers.push(value);
      lines.push(line);
    },
    finding: (finding) => findings.push(finding),
  });
  for (const piece of pieces) reader.write(piece);
  reader.end();
  return { localTime: reader.localTime, streams: [...streams.values()], findings, lines };
}

const escape = (text: string): string =>
  text.replace(/[&<>"]/g, (character) => `&#${String(character.codePointAt(0))};`);

const FLOWS = { import: 1, export: 19, net: 4, other: 20, generation: 0 } as const;
const PREFIXES: Readonly<Record<string, number>> = { µ: -6, m: -3, '': 0, k: 3, M: 6, G: 9 };

/** The power of ten of a unit of watt-hours, as the reader writes it. */
function multiplierOf(unit: string): number {
  const [, power] = /^10\^(-?\d+) Wh$/.exec(unit) ?? [];
  return power === undefined ? (PREFIXES[unit.slice(0, -2)] ?? 0) : parseInt(power, 10);
}

const QUALITY_CODES: readonly number[] = [0, 8, 11, 7];
const REGISTER_CODES: Readonly<Partial<Record<ValueQuality, number>>> = {
  actual: 0,
  estimated: 8,
  substituted: 11,
  edited: 7,
};

/** The whole number of the file's unit that a value came from: kWh less the power of ten. */
function fileNumber(kwh: string, power: number): string {
  const negative = kwh.startsWith('-') ? '-' : '';
  const digits = kwh.replace(/[-.]/g, '');
  const whole = power > 0 ? digits.slice(0, Math.max(1, digits.length - power)) : digits;
  return `${negative}${whole}`;
}

const element = (name: string, content: string | number): string => `<${name}>${String(content)}</${name}>`;

interface PrintedReading {
  readonly seconds: number;
  readonly duration: number;
  readonly value: string;
  readonly quality: number;
  readonly rate: string | null;
}

const printReading = ({ seconds, duration, value, quality, rate }: PrintedReading): string =>
  [
    '<IntervalReading>',
    quality === 0 ? '' : `<ReadingQuality>${element('quality', quality)}</ReadingQuality>`,
    `<timePeriod>${element('duration', duration)}${element('start', seconds)}</timePeriod>`,
    `${element('value', value)}${rate === null ? '' : element('tou', rate)}</IntervalReading>`,
  ].join('\n');

function chunkReadings(
  { rate, unit }: Stream,
  { start, minutes, values, qualities }: ReadChunk,
): PrintedReading[] {
  const factor = BigInt(10) ** BigInt(Math.max(0, multiplierOf(unit) - 3));
  return values.map((value, index) => ({
    seconds: (start + index * minutes) * 60,
    duration: minutes * 60,
    value: String(BigInt(value) / factor),
    quality: QUALITY_CODES[qualities[index] ?? 0] ?? 0,
    rate,
  }));
}

/** A minute of UTC at which the local clock shows a minute. */
function utcMinute(parameters: LocalTimeParameters | null, local: number): number {
  if (parameters === null) return local;
  const standard = local - parameters.offset;
  return localMinute(parameters, standard) === local ? standard : standard - parameters.dstOffset;
}

function registerReading(
  { rate, unit }: Stream,
  { day, minute, value, quality }: ReadStream['registers'][number],
  localTime: LocalTimeParameters | null,
): PrintedReading {
  return {
    seconds: utcMinute(localTime, day * 1440 + (minute ?? 0)) * 60,
    duration: 0,
    value: fileNumber(value, multiplierOf(unit) - 3),
    quality: REGISTER_CODES[quality] ?? 0,
    rate,
  };
}

/** An entry of the feed, and how it has to stand among the others. */
export interface PrintedEntry {
  readonly text: string;
  /** Entries of one group keep their order; those of different groups can stand in any. */
  readonly group: string;
}

interface EntryText {
  readonly self: string;
  readonly related?: readonly string[];
  readonly title: string;
  readonly content: string;
}

function printEntry({ self, related = [], title, content }: EntryText): string {
  const up = self.slice(0, self.lastIndexOf('/'));
  const links = [
    `<link rel="self" href="${self}"/>`,
    `<link rel="up" href="${up}"/>`,
    ...related.map((link) => `<link rel="related" href="${link}"/>`),
  ];
  return `<entry>\n${links.join('\n')}\n<title>${escape(title)}</title>\n<content>\n${content}\n</content>\n</entry>`;
}

const espi = (name: string, content: string): string =>
  `<${name} xmlns="http://naesb.org/espi">\n${content}\n</${name}>`;

/** A rule of daylight saving as 8 hexadecimal digits. */
function ruleText(rule: DstRule | null): string {
  if (rule === null) return 'FFFFFFFF';
  const { month, operator, dayOfMonth, dayOfWeek, hour, second } = rule;
  const fields = [
    [month, 4],
    [operator, 3],
    [dayOfMonth, 5],
    [dayOfWeek, 3],
    [hour, 5],
    [second, 12],
  ] as const;
  const bits = fields.map(([value, count]) => value.toString(2).padStart(count, '0')).join('');
  return parseInt(bits, 2).toString(16).padStart(8, '0').toUpperCase();
}

function printLocalTime({ offset, dstOffset, dstStart, dstEnd }: LocalTimeParameters): PrintedEntry {
  const content = [
    element('dstEndRule', ruleText(dstEnd)),
    element('dstOffset', dstOffset * 60),
    element('dstStartRule', ruleText(dstStart)),
    element('tzOffset', offset * 60),
  ].join('\n');
  const text = printEntry({
    self: 'LocalTimeParameters/1',
    title: 'Local time',
    content: espi('LocalTimeParameters', content),
  });
  return { text, group: 'local' };
}

function printType(self: string, { quantity, unit }: Stream, isRegister: boolean): string {
  const content = [
    element('accumulationBehaviour', isRegister ? 1 : 4),
    element('commodity', 1),
    element('flowDirection', FLOWS[quantity]),
    element('kind', 12),
    element('powerOfTenMultiplier', multiplierOf(unit)),
    element('uom', 72),
  ].join('\n');
  return printEntry({ self, title: 'Type', content: espi('ReadingType', content) });
}

/** Streams of one MeterReading: they differ in their rate alone. */
function printMeterReading(
  streams: readonly ReadStream[],
  links: { readonly self: string; readonly type: string },
  localTime: LocalTimeParameters | null,
): PrintedEntry[] {
  const { self, type } = links;
  const [first] = streams;
  if (first === undefined) return [];
  const { stream } = first;
  const title = stream.register;
  const related = [`${self}/IntervalBlock`, type];
  const blocks = streams.flatMap((one) => [
    ...one.chunks.map((chunk) => chunkReadings(one.stream, chunk)),
    ...(one.registers.length === 0
      ? []
      : [one.registers.map((value) => registerReading(one.stream, value, localTime))]),
  ]);
  const isRegister = streams.some(({ registers }) => registers.length > 0);
  return [
    { text: printEntry({ self, related, title, content: espi('MeterReading', '') }), group: self },
    { text: printType(type, stream, isRegister), group: type },
    ...blocks.map((readings, index) => ({
      text: printEntry({
        self: `${self}/IntervalBlock/${String(index)}`,
        title: '',
        content: espi('IntervalBlock', readings.map(printReading).join('\n')),
      }),
      group: `${self}/blocks`,
    })),
  ];
}

/** The entries of a feed, in the usual order. The titles of points and registers tell them apart. */
export function printEntries({
  localTime,
  streams,
}: Pick<ReadFeed, 'localTime' | 'streams'>): PrintedEntry[] {
  const points = [...new Set(streams.map(({ stream }) => stream.point))];
  const entries = points.map((title, index) => {
    const self = `/UsagePoint/${String(index)}`;
    const content = espi('UsagePoint', '<ServiceCategory><kind>0</kind></ServiceCategory>');
    return { text: printEntry({ self, related: [`${self}/MeterReading`], title, content }), group: 'points' };
  });
  const registers = new Map<string, ReadStream[]>();
  for (const one of streams) {
    const alike = registers.get(one.stream.register) ?? [];
    registers.set(one.stream.register, [...alike, one]);
  }
  const readings = [...registers.values()].flatMap((alike, index) => {
    const point = points.indexOf(alike[0]?.stream.point ?? '');
    const self = `/UsagePoint/${String(point)}/MeterReading/${String(index)}`;
    return printMeterReading(alike, { self, type: `/ReadingType/${String(index)}` }, localTime);
  });
  return [...(localTime === null ? [] : [printLocalTime(localTime)]), ...entries, ...readings];
}

/** A feed of entries. */
export const printFeed = (entries: readonly PrintedEntry[]): string =>
  [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<feed xmlns="http://www.w3.org/2005/Atom">',
    ...entries.map(({ text }) => text),
    '</feed>\n',
  ].join('\n');
