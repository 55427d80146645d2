import { ACCURACY_CLASSES, EDIT_METHODS } from '@unitbook/engine';
import { PLANT } from '../plant/document/plant-shape.ts';
import { HOUSEHOLD_FORMAT } from './household.ts';
import type { FieldShapes, Shape } from './shape.ts';

const TEXT: Shape = [];
const TEXTS: Shape = { each: TEXT };
const REGISTERS = ['import', 'export', 'generation'] as const;

const DIGITS: FieldShapes = { digits: ['4', '5', '6', '7', '8'], decimals: ['0', '1', '2', '3'] };
const RATE: Shape = { fields: { id: TEXT, 'block?': TEXT } };
const GRID_REGISTER: Shape = { fields: { ...DIGITS, 'rates?': { each: RATE, least: 2 } } };

const NAMEPLATE: FieldShapes = {
  serial: TEXT,
  multiplyingFactor: TEXT,
  'accuracyClass?': ACCURACY_CLASSES,
};
const GRID: FieldShapes = { ...NAMEPLATE, import: GRID_REGISTER, export: GRID_REGISTER };
const GENERATION: FieldShapes = { ...NAMEPLATE, generation: { fields: DIGITS } };

/** A meter with those that took its place. */
const withLater = (meter: FieldShapes): Shape => ({
  fields: { ...meter, 'later?': { each: { fields: { ...meter, from: TEXT } } } },
});

const ACCOUNT: Shape = {
  fields: {
    format: ['unitbook-account-1'],
    id: TEXT,
    sanctionedLoad: TEXT,
    plantCapacity: TEXT,
    openingCredit: TEXT,
    'batteryCapacity?': TEXT,
    'since?': TEXT,
    'settlementDay?': TEXT,
    'name?': TEXT,
    'locale?': TEXT,
    'confirmed?': TEXTS,
    meters: { fields: { grid: withLater(GRID), 'generation?': withLater(GENERATION) } },
  },
};

const EDIT: Shape = {
  fields: { register: TEXT, raw: TEXT, 'wasEstimated?': 'yes-or-no', method: EDIT_METHODS, 'note?': TEXT },
};

const ROW: Shape = {
  fields: {
    date: TEXT,
    'import?': TEXT,
    'export?': TEXT,
    'generation?': TEXT,
    'rates?': { fields: { 'import?': { under: TEXT }, 'export?': { under: TEXT } } },
    'event?': ['final', 'first'],
    'printedDays?': TEXT,
    'status?': ['actual', 'estimated'],
    'estimated?': { each: REGISTERS },
    'edits?': { each: EDIT },
    'confirmed?': TEXTS,
  },
};

/** What a saved household has to look like, all but its tariff. */
export const HOUSEHOLD: Shape = {
  fields: { format: [HOUSEHOLD_FORMAT], account: ACCOUNT, readings: { each: ROW }, 'plant?': PLANT },
};
