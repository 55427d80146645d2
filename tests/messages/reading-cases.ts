import { readAccount, type Finding } from '@unitbook/engine';
import { accountText, type AccountParts } from '../support/demo.ts';
import type { MessageCase } from './message-case.ts';
import { FIRST, june, rows } from './rows.ts';

const account = (parts: AccountParts) => (): readonly Finding[] => readAccount(accountText(parts)).findings;

const ACCOUNT_CASES: readonly MessageCase[] = [
  {
    code: 'account/load-in-watts',
    when: 'the load of a home is 3000 kW',
    make: account({ sanctionedLoad: '3000', multiplyingFactor: '20' }),
    severity: 'question',
    at: '4:21',
    found: 'a sanctioned load of 3000 kW',
    expected: 'at most 100 kW for a home',
    remedy: 'Is that watts? Write 3 kW, or keep it if it is right.',
    offer: '3',
  },
  {
    code: 'account/not-above-zero',
    when: 'the plant has 0 kW',
    make: account({ plantCapacity: '0' }),
    at: '5:20',
    found: 'the plant capacity is 0',
    expected: 'a number above 0, at most 100000, with at most 3 decimals',
    remedy: 'Copy it from the bill, the sanction letter or the nameplate.',
  },
  {
    code: 'account/not-above-zero',
    when: 'the plant is one watt past the largest',
    make: account({ plantCapacity: '100000.001' }),
    at: '5:20',
    found: 'the plant capacity is 100000.001',
    expected: 'a number above 0, at most 100000, with at most 3 decimals',
    remedy: 'Copy it from the bill, the sanction letter or the nameplate.',
    isAmongOthers: true,
  },
  {
    code: 'account/blank',
    when: 'the opening credit is left blank',
    make: account({ openingCredit: '' }),
    severity: 'note',
    at: '6:20',
    found: 'nothing for the opening credit',
    expected: 'a number; a blank counts as 0',
    remedy: 'Nothing to do if that is right.',
  },
  {
    code: 'account/number-missing',
    when: 'the load is left blank',
    make: account({ sanctionedLoad: ' ' }),
    at: '4:21',
    found: 'nothing for the sanctioned load',
    expected: 'a number above 0',
    remedy: 'Copy it from the bill, the sanction letter or the nameplate.',
  },
  {
    code: 'account/credit-not-a-number',
    when: 'the opening credit is finer than a watt-hour',
    make: account({ openingCredit: '35.0001' }),
    at: '6:20',
    found: 'an opening credit of "35.0001"',
    expected: 'a number of units with at most 3 decimals; "0" for none',
    remedy: 'Copy the credit carried forward from the last bill.',
  },
  {
    code: 'account/factor-on-large-load',
    when: 'a connection of 12 kW has a factor of 1',
    make: account({ sanctionedLoad: '12' }),
    severity: 'question',
    at: '10:28',
    found: 'a multiplying factor of 1 on a connection of 12 kW',
    expected: 'often a meter on current transformers, with a factor above 1',
    remedy:
      'Does the nameplate say "×" and a number? Enter it, or keep 1 if the meter is connected directly.',
  },
];

const DAY_CASES: readonly MessageCase[] = [
  {
    code: 'reading/none',
    when: 'there is no reading',
    make: rows(),
    at: 'readings',
    found: '0 readings',
    expected: 'at least two, the first of which opens the first period',
    remedy: 'Add a reading. Every bill needs one at each end of its period.',
  },
  {
    code: 'reading/none',
    when: 'there is one reading',
    make: rows(FIRST),
    at: 'readings',
    found: '1 reading',
    expected: 'at least two, the first of which opens the first period',
    remedy: 'Add a reading. Every bill needs one at each end of its period.',
  },
  ...(
    [
      ['the day is missing', 'May 2025', 'the date "May 2025"'],
      ['there is no date', '', 'no date'],
    ] as const
  ).map(([when, date, found]): MessageCase => ({
    code: 'reading/no-day',
    when,
    make: rows(['2025-04-01', '1', '1'], [date, '2', '2']),
    at: 'readings.1.date',
    found,
    expected: 'the day of the reading, such as 2025-05-01',
    remedy: 'Look for "reading date" on the bill: from which day to which day? A month alone is not enough.',
  })),
  ...(
    [
      ['the year is left out', '1 May', '2025-05-01'],
      ['the year is left out and turns after the reading before', '1/3', '2026-03-01'],
    ] as const
  ).map(([when, date, offer]): MessageCase => ({
    code: 'reading/no-year',
    when,
    make: rows(['2025-04-01', '1', '1'], [date, '2', '2']),
    at: 'readings.1.date',
    found: `the date "${date}", without a year`,
    expected: 'the day of the reading, such as 2025-05-01',
    remedy: `Is it ${offer}?`,
    offer,
  })),
  {
    code: 'reading/no-year',
    when: 'the year of the first reading is left out',
    make: rows(['1 April', '1', '1'], ['2025-05-01', '2', '2']),
    at: 'readings.0.date',
    found: 'the date "1 April", without a year',
    expected: 'the day of the reading, such as 2025-05-01',
    remedy: 'Add the year.',
  },
  {
    code: 'reading/day-or-month',
    when: 'day and month could change places',
    make: rows(['2025-04-25', '1', '1'], ['1/5/2025', '2', '2']),
    isAmongOthers: true,
    severity: 'question',
    at: 'readings.1.date',
    found: '1/5/2025, read as 2025-05-01',
    expected: 'a date that can be read in one way',
    remedy: 'Keep it, or use 2025-01-05 if the month comes first.',
    offer: '2025-01-05',
  },
  {
    code: 'reading/day-not-after',
    when: 'two readings are of one day',
    make: rows(FIRST, ['2025-05-01', '4640.3', '3151.0']),
    at: 'readings.1.date',
    found: '2025-05-01, not after the reading before, 2025-05-01',
    expected: 'dates that go forward',
    remedy: 'Correct the date, or put the rows in order of time.',
  },
  {
    code: 'reading/day-in-future',
    when: 'a reading is dated tomorrow',
    make: rows(['2025-12-01', '4342.1', '2935.8'], ['2026-01-01', '4640.3', '3151.0']),
    at: 'readings.1.date',
    found: '2026-01-01, which is in the future',
    expected: 'a day up to today, 2025-12-31',
    remedy: 'Correct the date.',
  },
  {
    code: 'reading/days-unusual',
    when: 'a period has 5 days',
    make: rows(FIRST, ['2025-05-06', '4350.0', '2940.0']),
    severity: 'question',
    at: 'readings.1.date',
    found: '5 days since the reading before',
    expected: 'a bill of 20 to 70 days',
    remedy: 'Check both dates: the reading date counts, not the bill date. Keep it if it is right.',
  },
  {
    code: 'reading/days-differ',
    when: 'the bill says 30 days',
    make: june('4640.3', { printedDays: '30' }),
    severity: 'question',
    at: 'readings.1.date',
    found: 'dates 31 days apart, where the bill says 30 days',
    expected: 'as many days as the bill prints',
    remedy: 'Use the reading dates, not the date of the bill. Keep it if it is right.',
  },
  {
    code: 'reading/printed-days',
    when: 'the days of the bill are no number',
    make: june('4640.3', { printedDays: 'a month' }),
    at: 'readings.1.printedDays',
    found: '"a month" for the days printed on the bill',
    expected: 'a whole number of days, such as 31',
    remedy: 'Copy it from the bill, or leave it empty.',
  },
  {
    code: 'reading/estimated',
    when: 'a reading was estimated',
    make: june('4640.3', { status: 'estimated' }),
    severity: 'note',
    at: 'readings.1.status',
    found: 'an estimated reading',
    expected: 'an actual one',
    remedy: 'The next actual reading corrects it; keep a photo of the meter from about this day.',
  },
];

/** Everything that can be said of an account, and of the days of its readings. */
export const READING_CASES: readonly MessageCase[] = [...ACCOUNT_CASES, ...DAY_CASES];
