import {
  keepPeriods,
  type Charge,
  type Finding,
  type LedgersRule,
  type TariffDocument,
  type UnitsInput,
  type UnitsPeriod,
} from '@unitbook/engine';
import { tariffOf } from '../support/make.ts';
import type { MessageCase } from './message-case.ts';

type Definition = NonNullable<LedgersRule['quantities']>[number];
type Ledger = NonNullable<LedgersRule['ledgers']>[number];

const words = (id: string, label = id) => ({ id, label, clause: 'T 1' }) as const;
const FIXED: Charge = { ...words('fixed', 'Fixed charge'), kind: 'fixed', amount: '100' };
const APRIL: UnitsPeriod = {
  from: '2025-04-01',
  to: '2025-05-01',
  quantities: { import: '120', export: '80' },
};
const MAY: UnitsPeriod = { ...APRIL, from: '2025-05-01', to: '2025-06-01' };

const ruleOf = (parts: Partial<LedgersRule>): LedgersRule => ({
  from: '2020-01-01',
  scheme: 'ledgers',
  clause: 'T 5',
  ...parts,
});

interface Parts extends Partial<Omit<UnitsInput, 'tariff'>> {
  readonly charges?: readonly Charge[];
  readonly rules?: TariffDocument['settlements'];
  readonly document?: Partial<TariffDocument>;
}

/** What is found when periods are billed; left out: April, at a fixed charge. */
const billed =
  ({ charges = [FIXED], rules = [ruleOf({})], document = {}, ...input }: Parts) =>
  (): readonly Finding[] =>
    keepPeriods({
      account: {},
      tariff: tariffOf(charges, { settlements: rules, ...document }),
      periods: [APRIL],
      withSavings: false,
      ...input,
    }).findings;

const defined = (...quantities: Definition[]) => [ruleOf({ quantities })];
const bank = (parts: Partial<Ledger>): Ledger => ({
  ...words('bank', 'Bank of units'),
  unit: 'kWh',
  adds: 'export',
  ...parts,
});
const closing = (close: Partial<NonNullable<Ledger['close']>>) => [
  ruleOf({ ledgers: [bank({ close: { clause: 'T 6', on: 'every-period', surplus: 'lapses', ...close } })] }),
];
const MEAN: Definition = {
  is: 'mean',
  ...words('average', 'Average'),
  of: 'import',
  periods: '3',
  through: 'this-period',
  whenFewer: 'refused',
  rounding: { step: '0.001', mode: 'half-up' },
};
/** A price that begins in May. */
const FUEL: Partial<TariffDocument> = {
  prices: {
    fuel: {
      is: 'series',
      clause: 'T 8',
      inForce: 'first-day',
      values: [{ from: '2025-05-01', rate: '2' }],
    },
  },
};
const PAID = { clause: 'T 6', on: 'every-period', surplus: 'paid' } as const;
const NETTING = {
  scheme: 'unit-netting',
  clause: 'T 5',
  carry: { clause: 'T 5' },
  close: { clause: 'T 6', on: '12-31', surplus: 'lapses' },
} as const;
const LOAD: Charge = {
  ...words('load', 'Load charge'),
  kind: 'per-kilowatt',
  on: 'sanctioned-load',
  rate: '9',
};
const RISES: UnitsPeriod = {
  ...APRIL,
  quantities: { ...APRIL.quantities, 'sanctioned-load': '4' },
  changes: [{ from: '2025-04-11', quantities: { 'sanctioned-load': '5' } }],
};

const GIVEN = 'the units or the power, from a register, the bill or the account';
const PRICE = {
  found: 'the price "fuel" is not in force on 2025-04-01',
  expected: 'a price for every day that is billed',
} as const;
const KNOWN_DAY = 'the day that the rule goes by';
const BALANCE = {
  found: '"Bank of units" would keep more than it had, or take in less than nothing',
  expected: '"keeps" between 0 and the balance brought forward, and "adds" of 0 or more',
  remedy: 'Let "keeps" name what a netting leaves of the ledger, and "adds" what it leaves of the export.',
} as const;
const NO_LEDGER = {
  expected: 'a rule that says what becomes of it',
  remedy: 'Close the ledger in the rule before, or let the new rule have a ledger of the same name.',
} as const;

const OF_QUANTITIES: readonly MessageCase[] = [
  {
    code: 'settlement/not-given',
    when: 'a ledger takes in what nobody gave',
    make: billed({
      rules: [ruleOf({ ledgers: [bank({})] })],
      periods: [{ ...APRIL, quantities: { import: '5' } }],
    }),
    at: 'periods.0',
    found: 'no "export" for this period, which the settlement rule needs',
    expected: GIVEN,
    remedy: 'Add "export" to the period, or to the account where it does not change.',
  },
  {
    code: 'settlement/not-given',
    when: 'unit netting lacks the import',
    make: billed({
      rules: [{ from: '2020-01-01', ...NETTING }],
      periods: [{ ...APRIL, quantities: { export: '5' } }],
    }),
    at: 'periods.0',
    found: 'no "import" for this period, which the settlement rule needs',
    expected: GIVEN,
    remedy: 'Add "import" to the period, or to the account where it does not change.',
  },
  {
    code: 'settlement/finer-than-units',
    when: 'a percentage has more than three decimals and nothing rounds it',
    make: billed({
      rules: defined({ is: 'percent', ...words('loss', 'Loss'), percent: '3.3335', of: ['import'] }),
    }),
    at: 'periods.0',
    // 120 × 3.3335 %
    found: '"Loss" (loss) comes to 4.0002, finer than a thousandth',
    expected: 'whole thousandths of a unit, or a rounding that makes them so',
    remedy: 'Add "rounding" to it in the tariff, as the rules have it.',
  },
  {
    code: 'settlement/divided-by-nothing',
    when: 'a quotient is by what was not given at all',
    make: billed({
      rules: defined({
        is: 'quotient',
        ...words('ratio', 'Ratio'),
        of: 'import',
        by: 'export',
        rounding: { step: '0.01', mode: 'half-up' },
      }),
      periods: [{ ...APRIL, quantities: { import: '5', export: '0' } }],
    }),
    at: 'periods.0',
    found: '"Ratio" divided by 0 or less',
    expected: 'a divisor above 0',
    remedy: 'Check the quantity it is divided by.',
  },
  {
    code: 'settlement/below-nothing',
    when: 'a netting is given a difference that is below 0',
    make: billed({
      rules: defined(
        { is: 'difference', ...words('more', 'More'), of: ['export', 'import'] },
        { is: 'netting', ...words('net'), supply: ['more'], demand: ['import'], routes: 'any' },
      ),
    }),
    at: 'periods.0',
    found: '-40 of "more" to be set off',
    expected: 'units of 0 or more',
    remedy: 'Use "excess" where a difference may fall below 0.',
  },
  {
    code: 'settlement/too-few-periods',
    when: 'a mean of three periods has one',
    make: billed({ rules: defined(MEAN) }),
    at: 'periods.0',
    found: '1 of the 3 periods that "Average" is the mean of',
    expected: 'all of them',
    remedy: 'Add the earlier periods.',
  },
  {
    code: 'settlement/past-unknown',
    when: 'a total counts what the rule before did not work out',
    make: billed({
      rules: [
        ruleOf({ through: '2025-04-30' }),
        ruleOf({
          from: '2025-05-01',
          quantities: [
            { is: 'excess', ...words('surplus', 'Surplus'), of: ['export', '50'] },
            {
              is: 'running-total',
              ...words('year', 'Year'),
              of: 'surplus',
              since: '04-01',
              through: 'this-period',
            },
          ],
        }),
      ],
      periods: [APRIL, MAY],
    }),
    at: 'periods.1',
    found: 'an earlier period without "surplus", which this one looks back to',
    expected: 'the quantity in every period that counts',
    remedy: 'Let the settlement rule of that time work it out too, or begin the count after it.',
  },
  {
    code: 'settlement/changed-inside',
    when: 'a power that the settlement works with changes',
    make: billed({
      rules: defined({
        is: 'product',
        ...words('limit', 'Limit'),
        of: ['sanctioned-load', '100'],
      }),
      periods: [RISES],
    }),
    at: 'periods.0',
    found: '"sanctioned-load" changed inside the period, and the settlement works with it',
    expected: 'one value for the whole period',
    remedy: 'Bill the days before and after the change as two periods, with a reading between them.',
  },
  {
    code: 'settlement/too-large',
    when: 'a product has more digits than can be counted',
    make: billed({
      rules: defined({ is: 'product', ...words('square', 'Square'), of: ['import', 'import'] }),
      periods: [{ ...APRIL, quantities: { import: '999999999', export: '0' } }],
    }),
    at: 'periods.0',
    found: 'a quantity of more than 15 digits on the way',
    expected: 'quantities that can be counted exactly',
    remedy: 'Check the readings and the factors of the tariff.',
  },
];

const OF_LEDGERS: readonly MessageCase[] = [
  {
    code: 'settlement/account-day-needed',
    when: 'a ledger closes on the day the account began, which is not told',
    make: billed({ rules: closing({ on: 'anniversary' }) }),
    at: 'periods.0',
    found: 'an account without "since", which "Bank of units" goes by',
    expected: KNOWN_DAY,
    remedy: 'Add "since" to the account.',
  },
  {
    code: 'settlement/account-day-needed',
    when: 'a ledger closes on the day its owner chose, who did not',
    make: billed({ rules: closing({ on: 'chosen' }) }),
    at: 'periods.0',
    found: 'an account without "settlementDay", which "Bank of units" goes by',
    expected: KNOWN_DAY,
    remedy: 'Add "settlementDay" to the account.',
  },
  {
    code: 'settlement/account-day-needed',
    when: 'a ledger closes every second year from a beginning that is not told',
    make: billed({ rules: closing({ on: ['04-15'], everyYears: '2' }) }),
    at: 'periods.0',
    found: 'an account without "since", which "Bank of units" goes by',
    expected: KNOWN_DAY,
    remedy: 'Add "since" to the account.',
  },
  {
    code: 'settlement/account-day-needed',
    when: 'a total begins anew on the day the account began, which is not told',
    make: billed({
      rules: defined({
        is: 'running-total',
        ...words('year', 'Year'),
        of: 'import',
        since: 'anniversary',
        through: 'this-period',
      }),
    }),
    at: 'periods.0',
    found: 'an account without "since", which "Year" goes by',
    expected: KNOWN_DAY,
    remedy: 'Add "since" to the account.',
  },
  {
    code: 'settlement/no-price',
    when: 'a ledger is paid at a price that is not yet in force',
    make: billed({
      rules: [
        ruleOf({
          ledgers: [
            bank({ close: PAID, payment: { clause: 'T 7', label: 'Paid', rate: 'fuel', inBill: 'same' } }),
          ],
        }),
      ],
      document: FUEL,
    }),
    at: 'periods.0',
    ...PRICE,
    remedy: 'Add the price of that time to the tariff.',
  },
  {
    code: 'settlement/no-price',
    when: 'unit netting pays at a price that is not yet in force',
    make: billed({
      rules: [
        {
          from: '2020-01-01',
          scheme: 'unit-netting',
          clause: 'T 5',
          close: { ...PAID, rate: 'fuel', inBill: 'same' },
        },
      ],
      periods: [{ ...APRIL, quantities: { import: '80', export: '120' } }],
      document: FUEL,
    }),
    at: 'periods.0',
    ...PRICE,
    remedy: 'Add the price of that time to the tariff.',
  },
  {
    code: 'settlement/ledger-out-of-balance',
    when: 'a ledger keeps more than it had',
    make: billed({ rules: [ruleOf({ ledgers: [bank({ keeps: 'import' })] })] }),
    at: 'periods.0',
    ...BALANCE,
  },
  {
    code: 'settlement/ledger-out-of-balance',
    when: 'a ledger takes in less than nothing',
    make: billed({
      rules: [
        ruleOf({
          quantities: [{ is: 'difference', ...words('more'), of: ['export', 'import'] }],
          ledgers: [bank({ adds: 'more' })],
        }),
      ],
    }),
    at: 'periods.0',
    ...BALANCE,
  },
  {
    code: 'settlement/credit-below-nothing',
    when: 'a ledger of money takes in a reward that is below 0',
    make: billed({
      charges: [
        FIXED,
        { ...words('reward', 'Reward'), kind: 'per-unit', on: 'export', rate: '-1' },
        {
          ...words('credit', 'Credit'),
          kind: 'credit',
          earned: ['reward'],
          ledger: 'bank',
          against: ['fixed'],
          left: 'carried',
        },
      ],
      rules: [ruleOf({ ledgers: [{ ...words('bank', 'Bank of units'), unit: 'money' }] })],
    }),
    at: 'periods.0',
    found: 'credit for "Bank of units" that comes to less than 0',
    expected: 'lines that earn 0 or more',
    remedy: 'Let what can fall below 0 be a charge of its own, not a credit.',
  },
  {
    code: 'settlement/balance-has-no-ledger',
    when: 'a new rule does not know the ledger',
    make: billed({
      rules: [ruleOf({ through: '2025-04-30', ledgers: [bank({})] }), ruleOf({ from: '2025-05-01' })],
      periods: [APRIL, MAY],
    }),
    at: 'periods.1',
    found: 'a balance of 80 in "bank", which the settlement rule from 2025-05-01 does not know',
    ...NO_LEDGER,
  },
  {
    code: 'settlement/balance-has-no-ledger',
    when: 'a credit of unit netting meets a rule of ledgers',
    make: billed({
      rules: [{ from: '2020-01-01', through: '2025-04-30', ...NETTING }, ruleOf({ from: '2025-05-01' })],
      periods: [{ ...APRIL, quantities: { import: '0', export: '80.5' } }, MAY],
    }),
    at: 'periods.1',
    found:
      'a balance of 80.5 in "Credit brought forward", which the settlement rule from 2025-05-01 does not know',
    ...NO_LEDGER,
  },
  {
    code: 'bill/no-price',
    when: 'a charge is at a price that is not yet in force',
    make: billed({
      charges: [{ ...words('fuel', 'Fuel'), kind: 'per-unit', on: 'import', rate: 'fuel' }],
      document: FUEL,
    }),
    at: 'periods.0',
    ...PRICE,
    remedy: 'Add the price of that time to the tariff, or bill only the periods it covers.',
  },
  {
    code: 'bill/change-unscaled',
    when: 'a power changes and no day rule says what each part bears',
    make: billed({
      charges: [LOAD],
      periods: [RISES],
      document: {
        versionChange: { rule: 'split-by-days', clause: 'T 3', units: 'exact', factor: 'days-of-part' },
      },
    }),
    at: 'periods.0',
    found: 'a change of the account inside the period, and "Load charge" that no day rule scales',
    expected: 'a day rule, so that each part bears its share only',
    remedy: 'Add "scaledBy" to it in the tariff, or let the account of one day bill the whole period.',
  },
];

/** Everything that can stand in the way of settling and billing a period under ledgers. */
export const SETTLED_CASES: readonly MessageCase[] = [...OF_QUANTITIES, ...OF_LEDGERS];
