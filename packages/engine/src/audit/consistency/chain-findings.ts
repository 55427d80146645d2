import type { FindingKind } from '../../quantity/index.ts';

type Values = Readonly<Record<string, string>>;
const of = (values: Values, key: string): string => values[key] ?? '';

/** What a printed bill can say that does not go with its account, its tariff or the bill before, by code. */
export const CHAIN_CONSISTENCY_FINDINGS = {
  'check/other-account': {
    severity: 'question',
    text: (v) => ({
      found: `a bill of the account ${of(v, 'printed')}`,
      expected: `the account ${of(v, 'own')}`,
      remedy: 'Take the bill out if it is of another account, or correct the number.',
    }),
  },
  'check/currency-changed': {
    severity: 'error',
    text: (v) => ({
      found: `a bill in ${of(v, 'printed')} after one in ${of(v, 'before')}`,
      expected: 'bills of one currency',
      remedy: 'Correct the currency, or take out the bill that is of another account.',
    }),
  },
  'check/other-currency': {
    severity: 'error',
    text: (v) => ({
      found: `a bill in ${of(v, 'printed')}`,
      expected: `${of(v, 'currency')}, the currency of the tariff`,
      remedy: 'Choose the tariff of this bill: its amounts cannot be set beside those of another currency.',
    }),
  },
  'check/bill-twice': {
    severity: 'error',
    text: (v) => ({
      found: `the bill ${[of(v, 'number'), 'from', of(v, 'from')].join(' ').trim()} to ${of(v, 'to')} twice`,
      expected: 'each bill once',
      remedy: 'Take one of the two out, or type the number of the other as it is printed.',
    }),
  },
  'check/other-meter': {
    severity: 'question',
    text: (v) => ({
      found: `the number ${of(v, 'printed')} for the ${of(v, 'meter')} meter`,
      expected: `${of(v, 'own')}, as the account has it`,
      remedy:
        'Compare the number on the meter itself: the bill may be of another meter, or the meter was replaced.',
    }),
  },
  'check/serial-changed': {
    severity: 'question',
    text: (v) => ({
      found: `the number ${of(v, 'printed')} for the ${of(v, 'meter')} meter, and ${of(v, 'before')} on the bill before`,
      expected: 'the same meter, unless it was replaced',
      remedy: 'If it was replaced, find the slip with the last and first readings of all registers.',
    }),
  },
  'check/days-overlap': {
    severity: 'question',
    text: (v) => ({
      found: `a bill from ${of(v, 'from')}, and the bill before to ${of(v, 'before')}: ${of(v, 'days')} days in both`,
      expected: 'a bill that begins on the day on which the one before ends',
      remedy: 'Compare both dates with the paper: days that are billed twice raise what goes by days.',
    }),
  },
  'check/days-missing': {
    severity: 'question',
    text: (v) => ({
      found: `a bill from ${of(v, 'from')}, and the bill before to ${of(v, 'before')}: ${of(v, 'days')} days in neither`,
      expected: 'a bill that begins on the day on which the one before ends',
      remedy: 'Type the bill in between too; if there is none, ask how those days are billed.',
    }),
  },
  'check/reading-not-handed-on': {
    severity: 'question',
    grouped: ['opening', 'closing'],
    text: (v) => ({
      found: `the register ${of(v, 'register')} beginning at ${of(v, 'opening')}, and ending at ${of(v, 'closing')} on the bill before`,
      expected: 'a period that begins with the reading that the one before ended with',
      remedy: 'Lay both bills side by side: units in between are billed twice, or never.',
    }),
  },
  'check/credit-not-handed-on': {
    severity: 'question',
    grouped: ['opening', 'closing'],
    text: (v) => ({
      found: `${of(v, 'opening')} brought forward (${of(v, 'ledger')}), and ${of(v, 'closing')} carried forward on the bill before`,
      expected: 'what the bill before carried forward',
      remedy:
        'Lay both bills side by side, and ask by which clause credit was taken off or added in between.',
    }),
  },
  'check/arrears-though-paid': {
    severity: 'question',
    grouped: ['arrears', 'paid'],
    text: (v) => ({
      found: `${of(v, 'arrears')} of bills before inside the total, and ${of(v, 'paid')} paid on ${of(v, 'on')}`,
      expected: 'no arrears of a bill that is paid',
      remedy: 'Show the receipt with its date and reference, and ask for the bill without them.',
    }),
  },
  'check/unknown-line': {
    severity: 'question',
    grouped: ['amount'],
    text: (v) => ({
      found: `a line "${of(v, 'charge')}" of ${of(v, 'amount')}`,
      expected: `lines of the tariff: ${of(v, 'known')}`,
      remedy:
        'Name the charge of the tariff that it is; if there is none, ask for the clause that allows it.',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
