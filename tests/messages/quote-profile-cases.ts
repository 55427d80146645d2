import {
  checkPromise,
  checkQuote,
  prepareQuote,
  readTariff,
  type EnergyPeriod,
  type Finding,
  type Outcome,
  type PreparedQuote,
  type QuoteDocument,
  type QuoteProfile,
  type Tariff,
} from '@unitbook/engine';
import quoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import hourText from '../../tariffs-examples/tarumira/taresco-netting-by-hour/tariff.json?raw';
import blocksText from '../../tariffs-examples/tarumira/taresco-time-blocks/tariff.json?raw';
import { demoTariff } from '../support/demo.ts';
import { dayOf } from '../support/make.ts';
import type { MessageCase } from './message-case.ts';

/** The demo quote, which names no tariff here: some cases are under others. */
const BASE: QuoteDocument = { ...(JSON.parse(quoteText) as QuoteDocument), tariff: undefined };
const DAY = 1440;

function tariffOf(text: string): Tariff {
  const { value } = readTariff(text);
  if (value === null) throw new Error('the tariff cannot be read');
  return value;
}

const BLOCKS = tariffOf(blocksText);
/** What windows of other kinds leave is billed. */
const windowsOf = (change: (text: string) => string): Tariff => tariffOf(change(hourText));
const DAY_HOURS = (from: string, to: string) =>
  windowsOf((text) => text.replaceAll('"hour"', `"day-hours", "from": "${from}", "to": "${to}"`));
const WINDOWS = windowsOf((text) => text);
/** Days that blocks cut, of which nothing is billed. */
const DAYS_IN_BLOCKS = windowsOf((text) => {
  const { timeBlocks, seasons } = JSON.parse(blocksText) as Record<string, object>;
  const document = JSON.parse(text.replaceAll('"hour"', '"day"')) as Record<string, unknown>;
  return JSON.stringify({ ...document, timeBlocks, seasons });
});
/** Solar hours from half past eight on. */
const HALF_HOURS = tariffOf(blocksText.replaceAll('"09:00"', '"08:30"'));

/** An interval of a profile: the minute at which it starts, and its Wh. */
interface Row {
  readonly start: number;
  readonly use: number;
  readonly generation: number;
}

/** The hours of 2025: 600 Wh used in each, 2,000 made from 8 to 16 h. */
const HOURS: readonly Row[] = Array.from({ length: 365 * 24 }, (_, at) => {
  const hour = at % 24;
  return {
    start: dayOf('2025-01-01') * DAY + at * 60,
    use: 600,
    generation: hour >= 8 && hour < 16 ? 2000 : 0,
  };
});

const profileOf = (rows: readonly Row[], minutes = 60): QuoteProfile => ({
  minutes,
  starts: Int32Array.from(rows, ({ start }) => start),
  use: Float64Array.from(rows, ({ use }) => use),
  generation: Float64Array.from(rows, ({ generation }) => generation),
});

const minuteOf = (day: string): number => dayOf(day) * DAY;
const isIn =
  (from: string, to: string) =>
  ({ start }: Row): boolean =>
    start >= minuteOf(from) && start < minuteOf(to);
const isInJuly = isIn('2025-07-01', '2025-08-01');
const isLateInJuly = isIn('2025-07-22', '2025-08-01');

/** The demo quote without a share of own use. */
const SHARELESS: Partial<QuoteDocument> = { selfUse: {} };

function prepared(
  profile: QuoteProfile | null,
  more: Partial<QuoteDocument> = SHARELESS,
  tariff = demoTariff(),
): Outcome<PreparedQuote | null> {
  const { value, findings } = checkQuote({ ...BASE, ...more });
  return value === null ? { value, findings } : prepareQuote(value, tariff, undefined, { profile });
}

/** A profile that is of no use, beside the share of the demo quote. */
const spoilt =
  (rows: readonly Row[], minutes = 60) =>
  (): readonly Finding[] =>
    prepared(profileOf(rows, minutes), {}).findings;

/** The rows with some of their numbers changed. */
const altered = (change: (row: Row, at: number) => Partial<Row>): readonly Row[] =>
  HOURS.map((row, at) => ({ ...row, ...change(row, at) }));

const FORM_CASES: readonly MessageCase[] = [
  {
    code: 'quote/profile-interval',
    when: 'intervals of 20 minutes',
    make: spoilt(HOURS, 20),
    at: 'profile',
    found: 'a profile with intervals of 20 minutes',
    expected: 'intervals of 5, 15, 30 or 60 minutes that begin with the hour',
    remedy: 'Give the profile in one of these lengths, on the local clock.',
  },
  {
    code: 'quote/profile-interval',
    when: 'hours that begin five minutes late',
    make: spoilt(altered(({ start }) => ({ start: start + 5 }))),
    at: 'profile',
    found: 'a profile with an interval of 60 minutes from 2025-01-01 00:05',
    expected: 'intervals of 5, 15, 30 or 60 minutes that begin with the hour',
    remedy: 'Give the profile in one of these lengths, on the local clock.',
  },
  {
    // 2^26 − 1 = 67,108,863
    code: 'quote/profile-value',
    when: 'a use below 0',
    make: spoilt(altered((_, at) => (at === 3 ? { use: -5 } : {}))),
    at: 'profile.use',
    found: '-5 for use in the interval from 2025-01-01 03:00',
    expected: 'whole watt-hours from 0 to 67108863',
    remedy: 'Correct the values; an export is no negative use.',
  },
  {
    code: 'quote/profile-out-of-order',
    when: 'two hours exchanged',
    // Those of 5 and 6 o'clock.
    make: spoilt(altered(({ start }, at) => ({ start: start + (at === 5 ? 60 : at === 6 ? -60 : 0) }))),
    at: 'profile',
    found: 'the interval from 2025-01-01 05:00 after the one from 2025-01-01 06:00',
    expected: 'intervals in order of time, none twice but where the clocks go back',
    remedy: 'Put the intervals in order, and leave out what stands there twice.',
  },
];

const MONTH_CASES: readonly MessageCase[] = [
  {
    code: 'quote/profile-month-missing',
    when: 'no July',
    make: spoilt(HOURS.filter((row) => !isInJuly(row))),
    at: 'profile',
    found: 'a profile without July',
    expected: 'intervals of each of the twelve calendar months',
    remedy: 'Give a profile of a whole year, or the share of own use in its place.',
  },
  {
    // 21 × 24 = 504 of 31 × 24 = 744
    code: 'quote/profile-month-in-part',
    when: '21 days of July',
    severity: 'note',
    make: () => prepared(profileOf(HOURS.filter((row) => !isLateInJuly(row)))).findings,
    at: 'profile',
    found: 'a profile with 504 intervals of July, of 744',
    expected: 'every interval of the month',
    remedy: 'The shape of the days that are there is taken for the whole month.',
  },
  {
    code: 'quote/profile-month-empty',
    when: 'nothing made in July',
    make: spoilt(altered((row) => (isInJuly(row) ? { generation: 0 } : {}))),
    at: 'profile.generation',
    found: 'a profile with no generation at all in July, where the quote has 380 units',
    expected: 'generation in some interval of the month',
    remedy: 'Give the intervals of that month, or correct its units.',
  },
  {
    code: 'quote/profile-splits-block',
    when: 'hours under blocks that begin at half past',
    make: () => prepared(profileOf(HOURS), { escalation: { charges: {}, basis: 'x' } }, HALF_HOURS).findings,
    at: 'profile',
    found: 'an interval from 2025-01-01 08:00, of 60 minutes, that two time blocks share',
    expected: 'intervals inside the time blocks of the tariff',
    remedy: 'Give the profile in shorter intervals.',
  },
];

/** The demo quote, whose charges do not rise, under a tariff that nets inside windows. */
const netted = (tariff: Tariff, profile: QuoteProfile | null) => (): readonly Finding[] =>
  prepared(profile, { ...SHARELESS, escalation: { charges: {}, basis: 'x' } }, tariff).findings.filter(
    ({ severity }) => severity === 'error',
  );

const WINDOW_CASES: readonly MessageCase[] = [
  {
    code: 'quote/needs-profile',
    when: 'a tariff that nets inside each hour',
    make: netted(WINDOWS, null),
    at: 'selfUse',
    found: 'a tariff with netting inside windows of time (net-import, net-export)',
    expected: 'an interval profile of use and generation',
    remedy:
      'Give the profile: months alone do not tell how much of what is taken and given meets in a window.',
  },
  {
    code: 'quote/profile-splits-window',
    when: 'hours from a quarter past seven on, and intervals of an hour',
    make: () => netted(DAY_HOURS('07:15', '18:00'), profileOf(HOURS))().slice(0, 1),
    at: 'profile',
    found: '"net-import", which nets from 07:15 to 18:00, beside intervals of 60 minutes',
    expected: 'hours that begin and end with an interval',
    remedy: 'Give the profile in shorter intervals.',
  },
  {
    // 1 January 2025 is a Wednesday of the cold season: normal until nine.
    code: 'quote/profile-window-in-two-blocks',
    when: 'days under time blocks',
    make: () => netted(DAYS_IN_BLOCKS, profileOf(HOURS))().slice(0, 1),
    at: 'profile',
    found:
      '"net-import", which nets what two time blocks share: "normal" and "solar" in the window from 2025-01-01 00:00',
    expected: 'energy that is netted inside one time block',
    remedy: 'Correct the windows of the tariff, or the times of its blocks: meters would not tell either.',
  },
];

/** A month of readings that tell nothing by block, set against a quote. */
function promiseOf(quoted: Tariff, today: Tariff): readonly Finding[] {
  const escalation = { charges: {}, basis: 'x' };
  const { value } = prepared(profileOf(HOURS), { ...SHARELESS, escalation }, quoted);
  const [period] = value?.biller.periods ?? [];
  if (value === null || period === undefined) throw new Error('the quote cannot be billed');
  const units = { numerator: 1000, denominator: 1000 };
  const energy = { period, generation: units, selfConsumption: units, totalUse: units };
  const energies = [energy as unknown as EnergyPeriod];
  return checkPromise(value, { tariff: today, energies }).findings;
}

const BESIDE_CASES: readonly MessageCase[] = [
  {
    code: 'quote/share-beside-profile',
    when: '38 % and a profile',
    severity: 'note',
    make: () => prepared(profileOf(HOURS), {}).findings,
    at: 'selfUse',
    found: 'a share of own use of 38 % beside an interval profile',
    expected: 'one of them',
    remedy: 'Own use is counted from the profile, and the share is not used.',
  },
  {
    code: 'quote/battery-estimated',
    when: 'a battery and a share',
    severity: 'note',
    make: () =>
      prepared(null, { battery: { capacity: '5', power: '2.5', efficiency: '90', cost: '95000' } }).findings,
    at: 'battery',
    found: 'a battery, and no interval profile',
    expected: 'a profile, from which charging and discharging follow',
    remedy: 'What it brings is an estimate by the mean day of each month, and rather too high.',
  },
  {
    code: 'quote/promise-by-blocks',
    when: 'readings of a month without rates under a tariff with time blocks',
    make: () => promiseOf(BLOCKS, BLOCKS),
    at: '',
    found:
      '1 period without units of import@peak, import@normal, import@solar, export@peak, export@normal, export@solar, the first from 2025-04-01',
    expected: 'units of every time block and measure that the tariff of the quote bills',
    remedy:
      'Read the registers of the rates for every period, and name each for its time block in the account.',
  },
  {
    code: 'quote/promise-by-blocks',
    when: 'readings of a month under a tariff that nets inside each hour',
    make: () => promiseOf(WINDOWS, WINDOWS),
    at: '',
    found: '1 period without units of net-import, net-export, the first from 2025-04-01',
    expected: 'units of every time block and measure that the tariff of the quote bills',
    remedy:
      'Readings do not tell what windows of time leave: compare the bills with those of the quote one by one.',
  },
  {
    code: 'quote/promise-other-blocks',
    when: 'a tariff of today without time blocks',
    make: () => promiseOf(BLOCKS, demoTariff()),
    at: '',
    found: 'a tariff of today that bills by no time blocks',
    expected: "time blocks and windows of the quote's tariff (peak, normal, solar)",
    remedy:
      'Compare the bills with those of the quote one by one: units of other blocks are not those that were promised.',
  },
];

const admitting = (limit: string): Tariff =>
  demoTariff([
    '"scheme": "unit-netting",',
    `"scheme": "unit-netting", "plantLimit": { "clause": "NMR-2021 r. 5", ${limit} },`,
  ]);

const LIMIT_CASES: readonly MessageCase[] = [
  {
    code: 'quote/plant-not-admitted',
    when: '4 kWp where 3 kW are admitted',
    make: () => prepared(null, {}, admitting('"most": "3"')).findings,
    at: 'plant.kWp',
    found: 'a plant of 4 kWp',
    expected: 'at most 3 kW (NMR-2021 r. 5)',
    remedy: 'Offer a smaller plant, or another scheme that admits it.',
  },
  {
    // 80 % of 4 kW
    code: 'quote/plant-not-admitted',
    when: '4 kWp at a sanctioned load of 4 kW, of which 80 % are admitted',
    make: () => prepared(null, {}, admitting('"percentOfLoad": "80"')).findings,
    at: 'plant.kWp',
    found: 'a plant of 4 kWp',
    expected: 'at most 3.2 kW, 80 % of the sanctioned load (NMR-2021 r. 5)',
    remedy: 'Offer a smaller plant, or another scheme that admits it.',
  },
];

/** What can be said of an interval profile, of a battery, of both beside a share, and of the size of a plant. */
export const QUOTE_PROFILE_CASES: readonly MessageCase[] = [
  ...FORM_CASES,
  ...MONTH_CASES,
  ...WINDOW_CASES,
  ...BESIDE_CASES,
  ...LIMIT_CASES,
];
