import type { Finding } from '@unitbook/engine';
import { espiReader } from '../../packages/meter-files/src/espi/index.ts';
import type { MessageCase } from './message-case.ts';

const read = (text: string) => (): readonly Finding[] => {
  const findings: Finding[] = [];
  const reader = espiReader({
    intervals: () => undefined,
    register: () => undefined,
    finding: (finding) => findings.push(finding),
  });
  reader.write(text);
  reader.end();
  return findings;
};

const FEED = '<feed xmlns="http://www.w3.org/2005/Atom" xmlns:e="http://naesb.org/espi">';

/** Lines of a feed; each stands on its own. */
const feedOf = (...lines: readonly string[]): string => [FEED, ...lines, '</feed>'].join('\n');

/** The MeterReading "Main" and its links, on one line. */
const meterReading = (number: string): string =>
  `<entry><link rel="self" href="M/${number}"/><link rel="related" href="M/${number}/B"/>` +
  `<link rel="related" href="T/${number}"/><title>Main</title><content><e:MeterReading/></content></entry>`;

interface TypeLines {
  readonly accumulation?: string;
  readonly commodity?: string;
  readonly flow?: string;
  readonly kind?: string;
  readonly multiplier?: string;
  readonly uom?: string;
  /** A line of its own with further elements. */
  readonly more?: string;
}

const line = (name: string, text: string): string => (text === '' ? '' : `<e:${name}>${text}</e:${name}>`);

/** The ReadingType of a MeterReading, on 9 lines; '' leaves an element out. Energy imported, in Wh. */
const typeOf = (number: string, type: TypeLines = {}): readonly string[] => [
  `<entry><link rel="self" href="T/${number}"/><content><e:ReadingType>`,
  line('accumulationBehaviour', type.accumulation ?? '4'),
  line('commodity', type.commodity ?? '1'),
  line('flowDirection', type.flow ?? '1'),
  line('kind', type.kind ?? '12'),
  line('powerOfTenMultiplier', type.multiplier ?? '0'),
  line('uom', type.uom ?? '72'),
  type.more ?? '',
  '</e:ReadingType></content></entry>',
];

interface ReadingLines {
  readonly duration?: string;
  readonly start?: string;
  readonly value?: string;
  /** Elements before the value. */
  readonly more?: string;
}

/** A reading of 250 at 28333335 minutes, a quarter of an hour, on three lines. */
const reading = (parts: ReadingLines = {}): readonly string[] => [
  '<e:IntervalReading>',
  `<e:timePeriod>${line('duration', parts.duration ?? '900')}${line('start', parts.start ?? '1700000100')}</e:timePeriod>`,
  `${line('value', parts.value ?? '250')}${parts.more ?? ''}</e:IntervalReading>`,
];

/** An IntervalBlock of a MeterReading. */
const blockOf = (number: string, ...readings: readonly string[]): readonly string[] => [
  `<entry><link rel="up" href="M/${number}/B"/><content><e:IntervalBlock>`,
  ...readings,
  '</e:IntervalBlock></content></entry>',
];

/** UTC+5:30 the whole year, on one line. */
const localTime = (offset = '19800'): string =>
  `<entry><content><e:LocalTimeParameters><e:tzOffset>${offset}</e:tzOffset></e:LocalTimeParameters></content></entry>`;

/** One reading of one type: the type stands on lines 3 to 11, the block on 12, its readings from 13 on. */
const withType = (type: TypeLines) =>
  read(feedOf(meterReading('1'), ...typeOf('1', type), ...blockOf('1', ...reading())));

/** Some readings of the usual type: the first stands on lines 13 to 15. */
const withReadings = (...readings: readonly string[]) =>
  read(feedOf(meterReading('1'), ...typeOf('1'), ...blockOf('1', ...readings)));

/** A reading of a register, local time on line 2; the type stands on lines 4 to 12, the reading from 14 on. */
const withRegister = (accumulation: string, parts: ReadingLines) =>
  read(
    feedOf(
      localTime(),
      meterReading('1'),
      ...typeOf('1', { accumulation }),
      ...blockOf('1', ...reading(parts)),
    ),
  );

/** LocalTimeParameters on lines 2 to 4, and a reading. */
const withLocalTime = (...elements: readonly string[]) =>
  read(
    feedOf(
      '<entry><content><e:LocalTimeParameters>',
      elements.join(''),
      '</e:LocalTimeParameters></content></entry>',
      meterReading('1'),
      ...typeOf('1'),
      ...blockOf('1', ...reading()),
    ),
  );

const LOCAL_TIME_REMEDY =
  'Correct LocalTimeParameters. Until then local time is not known; intervals are in UTC.';
const NOT_READ = 'The readings of this type were not read.';
const LEFT_OUT = 'This reading was left out, the others were kept.';
const KEPT_AS_IT_IS = 'Nothing to do: its values are kept as they are, and are no part of import or export.';

/** Everything that can be said of a feed as a file. */
const FEED_CASES: readonly MessageCase[] = [
  {
    code: 'espi/not-well-formed',
    when: 'an element is closed by the name of another',
    make: read(feedOf('<entry>')),
    at: '3:7',
    found: 'text that is no well-formed XML: unexpected close tag',
    expected: 'XML in which every element that is opened is closed',
    remedy: 'Fetch the file again, whole. What stands before this place was read, nothing after it.',
  },
  {
    code: 'espi/not-well-formed',
    when: 'the file was cut off',
    make: read(`${FEED}\n<entry>`),
    at: '2:7',
    found: 'text that is no well-formed XML: unclosed tag: entry',
    expected: 'XML in which every element that is opened is closed',
    remedy: 'Fetch the file again, whole. What stands before this place was read, nothing after it.',
  },
  {
    code: 'espi/not-well-formed',
    when: 'the file is empty',
    make: read(''),
    at: '1:1',
    found: 'text that is no well-formed XML: document must contain a root element',
    expected: 'XML in which every element that is opened is closed',
    remedy: 'Fetch the file again, whole. What stands before this place was read, nothing after it.',
  },
  {
    code: 'espi/doctype',
    when: 'a document type declares an entity',
    make: read('<!DOCTYPE feed [<!ENTITY x "y">]>\n<feed/>'),
    at: '1:34',
    found: 'a document type with declarations of its own',
    expected: 'a feed without <!DOCTYPE ... [',
    remedy: 'Take the declarations out; they could change what the file says, so it was not read.',
  },
  {
    code: 'espi/too-deep',
    when: '65 elements are in one another',
    make: read('<a>'.repeat(65)),
    // 64 tags of 3 characters stand before it.
    at: '1:193',
    found: 'more than 64 elements in one another',
    expected: 'a feed, which has about eight',
    remedy: 'Choose the file that holds the readings. Nothing after this place was read.',
  },
  {
    code: 'espi/too-long',
    when: 'a text goes on for more than a million characters',
    make: read(`<feed>${'x'.repeat(1_000_001)}`),
    at: '1:7',
    found: 'more than 1000000 characters without a tag',
    expected: 'a feed, which is made of short elements',
    remedy: 'Choose the file that holds the readings. Nothing after this place was read.',
  },
  {
    code: 'espi/not-a-feed',
    when: 'the file is a page',
    make: read('<html><body/></html>'),
    at: '1:1',
    found: 'an XML file that begins with <html> and has no element of ESPI',
    expected: 'an Atom feed with elements of the namespace http://naesb.org/espi',
    remedy: 'Choose the file with the meter readings that the utility offers for download.',
  },
  {
    code: 'espi/no-readings',
    when: 'the feed describes a meter and no more',
    make: read(feedOf(meterReading('1'), ...typeOf('1'))),
    at: '1:1',
    found: 'an ESPI feed without an IntervalReading',
    expected: 'at least one IntervalBlock with readings',
    remedy: 'Ask for the feed with the readings; this one only describes the meter.',
  },
  {
    code: 'espi/no-reading-type',
    when: 'the MeterReading is not in the feed',
    make: read(feedOf(...blockOf('1', ...reading(), ...reading()), ...blockOf('1', ...reading()))),
    at: '2:46',
    found: '3 readings in 2 IntervalBlocks to which no MeterReading of the feed is linked',
    expected: 'links from IntervalBlock to MeterReading and from there to a ReadingType in the same feed',
    remedy: 'Fetch the feed with all its entries. Without a ReadingType it is not known what was counted.',
  },
  {
    code: 'espi/no-reading-type',
    when: 'the ReadingType is not in the feed',
    make: read(feedOf(meterReading('1'), ...blockOf('1', ...reading()))),
    at: '3:46',
    found: '1 reading in 1 IntervalBlock whose MeterReading "Main" has no ReadingType in the feed',
    expected: 'links from IntervalBlock to MeterReading and from there to a ReadingType in the same feed',
    remedy: 'Fetch the feed with all its entries. Without a ReadingType it is not known what was counted.',
  },
  {
    code: 'espi/held-too-many',
    when: 'blocks of 1001 MeterReadings wait for their types',
    make: read(
      feedOf(...Array.from({ length: 1001 }, (_, number) => blockOf(String(number), ...reading())).flat()),
    ),
    // A line for the feed, 1000 blocks of 5 lines, the line of the last block; its reading is next.
    at: '5003:1',
    found: '1 reading before their ReadingType, more than can be held back',
    expected: 'at most 250000 readings of 1000 MeterReadings before their ReadingType',
    remedy: 'Move MeterReading and ReadingType to the beginning of the feed; these readings were not read.',
    isAmongOthers: true,
  },
  {
    code: 'espi/too-many-headers',
    when: 'an entry has 20000 links',
    make: read(
      feedOf(
        `<entry>${'<link rel="related" href="T/1"/>'.repeat(20_000)}<content><e:MeterReading/></content></entry>`,
      ),
    ),
    at: '2:1',
    found: 'more than 20000 entries and links that describe meters',
    expected: 'a feed of one household',
    remedy: 'Ask for a feed of one connection. Readings described by later entries could not be read.',
    isAmongOthers: true,
  },
  {
    code: 'espi/local-time',
    when: 'the offset is not there',
    make: withLocalTime(''),
    at: '2:17',
    found: 'LocalTimeParameters without tzOffset',
    expected: 'tzOffset in seconds, whole minutes of less than a day, given once',
    remedy: LOCAL_TIME_REMEDY,
  },
  {
    code: 'espi/local-time',
    when: 'the offset is no whole minute',
    make: withLocalTime('<e:tzOffset>19801</e:tzOffset>'),
    at: '3:13',
    found: '"19801" as tzOffset',
    expected: 'tzOffset in seconds, whole minutes of less than a day, given once',
    remedy: LOCAL_TIME_REMEDY,
  },
  {
    code: 'espi/local-time',
    when: 'the offset is given twice',
    make: withLocalTime('<e:tzOffset>0</e:tzOffset><e:tzOffset>0</e:tzOffset>'),
    at: '3:13',
    found: 'two of tzOffset',
    expected: 'tzOffset in seconds, whole minutes of less than a day, given once',
    remedy: LOCAL_TIME_REMEDY,
  },
  {
    code: 'espi/dst-rule',
    when: 'a month is 13',
    make: withLocalTime(
      '<e:dstStartRule>D60E2000</e:dstStartRule><e:dstEndRule>B40E2000</e:dstEndRule>',
      '<e:dstOffset>3600</e:dstOffset><e:tzOffset>0</e:tzOffset>',
    ),
    at: '3:17',
    found: '"D60E2000" as dstStartRule',
    expected: 'a rule of 8 hexadecimal digits for both changes of the clock, or FFFFFFFF for both',
    remedy: LOCAL_TIME_REMEDY,
  },
  {
    code: 'espi/dst-rule',
    when: 'daylight saving begins and does not end',
    make: withLocalTime(
      '<e:dstStartRule>360E2000</e:dstStartRule><e:dstOffset>3600</e:dstOffset><e:tzOffset>0</e:tzOffset>',
    ),
    at: '2:17',
    found: 'no rule as dstEndRule',
    expected: 'a rule of 8 hexadecimal digits for both changes of the clock, or FFFFFFFF for both',
    remedy: LOCAL_TIME_REMEDY,
  },
  {
    code: 'espi/second-local-time',
    when: 'a second entry has another offset',
    make: read(
      feedOf(
        localTime(),
        localTime('18000'),
        meterReading('1'),
        ...typeOf('1'),
        ...blockOf('1', ...reading()),
      ),
    ),
    severity: 'question',
    at: '3:17',
    found: 'second LocalTimeParameters that differ from the first',
    expected: 'one local time for all readings of a feed',
    remedy:
      'The first are used. Are all meters in the same place? If not, read them from feeds of their own.',
  },
  {
    code: 'espi/no-local-time',
    when: 'a register is read and local time is not known',
    make: read(
      feedOf(
        meterReading('1'),
        ...typeOf('1', { accumulation: '1' }),
        ...blockOf('1', ...reading({ duration: '0' }), ...reading({ duration: '0' })),
      ),
    ),
    severity: 'question',
    at: '15:10',
    found: 'a register reading without LocalTimeParameters before it',
    expected: 'LocalTimeParameters, so that the local day of the reading is known',
    remedy: 'Days and minutes of register readings are those of UTC. Could the local day be another one?',
  },
  {
    code: 'espi/type-twice',
    when: 'a second type with the same link has another unit',
    make: read(
      feedOf(
        meterReading('1'),
        ...typeOf('1'),
        ...typeOf('1', { multiplier: '3' }),
        ...blockOf('1', ...reading()),
      ),
    ),
    severity: 'question',
    at: '12:46',
    found: 'a second ReadingType at T/1 that differs from the first',
    expected: 'one ReadingType for each link',
    remedy: 'The first is used. Is it the right one?',
  },
  {
    code: 'espi/more',
    when: '102 values are no whole numbers',
    make: withReadings(...Array.from({ length: 102 }, () => reading({ value: '2.5' })).flat()),
    severity: 'note',
    // 100 readings of 3 lines stand before it, from line 13 on; the value is on the third line.
    at: '315:10',
    found: '2 more of espi/not-a-whole-number, the first of them here',
    expected: 'at most 100 findings of one kind',
    remedy: 'Correct what is the same in all of them, then read the file again.',
    isAmongOthers: true,
  },
];

/** Everything that can be said of a ReadingType and the readings of its kind. */
const TYPE_CASES: readonly MessageCase[] = [
  {
    code: 'espi/type-field',
    when: 'a direction is a word',
    make: withType({ flow: 'forward' }),
    at: '6:18',
    found: '"forward" as flowDirection of a ReadingType',
    expected: 'a whole number, given once',
    remedy: 'Correct it. The readings of this type were not read, since it is not known what they are.',
  },
  {
    code: 'espi/type-field',
    when: 'a unit is given twice',
    make: withType({ more: '<e:uom>72</e:uom>' }),
    at: '10:8',
    found: 'two numbers as uom of a ReadingType',
    expected: 'a whole number, given once',
    remedy: 'Correct it. The readings of this type were not read, since it is not known what they are.',
  },
  {
    code: 'espi/not-stated',
    when: 'the direction is left out',
    make: withType({ flow: '' }),
    severity: 'question',
    at: '3:46',
    found: 'a ReadingType that does not say flowDirection',
    expected: 'flowDirection 1 (import) or 19 (export)',
    remedy: 'It was taken as import (1). Is that what the meter counts?',
  },
  {
    code: 'espi/not-stated',
    when: 'accumulation is said not to apply',
    make: withType({ accumulation: '0' }),
    severity: 'question',
    at: '4:26',
    found: 'a ReadingType that does not say accumulationBehaviour',
    expected: 'accumulationBehaviour 4 (energy of each interval) or 1 (readings of a register)',
    remedy: 'It was taken as the energy of each interval (4). Is that what the meter counts?',
  },
  {
    code: 'espi/not-stated',
    when: 'the commodity is left out',
    make: withType({ commodity: '' }),
    severity: 'question',
    at: '3:46',
    found: 'a ReadingType that does not say commodity',
    expected: 'commodity 1, electricity as the meter counts it',
    remedy: 'It was taken as electricity (1). Is that what the meter counts?',
  },
  {
    code: 'espi/not-stated',
    when: 'the multiplier is left out',
    make: withType({ multiplier: '' }),
    severity: 'question',
    at: '3:46',
    found: 'a ReadingType that does not say powerOfTenMultiplier',
    expected: 'powerOfTenMultiplier: 0 for Wh, 3 for kWh',
    remedy: 'It was taken as values in the unit itself (0). Is that what the meter counts?',
  },
  {
    code: 'espi/commodity',
    when: 'the commodity is gas',
    make: withType({ commodity: '7' }),
    severity: 'note',
    at: '5:14',
    found: 'a ReadingType of commodity 7',
    expected: 'commodity 1, electricity as the meter counts it',
    remedy: 'Nothing to do: its readings were left out.',
  },
  {
    code: 'espi/other-quantity',
    when: 'the kind is power',
    make: withType({ kind: '37' }),
    severity: 'note',
    at: '7:9',
    found: 'a ReadingType with kind 37',
    expected: 'kind 12, energy',
    remedy: KEPT_AS_IT_IS,
  },
  {
    code: 'espi/other-quantity',
    when: 'the unit is that of reactive energy',
    make: withType({ uom: '73' }),
    severity: 'note',
    at: '9:8',
    found: 'a ReadingType with uom 73',
    expected: 'uom 72, watt-hours',
    remedy: KEPT_AS_IT_IS,
  },
  {
    code: 'espi/other-quantity',
    when: 'the unit is left out',
    make: withType({ uom: '' }),
    severity: 'note',
    at: '3:46',
    found: 'a ReadingType with no unit (uom)',
    expected: 'uom 72, watt-hours',
    remedy: KEPT_AS_IT_IS,
  },
  {
    code: 'espi/other-quantity',
    when: 'the values are the highest',
    make: withType({ more: '<e:dataQualifier>8</e:dataQualifier>' }),
    severity: 'note',
    at: '10:18',
    found: 'a ReadingType with dataQualifier 8',
    expected: 'dataQualifier 12, the plain value',
    remedy: KEPT_AS_IT_IS,
  },
  {
    code: 'espi/other-quantity',
    when: 'import and export are added up',
    make: withType({ flow: '20' }),
    severity: 'note',
    at: '6:18',
    found: 'a ReadingType with flowDirection 20, import and export added up',
    expected: 'flowDirection 1 (import) or 19 (export)',
    remedy: KEPT_AS_IT_IS,
  },
  {
    code: 'espi/net',
    when: 'the feed has net energy',
    make: withType({ flow: '4' }),
    severity: 'question',
    at: '6:18',
    found: 'net energy (flowDirection 4): import less export in one value',
    expected: 'import (flowDirection 1) and export (flowDirection 19), counted apart',
    remedy: 'Net values cannot be split into import and export. Can you get the feed with both?',
  },
  {
    code: 'espi/net-beside-flows',
    when: 'the feed has net energy and export',
    make: read(
      feedOf(
        meterReading('1'),
        ...typeOf('1', { flow: '19' }),
        ...blockOf('1', ...reading()),
        meterReading('2'),
        ...typeOf('2', { flow: '4' }),
        ...blockOf('2', ...reading()),
      ),
    ),
    severity: 'note',
    // 15 lines stand before the second type.
    at: '21:18',
    found: 'net energy (flowDirection 4) beside import or export of the same feed',
    expected: 'each unit counted once',
    remedy: 'Use import and export. Do not add or subtract net once more: it is made of them.',
    isAmongOthers: true,
  },
  {
    code: 'espi/quadrants',
    when: 'import is given by quadrants',
    make: withType({ flow: '8' }),
    severity: 'question',
    at: '6:18',
    found: 'flowDirection 8, quadrants 1 and 4 of the power diagram',
    expected: 'flowDirection 1, import',
    remedy: 'These quadrants usually are import, and were taken as that. Does the bill agree?',
  },
  {
    code: 'espi/quadrants',
    when: 'export is given by quadrants',
    make: withType({ flow: '10' }),
    severity: 'question',
    at: '6:18',
    found: 'flowDirection 10, quadrants 2 and 3 of the power diagram',
    expected: 'flowDirection 19, export',
    remedy: 'These quadrants usually are export, and were taken as that. Does the bill agree?',
  },
  {
    code: 'espi/accumulation',
    when: 'values are those of an instant',
    make: withType({ accumulation: '12' }),
    at: '4:26',
    found: 'accumulationBehaviour 12',
    expected: '4 (energy of each interval), or 1, 3 or 9 (readings of a register)',
    remedy: `Ask for interval data or register readings. ${NOT_READ}`,
  },
  {
    code: 'espi/cumulative',
    when: 'a register is cumulative',
    make: withRegister('3', { duration: '0' }),
    severity: 'question',
    at: '5:26',
    found: 'a cumulative register (accumulationBehaviour 3)',
    expected: 'a register as the meter shows it (accumulationBehaviour 1)',
    remedy: 'Such a register may grow only when a bill is made. Do its readings agree with the display?',
  },
  {
    code: 'espi/multiplier',
    when: 'values are smaller than a kWh with 9 places can show',
    make: withType({ multiplier: '-7' }),
    at: '8:25',
    found: 'powerOfTenMultiplier -7',
    expected: 'from -6 (0.000001 Wh) to 12 (1000000000000 Wh)',
    remedy: `Correct the ReadingType. ${NOT_READ}`,
  },
  {
    code: 'espi/interval-length',
    when: 'a reading is longer than its type says',
    make: withType({ more: '<e:intervalLength>1800</e:intervalLength>' }),
    severity: 'question',
    at: '13:1',
    found: 'a reading over 900 seconds',
    expected: '1800 seconds, the intervalLength of its ReadingType',
    remedy: 'Readings are taken by their own duration. Is a reading cut short, or the sum of several?',
  },
  {
    code: 'espi/implied-times',
    when: 'readings have no time of their own',
    make: read(
      feedOf(
        meterReading('1'),
        ...typeOf('1', { more: '<e:intervalLength>900</e:intervalLength>' }),
        ...blockOf(
          '1',
          '<e:interval><e:start>1700000100</e:start></e:interval>',
          '<e:IntervalReading><e:value>1</e:value></e:IntervalReading>',
        ),
      ),
    ),
    severity: 'note',
    at: '14:1',
    found: 'readings without a time of their own (timePeriod)',
    expected: 'a start and a duration for each reading',
    remedy:
      'Nothing to do: they follow each other from the start of their IntervalBlock, as the standard says.',
  },
  {
    code: 'espi/register-period',
    when: 'a register is read over a day',
    make: withRegister('1', { duration: '86400' }),
    severity: 'question',
    at: '14:1',
    found: 'a register reading over a period of 86400 seconds',
    expected: 'the moment at which the register was read: duration 0',
    remedy: 'Such readings are taken as read at the end of the period. Do they agree with the bill?',
  },
  {
    code: 'espi/questionable',
    when: 'two values have failed a check',
    make: withReadings(
      ...reading(),
      ...reading({ more: '<e:ReadingQuality><e:quality>10</e:quality></e:ReadingQuality>' }),
      ...reading({ more: '<e:ReadingQuality><e:quality>10</e:quality></e:ReadingQuality>' }),
    ),
    severity: 'question',
    at: '18:10',
    found: '2 values of "Main" marked as questionable (quality 10)',
    expected: 'values that have passed the checks of the utility',
    remedy: 'They are used as they are. Compare them with the bill, or ask the utility for checked values.',
  },
  {
    code: 'espi/not-measured',
    when: 'a value is a forecast, by its type',
    make: withType({ more: '<e:defaultQuality>12</e:defaultQuality>' }),
    severity: 'question',
    at: '15:10',
    found: '1 value of "Main" marked as a forecast or as adjusted to the weather',
    expected: 'what the meter counted',
    remedy: 'They are kept and marked. Can you get the values without the adjustment (quality 12 or 15)?',
  },
  {
    code: 'espi/quality',
    when: 'a quality is none of the standard',
    make: withReadings(
      ...reading({ more: '<e:ReadingQuality><e:quality>99</e:quality></e:ReadingQuality>' }),
    ),
    severity: 'question',
    at: '15:10',
    found: '1 value of "Main" with a quality that says nothing known',
    expected: 'a code of the standard: 0, 7 to 15 or 17 to 19',
    remedy: 'They are marked as estimated, to be careful. Does the utility say what the code means?',
  },
  {
    code: 'espi/consumption-tier',
    when: 'a reading names its tier',
    make: withReadings(...reading({ more: '<e:consumptionTier>2</e:consumptionTier>' })),
    severity: 'note',
    at: '13:1',
    found: 'readings with a consumptionTier',
    expected: 'nothing: slabs are worked out from the units and the tariff',
    remedy: 'Nothing to do: the tier was not used.',
  },
];

/** Everything that can be said of one reading. */
const READING_CASES: readonly MessageCase[] = [
  {
    code: 'espi/not-a-whole-number',
    when: 'a value has a decimal point',
    make: withReadings(...reading({ value: '0.25' })),
    at: '15:10',
    found: '"0.25" as value of a reading',
    expected: 'a whole number; a decimal point is the business of powerOfTenMultiplier',
    remedy: `Correct the file. ${LEFT_OUT}`,
  },
  {
    code: 'espi/not-a-whole-number',
    when: 'a start is a date',
    make: withReadings(...reading({ start: '2023-11-14T22:15:00Z' })),
    at: '14:52',
    found: '"2023-11-14T22:15:00Z" as start of a reading',
    expected: 'a whole number; a decimal point is the business of powerOfTenMultiplier',
    remedy: `Correct the file. ${LEFT_OUT}`,
  },
  {
    code: 'espi/not-a-whole-number',
    when: 'a value has an element in it',
    make: withReadings(...reading({ value: '2<e:b/>50' })),
    at: '15:10',
    found: '"50<b>" as value of a reading',
    expected: 'a whole number; a decimal point is the business of powerOfTenMultiplier',
    remedy: `Correct the file. ${LEFT_OUT}`,
  },
  {
    code: 'espi/too-many-digits',
    when: 'a value has 16 digits',
    make: withReadings(...reading({ value: '1000000000000000' })),
    at: '15:10',
    found: '"1000000000000000" as value of a reading',
    expected: 'a whole number of at most 15 digits',
    remedy: `Correct the file. ${LEFT_OUT}`,
  },
  {
    code: 'espi/text-too-long',
    when: 'a value has 1001 characters',
    make: withReadings(...reading({ value: '1'.repeat(1001) })),
    at: '15:10',
    found: 'more than 1000 characters as value of a reading',
    expected: 'a whole number of at most 15 digits',
    remedy: `Correct the file. ${LEFT_OUT}`,
  },
  {
    code: 'espi/given-twice',
    when: 'a reading has two values',
    make: withReadings(...reading({ more: '<e:value>251</e:value>' })),
    // <e:value>250</e:value><e:value> are 31 characters.
    at: '15:32',
    found: 'a second value in one reading',
    expected: 'value once',
    remedy: `Keep the right one. ${LEFT_OUT}`,
  },
  {
    code: 'espi/no-value',
    when: 'a value is left out',
    make: withReadings(...reading({ value: '' })),
    at: '13:1',
    found: 'a reading without a value',
    expected: 'a whole number in <value>',
    remedy: `Ask for the value. ${LEFT_OUT}`,
  },
  {
    code: 'espi/no-value',
    when: 'a value is blank',
    make: withReadings(...reading({ value: ' ' })),
    at: '15:10',
    found: 'a reading without a value',
    expected: 'a whole number in <value>',
    remedy: `Ask for the value. ${LEFT_OUT}`,
  },
  {
    code: 'espi/no-start',
    when: 'a start is left out',
    make: withReadings(...reading({ start: '' })),
    at: '13:1',
    found: 'a reading of which it is not known when it begins',
    expected: 'a <start> in its timePeriod, in seconds since 1970-01-01 00:00 UTC',
    remedy: `Correct the file. ${LEFT_OUT}`,
  },
  {
    code: 'espi/no-duration',
    when: 'neither the reading nor its type says how long',
    make: withReadings(...reading({ duration: '' })),
    at: '13:1',
    found: 'a reading of which it is not known how long it lasts',
    expected: 'a <duration> in its timePeriod, or an intervalLength in its ReadingType',
    remedy: `Correct the file. ${LEFT_OUT}`,
  },
  {
    code: 'espi/time-range',
    when: 'a start is in milliseconds',
    make: withReadings(...reading({ start: '1700000100000' })),
    at: '14:52',
    found: '1700000100000 as start of a reading',
    expected: 'seconds since 1970-01-01 00:00 UTC, before the year 10000',
    remedy: `Correct the file; are these milliseconds? ${LEFT_OUT}`,
  },
  {
    code: 'espi/time-range',
    when: 'an interval has no length',
    make: withReadings(...reading({ duration: '0' })),
    at: '13:1',
    found: '0 as duration of a reading',
    expected: 'more than 0 seconds',
    remedy: `Correct the file; are these milliseconds? ${LEFT_OUT}`,
  },
  {
    code: 'espi/not-a-minute',
    when: 'a reading begins within a minute',
    make: withReadings(...reading({ start: '1700000101' })),
    at: '13:1',
    found: '1700000101 as start of a reading, which is no whole minute',
    expected: 'a number of seconds that 60 divides',
    remedy: `Ask for data in whole minutes. ${LEFT_OUT}`,
  },
  {
    code: 'espi/not-a-minute',
    when: 'a reading lasts 30 seconds',
    make: withReadings(...reading({ duration: '30' })),
    at: '13:1',
    found: '30 as duration of a reading, which is no whole minute',
    expected: 'a number of seconds that 60 divides',
    remedy: `Ask for data in whole minutes. ${LEFT_OUT}`,
  },
  {
    code: 'espi/tou',
    when: 'a rate is one past the largest',
    make: withReadings(...reading({ more: '<e:tou>32768</e:tou>' })),
    // <e:value>250</e:value><e:tou> are 29 characters.
    at: '15:30',
    found: '32768 as tou',
    expected: 'the number of a rate, from 0 (none) to 32767',
    remedy: `Correct the file. ${LEFT_OUT}`,
  },
  {
    code: 'espi/negative',
    when: 'import is below 0',
    make: withReadings(...reading({ value: '-1' })),
    at: '15:10',
    found: '-1 as a value of import',
    expected: 'a value of 0 or more: the direction is told by flowDirection, not by a sign',
    remedy: `Is this net energy (flowDirection 4)? Ask for import and export apart. ${LEFT_OUT}`,
  },
  {
    code: 'espi/too-large',
    when: 'a value in units of 10^12 Wh is past what is exact',
    // The largest whole number is 9007199254740991: 9007199 × 10^9 kWh is the last that fits.
    make: read(
      feedOf(
        meterReading('1'),
        ...typeOf('1', { multiplier: '12' }),
        ...blockOf('1', ...reading({ value: '9007199' }), ...reading({ value: '9007200' })),
      ),
    ),
    at: '18:10',
    found: '9007200 × 10^12 Wh',
    expected: 'less than 9007199254740992 kWh',
    remedy: `Is powerOfTenMultiplier right? ${LEFT_OUT}`,
  },
];

/** Everything that can be said of an ESPI feed. */
export const ESPI_CASES: readonly MessageCase[] = [...FEED_CASES, ...TYPE_CASES, ...READING_CASES];
