import {
  checkPromise,
  checkQuote,
  givenFigure,
  prepareQuote,
  readTariff,
  workOutCase,
  type EnergyPeriod,
  type Finding,
  type QuoteDocument,
  type Tariff,
} from '@unitbook/engine';
import quoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import chosenText from '../../tariffs-examples/tarumira/taresco-chosen-day/tariff.json?raw';
import blocksText from '../../tariffs-examples/tarumira/taresco-time-blocks/tariff.json?raw';
import tariffText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { dayOf } from '../support/make.ts';
import type { MessageCase } from './message-case.ts';

const DEMO = JSON.parse(quoteText) as QuoteDocument;
/** The demo quote, which names no tariff: some cases are under others. */
const BASE: QuoteDocument = { ...DEMO, tariff: undefined };

function tariffOf(text: string): Tariff {
  const { value } = readTariff(text);
  if (value === null) throw new Error('the tariff cannot be read');
  return value;
}

const MADE = BASE.generation.months ?? {};

const TARIFF = tariffOf(tariffText);

/** The demo tariff, its last charges ended with 2030. */
const ENDING = tariffOf(
  tariffText.replace(
    '"name": "TO-2024",\n      "from": "2024-04-01",',
    '"name": "TO-2024",\n      "from": "2024-04-01",\n      "through": "2030-12-31",',
  ),
);

/** The demo tariff without a rounding of lines. */
const UNROUNDED = tariffOf(
  tariffText.replace('"line": { "step": "0.01", "mode": "half-up" }', '"line": "none"'),
);

/** The demo tariff with a fuel surcharge of which no double holds the product with units. */
const HUGE = tariffOf(tariffText.replaceAll('"rate": "0.40"', '"rate": "99999.40"'));

const LARGE: Record<string, string> = Object.fromEntries(Object.keys(MADE).map((key) => [key, '1000000']));

const document = (more: Partial<QuoteDocument>) => (): readonly Finding[] =>
  checkQuote({ ...BASE, ...more }).findings;

const billed =
  (more: Partial<QuoteDocument>, tariff = TARIFF) =>
  (): readonly Finding[] => {
    const { value, findings } = checkQuote({ ...BASE, ...more });
    return value === null ? findings : prepareQuote(value, tariff).findings;
  };

const without = (
  months: Readonly<Record<string, string>>,
  ...left: readonly string[]
): Record<string, string> =>
  Object.fromEntries(Object.entries(months).filter(([key]) => !left.includes(key)));

const SUN: Record<string, string> = Object.fromEntries(Object.keys(MADE).map((key) => [key, '5']));

/** The demo tariff in another money. */
const OTHER_MONEY = tariffOf(tariffText.replace('"currency": "INR"', '"currency": "EUR"'));

/** A month in which 500 units were used and 400 made, 150 of them used as they were made. */
function ofMonth(from: string, to: string): EnergyPeriod {
  const units = { import: 350, export: 250, generation: 400, selfConsumption: 150, totalUse: 500 };
  const figures = Object.entries(units).map(([id, kWh]) => [
    id,
    givenFigure({ id, label: id, unit: 'kWh', numerator: kWh * 1000, denominator: 1000, clause: '' }),
  ]);
  const period = { from: dayOf(from), to: dayOf(to) };
  return { period, ...Object.fromEntries(figures) } as EnergyPeriod;
}

/** What is found where the demo quote is set against what came. */
function promised(actual: Parameters<typeof checkPromise>[1]): readonly Finding[] {
  const { value } = checkQuote(BASE);
  const prepared = value === null ? null : prepareQuote(value, TARIFF).value;
  return prepared === null ? [] : checkPromise(prepared, actual).findings;
}

const DOCUMENT_CASES: readonly MessageCase[] = [
  {
    code: 'quote/number-out-of-range',
    when: 'a plant of 0 kWp',
    make: document({ plant: { ...BASE.plant, kWp: '0' } }),
    at: 'plant.kWp',
    found: '0 for the plant in kWp',
    expected: 'a number with up to 3 decimals, above 0 and up to 10000',
    remedy: 'Check the unit, the sign and the point.',
  },
  {
    code: 'quote/number-out-of-range',
    when: 'a plant below 0',
    make: document({ plant: { ...BASE.plant, kWp: '-4' } }),
    at: 'plant.kWp',
    found: '-4 for the plant in kWp',
    expected: 'a number with up to 3 decimals, above 0 and up to 10000',
    remedy: 'Check the unit, the sign and the point.',
  },
  {
    code: 'quote/number-out-of-range',
    when: 'a discount rate of −100 %',
    make: document({ discountRate: '-100' }),
    at: 'discountRate',
    found: '-100 for the discount rate in percent',
    expected: 'a number with up to 3 decimals, from -50 up to 100',
    remedy: 'Check the unit, the sign and the point.',
  },
  {
    code: 'quote/number-out-of-range',
    when: 'a rise of 41 % a year',
    make: document({ escalation: { charges: { energy: '41' }, basis: 'x' } }),
    at: 'escalation.charges.energy',
    found: '41 for a yearly rise of a rate in percent',
    expected: 'a number with up to 3 decimals, from -20 up to 40',
    remedy: 'Check the unit, the sign and the point.',
  },
  {
    code: 'quote/number-out-of-range',
    when: 'a life of two years and a half',
    isAmongOthers: true,
    make: document({ years: '2.5' }),
    at: 'years',
    found: '2.5 for the life in years',
    expected: 'a whole number, from 1 up to 40',
    remedy: 'Check the unit, the sign and the point.',
  },
  {
    code: 'quote/number-out-of-range',
    when: 'units to a tenth of a watt-hour',
    make: document({ use: { ...BASE.use, months: { ...BASE.use.months, '05': '560.0001' } } }),
    at: 'use.months.05',
    found: '560.0001 for the units of a month',
    expected: 'a number with up to 3 decimals, from 0 up to 1000000',
    remedy: 'Check the unit, the sign and the point.',
  },
  {
    code: 'quote/number-out-of-range',
    when: 'a battery that gives nothing back',
    make: document({ battery: { capacity: '5', power: '2', efficiency: '0', cost: '1' } }),
    at: 'battery.efficiency',
    found: '0 for the efficiency of the battery in percent',
    expected: 'a number with up to 3 decimals, above 0 and up to 100',
    remedy: 'Check the unit, the sign and the point.',
  },
  {
    code: 'quote/no-such-day',
    when: 'a quote of 30 February',
    make: document({ offer: { ...BASE.offer, date: '2025-02-30' } }),
    at: 'offer.date',
    found: '"2025-02-30", which is no day of the calendar',
    expected: 'a day as yyyy-mm-dd',
    remedy: 'Correct the day.',
  },
  {
    code: 'quote/no-such-day',
    when: 'a settlement on 30 February',
    make: document({ settlementDay: '02-30' }),
    at: 'settlementDay',
    found: '"02-30", which is no day of the calendar',
    expected: 'a day as mm-dd',
    remedy: 'Correct the day.',
  },
  {
    code: 'quote/start-inside-month',
    when: 'a start on 15 December',
    make: document({ start: '2025-12-15' }),
    at: 'start',
    found: 'a start on 2025-12-15',
    expected: 'the first day of a month',
    remedy:
      'The quote counts whole months. Begin on 2026-01-01, and say when the plant is switched on in the offer.',
    offer: '2026-01-01',
  },
  {
    code: 'quote/month-unknown',
    when: 'a month "13"',
    make: document({ generation: { months: { ...MADE, 13: '400' }, source: 'x' } }),
    at: 'generation.months.13',
    found: '"13" for a month',
    expected: '"01" for January to "12" for December',
    remedy: 'Name each month by its two digits.',
  },
  {
    code: 'quote/months-missing',
    when: 'two months of use without a rule',
    make: document({ use: { months: without(BASE.use.months, '02', '03'), source: 'x' } }),
    at: 'use.months',
    found: 'no value for February, March',
    expected: 'a value for each of the twelve months',
    remedy: 'Ask for the bill, or add "fill": "mean" or "neighbours" to have it filled and marked.',
  },
  {
    code: 'quote/months-missing',
    when: 'a month of generation',
    make: document({ generation: { months: without(MADE, '07'), source: 'x' } }),
    at: 'generation.months',
    found: 'no value for July',
    expected: 'a value for each of the twelve months',
    remedy: 'Give every month: no rule fills what a plant will make.',
  },
  {
    code: 'quote/months-filled',
    when: 'a month of use, filled by its neighbours',
    severity: 'note',
    make: document({ use: { months: without(BASE.use.months, '02'), fill: 'neighbours', source: 'x' } }),
    at: 'use.months',
    found: 'no bill of February',
    expected: 'twelve months of bills',
    remedy: 'Filled by the mean of the nearest months known, and marked. Ask for the missing bills.',
  },
  {
    code: 'quote/needs-one-of',
    when: 'generation told twice',
    make: document({ generation: { months: MADE, year: '5000', source: 'x' } }),
    at: 'generation',
    found: '2 of months, year and irradiation',
    expected: 'exactly one of them',
    remedy: 'Give one and leave the others out.',
  },
  {
    code: 'quote/needs-one-of',
    when: 'a subsidy without an amount',
    make: document({ subsidy: { paidAfter: '3', to: 'customer', source: 'x' } }),
    at: 'subsidy',
    found: 'none of amount and tiers',
    expected: 'exactly one of them',
    remedy: 'Give one and leave the others out.',
  },
  {
    code: 'quote/irradiation-incomplete',
    when: 'no performance ratio',
    make: document({ generation: { irradiation: SUN, unit: 'kWh/m2/day', source: 'x' } }),
    at: 'generation',
    found: 'irradiation without performanceRatio',
    expected: 'irradiation by month, its unit and the performance ratio',
    remedy: 'Add what is missing, or give the units of each month.',
  },
  {
    code: 'quote/irradiation-unused',
    severity: 'note',
    when: 'a performance ratio beside the units of each month',
    make: document({ generation: { ...BASE.generation, performanceRatio: '0.78' } }),
    at: 'generation.performanceRatio',
    found: '"performanceRatio" without irradiation',
    expected: 'it beside the irradiation of each month, and nowhere else',
    remedy: 'The units are taken as they stand. Leave it out, or give the irradiation in their place.',
  },
  {
    code: 'quote/number-out-of-range',
    when: 'a rise of surplus to no step',
    make: document({
      escalation: { charges: {}, surplus: { percent: '2', step: '0' }, basis: 'x' },
    }),
    at: 'escalation.surplus.step',
    found: '0 for the step that a risen rate is rounded to',
    expected: 'a number with up to 6 decimals, above 0 and up to 1',
    remedy: 'Check the unit, the sign and the point.',
  },
  {
    code: 'quote/self-use-above-use',
    when: '75 % where July uses 100 of 380',
    make: document({
      use: { ...BASE.use, months: { ...BASE.use.months, '07': '100' } },
      selfUse: { share: '75' },
    }),
    at: 'selfUse.share',
    found: '75 % of 380 units in July: 285 used at home of 100 used in all',
    expected: 'at most 26 %',
    remedy: 'Lower the share of own use, or check the use of that month.',
  },
  {
    code: 'quote/loan-longer-than-life',
    when: '301 instalments in 25 years',
    make: document({ loan: { amount: '1000', rate: '9', months: '301', kind: 'flat' } }),
    at: 'loan.months',
    found: '301 instalments',
    expected: 'at most 300: the life that is looked at',
    remedy: 'Shorten the loan, or look at a longer life.',
  },
  {
    code: 'quote/loan-above-price',
    when: 'a coin more than the price',
    make: document({ loan: { amount: '216000.01', rate: '9', months: '12', kind: 'flat' } }),
    at: 'loan.amount',
    found: 'a loan of 216000.01',
    expected: 'at most the price, 216000.00',
    remedy: 'Correct the loan or the price.',
  },
  {
    code: 'quote/subsidy-above-price',
    when: 'a coin more than the price',
    make: document({ subsidy: { amount: '216000.01', paidAfter: '0', to: 'seller', source: 'x' } }),
    at: 'subsidy',
    found: 'a subsidy of 216000.01',
    expected: 'at most the price, 216000.00',
    remedy: 'Correct the subsidy or the price.',
  },
  {
    code: 'quote/year-outside-life',
    when: 'an inverter in year 26',
    make: document({
      upkeep: { ...BASE.upkeep, replacements: [{ item: 'Inverter', year: '26', amount: '1' }] },
    }),
    at: 'upkeep.replacements.0.year',
    found: 'Inverter in year 26',
    expected: 'a year from 1 to 25',
    remedy: 'Correct the year, or look at a longer life.',
  },
  {
    code: 'quote/policy-unknown',
    when: 'a case that is not listed',
    make: document({
      uncertainty: {
        generation: '5',
        use: '5',
        escalation: '1',
        degradation: '0',
        policy: { name: 'Gross', percent: '5' },
      },
    }),
    at: 'uncertainty.policy.name',
    found: 'the case "Gross"',
    expected: 'one of: "Net billing from year 8"',
    remedy: 'Name a case that stands under "policies".',
  },
];

const LIFE_CASES: readonly MessageCase[] = [
  {
    code: 'quote/settlement-day-needed',
    when: 'a tariff that settles on the day chosen',
    isAmongOthers: true,
    make: billed(
      { escalation: { charges: {}, basis: 'x' }, policies: undefined, uncertainty: undefined },
      tariffOf(chosenText),
    ),
    at: 'settlementDay',
    found: 'a quote without "settlementDay", which "Units banked" goes by',
    expected: 'the day of the year on which this account is settled',
    remedy: 'Add "settlementDay" to the quote, as mm-dd: the day that the customer chooses.',
  },
  {
    code: 'quote/charge-unknown',
    when: 'a charge that the tariff has not',
    make: billed({ escalation: { charges: { wheeling: '2' }, basis: 'x' } }),
    at: 'escalation.charges.wheeling',
    found: 'a rise of "wheeling"',
    expected: 'one of the charges of the tariff: fixed, energy, minimum, fuel, tax, subsidy',
    remedy: 'Name a charge as the tariff does, or leave it out.',
  },
  {
    code: 'quote/charge-cannot-rise',
    when: 'a percentage',
    make: billed({ escalation: { charges: { tax: '2' }, basis: 'x' } }),
    at: 'escalation.charges.tax',
    found: 'a rise of "tax", which is a percentage',
    expected: 'a charge with a rate in money whose line is rounded',
    remedy: 'Leave it out: it follows its base.',
  },
  {
    code: 'quote/charge-cannot-rise',
    when: 'a line that is not rounded',
    make: billed({ escalation: { charges: { energy: '2' }, basis: 'x' } }, UNROUNDED),
    at: 'escalation.charges.energy',
    found: 'a rise of "energy", which is not rounded by the tariff',
    expected: 'a charge with a rate in money whose line is rounded',
    remedy: 'Leave it out, or let the tariff round its lines.',
  },
  {
    code: 'quote/tariff-goes-on',
    when: 'charges that end with 2030',
    severity: 'note',
    make: billed({}, ENDING),
    at: 'years',
    found: 'a tariff that ends on 2030-12-31, its charges',
    expected: 'a tariff through 2050-03-31',
    remedy: 'What is in force on its last day is assumed to go on, with the rises of the quote.',
  },
  {
    code: 'quote/self-use-unknown',
    when: 'no share',
    severity: 'note',
    make: billed({ selfUse: {} }),
    at: 'selfUse',
    found: 'neither a share of own use nor an interval profile',
    expected: 'one of them',
    remedy: 'The answer is a range: from nothing used at home to as much as use and generation allow.',
  },
  {
    code: 'quote/other-tariff',
    severity: 'question',
    when: 'a quote of another tariff',
    make: billed({ tariff: { id: 'town-1', name: 'Town, domestic' } }),
    at: 'tariff',
    found: 'the tariff "Tarumira D-1, domestic, net-metered"',
    expected: 'that of the quote, "Town, domestic"',
    remedy: 'Take the tariff that the quote was worked out by, or name the other one in the quote.',
  },
  {
    code: 'quote/needs-profile',
    when: 'a tariff with time blocks',
    make: billed({ escalation: { charges: {}, basis: 'x' } }, tariffOf(blocksText)),
    at: 'selfUse',
    found: 'a tariff with time blocks (peak, normal, solar)',
    expected: 'an interval profile of use and generation',
    remedy: 'Give the profile: months alone do not tell in which block units are used.',
  },
  {
    code: 'quote/case-not-billed',
    when: 'another rule while units are banked',
    make: () => {
      const { value } = checkQuote({ ...BASE, start: '2025-12-01' });
      const [policy] = BASE.policies ?? [];
      if (value === null || policy === undefined) throw new Error('no case');
      return workOutCase(value, TARIFF, { id: 'x', name: 'x', change: { policy: { policy, from: 8 } } })
        .findings;
    },
    at: 'policies',
    found:
      'the case "x", which cannot be billed: a balance of 93 in "Credit brought forward", which the settlement rule from 2032-12-01 does not know',
    expected: 'a settlement rule that fits the charges and begins when no units are banked',
    remedy: 'Correct the rule of the case, or the year from which it holds.',
  },
];

const LIMITED = tariffOf(
  tariffText.replace(
    '"clause": "NMR-2021 r. 7.1",\n      "carry"',
    '"clause": "NMR-2021 r. 7.1",\n      "plantLimit": { "clause": "NMR-2021 r. 4", "most": "10", "percentOfLoad": "90" },\n      "carry"',
  ),
);

const LIMIT_CASES: readonly MessageCase[] = [
  {
    code: 'quote/plant-not-admitted',
    when: '4 kWp where 90 % of a load of 4 kW are admitted',
    make: billed({}, LIMITED),
    at: 'plant.kWp',
    found: 'a plant of 4 kWp',
    expected: 'at most 3.6 kW, 90 % of the sanctioned load (NMR-2021 r. 4)',
    remedy: 'Offer a smaller plant, or another scheme that admits it.',
  },
];

const LARGE_CASES: readonly MessageCase[] = [
  {
    code: 'quote/cannot-project',
    when: 'a rise of 40 % for 40 years',
    make: billed(
      {
        years: '40',
        use: { months: LARGE, source: 'x' },
        escalation: { charges: { fuel: '40' }, basis: 'x' },
      },
      HUGE,
    ),
    at: 'years',
    found: 'bills that cannot be projected: their rates, risen, have no room in plain arithmetic',
    expected: 'amounts that ordinary numbers hold',
    remedy: 'Check the units and the rises; a shorter life may do.',
  },
];

const PROMISE_CASES: readonly MessageCase[] = [
  {
    code: 'quote/promise-without-generation',
    when: 'a month without the generation meter',
    make: () => {
      const { value } = checkQuote(BASE);
      const prepared = value === null ? null : prepareQuote(value, TARIFF).value;
      const [period] = prepared?.biller.periods ?? [];
      if (prepared === null || period === undefined) return [];
      const unknown = { generation: null, selfConsumption: null, totalUse: null };
      const energy = { period, ...unknown } as unknown as EnergyPeriod;
      return checkPromise(prepared, { tariff: TARIFF, energies: [energy] }).findings;
    },
    at: '',
    found: 'periods of which generation is not known',
    expected: 'readings of the generation meter for every period',
    remedy: 'Without them nobody can tell use from generation. Type them, or those of the inverter.',
  },
  {
    code: 'quote/other-currency',
    when: 'a tariff of today in another currency',
    make: () => promised({ tariff: OTHER_MONEY, energies: [ofMonth('2025-04-01', '2025-05-01')] }),
    at: '',
    found: 'a tariff in EUR',
    expected: 'one in INR, as that of the quote',
    remedy: 'Amounts of two currencies cannot be set against each other: take a tariff of the same one.',
  },
  {
    code: 'quote/promise-leaves-out',
    severity: 'note',
    when: 'a period of the time before the plant',
    make: () =>
      promised({
        tariff: TARIFF,
        energies: [ofMonth('2025-03-01', '2025-04-01'), ofMonth('2025-04-01', '2025-05-01')],
      }),
    at: 'start',
    found: 'a period from before the start of the quote',
    expected: 'periods that begin on or after it',
    remedy: 'They are left out: the plant did not run yet.',
  },
  {
    code: 'quote/promise-before-start',
    when: 'no period',
    make: () => {
      const { value } = checkQuote(BASE);
      const prepared = value === null ? null : prepareQuote(value, TARIFF).value;
      return prepared === null ? [] : checkPromise(prepared, { tariff: TARIFF, energies: [] }).findings;
    },
    at: 'start',
    found: 'no billing period that begins on or after the start of the quote',
    expected: 'readings from the first day of the plant on',
    remedy:
      'Give the readings since the plant runs. Where it began on another day, correct the start of the quote.',
  },
];

/** What can be said of a quote, its life and its promise. */
export const QUOTE_CASES: readonly MessageCase[] = [
  ...DOCUMENT_CASES,
  ...LIFE_CASES,
  ...LIMIT_CASES,
  ...LARGE_CASES,
  ...PROMISE_CASES,
];
