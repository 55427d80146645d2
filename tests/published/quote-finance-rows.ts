import { parseDay, quotientText, shareOut, wholeToDecimal, type DayNumber } from '@unitbook/engine';
import * as finance from '../../packages/engine/src/quote/finance/index.ts';
import type { SOURCES } from './quote-finance-sources.ts';

/** A value as the engine gives it: a number is compared as printed, or within a tolerance. */
type Value = number | string | null | undefined;

/** A reference value: the number of its row, and what the engine makes of its inputs. */
export interface FinanceRow {
  readonly row: number;
  readonly of: string;
  readonly source: keyof typeof SOURCES;
  readonly got: () => readonly Value[];
  /** As published; a number is compared to as many decimals as stand here. */
  readonly expected: readonly string[];
  /** Where the published digits are no rounding of the value: how far it may be off. */
  readonly within?: number;
}

const day = (text: string): DayNumber => {
  const found = parseDay(text);
  if (found === null) throw new RangeError(text);
  return found;
};

const dated = (flows: Readonly<Record<string, number>>): readonly finance.DatedFlow[] =>
  Object.entries(flows).map(([text, amount]) => ({ day: day(text), amount }));

const rates = (...flows: readonly number[]): readonly number[] => finance.internalRates(flows).rates;

/** Spreadsheets count what is paid below 0. */
const paid = (payments: finance.LevelPayments): number => -finance.levelPayment(payments);

const PAISE = { step: '0.01', mode: 'half-up' } as const;

/** The instalment of a loan as text. */
function instalment(terms: Omit<finance.LoanTerms, 'rounding'>, step = '0.01'): string {
  const { instalment: amount, places } = finance.loanSchedule({ ...terms, rounding: { ...PAISE, step } });
  return wholeToDecimal(amount, places);
}

/** A schedule as lines payment|interest|principal|balance. */
function schedule(terms: Omit<finance.LoanTerms, 'rounding'>): readonly string[] {
  const { lines, places } = finance.loanSchedule({ ...terms, rounding: PAISE });
  return lines.map(({ payment, interest, principal, balance }) =>
    [payment, interest, principal, balance].map((amount) => wholeToDecimal(amount, places)).join('|'),
  );
}

const CASH = [-10_000, 3000, 4200, 6800];
const SHOP = [8000, 9200, 10_000, 12_000, 14_500];
const STRIP_MINE = [-1.6, 10, -10];
const XIRR_FLOWS = dated({
  '2008-01-01': -10_000,
  '2008-03-01': 2750,
  '2008-10-30': 4250,
  '2009-02-15': 3250,
  '2009-04-01': 2750,
});
const TWO_DAYS = dated({ '2008-01-01': -2500, '2008-09-01': 2750 });
const FISHING = [-120_000, 39_000, 30_000, 21_000, 37_000, 46_000];
const HOUSE = { rate: 0.09 / 12, periods: 360, amount: 125_000 };
const TWELFTH = { rate: 0.1 / 12, periods: 24, amount: 2000 };
const LAKHS = { amount: '500000', yearlyPercent: '10', months: 60 };
const AGE = { compound: 'compound', linear: 'linear' } as const;

/** What rows 74 and 75 list: power after 25 years and energy of 25 years, compound and linear. */
const aged = (rate: number): readonly number[] => [
  finance.powerLeft({ kind: AGE.compound, rate }, 25),
  finance.powerLeft({ kind: AGE.linear, rate }, 25),
  finance.lifetimeEnergy({ kind: AGE.compound, rate }, 25),
  finance.lifetimeEnergy({ kind: AGE.linear, rate }, 25),
];

/** What studies of a title found. */
const studied = (title: string): readonly string[] =>
  finance.DEGRADATION_STUDIES.filter((one) => one.title.startsWith(title)).map(
    ({ of, measure, percent, band }) =>
      `${of} ${measure} ${percent.join('-')}${band === null ? '' : ` (${band.join('-')})`}`,
  );

const PRESENT_VALUES: readonly FinanceRow[] = [
  {
    row: 1,
    of: 'NPV, first flow at the end of period 1',
    source: 'npv',
    got: () => [finance.spreadsheetPresentValue(0.1, CASH)],
    expected: ['1188.44'],
  },
  {
    row: 2,
    of: 'the same, first flow now',
    source: 'npmFinancial',
    got: () => [finance.presentValue(0.1, CASH)],
    expected: ['1307.29'],
  },
  {
    row: 3,
    of: 'an outlay now and NPV of what follows',
    source: 'npv',
    got: () => [
      -40_000 + finance.spreadsheetPresentValue(0.08, SHOP),
      finance.presentValue(0.08, [-40_000, ...SHOP]),
    ],
    expected: ['1922.06', '1922.06'],
  },
  {
    row: 4,
    of: 'the same with a loss in year 6',
    source: 'npv',
    got: () => [-40_000 + finance.spreadsheetPresentValue(0.08, [...SHOP, -9000])],
    expected: ['-3749.47'],
  },
  {
    row: 5,
    of: 'NPV at 10 %',
    source: 'formCalc',
    got: () => [finance.spreadsheetPresentValue(0.1, [500, 1500, 4000, 10_000])],
    expected: ['11529.60863329007'],
    within: 1e-8,
  },
  {
    row: 6,
    of: 'NPV of one flow',
    source: 'formCalc',
    got: () => [finance.spreadsheetPresentValue(0.065, [5000])],
    expected: ['4694.83568075117'],
    within: 1e-8,
  },
  {
    row: 7,
    of: 'NPV by months',
    source: 'formCalc',
    got: () => [finance.spreadsheetPresentValue(0.0275 / 12, [50, 60, 40, 100, 25])],
    expected: ['273.14193838457'],
    within: 1e-8,
  },
  {
    row: 8,
    of: 'NPV, and what counting from now would give',
    source: 'spreadNpv',
    got: () => [
      finance.spreadsheetPresentValue(0.065, [-10_000, 3000, 3400, 7700]),
      finance.presentValue(0.065, [-10_000, 3000, 3400, 7700]),
    ],
    expected: ['2055.38', '2188.98'],
  },
  {
    row: 25,
    of: 'XNPV at 9 %',
    source: 'xnpv',
    got: () => [finance.datedPresentValue(0.09, XIRR_FLOWS), finance.datedPresentValue(0.09, XIRR_FLOWS)],
    expected: ['2086.6476', '2086.65'],
  },
];

const RATES: readonly FinanceRow[] = [
  {
    row: 9,
    of: 'IRR after four years',
    source: 'irr',
    got: () => [...rates(-70_000, 12_000, 15_000, 18_000, 21_000)],
    expected: ['-0.021244848273'],
    within: 1e-9,
  },
  {
    row: 10,
    of: 'IRR after five years',
    source: 'irr',
    got: () => [...rates(-70_000, 12_000, 15_000, 18_000, 21_000, 26_000)],
    expected: ['0.086630948037'],
    within: 1e-9,
  },
  {
    row: 11,
    of: 'IRR after two years, without a guess',
    source: 'irr',
    got: () => [...rates(-70_000, 12_000, 15_000)],
    expected: ['-0.443506941335'],
    within: 1e-9,
  },
  {
    row: 12,
    of: 'IRR',
    source: 'numpy',
    got: () => [...rates(-250_000, 100_000, 150_000, 200_000, 250_000, 300_000)],
    expected: ['0.5672303344358536'],
    within: 1e-12,
  },
  {
    row: 13,
    of: 'IRR',
    source: 'numpyMemory',
    got: () => [...rates(-100, 39, 59, 55, 20)],
    expected: ['0.28095'],
  },
  {
    row: 14,
    of: 'IRR of a loss',
    source: 'numpyMemory',
    got: () => [...rates(-100, 0, 0, 74)],
    expected: ['-0.0955'],
  },
  {
    row: 15,
    of: 'IRR',
    source: 'numpyMemory',
    got: () => [...rates(-100, 100, 0, 7)],
    expected: ['0.06206'],
  },
  {
    row: 16,
    of: 'two IRRs, and NPV at 10 %',
    source: 'mine',
    got: () => [...rates(...STRIP_MINE), finance.presentValue(0.1, STRIP_MINE)],
    expected: ['0.250000000', '4.000000000', '-0.77'],
  },
  {
    row: 17,
    of: 'two IRRs',
    source: 'exam',
    got: () => [...rates(-2000, 10_000, -10_000)],
    expected: ['0.381966011250', '2.618033988750'],
    within: 1e-9,
  },
  {
    row: 18,
    of: 'four IRRs: 1/4, 1/3, 3/7, 2/3',
    source: 'fourRates',
    got: () => [...rates(-252, 1431, -3035, 2850, -1000)],
    expected: ['0.250000000', '0.333333333', '0.428571429', '0.666666667'],
  },
  {
    row: 19,
    of: 'two IRRs, one below 0',
    source: 'negativeRate',
    got: () => [...rates(-39_800, 63_800, -12_800)],
    expected: ['-0.7649', '0.3679'],
  },
  {
    row: 22,
    of: 'no IRR though signs change',
    source: 'noRate',
    got: () => [finance.countOfRates(finance.internalRates([1000, -3000, 2500]))],
    expected: ['none'],
  },
  {
    row: 23,
    of: 'no IRR where no sign changes',
    source: 'irr',
    got: () => [
      finance.countOfRates(finance.internalRates([100, 50, 50])),
      finance.countOfRates(finance.internalRates([-100, -50, -50])),
    ],
    expected: ['none', 'none'],
  },
  {
    // The published digits carry the stop rule of the solver; the root is 0.373362533519.
    row: 24,
    of: 'XIRR',
    source: 'xirr',
    got: () => [...finance.datedInternalRates(XIRR_FLOWS).rates],
    expected: ['0.373362535'],
    within: 1e-8,
  },
  {
    row: 26,
    of: 'XIRR and XNPV at 10 %',
    source: 'range',
    got: () => [...finance.datedInternalRates(TWO_DAYS).rates, finance.datedPresentValue(0.1, TWO_DAYS)],
    expected: ['0.1532', '80.25'],
  },
  {
    row: 27,
    of: 'a year of 365 days over a leap day, against whole years',
    source: 'xirr',
    got: () => [
      ...finance.datedInternalRates(dated({ '2023-01-01': -1000, '2025-01-01': 1210 })).rates,
      ...rates(-1000, 0, 1210),
    ],
    expected: ['0.099857', '0.100000'],
  },
  {
    row: 28,
    of: 'MIRR',
    source: 'mirr',
    got: () => [finance.modifiedInternalRate(FISHING, { finance: 0.1, reinvestment: 0.12 })],
    expected: ['0.1261'],
  },
  {
    row: 29,
    of: 'MIRR of three years, and at another rate',
    source: 'mirr',
    got: () => [
      finance.modifiedInternalRate(FISHING.slice(0, 4), { finance: 0.1, reinvestment: 0.12 }),
      finance.modifiedInternalRate(FISHING, { finance: 0.1, reinvestment: 0.14 }),
    ],
    expected: ['-0.0480', '0.1348'],
  },
  {
    row: 59,
    of: 'rates of a quarter, a month, and without inflation',
    source: 'effect',
    got: () => [
      finance.effectiveRate(0.0525, 4),
      finance.compoundedRate(0.01, 12),
      finance.realRate(0.08, 0.05),
    ],
    expected: ['0.0535427', '0.126825', '0.0285714'],
  },
];

const LOANS: readonly FinanceRow[] = [
  {
    row: 31,
    of: 'PMT at the end and at the begin',
    source: 'pmt',
    got: () => [
      paid({ rate: 0.08 / 12, periods: 10, amount: 10_000 }),
      paid({ rate: 0.08 / 12, periods: 10, amount: 10_000, paid: 'begin' }),
    ],
    expected: ['-1037.03', '-1030.16'],
  },
  {
    row: 32,
    of: 'PMT to save an amount',
    source: 'pmt',
    got: () => [paid({ rate: 0.06 / 12, periods: 18 * 12, amount: 0, saved: 50_000 })],
    expected: ['-129.08'],
  },
  {
    row: 33,
    of: 'PMT at the end and at the begin',
    source: 'spreadPmt',
    got: () => [
      paid({ rate: 0.06 / 12, periods: 15, amount: 5000 }),
      paid({ rate: 0.06 / 12, periods: 15, amount: 5000, paid: 'begin' }),
    ],
    expected: ['-346.82', '-345.10'],
  },
  {
    row: 34,
    of: 'PPMT',
    source: 'ppmt',
    got: () => [
      -finance.principalPart(TWELFTH, 1),
      -finance.principalPart({ rate: 0.08, periods: 10, amount: 200_000 }, 10),
    ],
    expected: ['-75.62', '-27598.05'],
  },
  {
    row: 35,
    of: 'IPMT',
    source: 'ipmt',
    got: () => [
      -finance.interestPart({ rate: 0.1 / 12, periods: 36, amount: 8000 }, 1),
      -finance.interestPart({ rate: 0.1, periods: 3, amount: 8000 }, 3),
    ],
    expected: ['-66.67', '-292.45'],
  },
  {
    row: 36,
    of: 'CUMIPMT',
    source: 'cumipmt',
    got: () => [-finance.interestOf(HOUSE, { from: 13, through: 24 }), -finance.interestPart(HOUSE, 1)],
    expected: ['-11135.23213', '-937.5'],
  },
  {
    row: 37,
    of: 'CUMPRINC',
    source: 'cumprinc',
    got: () => [-finance.principalOf(HOUSE, { from: 13, through: 24 }), -finance.principalPart(HOUSE, 1)],
    expected: ['-934.1071234', '-68.27827118'],
  },
  {
    // The published interest is 60 instalments that were not rounded, less the loan.
    row: 38,
    of: 'an instalment, and the interest of 60 that are not rounded',
    source: 'instalment',
    got: () => [
      instalment({ ...LAKHS, kind: 'reducing' }),
      finance.interestOf({ rate: 0.1 / 12, periods: 60, amount: 500_000 }, { from: 1, through: 60 }),
    ],
    expected: ['10623.52', '137411.34'],
  },
  {
    row: 39,
    of: 'an instalment in whole rupees, and in paise',
    source: 'bank',
    got: () => {
      const terms = { amount: '1000000', yearlyPercent: '7.2', months: 120, kind: 'reducing' } as const;
      return [instalment(terms, '1'), instalment(terms)];
    },
    expected: ['11714', '11714.19'],
  },
  {
    row: 40,
    of: 'a flat loan',
    source: 'own',
    got: () => [instalment({ ...LAKHS, kind: 'flat' })],
    expected: ['12500.00'],
  },
  {
    row: 41,
    of: 'a loan without interest',
    source: 'own',
    got: () => {
      const terms = { amount: '1200', yearlyPercent: '0', months: 12, kind: 'reducing' } as const;
      return [...new Set(schedule(terms).map((line) => line.split('|').slice(0, 3).join('|')))];
    },
    expected: ['100.00|0.00|100.00'],
  },
  {
    row: 42,
    of: 'a schedule rounded to paise',
    source: 'own',
    got: () => schedule({ amount: '1000', yearlyPercent: '12', months: 3, kind: 'reducing' }),
    expected: ['340.02|10.00|330.02|669.98', '340.02|6.70|333.32|336.66', '340.03|3.37|336.66|0.00'],
  },
];

const PAYBACKS: readonly FinanceRow[] = [
  {
    row: 43,
    of: 'simple payback',
    source: 'paybackPage',
    got: () => [finance.simplePayback([-10_000, 3000, 3000, 3000, 3000]).first],
    expected: ['3.33'],
  },
  {
    row: 44,
    of: 'simple payback within year 3',
    source: 'projectC',
    got: () => [finance.simplePayback([-1300, 600, 570, 610, 360, 160]).first],
    expected: ['2.2131'],
  },
  {
    row: 48,
    of: 'a part replaced in year 3: first and last recovery',
    source: 'own',
    got: () => {
      const { first, last, cumulative } = finance.simplePayback([-100, 60, 60, -50, 20, 20, 20]);
      return [first, last, cumulative.join(' ')];
    },
    expected: ['1.6667', '4.5000', '-100 -40 20 -30 -10 10 30'],
  },
  {
    row: 49,
    of: 'never recovered',
    source: 'own',
    got: () => [finance.simplePayback([-100, 30, 30]).first, finance.simplePayback([-100, 30, 30]).last],
    expected: ['null', 'null'],
  },
  {
    // 6000 ÷ (1500 − 300).
    row: 50,
    of: 'savings less other costs against the outlay, nothing discounted',
    source: 'paybackRule',
    got: () => [finance.simplePayback([-6000, ...Array.from({ length: 10 }, () => 1500 - 300)]).first],
    expected: ['5.0'],
  },
  {
    // 30 % of 6,00,000 is left to pay; 57,449.2 units at 3.16 in 4 years and 10 months.
    row: 51,
    of: 'a published rooftop: recovered, and units to break even',
    source: 'rooftop',
    got: () => {
      const recovered = quotientText(574_492n * 316n, 1000, 2);
      const payback = finance.simplePayback([-18_000_000, Number(recovered.replace('.', ''))]);
      return [recovered, 57_449.2 * (payback.first ?? NaN)];
    },
    expected: ['181539.47', '56962.03'],
  },
];

const FACTORS: readonly FinanceRow[] = [
  {
    row: 52,
    of: 'UPV(3 %, 20), SPV(3 %, 20), UPV(3 %, 25)',
    source: 'handbook',
    got: () => [
      finance.uniformPresentValueFactor(0.03, 20),
      finance.singlePresentValueFactor(0.03, 20),
      finance.uniformPresentValueFactor(0.03, 25),
    ],
    expected: ['14.88', '0.554', '17.41'],
  },
  {
    row: 54,
    of: 'CRF(8 %, 10)',
    source: 'homework',
    got: () => [finance.capitalRecoveryFactor(0.08, 10)],
    expected: ['0.14903'],
  },
  {
    row: 55,
    of: 'CRF(7 %, 20), (10 %, 25), (8 %, 25), (5 %, 20)',
    source: 'manual',
    got: () =>
      (
        [
          [0.07, 20],
          [0.1, 25],
          [0.08, 25],
          [0.05, 20],
        ] as const
      ).map(([rate, years]) => finance.capitalRecoveryFactor(rate, years)),
    expected: ['0.094393', '0.110168', '0.093679', '0.080243'],
  },
  {
    // The page cuts 0.1160 to 0.1159.
    row: 56,
    of: 'simple levelised cost without and with upkeep',
    source: 'homework',
    got: () =>
      [0, 0.04].map((upkeepPerUnit) =>
        finance.simpleLevelisedCost(0.08, {
          costPerKilowatt: 1500,
          years: 10,
          capacityFactor: 0.22,
          upkeepPerUnit,
        }),
      ),
    expected: ['0.1160', '0.1560'],
  },
];

const YIELDS: readonly FinanceRow[] = [
  {
    row: 72,
    of: 'degradation found in 2013',
    source: 'review',
    got: () => studied('Photovoltaic Degradation Rates'),
    expected: ['modules median 0.5'],
  },
  {
    row: 72,
    of: 'degradation found in 2016',
    source: 'compendium',
    got: () => studied('Compendium'),
    expected: ['modules median 0.5-0.6', 'modules mean 0.8-0.9'],
  },
  {
    row: 73,
    of: 'degradation of modules and systems',
    source: 'engineers',
    got: () => studied('Photovoltaic module degradation'),
    expected: ['modules mean 0.57 (0.10-1.06)', 'systems median 0.77 (0.05-1.45)'],
  },
  {
    row: 74,
    of: '0.5 % a year over 25 years',
    source: 'own',
    got: () => aged(0.005),
    expected: ['0.8822', '0.8750', '23.5560', '23.500'],
  },
  {
    row: 75,
    of: '0.8 % a year over 25 years',
    source: 'own',
    got: () => aged(0.008),
    expected: ['0.8181', '0.8000', '22.7409', '22.600'],
  },
  {
    // The paper combines them to 8.7 % by a simulation, which the root of squares is not.
    row: 83,
    of: 'the root of the squares of the doubts that a paper lists',
    source: 'doubts',
    got: () => [finance.combinedSigma([3.9, 5, 3, 3, 2, 1.5, 5])],
    expected: ['9.46'],
  },
  {
    row: 84,
    of: 'factors of P75, P90, P95, P99',
    source: 'factors',
    got: () => finance.EXCEEDANCE_CHANCES.map(finance.exceedanceFactor),
    expected: ['0.6745', '1.2816', '1.6449', '2.3263'],
  },
  {
    row: 85,
    of: '1400 units: P90 and P99 at 4.5 % and 8.7 %',
    source: 'own',
    got: () =>
      [90, 99].flatMap((chance) =>
        [0.045, 0.087].map((sigma) => finance.exceededYield({ middle: 1400, sigma }, chance)),
      ),
    expected: ['1319.3', '1243.9', '1253.4', '1116.7'],
  },
  {
    row: 86,
    of: 'the chance of 10 % too little at 4.5 % and 8.7 %, in percent',
    source: 'own',
    got: () => [0.045, 0.087].map((sigma) => finance.chanceOfShortfall(0.1, sigma) * 100),
    expected: ['1.3', '12.5'],
  },
  {
    row: 138,
    of: 'largest remainder: 100 in three, 1000.01 by days',
    source: 'own',
    got: () =>
      [...shareOut(10_000, [1, 1, 1]), ...shareOut(100_001, [31, 28, 31])].map((share) =>
        wholeToDecimal(share, 2),
      ),
    expected: ['33.34', '33.33', '33.33', '344.45', '311.11', '344.45'],
  },
];

/** Every reference value that the finance of a quote is measured against. */
export const FINANCE_ROWS: readonly FinanceRow[] = [
  ...PRESENT_VALUES,
  ...RATES,
  ...LOANS,
  ...PAYBACKS,
  ...FACTORS,
  ...YIELDS,
];
