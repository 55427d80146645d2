import type { FindingKind } from '@unitbook/engine';
import { counted } from './counted.ts';

type Values = Readonly<Record<string, string>>;

const of = (values: Values, key: string): string => values[key] ?? '';

/** What can be said of a ReadingType and the readings of its kind, by code. */
export const TYPE_FINDINGS = {
  'espi/type-field': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')} as ${of(v, 'field')} of a ReadingType`,
      expected: 'a whole number, given once',
      remedy: 'Correct it. The readings of this type were not read, since it is not known what they are.',
    }),
  },
  'espi/not-stated': {
    severity: 'question',
    text: (v) => ({
      found: `a ReadingType that does not say ${of(v, 'field')}`,
      expected: of(v, 'expected'),
      remedy: `It was taken as ${of(v, 'taken')}. Is that what the meter counts?`,
    }),
  },
  'espi/commodity': {
    severity: 'note',
    text: (v) => ({
      found: `a ReadingType of commodity ${of(v, 'commodity')}`,
      expected: 'commodity 1, electricity as the meter counts it',
      remedy: 'Nothing to do: its readings were left out.',
    }),
  },
  'espi/other-quantity': {
    severity: 'note',
    text: (v) => ({
      found: `a ReadingType with ${of(v, 'what')}`,
      expected: of(v, 'expected'),
      remedy: 'Nothing to do: its values are kept as they are, and are no part of import or export.',
    }),
  },
  'espi/net': {
    severity: 'question',
    text: () => ({
      found: 'net energy (flowDirection 4): import less export in one value',
      expected: 'import (flowDirection 1) and export (flowDirection 19), counted apart',
      remedy: 'Net values cannot be split into import and export. Can you get the feed with both?',
    }),
  },
  'espi/net-beside-flows': {
    severity: 'note',
    text: () => ({
      found: 'net energy (flowDirection 4) beside import or export of the same feed',
      expected: 'each unit counted once',
      remedy: 'Use import and export. Do not add or subtract net once more: it is made of them.',
    }),
  },
  'espi/quadrants': {
    severity: 'question',
    text: (v) => ({
      found: `flowDirection ${of(v, 'flow')}, quadrants ${of(v, 'quadrants')} of the power diagram`,
      expected: `flowDirection ${of(v, 'plain')}, ${of(v, 'quantity')}`,
      remedy: `These quadrants usually are ${of(v, 'quantity')}, and were taken as that. Does the bill agree?`,
    }),
  },
  'espi/accumulation': {
    severity: 'error',
    text: (v) => ({
      found: `accumulationBehaviour ${of(v, 'value')}`,
      expected: '4 (energy of each interval), or 1, 3 or 9 (readings of a register)',
      remedy: 'Ask for interval data or register readings. The readings of this type were not read.',
    }),
  },
  'espi/cumulative': {
    severity: 'question',
    text: () => ({
      found: 'a cumulative register (accumulationBehaviour 3)',
      expected: 'a register as the meter shows it (accumulationBehaviour 1)',
      remedy: 'Such a register may grow only when a bill is made. Do its readings agree with the display?',
    }),
  },
  'espi/multiplier': {
    severity: 'error',
    text: (v) => ({
      found: `powerOfTenMultiplier ${of(v, 'value')}`,
      expected: 'from -6 (0.000001 Wh) to 12 (1000000000000 Wh)',
      remedy: 'Correct the ReadingType. The readings of this type were not read.',
    }),
  },
  'espi/interval-length': {
    severity: 'question',
    text: (v) => ({
      found: `a reading over ${of(v, 'duration')} seconds`,
      expected: `${of(v, 'length')} seconds, the intervalLength of its ReadingType`,
      remedy: 'Readings are taken by their own duration. Is a reading cut short, or the sum of several?',
    }),
  },
  'espi/implied-times': {
    severity: 'note',
    text: () => ({
      found: 'readings without a time of their own (timePeriod)',
      expected: 'a start and a duration for each reading',
      remedy:
        'Nothing to do: they follow each other from the start of their IntervalBlock, as the standard says.',
    }),
  },
  'espi/register-period': {
    severity: 'question',
    text: (v) => ({
      found: `a register reading over a period of ${of(v, 'duration')} seconds`,
      expected: 'the moment at which the register was read: duration 0',
      remedy: 'Such readings are taken as read at the end of the period. Do they agree with the bill?',
    }),
  },
  'espi/questionable': {
    severity: 'question',
    text: (v) => ({
      found: `${counted(of(v, 'count'), 'value')} of "${of(v, 'register')}" marked as questionable (quality 10)`,
      expected: 'values that have passed the checks of the utility',
      remedy: 'They are used as they are. Compare them with the bill, or ask the utility for checked values.',
    }),
  },
  'espi/not-measured': {
    severity: 'question',
    text: (v) => ({
      found: `${counted(of(v, 'count'), 'value')} of "${of(v, 'register')}" marked as a forecast or as adjusted to the weather`,
      expected: 'what the meter counted',
      remedy: 'They are kept and marked. Can you get the values without the adjustment (quality 12 or 15)?',
    }),
  },
  'espi/quality': {
    severity: 'question',
    text: (v) => ({
      found: `${counted(of(v, 'count'), 'value')} of "${of(v, 'register')}" with a quality that says nothing known`,
      expected: 'a code of the standard: 0, 7 to 15 or 17 to 19',
      remedy: 'They are marked as estimated, to be careful. Does the utility say what the code means?',
    }),
  },
  'espi/consumption-tier': {
    severity: 'note',
    text: () => ({
      found: 'readings with a consumptionTier',
      expected: 'nothing: slabs are worked out from the units and the tariff',
      remedy: 'Nothing to do: the tier was not used.',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
