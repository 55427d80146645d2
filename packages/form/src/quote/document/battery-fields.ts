import type { QuoteDocument } from '@unitbook/engine';
import type { QuoteField } from './quote-fields.ts';

/** The battery itself: what it holds, does and costs. */
const PLAIN: readonly QuoteField[] = [
  {
    path: ['battery', 'capacity'],
    label: 'Capacity, kWh',
    hint: 'that can be taken out and put in',
    what: 'the capacity of the battery',
    is: 'number',
    unit: ' kWh',
  },
  {
    path: ['battery', 'power'],
    label: 'Power, kW',
    hint: 'it charges and discharges with at most',
    what: 'the power of the battery',
    is: 'number',
    unit: ' kW',
  },
  {
    path: ['battery', 'efficiency'],
    label: 'Efficiency, %',
    hint: 'of what goes in, so much comes out',
    what: 'the efficiency of the battery',
    is: 'number',
    unit: ' %',
  },
  {
    path: ['battery', 'cost'],
    label: 'Price with everything',
    hint: 'beside the items under “Price and tax”',
    what: 'the price of the battery',
    is: 'number',
  },
];

/** When the next battery comes, and for how much. */
const NEXT: readonly QuoteField[] = [
  {
    path: ['battery', 'replacement', 'year'],
    label: 'Replaced in year',
    what: 'the year in which the battery is replaced',
    is: 'number',
    places: 0,
  },
  {
    path: ['battery', 'replacement', 'amount'],
    label: 'Price of the next one',
    what: 'the price of the next battery',
    is: 'number',
  },
];

/** The fields of a battery, where the quote has one. */
export const batteryFields = ({ battery }: QuoteDocument): readonly QuoteField[] =>
  battery === undefined ? [] : PLAIN;

/** The fields of the next battery, where one is said. */
export const nextBatteryFields = ({ battery }: QuoteDocument): readonly QuoteField[] =>
  battery?.replacement === undefined ? [] : NEXT;
