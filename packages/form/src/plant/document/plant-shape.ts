import type { Shape } from '../../household/shape.ts';

const TEXT: Shape = [];
const TEXTS: Shape = { each: TEXT };

const EXPECTED: Shape = {
  fields: {
    'monthly?': TEXTS,
    'irradiation?': TEXTS,
    'unit?': TEXT,
    'performanceRatio?': TEXT,
    'source?': TEXT,
    'lastYears?': 'yes-or-no',
  },
};

const ENTRY: Shape = { fields: { date: TEXT, 'through?': TEXT, did: TEXT, 'note?': TEXT } };

/** What the plant of a saved household has to look like; what its texts say is checked where it is shown. */
export const PLANT: Shape = {
  fields: {
    format: ['unitbook-plant-1'],
    capacity: { each: { fields: { 'from?': TEXT, kWp: TEXT } }, least: 1 },
    'coast?': 'yes-or-no',
    'inverters?': { fields: { n: TEXT, kind: TEXT } },
    'expected?': EXPECTED,
    'uncertainty?': { fields: { 'yearToYear?': TEXT } },
    'meterClass?': TEXT,
    'diary?': { each: ENTRY },
  },
};
