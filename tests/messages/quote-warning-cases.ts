import {
  checkFlyer,
  quoteWarnings,
  readFlyer,
  type Finding,
  type FlyerDocument,
  type FlyerFacts,
  type Quote,
  type QuoteDocument,
} from '@unitbook/engine';
import quoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import { firstYearQuote, workedQuote } from '../support/demo-quote.ts';
import type { MessageCase } from './message-case.ts';

const BASE = JSON.parse(quoteText) as QuoteDocument;

/** 4 kW × 60.00 × 12 = 2,880.00; the last slab; the rate of surplus. */
const FACTS: FlyerFacts = { fixedCharges: 288_000, topRate: '8.00', surplusRate: '2.60' };

const everyMonth = (units: string): Record<string, string> =>
  Object.fromEntries(Object.keys(BASE.use.months).map((key) => [key, units]));

const warned =
  (more: Partial<QuoteDocument>, facts = FACTS) =>
  (): readonly Finding[] =>
    quoteWarnings(workedQuote(more), facts);

/** What the flyer says, beside the demo quote or another. */
const flyer =
  (claims: Omit<FlyerDocument, 'format'>, facts = FACTS, change: (quote: Quote) => Quote = (same) => same) =>
  (): readonly Finding[] =>
    checkFlyer({ format: 'unitbook-flyer-1', ...claims }, change(workedQuote()), facts).findings;

/** 5,520 × 8.00 = 44,160.00, and 162,000 ÷ 44,160 = 3.67. */
const RIVAL = { claimedSaving: '44160', claimedPayback: '3.7', words: 'Zero bill!' };

const SAVING_CASES: readonly MessageCase[] = [
  {
    // Before: 12 bills of 10 units, 240.00 + 30.00 + 4.00 + 1.80 − 15.00 = 260.80 each, 3,129.60 in all. After: 12
    // of 240.00, 2,880.00. Surplus: 990 × 12 = 11,880 units at 2.60, 30,888.00. 3,129.60 − 2,880.00 + 30,888.00
    code: 'quote/saving-above-bills',
    when: 'a house that uses next to nothing',
    severity: 'question',
    isAmongOthers: true,
    make: warned({
      use: { ...BASE.use, months: everyMonth('10') },
      generation: { months: everyMonth('1000'), source: 'x' },
      selfUse: { share: '1' },
    }),
    at: '',
    found: 'a saving of 31137.60 in the first year, 30888.00 of it surplus paid out',
    expected: 'at most the bills of that year without the plant, 3129.60',
    remedy: 'Check the size of the plant; name what surplus brings apart from what the bills save.',
  },
  {
    // The scenario: 36,673.88 with 1,079.00 of surplus; 38,931.60 − 2,880.00 = 36,051.60.
    code: 'quote/saving-above-charges-for-units',
    when: 'surplus is in the saving',
    severity: 'note',
    isAmongOthers: true,
    make: warned({}),
    at: '',
    found: 'a saving of 36673.88 in the first year, 1079.00 of it surplus paid out',
    expected: 'at most 36051.60 off the bills: 2880.00 a year stay on them, the fixed charges',
    remedy:
      'Name what surplus brings apart from what the bills save: it is paid later, at a rate of its own.',
  },
  {
    // The smallest bill is 240.00: 12 of them are 2,880.00, too.
    code: 'quote/saving-above-charges-for-units',
    when: 'fixed charges are not known',
    severity: 'note',
    isAmongOthers: true,
    make: warned({}, { ...FACTS, fixedCharges: null }),
    at: '',
    found: 'a saving of 36673.88 in the first year, 1079.00 of it surplus paid out',
    expected: 'at most 36051.60 off the bills: 2880.00 a year stay on them, twelve times the smallest bill',
    remedy:
      'Name what surplus brings apart from what the bills save: it is paid later, at a rate of its own.',
  },
];

const ASSUMPTION_CASES: readonly MessageCase[] = [
  {
    code: 'quote/rise-above-usual',
    when: 'half a percent more than is usual',
    severity: 'question',
    isAmongOthers: true,
    make: warned({ escalation: { charges: { energy: '3.5', fixed: '3' }, basis: 'Past orders' } }),
    at: 'escalation.charges.energy',
    found: 'a rise of "energy" by 3.5 % a year',
    expected: 'at most 3 % a year, with its basis',
    remedy: 'Lower it, or show orders of the past that it follows from.',
  },
  {
    code: 'quote/rise-without-basis',
    when: 'an empty basis',
    severity: 'question',
    isAmongOthers: true,
    make: warned({ escalation: { charges: { energy: '2' }, basis: '' } }),
    at: 'escalation.basis',
    found: 'rates that change each year, and no reason',
    expected: 'the basis of the rises: past orders, or a forecast with its publisher',
    remedy: 'Say why rates rise so much, or let them stay as they are.',
  },
  {
    // 2.60 × 1.4⁴ = 9.98816; 42,214.98 ÷ 5,300 = 7.965. A year earlier 7.1344 are less than 41,369.61 ÷ 5,300 = 7.806.
    code: 'quote/surplus-at-retail',
    when: 'surplus that rises by 40 % a year',
    severity: 'question',
    isAmongOthers: true,
    make: warned({
      escalation: { ...BASE.escalation, surplus: { percent: '40', step: '0.01' } },
    }),
    at: 'escalation.surplus.percent',
    found: 'a unit of surplus paid 9.98816 in year 5, risen from 2.60',
    expected: 'less than a unit bought costs in that year, 7.97 in the mean',
    remedy: 'Let what surplus is paid stay as the tariff has it, or show the order by which it rises.',
  },
  {
    code: 'quote/no-replacement',
    when: 'no new inverter in 25 years',
    severity: 'question',
    isAmongOthers: true,
    make: warned({ upkeep: { ...BASE.upkeep, replacements: [] } }),
    at: 'upkeep.replacements',
    found: 'a life of 25 years in which nothing is replaced',
    expected: 'a new inverter where the life is longer than 15 years',
    remedy: 'Add what is replaced, in which year and at what price.',
  },
  {
    // The medians of the study: 0.5 to 0.6 %.
    code: 'quote/no-degradation',
    when: 'no wear after the second year',
    severity: 'question',
    isAmongOthers: true,
    make: warned({ degradation: { first: '2', later: '0' } }),
    at: 'degradation.later',
    found: 'a plant that loses nothing after its second year',
    expected:
      'some loss each year: 0.5 to 0.6 % at the median of modules (Compendium of Photovoltaic Degradation Rates, Jordan, Kurtz, VanSant, Newmiller; NREL, 2016)',
    remedy: 'Give the yearly loss from the sheet of the modules.',
  },
  {
    // 5,520 ÷ 4 = 1,380
    code: 'quote/yield-above-usual',
    when: 'a region in which 1,350 are usual',
    severity: 'question',
    isAmongOthers: true,
    make: warned({ generation: { ...BASE.generation, usualYield: '1350' } }),
    at: 'generation',
    found: '1380.0 kWh per kWp in the first year',
    expected: 'at most what plants of the region make, 1350',
    remedy: 'Check irradiation, losses and shade, or say why this plant makes more.',
  },
  {
    // 12 × 400 = 4,800 used, of which 110 % are 5,280.
    code: 'quote/generation-above-use',
    when: '5,520 units for a house that uses 4,800',
    severity: 'question',
    isAmongOthers: true,
    make: warned({ use: { ...BASE.use, months: everyMonth('400') } }),
    at: 'generation',
    found: '5520 units made and 4800 used in the first year',
    expected: 'at most 110 % of what is used',
    remedy: 'Offer a smaller plant too, or say what the units left over are paid.',
  },
  {
    // The scenario: 4.597 years with it, 6.063 without.
    code: 'quote/payback-with-subsidy',
    when: 'a subsidy after four months',
    severity: 'note',
    isAmongOthers: true,
    make: warned({}),
    at: 'subsidy',
    found:
      'a payback that hangs on a subsidy of 54000.00, paid to the customer 4 months after the start: 4.6 years',
    expected: 'the payback without it beside it: 6.1 years',
    remedy: 'Print both, and say who bears it when the subsidy comes late or not at all.',
  },
  {
    // 216,000.00 + 95,000.00
    code: 'quote/battery-in-price',
    when: 'a battery beside the plant',
    severity: 'note',
    isAmongOthers: true,
    make: warned({ battery: { capacity: '5', power: '2.5', efficiency: '90', cost: '95000' } }),
    at: 'battery.cost',
    found: 'a battery of 95000.00 in the price of 311000.00, and a payback of both together',
    expected: 'plant and battery each with its own price, saving and payback',
    remedy: 'Name what the battery saves by itself beside the payback of both: the quote works it out.',
  },
  {
    code: 'quote/promising-words',
    when: 'a promise of no bill, guaranteed',
    severity: 'question',
    isAmongOthers: true,
    make: warned({ offer: { ...BASE.offer, promise: 'Zero bill, guaranteed.' } }),
    at: 'offer.promise',
    found: 'the words "zero bill", "guaranteed"',
    expected: 'what is warranted, for how long and how it is measured',
    remedy: 'Say it in figures: bills of 3336.72 stay in the first year.',
  },
];

const FLYER_BILL_CASES: readonly MessageCase[] = [
  {
    code: 'quote/flyer-empty',
    when: 'no claim at all',
    severity: 'question',
    make: () => readFlyer('{ "format": "unitbook-flyer-1" }').findings,
    at: '1:1',
    found: 'a flyer without a claim',
    expected: 'at least one number or its words',
    remedy: 'Type in what it says: saving, payback, units, price, bill or words.',
  },
  {
    // 38,931.60 + 1,079.00 = 40,010.60, and a coin.
    code: 'quote/flyer-saving-above-bills',
    when: 'a coin above bills and surplus',
    severity: 'question',
    isAmongOthers: true,
    make: flyer({ claimedSaving: '40010.61' }),
    at: 'claimedSaving',
    found: 'a saving of 40010.61 a year',
    expected: 'at most the bills of a year without the plant, 38931.60, and 1079.00 for surplus',
    remedy: 'Ask which bills it was worked out from.',
  },
  {
    code: 'quote/flyer-saving-above-bills',
    when: 'a quote without surplus',
    severity: 'question',
    isAmongOthers: true,
    make: flyer({ claimedSaving: '38931.61' }, FACTS, (quote) => firstYearQuote(quote, { surplus: 0 })),
    at: 'claimedSaving',
    found: 'a saving of 38931.61 a year',
    expected: 'at most the bills of a year without the plant, 38931.60',
    remedy: 'Ask which bills it was worked out from.',
  },
  {
    code: 'quote/flyer-top-rate',
    when: '5,520 × 8.00',
    severity: 'question',
    isAmongOthers: true,
    make: flyer(RIVAL),
    at: 'claimedSaving',
    found: 'every one of 5520 units at 8.00, the highest rate of the tariff',
    expected: 'each unit at the rate it is billed at: 36673.88 in the first year by this quote',
    remedy: 'Ask for the bills of twelve months, before and after.',
  },
  {
    code: 'quote/flyer-fixed-charges',
    when: 'a saving with a promise of no bill',
    severity: 'question',
    isAmongOthers: true,
    make: flyer(RIVAL),
    at: 'claimedSaving',
    found: 'a saving of 44160 a year, the words "zero bill"',
    expected: '2880.00 a year that stay on the bills, the fixed charges',
    remedy: 'Ask what the smallest bill will be; by this quote it is 240.00.',
  },
  {
    // 12 × 239 = 2,868
    code: 'quote/flyer-fixed-charges',
    when: 'a bill below the fixed charge of a month',
    severity: 'question',
    make: flyer({ monthlyBillAfter: '239' }),
    at: 'monthlyBillAfter',
    found: 'a bill of 239 a month',
    expected: '2880.00 a year that stay on the bills, the fixed charges',
    remedy: 'Ask what the smallest bill will be; by this quote it is 240.00.',
  },
  {
    code: 'quote/flyer-surplus-at-retail',
    when: 'a rate for every unit',
    severity: 'question',
    make: flyer({ claimedRate: '6.50' }),
    at: 'claimedRate',
    found: '6.50 for every unit that is made, surplus too',
    expected: 'surplus at what is paid for it: 1079.00 in the first year by this quote, 2.60 for a unit',
    remedy: 'Ask how many units are left over in a year, and what is paid for them.',
  },
  {
    // 5,520 − 5,300 = 220 units are made beyond the use: at 6.50 they are 1,430.00, more than 1,079.00.
    code: 'quote/flyer-surplus-at-retail',
    when: 'the rate of surplus is not known',
    severity: 'question',
    make: flyer({ claimedRate: '6.50' }, { ...FACTS, surplusRate: null }),
    at: 'claimedRate',
    found: '6.50 for every unit that is made, surplus too',
    expected: 'surplus at what is paid for it: 1079.00 in the first year by this quote',
    remedy: 'Ask how many units are left over in a year, and what is paid for them.',
  },
];

const FLYER_PRICE_CASES: readonly MessageCase[] = [
  {
    // 2,400 growing by 4 %, each of 25 years rounded to coins: 99,950.20. An inverter: 32,000.00.
    code: 'quote/flyer-no-upkeep',
    when: '162,000 ÷ 44,160 = 3.67',
    severity: 'question',
    isAmongOthers: true,
    make: flyer(RIVAL),
    at: 'claimedPayback',
    found: 'a payback of 3.7 years: 162000.00 ÷ 44160, with nothing taken off',
    expected: 'maintenance and what is replaced taken off: 131950.20 in 25 years by this quote',
    remedy: 'Ask what maintenance costs, and when the inverter is replaced.',
  },
  {
    code: 'quote/flyer-subsidy-assumed',
    when: 'a price with the subsidy taken off',
    severity: 'note',
    make: flyer({ netPrice: '162000' }),
    at: 'netPrice',
    found: 'a price of 162000.00: 216000.00 less a subsidy of 54000.00',
    expected: 'the whole price, which is paid first, and the payback without the subsidy',
    remedy: 'Ask who receives the subsidy, when, and what happens if it is refused.',
  },
  {
    code: 'quote/flyer-words',
    when: 'free cleaning',
    severity: 'question',
    make: flyer({ words: 'Free cleaning, guaranteed' }),
    at: 'words',
    found: 'the words "free", "guaranteed"',
    expected: 'words that the bills bear out: 3336.72 stay in the first year by this quote',
    remedy: 'Ask for it in writing: who answers for it, for how long and how it is measured.',
  },
  {
    code: 'quote/flyer-rise',
    when: '6 % a year',
    severity: 'question',
    make: flyer({ escalation: '6' }),
    at: 'escalation',
    found: 'rates that rise by 6 % a year',
    expected: 'at most 3 % a year, with its basis',
    remedy: 'Ask what the rise is based on.',
  },
];

/** What a seller is asked before printing, and what to ask about a flyer. */
export const QUOTE_WARNING_CASES: readonly MessageCase[] = [
  ...SAVING_CASES,
  ...ASSUMPTION_CASES,
  ...FLYER_BILL_CASES,
  ...FLYER_PRICE_CASES,
];
