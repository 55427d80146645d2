import type { FindingKind } from '../../quantity/index.ts';

type Values = Readonly<Record<string, string>>;
const of = (values: Values, key: string): string => values[key] ?? '';

/** What one printed bill can say that cannot all be true, by code. */
export const BILL_CONSISTENCY_FINDINGS = {
  'check/lines-off-sum': {
    severity: 'error',
    grouped: ['lines', 'sum', 'difference'],
    text: (v) => ({
      found: `lines that come to ${of(v, 'lines')}, and a sum of ${of(v, 'sum')}: ${of(v, 'difference')} is in no line`,
      expected: 'lines, arrears, fees and corrections that come to the sum',
      remedy:
        'Look whether every line of the bill is typed. If it is, the bill is wrong by its own figures: have this put right first.',
    }),
  },
  'check/rounding-off-payable': {
    severity: 'error',
    grouped: ['sum', 'rounding', 'payable'],
    text: (v) => ({
      found: `${of(v, 'payable')} to be paid, and a sum of ${of(v, 'sum')} with a rounding of ${of(v, 'rounding')}`,
      expected: 'sum and rounding that come to what is to be paid',
      remedy: 'Compare the three figures with the paper. If they stand there so, have this put right first.',
    }),
  },
  'check/payable-far-from-sum': {
    severity: 'question',
    grouped: ['sum', 'payable'],
    text: (v) => ({
      found: `${of(v, 'payable')} to be paid, and lines that come to ${of(v, 'sum')}`,
      expected: 'no more between them than a rounding, less than 1',
      remedy: 'Type the lines that are missing, and arrears, fees or corrections that the bill adds.',
    }),
  },
  'check/rate-off-amount': {
    severity: 'question',
    grouped: ['units', 'amount', 'product'],
    text: (v) => ({
      found: `${of(v, 'amount')} for ${of(v, 'what')}, and ${of(v, 'units')} × ${of(v, 'rate')} = ${of(v, 'product')}`,
      expected: 'units times rate, rounded to the last digit of the amount',
      remedy:
        'Compare all three with the paper. A rate that is printed rounded, or scaled by days, can be why.',
    }),
  },
  'check/slabs-off-billed': {
    severity: 'question',
    grouped: ['parts', 'billed'],
    text: (v) => ({
      found: `parts of the energy charge for ${of(v, 'parts')} units in all, and ${of(v, 'billed')} units billed`,
      expected: 'parts that come to the units billed',
      remedy: 'Look whether every part is typed. If it is, ask which units the energy charge was taken on.',
    }),
  },
  'check/units-off-readings': {
    severity: 'question',
    grouped: ['units', 'advance', 'product'],
    text: (v) => ({
      found: `${of(v, 'units')} units of ${of(v, 'what')}, and readings ${of(v, 'advance')} apart times ${of(v, 'factor')} = ${of(v, 'product')}`,
      expected: 'the difference of the readings times the factor',
      remedy:
        'Compare the readings and the factor with the paper. A meter that was replaced, or another factor, can be why.',
    }),
  },
  'check/reading-back': {
    severity: 'question',
    grouped: ['previous', 'present'],
    text: (v) => ({
      found: `the register ${of(v, 'register')} at ${of(v, 'present')}, below ${of(v, 'previous')} before`,
      expected: 'a reading that is not below the one before, but where the register passes its full scale',
      remedy: 'Compare both with the meter. An estimate that was too high, or another meter, can be why.',
    }),
  },
  'check/export-above-generation': {
    severity: 'question',
    grouped: ['export', 'generation'],
    text: (v) => ({
      found: `${of(v, 'export')} units given to the grid, and ${of(v, 'generation')} made`,
      expected: 'no more given than made, with 3 % for the difference of two meters',
      remedy:
        'Look whether import and export stand in each other’s place, and whether the generation meter counts all phases.',
    }),
  },
  'check/use-below-zero': {
    severity: 'question',
    grouped: ['import', 'export', 'generation', 'use'],
    text: (v) => ({
      found: `a use of ${of(v, 'use')} units: ${of(v, 'import')} taken and ${of(v, 'generation')} made, less ${of(v, 'export')} given`,
      expected: 'a use of 0 or more',
      remedy: 'Compare the readings with the meters: one of the three cannot be right.',
    }),
  },
  'check/yield-implausible': {
    severity: 'question',
    grouped: ['generation'],
    text: (v) => ({
      found: `${of(v, 'generation')} units made in ${of(v, 'days')} days by a plant of ${of(v, 'capacity')} kWp`,
      expected: '0.3 to 7.5 units a day for each kWp',
      remedy:
        'Compare the generation readings and their factor with the meter, and the size with the invoice.',
    }),
  },
  'check/credit-below-zero': {
    severity: 'question',
    grouped: ['closing'],
    text: (v) => ({
      found: `a credit of ${of(v, 'closing')} carried forward (${of(v, 'ledger')})`,
      expected: 'a credit of 0 or more',
      remedy:
        'If the minus sign only marks a credit on this bill, type it without; else ask what the household is said to owe.',
    }),
  },
  'check/credit-made-up': {
    severity: 'question',
    grouped: ['opening', 'export', 'import', 'billed', 'closing', 'units'],
    text: (v) => ({
      found: `a credit of ${of(v, 'closing')} carried forward, ${of(v, 'units')} more than ${of(v, 'opening')} brought forward and ${of(v, 'export')} exported leave of ${of(v, 'import')} imported with ${of(v, 'billed')} billed`,
      expected: 'credit brought forward and export, less import, plus what is billed',
      remedy: 'Ask where the credit comes from, and keep its worth aside until that is answered.',
    }),
  },
  'check/credit-gone': {
    severity: 'question',
    grouped: ['opening', 'export', 'import', 'billed', 'closing', 'units'],
    text: (v) => ({
      found: `a credit of ${of(v, 'closing')} carried forward, ${of(v, 'units')} less than ${of(v, 'opening')} brought forward and ${of(v, 'export')} exported leave of ${of(v, 'import')} imported with ${of(v, 'billed')} billed`,
      expected: 'credit brought forward and export, less import, plus what is billed',
      remedy: 'Ask whether the units were paid out or lapsed, by which clause and in which bill.',
    }),
  },
  'check/days-off-dates': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'printed')} days, and ${of(v, 'days')} from ${of(v, 'from')} to ${of(v, 'to')}`,
      expected: 'the days from the reading before to the reading now',
      remedy: 'Compare the dates and the days with the paper: slabs and fixed charges can go by the days.',
    }),
  },
  'check/arrears-inside': {
    severity: 'question',
    grouped: ['arrears'],
    text: (v) => ({
      found: `${of(v, 'arrears')} of bills before inside the total`,
      expected: 'the charges of this period alone',
      remedy:
        'If the bills before are paid, take the receipt there; what is left is the bill of this period.',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
