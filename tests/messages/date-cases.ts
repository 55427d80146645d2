import { changedTariff } from './changed-tariff.ts';
import type { MessageCase } from './message-case.ts';

const DAYS_FOLLOW = 'each version to begin on the day after the one before ends';

/** Everything that can be wrong with the settlement and the dates of a tariff. */
export const DATE_CASES: readonly MessageCase[] = [
  {
    code: 'tariff/settlement-incomplete',
    when: 'surplus is paid at no rate',
    make: changedTariff('"rate": "2.60",\n        ', ''),
    at: '191:16',
    found: 'surplus that is paid, without its "rate" or "inBill"',
    expected: 'the rate per unit and whether the same or the next bill pays it',
    remedy: 'Add what is missing.',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'surplus lapses at a rate',
    make: changedTariff('"surplus": "paid"', '"surplus": "lapses"'),
    at: '191:16',
    found: 'surplus that lapses, with a "rate" or "inBill"',
    expected: 'no payment where nothing is paid',
    remedy: 'Take them out, or write "surplus": "paid".',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'a bank that closes once a year is not carried',
    make: changedTariff('"carry": { "clause": "NMR-2021 r. 7.2" },\n      ', ''),
    at: '192:15',
    found: 'units left over are kept until 03-31, but nothing carries them to the next period',
    expected: '"carry", or a bank that closes in every period',
    remedy: 'Add "carry" with its clause, or write "on": "every-period".',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'units are carried in a bank that closes in every period',
    make: changedTariff('"on": "03-31"', '"on": "every-period"'),
    at: '193:15',
    found: 'units that are carried, in a bank that closes in every period',
    expected: 'no "carry" and an excess that lapses, or a day of the year on which the bank closes',
    remedy: 'Take out what carries them, or write the day as mm-dd.',
  },
  {
    code: 'tariff/step-not-positive',
    when: 'the rate of surplus is below 0',
    make: changedTariff('"rate": "2.60"', '"rate": "-2.60"'),
    at: '195:17',
    found: '"rate" is -2.60',
    expected: 'a number above 0',
    remedy: 'Correct the number.',
  },
  ...(
    [
      [
        'the day after the last of a month',
        '"from": "2024-04-01"',
        '"from": "2024-04-31"',
        '119:15',
        '2024-04-31',
      ],
      [
        '29 February of a common year',
        '"through": "2024-03-31"',
        '"through": "2023-02-29"',
        '52:18',
        '2023-02-29',
      ],
      ['30 February as the day of settlement', '"on": "03-31"', '"on": "02-30"', '193:15', '02-30'],
    ] as const
  ).map(([when, from, to, at, day]): MessageCase => ({
    code: 'tariff/no-such-day',
    when,
    make: changedTariff(from, to),
    at,
    found: `"${day}"`,
    expected: 'a day of the calendar',
    remedy: 'Correct the date.',
  })),
  {
    code: 'tariff/ends-before-it-begins',
    when: 'the last day is before the first',
    make: changedTariff('"through": "2024-03-31"', '"through": "2023-03-31"'),
    at: '49:5',
    found: 'in force from 2023-04-01 through 2023-03-31',
    expected: 'a last day on or after the first',
    remedy: 'Correct one of the two dates.',
    isAmongOthers: true,
  },
  {
    code: 'tariff/gap',
    when: 'two days have no charges',
    make: changedTariff('"through": "2024-03-31"', '"through": "2024-03-29"'),
    at: '119:15',
    found: 'no version of the charges in force from 2024-03-30 through 2024-03-31',
    expected: DAYS_FOLLOW,
    remedy: 'Correct the dates of "TO-2023" or "TO-2024", or add what was in force between.',
  },
  {
    code: 'tariff/overlap',
    when: 'ten days have charges twice',
    make: changedTariff('"through": "2024-03-31"', '"through": "2024-04-10"'),
    at: '119:15',
    found: 'two versions of the charges in force from 2024-04-01 through 2024-04-10',
    expected: 'one on every day',
    remedy: 'Correct the dates of "TO-2023" or "TO-2024".',
  },
];
