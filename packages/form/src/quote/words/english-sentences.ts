import { wordFor, type Counted } from './counted.ts';
import type { PaperCases, PaperChart, PaperSentences } from './quote-words.ts';

const monthsOf = ({ text, count }: Counted): string => `${text} ${wordFor('en', count, ['month', 'months'])}`;

/** Sentences of the printed quote in English. */
export const ENGLISH_SENTENCES: PaperSentences = {
  notSaid: 'not said',
  noLoan: 'No loan: the price is paid in cash.',
  noSubsidy: 'No subsidy is counted.',
  noSurplus: 'No surplus is paid out in the first year.',
  noPromise: 'The seller has written down no warranty. Ask for one before you sign.',
  surplus: (units, money) =>
    `${units} units are exported in the first year; surplus of ${money} is paid out.`,
  aboveUse: (percent) =>
    `The plant makes ${percent} % of what is used in the first year. Units beyond the use earn only what surplus is paid.`,
  inForce: (order, since) => `${order}; in force since ${since}`,
  everyBill: 'with every bill',
  inBill: { same: 'paid with the same bill', next: 'paid with the next bill' },
  noSurplusRate: 'nothing, or no single rate that stays',
  arrangements: {
    units: 'set off against units taken',
    paid: 'paid for, unit by unit',
    money: 'credited in money',
    none: 'nothing is carried from bill to bill',
  },
  ofUpkeep: { included: 'in the upkeep', 'not-included': 'not in the upkeep' },
  withoutSubsidy: (payback) => `If it is refused, paid back after: ${payback}`,
  ownUse: (share) => `${share} % of what the plant makes is counted as used at home.`,
  ownUseUnknown: 'It is not known; nothing is counted as used at home.',
  ownUseByIntervals: (share) =>
    `${share} % of what the plant makes in the first year is used at home, by intervals of use and generation.`,
  perKilowatt: (units) => `${units} units for each kWp`,
  lowCase: (mean, year, sigma) =>
    `${mean} units in the mean of the years${year === '' ? '' : `, ${year} in a single one`} (P90: exceeded in nine cases of ten; one sigma ${sigma})`,
  wear: (first, later) => `${first} % less in the second year, ${later} % each year after`,
  stays: (least, most) =>
    `Bills of ${least} to ${most} stay in the first year: fixed charges, minimum, taxes and the units still bought. No bill becomes zero.`,
  subsidyLater: (months, to) =>
    `It is paid to ${to}, ${months.count === 0 ? 'at the start' : `${monthsOf(months)} after the start`}, if it is granted; until then the whole price is to be found.`,
  batteryAlone: (saving, payback) =>
    `Its own part of the saving of the first year: ${saving}; paid back by that alone: ${payback}`,
  interestTotal: (interest, paid) => `${interest}; all instalments come to ${paid}`,
  instalments: monthsOf,
  drawn: (range, count) => `${range} (P50 to P90 of ${count} draws)`,
  payback:
    'Paid back: when the sum of the yearly savings less upkeep and replacements reaches the price less the subsidy. Discounted: the same with each year’s money at its present value.',
  filled: '* Use filled by a rule, for want of a bill.',
  tried: (size, offered) =>
    `Trial, no offer: a plant of ${size} kWp, by capacity, in the place of the ${offered} kWp offered.`,
  warnings: [
    'This is an estimate, not a guarantee. Weather, use and prices may come otherwise.',
    'Tariff and rules may change, also for plants that run already; the cases above show what that may mean.',
    'Monthly bills will vary, and no bill becomes zero.',
    'What the inverter’s display or an app counts is not what the meters count: bills go by the meters.',
    'Work on a roof is work at height. The direct-current side is live whenever there is daylight. Meters are sealed; meters and panels are for licensed people.',
    'This is no legal or tax advice.',
  ],
  promise: [
    'Read the import and the export number of the grid meter, and the number of the generation meter, on the day of the bill; the three explain every bill.',
    'The first bill covers days before and after the start, so it will look like none of the months above.',
  ],
  signature:
    'I have received this quote and understood what it assumes: the use, the generation, the rises of rates, and that bills will vary.',
  years: ({ text, count }) => `${text} ${wordFor('en', count, ['year', 'years'], 1)}`,
  never: 'not within the life',
  atFirst: (years) => `${years} at first`,
  forGood: (years) => `for good after ${years}`,
  owedAtEnd: 'owed again at the end',
  customer: 'the customer',
  sellerWord: 'the seller',
};

/** The chart of the printed quote in English. */
export const ENGLISH_CHART: PaperChart = {
  title: 'Spent and saved, by year',
  says: (first, last, years) =>
    `It begins at ${first} and ends at ${last} after ${years}. An estimate, no promise.`,
  across: 'years since the purchase',
  payback: (years) => `paid back after ${years}`,
  band: 'Line with dots: as quoted. Hatched: P10 to P90, eight cases of ten. Dashed: P50, half of all cases end above it.',
};

/** The cases of the printed quote in English. */
export const ENGLISH_CASES: PaperCases = {
  names: {
    'rise-0': () => 'Rates do not rise',
    'rise-twice': (percent) => `Rates rise ${percent} % a year`,
    'generation-less': (percent) => `${percent} % less generation`,
    'use-less': (percent) => `${percent} % less use`,
    'use-more': (percent) => `${percent} % more use`,
    degradation: (percent) => `Wear of ${percent} % a year`,
    'subsidy-refused': () => 'Subsidy not received',
    'surplus-unpaid': () => 'Surplus not paid',
    'all-bad': () => 'All bad together',
  },
  already: (name) => `${name}: already from year 1`,
  notBilled: 'cannot be billed',
  noReturn: 'none',
  several: (rates) => `several: ${rates}`,
  ofSeveral: 'Of several rates of return none says whether it pays; the present value does.',
};
