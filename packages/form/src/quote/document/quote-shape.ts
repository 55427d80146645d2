import type { FieldShapes, Shape } from '../../household/shape.ts';

const TEXT: Shape = [];
const TEXTS: Shape = { under: TEXT };
const NAMED = (names: string): FieldShapes =>
  Object.fromEntries(names.split(' ').map((name) => [name, TEXT]));

const SUBSIDY: Shape = {
  fields: {
    ...NAMED('amount? most? paidAfter source'),
    to: ['customer', 'seller'],
    'tiers?': { each: { fields: NAMED('upTo? perKilowatt') } },
  },
};

const POLICY: Shape = { fields: { ...NAMED('name from selfUse?'), 'settlement?': { fields: {} } } };

const GENERATION: Shape = {
  fields: {
    ...NAMED('year? performanceRatio? source usualYield?'),
    'months?': TEXTS,
    'irradiation?': TEXTS,
    'unit?': ['kWh/m2/day', 'kWh/m2/month'],
  },
};

const UNCERTAINTY: Shape = {
  fields: {
    ...NAMED('generation yearToYear? use escalation degradation useWithEscalation? seed?'),
    'policy?': { fields: NAMED('name percent') },
  },
};

const BATTERY: Shape = {
  fields: { ...NAMED('capacity power efficiency cost'), 'replacement?': { fields: NAMED('year amount') } },
};

const ENERGY: FieldShapes = {
  use: { fields: { ...NAMED('source growth?'), months: TEXTS, 'fill?': ['mean', 'neighbours'] } },
  plant: { fields: NAMED('kWp kW? modules? inverter? layout? shading?') },
  generation: GENERATION,
  'selfUse?': { fields: NAMED('share? basis?') },
  'battery?': BATTERY,
  degradation: { fields: NAMED('first later source?') },
  escalation: { fields: { charges: TEXTS, basis: TEXT, 'surplus?': { fields: NAMED('percent step') } } },
};

const OF_UPKEEP: Shape = ['included', 'not-included'];

const MONEY: FieldShapes = {
  price: { each: { fields: { ...NAMED('item amount tax?'), 'fixed?': 'yes-or-no' } }, least: 1 },
  'subsidy?': SUBSIDY,
  'loan?': { fields: { ...NAMED('amount rate months fees?'), kind: ['reducing', 'flat'] } },
  upkeep: {
    fields: {
      ...NAMED('perYear growth'),
      'cleaning?': OF_UPKEEP,
      'insurance?': OF_UPKEEP,
      replacements: { each: { fields: NAMED('item year amount') } },
    },
  },
};

/** What a saved quote has to look like; what its texts say is checked where they are shown. */
export const QUOTE: Shape = {
  fields: {
    format: ['unitbook-quote-1'],
    offer: {
      fields: NAMED('date validUntil? customer? site? seller? licence? installer? promise? contact?'),
    },
    ...NAMED('$schema? locale? start years discountRate settlementDay?'),
    'tariff?': { fields: NAMED('id name?') },
    quantities: TEXTS,
    ...ENERGY,
    ...MONEY,
    'units?': ['whole', 'thousandths'],
    payable: ['as-billed', 'before-rounding'],
    'policies?': { each: POLICY },
    'uncertainty?': UNCERTAINTY,
    'carbon?': { fields: NAMED('factor version variant') },
  },
};
