import {
  keepPeriods,
  readAccount,
  type Finding,
  type UnitsAccount,
  type UnitsPeriod,
} from '@unitbook/engine';
import { accountText, changed, goodTariff } from '../support/demo.ts';
import { LEDGER_TARIFF } from '../support/ledgers.ts';
import type { MessageCase } from './message-case.ts';

const PERIOD: UnitsPeriod = {
  from: '2025-04-01',
  to: '2025-05-01',
  quantities: { import: '120', export: '80' },
};

/** What is found in periods of the tariff of ledgers; left out: one period that has nothing wrong. */
const kept =
  (periods: readonly Partial<UnitsPeriod>[], account: UnitsAccount = {}) =>
  (): readonly Finding[] =>
    keepPeriods({
      account,
      tariff: goodTariff(LEDGER_TARIFF),
      periods: periods.map((one) => ({ ...PERIOD, ...one })),
    }).findings;

const account = (from: string, to: string) => (): readonly Finding[] =>
  readAccount(changed(accountText(), from, to)).findings;

const KNOWN =
  '"import", "export", "generation", "self-consumption", "total-use", "sanctioned-load", "plant-capacity", "shared"';
const NUMBER = {
  expected: 'a number of 0 or more with at most 9 digits and 3 decimals (8 for money)',
  remedy: 'Write it like "300" or "12.5".',
} as const;
const DAY = { expected: 'a day of the calendar', remedy: 'Correct the date.' } as const;
const INSIDE = {
  expected: 'days after the first and before the end of the period, in order of time',
  remedy: 'Correct the date, or give the new value for the whole of the next period.',
} as const;
const FOLLOWS = 'each period to begin where the one before ends';
const LOAD = { 'sanctioned-load': '5' };

/** Everything that can be wrong with periods of which the units are given. */
export const UNITS_CASES: readonly MessageCase[] = [
  {
    code: 'period/unknown-quantity',
    when: 'the tariff has none of that name',
    make: kept([{ quantities: { import: '120', export: '80', r7: '3' } }], { registers: { r1: 'import' } }),
    at: 'periods.0.quantities.r7',
    found: 'the quantity "r7"',
    expected: `a quantity that can be given, not one that is worked out: ${KNOWN}, "r1"`,
    remedy: 'Correct the name, leave it out, or map the register to its quantity in the account.',
  },
  {
    code: 'period/bad-register',
    when: 'a register of the account counts nothing that the tariff knows',
    make: kept([{ quantities: { r1: '120', export: '80' } }], { registers: { r1: 'imports' } }),
    at: 'account.registers.r1',
    found: 'the register "r1" counting "imports"',
    expected: `a quantity that can be given: ${KNOWN}`,
    remedy: 'Correct the name of the quantity.',
  },
  {
    code: 'period/does-not-add-up',
    when: 'total use is given and is not import and own use',
    make: kept([{ quantities: { import: '120', export: '80', generation: '100', 'total-use': '150' } }]),
    at: 'periods.0.quantities',
    found: '150 given as "total-use", where the other quantities come to 140',
    expected: 'a total that its parts make up',
    remedy: 'Correct one of them, or leave the total out: it is worked out.',
  },
  {
    code: 'period/not-a-quantity',
    when: 'units are below 0',
    make: kept([{ quantities: { import: '-1', export: '80' } }]),
    at: 'periods.0.quantities.import',
    found: '"-1" for "import"',
    ...NUMBER,
  },
  {
    code: 'period/not-a-quantity',
    when: 'units are finer than a watt-hour',
    make: kept([{ quantities: { import: '1.0005', export: '80' } }]),
    at: 'periods.0.quantities.import',
    found: '"1.0005" for "import"',
    ...NUMBER,
  },
  {
    code: 'period/not-a-quantity',
    when: 'units have ten digits',
    make: kept([{ quantities: { import: '1234567890', export: '80' } }]),
    at: 'periods.0.quantities.import',
    found: '"1234567890" for "import"',
    ...NUMBER,
  },
  {
    code: 'period/not-a-quantity',
    when: 'a balance of units is finer than a watt-hour',
    make: kept([{}], { opening: { bank: '1.0005', rewards: '0.12345678' } }),
    at: 'account.opening.bank',
    found: '"1.0005" for "bank"',
    ...NUMBER,
  },
  {
    code: 'period/quantity-twice',
    when: 'a quantity and the register that counts it are given',
    make: kept([{ quantities: { import: '120', r1: '120', export: '80' } }], { registers: { r1: 'import' } }),
    at: 'periods.0.quantities.r1',
    found: '"import" a second time',
    expected: 'each quantity once in a period',
    remedy: 'Keep one: the quantity itself, or the register that counts it.',
  },
  {
    code: 'period/unknown-ledger',
    when: 'an account brings forward what no ledger takes',
    make: kept([{}], { opening: { credit: '5' } }),
    at: 'account.opening.credit',
    found: 'a balance of "credit"',
    expected: 'a ledger of the tariff: "bank", "rewards"',
    remedy: 'Correct the name.',
  },
  {
    code: 'period/no-such-day',
    when: 'a period ends on 31 April',
    make: kept([{ to: '2025-04-31' }]),
    at: 'periods.0.to',
    found: '"2025-04-31"',
    ...DAY,
  },
  {
    code: 'period/no-such-day',
    when: 'an account begins on 29 February of a common year',
    make: kept([{}], { since: '2025-02-29' }),
    at: 'account.since',
    found: '"2025-02-29"',
    ...DAY,
  },
  {
    code: 'period/no-such-day',
    when: 'its owner chose a day that no year has',
    make: kept([{}], { settlementDay: '02-30' }),
    at: 'account.settlementDay',
    found: '"02-30"',
    ...DAY,
  },
  {
    code: 'period/ends-before-it-begins',
    when: 'a period has no day',
    make: kept([{ to: '2025-04-01' }]),
    at: 'periods.0',
    found: 'a period from 2025-04-01 to 2025-04-01',
    expected: 'a period that ends after it begins; "to" is the day on which the next one begins',
    remedy: 'Correct one of the two dates.',
  },
  {
    code: 'period/change-outside',
    when: 'a power changes on the first day',
    make: kept([{ changes: [{ from: '2025-04-01', quantities: LOAD }] }]),
    at: 'periods.0.changes.0.from',
    found: 'a change on 2025-04-01',
    ...INSIDE,
  },
  {
    code: 'period/change-outside',
    when: 'a power changes on the day after the last',
    make: kept([{ changes: [{ from: '2025-05-01', quantities: LOAD }] }]),
    at: 'periods.0.changes.0.from',
    found: 'a change on 2025-05-01',
    ...INSIDE,
  },
  {
    code: 'period/change-outside',
    when: 'changes are out of order',
    make: kept([
      {
        changes: [
          { from: '2025-04-20', quantities: LOAD },
          { from: '2025-04-10', quantities: LOAD },
        ],
      },
    ]),
    at: 'periods.0.changes.1.from',
    found: 'a change on 2025-04-10',
    ...INSIDE,
  },
  {
    code: 'period/not-changeable',
    when: 'units change from a day on',
    make: kept([{ changes: [{ from: '2025-04-10', quantities: { import: '5' } }] }]),
    at: 'periods.0.changes.0.quantities.import',
    found: '"import", counted in kWh, changed inside the period',
    expected: 'a power or a class: what is counted has no other value from a day on',
    remedy: 'Give what was counted in the whole period.',
  },
  {
    code: 'period/gap',
    when: 'a day is between two periods',
    make: kept([{}, { from: '2025-05-02', to: '2025-06-01' }]),
    at: 'periods.1.from',
    found: 'a period that begins on 2025-05-02, later than the one before it ends',
    expected: FOLLOWS,
    remedy: 'Add what is between them, or correct the date.',
  },
  {
    code: 'period/overlaps',
    when: 'a period begins on the last day of the one before',
    make: kept([{}, { from: '2025-04-30', to: '2025-06-01' }]),
    at: 'periods.1.from',
    found: 'a period that begins on 2025-04-30, before the one before it ends',
    expected: FOLLOWS,
    remedy: 'Correct the date.',
  },
  {
    code: 'account/no-such-day',
    when: 'an account begins on 31 April',
    make: account('"openingCredit"', '"since": "2025-04-31", "openingCredit"'),
    at: '6:12',
    found: '"2025-04-31"',
    expected: 'a day of the calendar, as yyyy-mm-dd',
    remedy: 'Correct the date.',
  },
  {
    code: 'account/no-such-day',
    when: 'its owner chose a day that no year has',
    make: account('"openingCredit"', '"settlementDay": "02-30", "openingCredit"'),
    at: '6:20',
    found: '"02-30"',
    expected: 'a day of the calendar, as mm-dd',
    remedy: 'Correct the date.',
  },
];
