import { ENGLISH_ASSUMPTIONS } from './assumption-words.ts';
import type { PaperHeads, PaperLabels, PaperSentences, PaperTables, QuoteWords } from './quote-words.ts';

const heads: PaperHeads = {
  who: 'Who, where and until when',
  inputs: 'What it is worked out from',
  system: 'The plant',
  generation: 'What it makes',
  ownUse: 'What is used at home',
  months: 'The bill before and after, month by month',
  stays: 'What stays on the bill',
  surplus: 'Surplus',
  costs: 'What it costs',
  loan: 'Loan',
  assumptions: 'Assumptions',
  years: 'Year by year',
  sensitivity: 'If it comes otherwise',
  warnings: 'Please read this',
  promise: 'After the sale',
  signature: 'Signatures',
};

const labels: PaperLabels = {
  date: 'Day of the quote',
  validUntil: 'Stands until',
  customer: 'For',
  site: 'Where',
  seller: 'Sold by',
  licence: 'Licence',
  installer: 'Installed by',
  start: 'Plant runs from',
  tariff: 'Tariff',
  usedInAYear: 'Used in twelve months',
  source: 'From',
  modules: 'Modules',
  inverter: 'Inverter',
  layout: 'Layout',
  shading: 'Shade',
  madeInAYear: 'Made in the first year',
  lowCase: 'Low case',
  reason: 'Why',
  price: 'Price with tax',
  tax: 'tax',
  subsidy: 'Subsidy',
  netPrice: 'Price less subsidy',
  cashOnDayOne: 'Cash on the first day',
  upkeep: 'Upkeep',
  borrowed: 'Borrowed',
  rate: 'Interest a year',
  instalment: 'Instalment each month',
  interest: 'Interest in all',
  fees: 'Fees',
  payback: 'Paid back after',
  discounted: 'discounted',
  saving: 'Saved in the first year',
  smallestBill: 'Smallest bill that stays',
  largestBill: 'Largest bill that stays',
  carbon: 'CO₂',
  place: 'Place and day',
  forCustomer: 'Customer',
  forSeller: 'Seller',
};

const tables: PaperTables = {
  months: ['Month', 'Use', 'Made', 'At home', 'Import', 'Export', 'Bank', 'Before', 'After', 'Surplus'],
  years: ['Year', 'Made', 'Before', 'After', 'Surplus', 'Saving', 'Upkeep', 'Net', 'Instalments', 'Sum'],
  cases: ['Case', 'Saving, year 1', 'Payback', 'Discounted', 'Left at the end', 'Present value', 'Return'],
  year: 'Year',
  asQuoted: 'As quoted',
};

const sentences: PaperSentences = {
  notSaid: 'not said',
  noLoan: 'No loan: the price is paid in cash.',
  noSubsidy: 'No subsidy is counted.',
  noSurplus: 'No surplus is paid out in the first year.',
  noPromise: 'The seller has written down no warranty. Ask for one before you sign.',
  surplus: (units, money) =>
    `${units} units are exported in the first year; surplus of ${money} is paid out.`,
  ownUse: (share) => `${share} % of what the plant makes is counted as used at home.`,
  ownUseUnknown: 'It is not known; nothing is counted as used at home.',
  perKilowatt: (units) => `${units} units for each kWp`,
  lowCase: (years, sigma) =>
    `the life’s mean may well be ${sigma} % lower or higher${years === '' ? '' : `, a single year ${years} %`} (one sigma)`,
  wear: (first, later) => `${first} % less in the second year, ${later} % each year after`,
  stays: (least, most) =>
    `Bills of ${least} to ${most} stay in the first year: fixed charges, minimum, taxes and the units still bought. No bill becomes zero.`,
  subsidyLater: (months, to) =>
    `It is paid to ${to}, ${months} months after the start, if it is granted; until then the whole price is to be found.`,
  interestTotal: (interest, paid) => `${interest}; all instalments come to ${paid}`,
  instalments: (count) => `${count} months`,
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
  years: (years) => `${years} years`,
  never: 'not within the life',
  customer: 'the customer',
  sellerWord: 'the seller',
};

/** The printed quote in English. */
export const ENGLISH: QuoteWords = {
  language: 'en',
  title: 'Quote for a solar plant',
  estimate: 'An estimate, worked out from the bills of your own tariff',
  heads,
  labels,
  tables,
  assumptions: ENGLISH_ASSUMPTIONS,
  sentences,
};
