import { dayText, type Finding } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import type { IntervalChunk, RegisterValue } from '../stream.ts';
import { CHUNK_VALUES } from './chunks.ts';
import { espiReader } from './reader.ts';

interface Read {
  readonly chunks: (Pick<IntervalChunk, 'start' | 'minutes' | 'places' | 'line'> & {
    readonly register: string;
    readonly rate: string | null;
    readonly quantity: string;
    readonly unit: string;
    readonly values: readonly number[];
  })[];
  readonly registers: RegisterValue[];
  readonly findings: Finding[];
}

function read(text: string): Read {
  const result: Read = { chunks: [], registers: [], findings: [] };
  const reader = espiReader({
    intervals: ({ stream, values, start, minutes, places, line }) => {
      const { register, rate, quantity, unit } = stream;
      result.chunks.push({
        register,
        rate,
        quantity,
        unit,
        start,
        minutes,
        places,
        line,
        values: [...values],
      });
    },
    register: (value) => result.registers.push(value),
    finding: (finding) => result.findings.push(finding),
  });
  reader.write(text);
  reader.end();
  return result;
}

const values = (text: string): readonly (readonly number[])[] => read(text).chunks.map((one) => one.values);
const codes = (text: string): readonly string[] => read(text).findings.map(({ code }) => code);

const FEED = '<feed xmlns="http://www.w3.org/2005/Atom" xmlns:e="http://naesb.org/espi">';
const feed = (...entries: readonly string[]): string => `${FEED}${entries.join('\n')}</feed>`;

const link = (relation: string, href: string): string => `<link rel="${relation}" href="${href}"/>`;
const entry = (links: string, content: string, title = ''): string =>
  `<entry>${links}<title>${title}</title><content>${content}</content></entry>`;

const METER = entry(
  link('self', 'U/1/M/1') + link('related', 'U/1/M/1/B') + link('related', 'T/1'),
  '<e:MeterReading/>',
  'Main',
);

function type(parts: Readonly<Record<string, number>> = {}, self = 'T/1'): string {
  const fields = {
    accumulationBehaviour: 4,
    commodity: 1,
    flowDirection: 1,
    kind: 12,
    powerOfTenMultiplier: 0,
    uom: 72,
    ...parts,
  };
  const content = Object.entries(fields).map(([name, value]) => `<e:${name}>${String(value)}</e:${name}>`);
  return entry(link('self', self), `<e:ReadingType>${content.join('')}</e:ReadingType>`);
}

/** A reading of so many quarters of an hour after 2023-11-14 22:15 UTC, which is minute 28333335. */
const reading = (quarter: number, value: number | string, more = ''): string =>
  `<e:IntervalReading><e:timePeriod><e:duration>900</e:duration><e:start>${String(1700000100 + quarter * 900)}` +
  `</e:start></e:timePeriod><e:value>${String(value)}</e:value>${more}</e:IntervalReading>`;

const block = (...readings: readonly string[]): string =>
  entry(link('up', 'U/1/M/1/B'), `<e:IntervalBlock>${readings.join('')}</e:IntervalBlock>`);

describe('entries and their links', () => {
  const BLOCK = block(reading(0, 7), reading(1, 8));

  it.each([
    ['as usual', [METER, type(), BLOCK]],
    ['the type last', [METER, BLOCK, type()]],
    ['the MeterReading last', [type(), BLOCK, METER]],
    ['the block first', [BLOCK, type(), METER]],
    ['the block first, the MeterReading next', [BLOCK, METER, type()]],
  ])('can come in any order: %s', (_, entries) => {
    expect(values(feed(...entries))).toEqual([[7, 8]]);
    expect(codes(feed(...entries))).toEqual([]);
  });

  it('can have links after their content', () => {
    const after = (text: string): string =>
      text.replace(/<entry>(.*)<\/entry>/s, (_, inner: string) => {
        const links = /^(?:<link[^>]*>)*/.exec(inner)?.[0] ?? '';
        return `<entry>${inner.slice(links.length)}${links}</entry>`;
      });
    expect(after(BLOCK)).toContain('</content><link');
    expect(values(feed(after(METER), after(type()), after(BLOCK)))).toEqual([[7, 8]]);
  });

  it('can have the name of a server in some links and not in others', () => {
    const absolute = METER.replaceAll('href="', 'href="https://example.org/');
    expect(values(feed(absolute, type({}, '/T/1'), BLOCK.replace('href="', 'href="/')))).toEqual([[7, 8]]);
  });

  it('are found by what stands above them where no link is the same', () => {
    const self = (href: string): string => BLOCK.replace(link('up', 'U/1/M/1/B'), link('self', href));
    const bare = METER.replace(link('related', 'U/1/M/1/B'), '');
    expect(values(feed(bare, type(), self('U/1/M/1/IntervalBlock/5')))).toEqual([[7, 8]]);
    expect(codes(feed(bare, type(), self('U/1/M/2/IntervalBlock/5')))).toEqual(['espi/no-reading-type']);
  });

  it('tells blocks that wait for different MeterReadings apart', () => {
    const second = METER.replaceAll('M/1', 'M/2').replace('Main', 'Other').replace('T/1', 'T/2');
    const other = block(reading(0, 9)).replace('M/1', 'M/2');
    const { chunks } = read(feed(BLOCK, other, METER, second, type({ flowDirection: 19 }, 'T/2'), type()));
    expect(chunks.map(({ register, quantity, values: [first] }) => [register, quantity, first])).toEqual([
      ['Other', 'export', 9],
      ['Main', 'import', 7],
    ]);
  });

  it('tells registers of the same title apart by their links', () => {
    const second = METER.replaceAll('M/1', 'M/2');
    const { chunks } = read(feed(METER, second, type(), BLOCK, BLOCK.replace('M/1', 'M/2')));
    expect(chunks.map(({ register }) => register)).toEqual(['Main', 'Main (M/2)']);
  });

  it('can hold several blocks, and a reading outside of one', () => {
    const two = BLOCK.replace(
      '</e:IntervalBlock>',
      `</e:IntervalBlock><e:IntervalBlock>${reading(2, 9)}</e:IntervalBlock>`,
    );
    expect(values(feed(METER, type(), two))).toEqual([[7, 8], [9]]);
    const bare = entry(link('up', 'U/1/M/1/B'), reading(0, 5));
    expect(values(feed(METER, type(), bare))).toEqual([[5]]);
  });
});

describe('the point of a stream', () => {
  const point = (...entries: readonly string[]): readonly string[] => {
    const points: string[] = [];
    const reader = espiReader({
      intervals: ({ stream }) => points.push(stream.point),
      register: () => undefined,
      finding: () => undefined,
    });
    reader.write(feed(...entries));
    reader.end();
    return points;
  };
  const meter = METER.replaceAll('U/1', 'UsagePoint/1');
  const usagePoint = entry(
    link('self', 'UsagePoint/1') + link('related', 'UsagePoint/1/M'),
    '<e:UsagePoint/>',
    'House',
  );
  const readings = block(reading(0, 1)).replace('U/1', 'UsagePoint/1');

  it('is the title of the UsagePoint', () => {
    expect(point(usagePoint, meter, type(), readings)).toEqual(['House']);
  });

  it('is the end of its link where there is no title, or no UsagePoint yet, and stays that', () => {
    expect(point(usagePoint.replace('House', ''), meter, type(), readings)).toEqual(['UsagePoint/1']);
    expect(point(meter, type(), readings, usagePoint, readings)).toEqual(['UsagePoint/1', 'UsagePoint/1']);
  });

  it('is nothing where no link tells it', () => {
    expect(point(METER, type(), block(reading(0, 1)))).toEqual(['']);
  });
});

describe('chunks', () => {
  it('end at a gap, at another length, at another rate and with a block', () => {
    const long = reading(4, 5).replace('>900<', '>1800<');
    const rates = [
      reading(6, 1, '<e:tou>1</e:tou>'),
      reading(7, 2, '<e:tou>2</e:tou>'),
      reading(8, 3, '<e:tou>2</e:tou>'),
    ];
    const text = feed(
      METER,
      type(),
      block(reading(0, 1), reading(1, 2), reading(3, 4), long, ...rates),
      block(reading(9, 6)),
    );
    expect(
      read(text).chunks.map(({ start, minutes, rate, values: all }) => [start, minutes, rate, all]),
    ).toEqual([
      [28333335, 15, null, [1, 2]],
      [28333380, 15, null, [4]],
      [28333395, 30, null, [5]],
      [28333425, 15, '1', [1]],
      [28333440, 15, '2', [2, 3]],
      [28333470, 15, null, [6]],
    ]);
  });

  it.each([
    [CHUNK_VALUES, [CHUNK_VALUES]],
    [CHUNK_VALUES + 1, [CHUNK_VALUES, 1]],
  ])('of %d values are of %j', (count, lengths) => {
    const readings = Array.from({ length: count }, (_, quarter) => reading(quarter, quarter));
    const all = values(feed(METER, type(), block(...readings)));
    expect(all.map(({ length }) => length)).toEqual(lengths);
    expect(all.flat()).toEqual(readings.map((_, quarter) => quarter));
  });

  it('leave out what cannot be used and keep the rest', () => {
    const text = feed(METER, type(), block(reading(0, 1), reading(1, '2.5'), reading(2, -3), reading(3, 4)));
    expect(values(text)).toEqual([[1], [4]]);
    expect(codes(text)).toEqual(['espi/not-a-whole-number', 'espi/negative']);
  });

  it('tell every fault of one reading', () => {
    const bad =
      '<e:IntervalReading><e:timePeriod><e:duration>9x</e:duration></e:timePeriod></e:IntervalReading>';
    expect(codes(feed(METER, type(), block(bad))).toSorted()).toEqual([
      'espi/no-duration',
      'espi/no-start',
      'espi/no-value',
      'espi/not-a-whole-number',
    ]);
  });

  it('of readings without times follow each other from the start of the block, faulty ones counted', () => {
    const start = '<e:interval><e:start>1700000100</e:start></e:interval>';
    const bare = (value: string): string =>
      `<e:IntervalReading><e:value>${value}</e:value></e:IntervalReading>`;
    const text = feed(METER, type({ intervalLength: 900 }), block(start, bare('1'), bare('x'), bare('3')));
    expect(read(text).chunks.map((one) => [one.start, one.values])).toEqual([
      [28333335, [1]],
      [28333365, [3]],
    ]);
    expect(codes(feed(METER, type({ intervalLength: 900 }), block(bare('1'))))).toEqual([
      'espi/implied-times',
      'espi/no-start',
    ]);
  });
});

describe('units', () => {
  it.each([
    // 250 × 10^n Wh in kWh: 0.25 kWh for n = 0.
    [-6, 9, 250, 'µWh'],
    [-3, 6, 250, 'mWh'],
    [-1, 4, 250, '10^-1 Wh'],
    [0, 3, 250, 'Wh'],
    [2, 1, 250, '10^2 Wh'],
    [3, 0, 250, 'kWh'],
    [4, 0, 2500, '10^4 Wh'],
    [6, 0, 250_000, 'MWh'],
    [12, 0, 250_000_000_000, '10^12 Wh'],
  ] as const)('of 10^%d Wh are %d places of a kWh: %d', (multiplier, places, value, unit) => {
    const [chunk] = read(
      feed(METER, type({ powerOfTenMultiplier: multiplier }), block(reading(0, 250))),
    ).chunks;
    expect([chunk?.places, chunk?.values, chunk?.unit]).toEqual([places, [value], unit]);
  });

  it('of other quantities keep their values', () => {
    const text = feed(
      METER,
      type({ uom: 73, powerOfTenMultiplier: 3 }),
      block(reading(0, 250), reading(1, -4)),
    );
    expect(read(text).chunks.map((one) => [one.quantity, one.unit, one.places, one.values])).toEqual([
      ['other', 'kVArh', 0, [250, -4]],
    ]);
  });

  it('of net energy can be below 0', () => {
    expect(values(feed(METER, type({ flowDirection: 4 }), block(reading(0, -250))))).toEqual([[-250]]);
  });

  it.each([1, 8])('are import for flowDirection %d', (flowDirection) => {
    expect(read(feed(METER, type({ flowDirection }), block(reading(0, 1)))).chunks[0]?.quantity).toBe(
      'import',
    );
  });

  it.each([19, 10])('are export for flowDirection %d', (flowDirection) => {
    expect(read(feed(METER, type({ flowDirection }), block(reading(0, 1)))).chunks[0]?.quantity).toBe(
      'export',
    );
  });

  it.each([2, 3, 5, 7, 9, 11, 12, 13, 14, 15, 16, 17, 18, 20, 21, 99])(
    'are no import or export for flowDirection %d',
    (flowDirection) => {
      const { chunks, findings } = read(feed(METER, type({ flowDirection }), block(reading(0, 1))));
      expect(chunks[0]?.quantity).toBe('other');
      expect(findings.map(({ code }) => code)).toEqual(['espi/other-quantity']);
    },
  );

  it.each([0, 2, 5, 7, 9])('of commodity %d are left out, faults and all', (commodity) => {
    const text = feed(METER, type({ commodity }), block(reading(0, 1), reading(1, 'x')));
    expect([values(text), codes(text)]).toEqual([[], ['espi/commodity']]);
    const late = feed(METER, block(reading(0, 1), reading(1, 'x')), type({ commodity }));
    expect([values(late), codes(late)]).toEqual([[], ['espi/commodity']]);
  });
});

describe('registers', () => {
  const LOCAL = (offset: number): string =>
    entry('', `<e:LocalTimeParameters><e:tzOffset>${String(offset)}</e:tzOffset></e:LocalTimeParameters>`);
  const at = (seconds: number, duration: number, value: number): string =>
    reading(0, value)
      .replace('1700000100', String(seconds))
      .replace('>900<', `>${String(duration)}<`);
  const shown = (text: string): unknown =>
    read(text).registers.map(({ stream, day, minute, value }) => [stream.rate, dayText(day), minute, value]);

  it.each([1, 3, 9])('are accumulation %d', (accumulationBehaviour) => {
    // 2023-11-14 22:15 UTC is 2023-11-15 3:45 at UTC+5:30.
    const text = feed(
      LOCAL(19_800),
      METER,
      type({ accumulationBehaviour }),
      block(at(1700000100, 0, 4342100)),
    );
    expect(shown(text)).toEqual([[null, '2023-11-15', 225, '4342.100']]);
    expect(codes(text)).toEqual(accumulationBehaviour === 3 ? ['espi/cumulative'] : []);
  });

  it('are read in the minute in which they were read, and by rate', () => {
    const rate = at(1700000159, 0, 5).replace('</e:IntervalReading>', '<e:tou>2</e:tou></e:IntervalReading>');
    const text = feed(LOCAL(0), METER, type({ accumulationBehaviour: 1 }), block(rate, at(1700000160, 0, 6)));
    expect(shown(text)).toEqual([
      ['2', '2023-11-14', 1335, '0.005'],
      [null, '2023-11-14', 1336, '0.006'],
    ]);
  });

  it('over a period are read at its end', () => {
    const text = feed(LOCAL(0), METER, type({ accumulationBehaviour: 1 }), block(at(1700000100, 86_400, 5)));
    expect(shown(text)).toEqual([[null, '2023-11-15', 1335, '0.005']]);
  });

  it('are in UTC as long as local time is not known, which is asked once', () => {
    const registers = block(at(1700000100, 0, 5), at(1700000160, 0, 6));
    const text = feed(METER, type({ accumulationBehaviour: 1 }), registers, LOCAL(19_800), registers);
    expect(shown(text)).toEqual([
      [null, '2023-11-14', 1335, '0.005'],
      [null, '2023-11-14', 1336, '0.006'],
      [null, '2023-11-15', 225, '0.005'],
      [null, '2023-11-15', 226, '0.006'],
    ]);
    expect(codes(text)).toEqual(['espi/no-local-time']);
  });

  it('that are held back are read by the local time that came before their type', () => {
    const text = feed(METER, block(at(1700000100, 0, 5)), LOCAL(19_800), type({ accumulationBehaviour: 1 }));
    expect([shown(text), codes(text)]).toEqual([[[null, '2023-11-15', 225, '0.005']], []]);
  });
});

describe('XML', () => {
  const usual = feed(METER, type(), block(reading(0, 703)));

  it.each([
    ['a mark of UTF-8 and another version', `\ufeff<?xml version="1.1" encoding="UTF-8"?>\n${usual}`],
    [
      'the namespace of ESPI as the default',
      usual
        .replaceAll('<e:', '<')
        .replaceAll('</e:', '</')
        .replaceAll(
          /<(UsagePoint|MeterReading|ReadingType|IntervalBlock)(\/?)>/g,
          '<$1 xmlns="http://naesb.org/espi"$2>',
        ),
    ],
    ['comments within a number', usual.replace('>703<', '>7<!-- x -->0<!-- y -->3<')],
    ['a number as CDATA', usual.replace('>703<', '><![CDATA[703]]><')],
    ['a digit as a character reference', usual.replace('>703<', '>7&#48;3<')],
    ['a document type that declares nothing', `<!DOCTYPE feed SYSTEM "http://example.org/feed.dtd">${usual}`],
    [
      'tags over several lines',
      usual.replaceAll('<e:value>', '<e:value\n  >').replaceAll('<link ', '<link\r\n'),
    ],
  ])('can have %s', (_, text) => {
    expect([values(text), codes(text)]).toEqual([[[703]], []]);
  });

  it('of other namespaces is not read', () => {
    const other = usual.replace(
      '</feed>',
      '<x xmlns="http://naesb.org/espi/customer"><value>1</value></x></feed>',
    );
    expect([values(other), codes(other)]).toEqual([[[703]], []]);
    expect(codes(usual.replace('http://naesb.org/espi', 'http://example.org'))).toEqual(['espi/not-a-feed']);
  });

  it('that is cut off keeps every reading that is whole', () => {
    const text = feed(METER, type(), block(reading(0, 1), reading(1, 2), reading(2, 3)));
    const cut = text.slice(0, text.lastIndexOf('</e:IntervalReading>'));
    expect([values(cut), codes(cut)]).toEqual([[[1, 2]], ['espi/not-well-formed']]);
  });

  it('in which a reading is closed by another tag does not keep that reading', () => {
    const text = feed(METER, type(), block(reading(0, 1), reading(1, 2).replace('</e:IntervalReading>', '')));
    expect([values(text), codes(text)]).toEqual([[[1]], ['espi/not-well-formed']]);
  });

  it('after its end is not read', () => {
    expect([values(`${usual}x`), codes(`${usual}x`)]).toEqual([[[703]], ['espi/not-well-formed']]);
  });

  it('can refer to no entity but those of XML', () => {
    const text = usual.replace('>703<', '>&x;<');
    expect([values(text), codes(text)]).toEqual([[], ['espi/not-well-formed']]);
  });
});

describe('findings of one code', () => {
  it.each([
    [100, 100, 0],
    [101, 100, 1],
  ])('that are %d are told %d times and then counted', (count, told, more) => {
    const readings = Array.from({ length: count }, (_, quarter) => reading(quarter, 'x'));
    const all = codes(feed(METER, type(), block(...readings)));
    expect(all.filter((code) => code === 'espi/not-a-whole-number').length).toBe(told);
    expect(all.filter((code) => code === 'espi/more').length).toBe(more);
  });
});

it('gives its clock as UTC, and local time as soon as it is known', () => {
  const reader = espiReader({
    intervals: () => undefined,
    register: () => undefined,
    finding: () => undefined,
  });
  expect([reader.clock, reader.localTime]).toEqual([{ offset: 0 }, null]);
  reader.write(FEED);
  reader.write(entry('', '<e:LocalTimeParameters><e:tzOffset>-12600</e:tzOffset></e:LocalTimeParameters>'));
  expect(reader.localTime).toEqual({ offset: -210, dstOffset: 0, dstStart: null, dstEnd: null });
});
