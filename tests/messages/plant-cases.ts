import {
  checkPlant,
  plantDays,
  plantMonths,
  type Finding,
  type PlantDay,
  type PlantDocument,
} from '@unitbook/engine';
import { brightDays, dayOf, daysFrom, plantOf, TWENTY_A_DAY } from '../support/plant-days.ts';
import type { MessageCase } from './message-case.ts';

const BASE: PlantDocument = { format: 'unitbook-plant-1', capacity: [{ kWp: '5' }] };
const TWELVE = TWENTY_A_DAY.map(() => '4');
const SOURCE = { unit: 'kWh/m2/day', source: 'a map' } as const;

const document = (more: Partial<PlantDocument>) => (): readonly Finding[] =>
  checkPlant({ ...BASE, ...more }).findings;
const days =
  (given: readonly PlantDay[], plant = plantOf()) =>
  (): readonly Finding[] =>
    plantDays(given, plant).findings;
/** June 2025 of a plant that is expected to make 600 units in it. */
const june =
  (wattHours: number, plant = plantOf(), isEstimated = false) =>
  (): readonly Finding[] =>
    plantMonths(
      [{ period: { from: dayOf('2025-06-01'), to: dayOf('2025-07-01') }, wattHours, isEstimated }],
      plant,
    ).findings;

const DOCUMENT_CASES: readonly MessageCase[] = [
  {
    code: 'plant/number-out-of-range',
    when: 'a capacity of 0',
    make: document({ capacity: [{ kWp: '0' }] }),
    at: 'capacity.0.kWp',
    found: '0 for the capacity in kWp',
    expected: 'a number with up to 3 decimals, above 0 and up to 10000',
    remedy: 'Check the unit and the point.',
  },
  {
    code: 'plant/ratio-as-percent',
    when: 'a performance ratio of 78.5',
    make: document({ expected: { irradiation: TWELVE, performanceRatio: '78.5', ...SOURCE } }),
    at: 'expected.performanceRatio',
    found: 'a performance ratio of 78.5',
    expected: 'a number above 0 and up to 1, such as "0.78" for 78 %',
    remedy: 'Was a percentage meant? Then write "0.785".',
    offer: '0.785',
  },
  {
    code: 'plant/no-such-day',
    when: 'a diary entry of 30 February',
    make: document({ diary: [{ date: '2025-02-30', did: 'cleaning' }] }),
    at: 'diary.0.date',
    found: '"2025-02-30", which is no day of the calendar',
    expected: 'a day as yyyy-mm-dd',
    remedy: 'Correct the day.',
  },
  {
    code: 'plant/capacity-order',
    when: 'two capacities of one day',
    make: document({
      capacity: [
        { from: '2024-01-01', kWp: '3' },
        { from: '2024-01-01', kWp: '5' },
      ],
    }),
    at: 'capacity.1',
    found: 'a capacity from 2024-01-01 on, listed late',
    expected: 'a day after 2024-01-01',
    remedy: 'Give each change of capacity its first day, the earliest change first.',
  },
  {
    code: 'plant/capacity-order',
    when: 'a later capacity without a day',
    make: document({ capacity: [{ kWp: '3' }, { kWp: '5' }] }),
    at: 'capacity.1',
    found: 'a later capacity without a day',
    expected: 'the first day with this capacity',
    remedy: 'Give each change of capacity its first day, the earliest change first.',
  },
  {
    code: 'plant/through-before-date',
    when: 'an outage that ends before it begins',
    make: document({ diary: [{ date: '2025-03-04', through: '2025-03-02', did: 'outage' }] }),
    at: 'diary.0.through',
    found: 'an entry from 2025-03-04 through 2025-03-02',
    expected: 'a last day that is not before the first',
    remedy: 'Correct one of the two days, or leave "through" out where it was one day.',
  },
  {
    code: 'plant/not-twelve-months',
    when: 'a table of eleven months',
    make: document({ expected: { monthly: TWENTY_A_DAY.slice(1) } }),
    at: 'expected.monthly',
    found: '11 values',
    expected: '12 values, January to December',
    remedy: 'List every month once; for a month without sun write "0".',
  },
  {
    code: 'plant/nothing-expected',
    when: 'a table of zeros',
    make: document({ expected: { monthly: TWELVE.map(() => '0') } }),
    at: 'expected.monthly',
    found: 'a table of zeros',
    expected: 'a value above 0 in at least one month',
    remedy: 'Write what the quote or the source lists, or take the table out.',
  },
  {
    code: 'plant/one-expectation',
    when: 'none of three',
    make: document({ expected: {} }),
    at: 'expected',
    found: 'none of them',
    expected: 'one of "monthly", "irradiation", "lastYears"',
    remedy: 'Keep the one that the plant is to be judged by.',
  },
  {
    code: 'plant/irradiation-incomplete',
    when: 'irradiation alone',
    make: document({ expected: { irradiation: TWELVE } }),
    at: 'expected',
    found: '"irradiation" without "unit", "performanceRatio", "source"',
    expected: '"irradiation", "unit", "performanceRatio" and "source" together',
    remedy: 'Add what is missing: irradiation alone does not tell what a plant makes.',
  },
  {
    code: 'plant/table-implausible',
    when: '14,600 units a year of 5 kWp, 8 per kWp and day',
    make: document({ expected: { monthly: [...TWELVE.slice(1).map(() => '1000'), '3600'] } }),
    severity: 'question',
    at: 'expected.monthly',
    found: '14600 units a year for 5 kWp, 8.00 per kWp and day',
    expected: 'less than 7.5 units per kWp and day, which no plant goes beyond (common practice)',
    remedy: 'Is the table in kWh, and for a plant of this size?',
  },
];

// 600 units are expected; one sigma is 10 % where nothing is known of the place or the meter.
const MONTH_CASES: readonly MessageCase[] = [
  {
    code: 'plant/month-watch',
    when: '520 of 600 units',
    make: june(520_000),
    severity: 'note',
    at: 'periods.0',
    found: '520 units from 2025-06-01 to 2025-07-01, 86.7 % of the 600.0 expected',
    expected: 'within one sigma (our own rule); 86.7 % lies 1.33 sigma from 100 %, where one sigma is 10.0 %',
    remedy:
      'About one healthy month in six is as low as this. Watch the next month. Were the readings taken on the ' +
      'right days, was the weather dull, are the modules dirty?',
  },
  {
    code: 'plant/month-low',
    when: '420 of 600 units',
    make: june(420_000),
    severity: 'question',
    at: 'periods.0',
    found: '420 units from 2025-06-01 to 2025-07-01, 70.0 % of the 600.0 expected',
    expected: 'within two sigma (our own rule); 70.0 % lies 3.00 sigma from 100 %, where one sigma is 10.0 %',
    remedy:
      'Look at it. A low month is a finding, not a diagnosis: check the days of the readings, outages, dull ' +
      'weather, dirt and new shade, then what the inverter shows, then the meter. Opening anything is for ' +
      'licensed people: modules carry dangerous direct current in daylight.',
  },
  {
    code: 'plant/month-high',
    when: '780 of 600 units',
    make: june(780_000),
    severity: 'question',
    at: 'periods.0',
    found: '780 units from 2025-06-01 to 2025-07-01, 130.0 % of the 600.0 expected',
    expected:
      'within two sigma (our own rule); 130.0 % lies 3.00 sigma from 100 %, where one sigma is 10.0 %',
    remedy:
      'Was capacity added, or is the table for a smaller plant? Then correct the plant document. Else check the ' +
      'days of the readings and the multiplying factor of the meter.',
  },
  {
    code: 'plant/month-cannot-be-told',
    when: 'an estimated reading',
    make: june(600_000, plantOf(), true),
    severity: 'note',
    at: 'periods.0',
    found: 'from 2025-06-01 to 2025-07-01: a reading was estimated',
    expected: 'readings that were taken',
    remedy: 'Nothing can be said about this period; nothing is wrong with it for that.',
  },
];

const some = brightDays(12);

const DAY_CASES: readonly MessageCase[] = [
  {
    code: 'plant/nothing-yet',
    when: 'two days before the plant ran',
    make: days(daysFrom('2025-01-01', [0, 0, ...some])),
    severity: 'note',
    at: 'days.2025-01-01',
    found: '0 units on 2 days, from 2025-01-01 to 2025-01-02, at the beginning',
    expected: 'a plant that makes something every day',
    remedy:
      'Taken for days before the plant ran, and left out. Write its first day as "from" of the capacity.',
  },
  {
    code: 'plant/missing-days',
    when: 'one day without a value',
    make: days(daysFrom('2025-01-01', [...some, null, ...some])),
    severity: 'note',
    at: 'days.2025-01-13',
    found: 'no value on 2025-01-13',
    expected: 'a value for every day',
    remedy: 'Nothing is made up for them. Add them if the inverter or the meter still has them.',
  },
  {
    code: 'plant/stuck-register',
    when: 'units went to the grid while none were made',
    make: days(
      daysFrom('2025-01-01', [...some, 0, 0, ...some]).map((one) => ({ ...one, exportWattHours: 1500 })),
    ),
    severity: 'question',
    at: 'days.2025-01-13',
    found: '0 units of generation on 2 days, from 2025-01-13 to 2025-01-14, while 3 units went to the grid',
    expected: 'generation of at least what was given, unless a battery gave it',
    remedy:
      'The generation register or its reading stands still, not the plant. Read the meter itself. A sealed ' +
      'meter is for the licensee to open.',
  },
  {
    code: 'plant/same-value',
    when: 'three days alike',
    make: days(daysFrom('2025-01-01', [...brightDays(10), 17_001, 17_001, 17_001])),
    severity: 'question',
    at: 'days.2025-01-11',
    found: 'the same 17.001 units on 3 days, from 2025-01-11 to 2025-01-13',
    expected: 'days that differ, if only a little',
    remedy:
      'A value that was carried on, most likely: a reading that was not fetched, or filled in. Compare with the ' +
      'register on the first and the last of these days.',
  },
  {
    code: 'plant/spike',
    when: 'more than a plant of 5 kWp can make',
    make: days(daysFrom('2025-01-01', [...brightDays(10), 37_501])),
    severity: 'question',
    at: 'days.2025-01-11',
    found: '37.501 units on 2025-01-11',
    expected: 'at most 37.5 units, 7.5 per kWp (common practice)',
    remedy: 'A mistyped digit, a changed meter, or a reading in other units. Left out of the comparisons.',
  },
  {
    code: 'plant/spike',
    when: 'more than twice the best day around',
    make: days(daysFrom('2025-01-01', [...brightDays(20, () => 200), 8001])),
    severity: 'question',
    at: 'days.2025-01-21',
    found: '8.001 units on 2025-01-21',
    expected: 'no more than twice the 4 units of the best day within 30 days (our own rule)',
    remedy: 'A mistyped digit, a changed meter, or a reading in other units. Left out of the comparisons.',
  },
  {
    code: 'plant/lump',
    when: 'a day after one without a value',
    make: days(daysFrom('2025-01-01', [...brightDays(10), null, 30_001, ...brightDays(3)])),
    isAmongOthers: true,
    severity: 'note',
    at: 'days.2025-01-12',
    found: '30.001 units on 2025-01-12, after 1 day without any; the best day around made 20',
    expected: 'the units of each day on that day',
    remedy:
      'Several days in one, most likely: the plant ran, and the meter was not read. Left out of the comparisons.',
  },
  {
    code: 'plant/season-unknown',
    when: 'sixty days and no table',
    make: days(daysFrom('2025-01-01', brightDays(60)), { ...plantOf(), expected: null }),
    severity: 'note',
    at: 'days.2025-01-01',
    found: '60 days, and nothing to tell the season by',
    expected: 'a monthly table, irradiation by month, or the same days of the year before',
    remedy:
      'Lasting falls and slow ones were not looked for: they could not be told from the season. Add the ' +
      "quote's table to the plant document.",
  },
];

/** Sixty days as they should be, then sixty of another level, in thousandths. */
const stepped = (before: number, after: number): readonly PlantDay[] =>
  daysFrom(
    '2025-01-01',
    brightDays(120, (place) => (place < 60 ? before : after)),
  );

/** Twenty whole days, forty with 0.3 % more dirt each, then clean again. */
const DIRTY = brightDays(90, (place) => (place < 20 || place >= 60 ? 1000 : 1000 - 3 * (place - 19)));

const running = daysFrom('2025-01-01', brightDays(50)).map((one, place) => ({
  ...one,
  firstMinute: 360,
  lastMinute: place < 30 ? 1080 : 1019,
}));

// Bright days make 18.4 of 20 units on the mean, 92 %; at 875 thousandths 16.1, 80.5 %.
const LEVEL_CASES: readonly MessageCase[] = [
  {
    code: 'plant/zero-days',
    // Seven days before make 127.2 and seven after 133.0 units: 260.2 ÷ 14 = 18.59.
    when: 'two days without a unit',
    make: days(daysFrom('2025-01-01', [...some, 0, 0, ...some])),
    severity: 'question',
    at: 'days.2025-01-13',
    found: '0 units on 2 days, from 2025-01-13 to 2025-01-14',
    expected: 'something on every day; the days around made 18.6 units a day',
    remedy:
      'Was it an outage, snow, or work on the plant? Then note it in the diary as "outage". If it lasts: look ' +
      'at the lights or the display of the inverter, and whether a breaker has tripped. Do not open anything, ' +
      'and leave a breaker that trips again to a licensed person: the modules carry dangerous direct current in ' +
      'daylight.',
  },
  {
    code: 'plant/short-days',
    when: 'the evening ends 61 minutes earlier from one day on',
    make: days(running),
    severity: 'question',
    at: 'days.2025-01-31',
    found:
      'from 2025-01-31 on the plant runs 61 minutes a day less than just before, the season apart, most of it in ' +
      'the evening; 15 days show it',
    expected: 'at most an hour less (our own rule)',
    remedy:
      'New shade is one reason: a tree, a tank, a building. An inverter that starts late is another. Look at the ' +
      'roof from the ground at that hour. Going up is work at height, for people equipped for it.',
  },
  {
    code: 'plant/step-down',
    when: 'one of eight module inverters is out',
    make: days(stepped(1000, 875), plantOf({ inverters: { n: '8', kind: 'module' } })),
    severity: 'question',
    at: 'days.2025-03-02',
    found:
      '12.5 % less from about 2025-03-02 on: the 60 days before, from 2025-01-01, made 18.4 units a day, 92.0 % ' +
      'of what its table gives for these days; the 60 days from 2025-03-02 to 2025-04-30 made 16.1, 80.5 %',
    expected: 'a level that lasts; 12.5 % is about 1 of the 8 module inverters',
    remedy:
      'A lasting fall is a finding, not a diagnosis. Compare the lights or displays of the inverters, and what ' +
      'each of them made; look for a tripped breaker, new shade, and a changed meter or factor. Work on ' +
      'inverters, fuses and connectors is for licensed people: the modules carry dangerous direct current in ' +
      'daylight.',
  },
  {
    code: 'plant/step-up',
    when: 'capacity was added',
    make: days(stepped(875, 1000)),
    severity: 'question',
    at: 'days.2025-03-02',
    found:
      '14.3 % more from about 2025-03-02 on: the 60 days before, from 2025-01-01, made 16.1 units a day, 80.5 % ' +
      'of what its table gives for these days; the 60 days from 2025-03-02 to 2025-04-30 made 18.4, 92.0 %',
    expected: 'a level that lasts',
    remedy:
      'Was capacity added? Then add it to the plant document with its day. Was something repaired, a tree cut, ' +
      'the meter or its factor changed? Then note it in the diary.',
  },
];

const slide = days(
  daysFrom('2025-01-01', DIRTY),
  plantOf({ diary: [{ date: '2025-03-02', did: 'cleaning' }] }),
);
/**
 * Of the 30, 45 and 60 days that end before the cleaning the 45 fall most clearly. Of each third the bright days
 * are the fourth best of fifteen: 20,000 × 0.985 on 25 January, 20,000 × 0.901 on 22 February; 1680 of 19,700 less.
 */
const SLIDE_CASES: readonly MessageCase[] = [
  {
    code: 'plant/slow-slide',
    when: 'dirt that a cleaning took off',
    make: slide,
    severity: 'question',
    at: 'days.2025-01-16',
    found:
      'a slow fall of 8.5 % from 2025-01-16 to 2025-03-01, 45 days of data, that ended with the cleaning of ' +
      '2025-03-02',
    expected: 'no fall beyond the season',
    remedy:
      'Dirt is the usual reason, washed off by rain or a cleaning. Clean more often in such weeks: early or late ' +
      'in the day, with plain water and a soft cloth, from where you stand safely.',
  },
];

/** Everything that can be said of a plant. */
export const PLANT_CASES: readonly MessageCase[] = [
  ...DOCUMENT_CASES,
  ...MONTH_CASES,
  ...DAY_CASES,
  ...LEVEL_CASES,
  ...SLIDE_CASES,
];
