import type { FindingKind } from '@unitbook/engine';
import { counted } from './counted.ts';

type Values = Readonly<Record<string, string>>;

const of = (values: Values, key: string): string => values[key] ?? '';

/** What can be said of an ESPI feed as a file, by code. */
export const FEED_FINDINGS = {
  'espi/not-well-formed': {
    severity: 'error',
    text: (v) => ({
      found: `text that is no well-formed XML: ${of(v, 'problem')}`,
      expected: 'XML in which every element that is opened is closed',
      remedy: 'Fetch the file again, whole. What stands before this place was read, nothing after it.',
    }),
  },
  'espi/doctype': {
    severity: 'error',
    text: () => ({
      found: 'a document type with declarations of its own',
      expected: 'a feed without <!DOCTYPE ... [',
      remedy: 'Take the declarations out; they could change what the file says, so it was not read.',
    }),
  },
  'espi/too-deep': {
    severity: 'error',
    text: (v) => ({
      found: `more than ${of(v, 'most')} elements in one another`,
      expected: 'a feed, which has about eight',
      remedy: 'Choose the file that holds the readings. Nothing after this place was read.',
    }),
  },
  'espi/too-long': {
    severity: 'error',
    text: (v) => ({
      found: `more than ${of(v, 'most')} characters without a tag`,
      expected: 'a feed, which is made of short elements',
      remedy: 'Choose the file that holds the readings. Nothing after this place was read.',
    }),
  },
  'espi/not-a-feed': {
    severity: 'error',
    text: (v) => ({
      found: `an XML file that begins with <${of(v, 'root')}> and has no element of ESPI`,
      expected: 'an Atom feed with elements of the namespace http://naesb.org/espi',
      remedy: 'Choose the file with the meter readings that the utility offers for download.',
    }),
  },
  'espi/no-readings': {
    severity: 'error',
    text: () => ({
      found: 'an ESPI feed without an IntervalReading',
      expected: 'at least one IntervalBlock with readings',
      remedy: 'Ask for the feed with the readings; this one only describes the meter.',
    }),
  },
  'espi/no-reading-type': {
    severity: 'error',
    text: (v) => ({
      found: `${counted(of(v, 'readings'), 'reading')} in ${counted(of(v, 'blocks'), 'IntervalBlock')} ${of(v, 'why')}`,
      expected: 'links from IntervalBlock to MeterReading and from there to a ReadingType in the same feed',
      remedy: 'Fetch the feed with all its entries. Without a ReadingType it is not known what was counted.',
    }),
  },
  'espi/held-too-many': {
    severity: 'error',
    text: (v) => ({
      found: `${counted(of(v, 'count'), 'reading')} before their ReadingType, more than can be held back`,
      expected: `at most ${of(v, 'readings')} readings of ${of(v, 'links')} MeterReadings before their ReadingType`,
      remedy: 'Move MeterReading and ReadingType to the beginning of the feed; these readings were not read.',
    }),
  },
  'espi/too-many-headers': {
    severity: 'error',
    text: (v) => ({
      found: `more than ${of(v, 'most')} entries and links that describe meters`,
      expected: 'a feed of one household',
      remedy: 'Ask for a feed of one connection. Readings described by later entries could not be read.',
    }),
  },
  'espi/local-time': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'what'),
      expected: of(v, 'expected'),
      remedy: 'Correct LocalTimeParameters. Until then local time is not known; intervals are in UTC.',
    }),
  },
  'espi/dst-rule': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'rule')} as ${of(v, 'field')}`,
      expected: 'a rule of 8 hexadecimal digits for both changes of the clock, or FFFFFFFF for both',
      remedy: 'Correct LocalTimeParameters. Until then local time is not known; intervals are in UTC.',
    }),
  },
  'espi/second-local-time': {
    severity: 'question',
    text: () => ({
      found: 'second LocalTimeParameters that differ from the first',
      expected: 'one local time for all readings of a feed',
      remedy:
        'The first are used. Are all meters in the same place? If not, read them from feeds of their own.',
    }),
  },
  'espi/no-local-time': {
    severity: 'question',
    text: () => ({
      found: 'a register reading without LocalTimeParameters before it',
      expected: 'LocalTimeParameters, so that the local day of the reading is known',
      remedy: 'Days and minutes of register readings are those of UTC. Could the local day be another one?',
    }),
  },
  'espi/type-twice': {
    severity: 'question',
    text: (v) => ({
      found: `a second ReadingType at ${of(v, 'link')} that differs from the first`,
      expected: 'one ReadingType for each link',
      remedy: 'The first is used. Is it the right one?',
    }),
  },
  'espi/more': {
    severity: 'note',
    text: (v) => ({
      found: `${of(v, 'count')} more of ${of(v, 'code')}, the first of them here`,
      expected: `at most ${of(v, 'most')} findings of one kind`,
      remedy: 'Correct what is the same in all of them, then read the file again.',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
