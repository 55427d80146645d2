import type { findingMaker } from '../quantity/index.ts';

const quoted = (text: string | undefined): string => `"${text ?? ''}"`;

/** What can be wrong with the quantities, prices, seasons and credits of a tariff document, by code. */
export const SCHEME_FINDINGS = {
  'tariff/unknown-quantity': {
    severity: 'error',
    text: (v) => ({
      found: `the quantity ${quoted(v['quantity'])}`,
      expected: `a quantity known here: ${v['known'] ?? ''}`,
      remedy:
        v['quantity'] === 'billed'
          ? 'Under "ledgers" charge what a netting leaves, such as "net.import".'
          : 'Correct the name, declare it under "measures", or work it out above this place.',
    }),
  },
  'tariff/quantity-twice': {
    severity: 'error',
    text: (v) => ({
      found: `a second quantity or ledger named ${quoted(v['id'])}`,
      expected: 'each name once',
      remedy: 'Give this one another name.',
    }),
  },
  'tariff/window-hours': {
    severity: 'error',
    text: (v) => ({
      found: v['found'] ?? '',
      expected: '"from" and "to" of hours of the day, two different times from 00:00 to 24:00',
      remedy: 'Give both times, or net within the whole "day".',
    }),
  },
  'tariff/units-mixed': {
    severity: 'error',
    text: (v) => ({
      found: `${quoted(v['id'])} made of ${v['units'] ?? ''}`,
      expected: 'quantities of one unit',
      remedy: 'Name quantities of one unit, or bring one to the other with "product" or "quotient".',
    }),
  },
  'tariff/not-a-power': {
    severity: 'error',
    text: (v) => ({
      found: `a charge per kilowatt on ${quoted(v['quantity'])}, which is counted in ${v['unit'] ?? ''}`,
      expected: 'a power, in kW or kVA',
      remedy: 'Name a power, or charge units with the kind "per-unit".',
    }),
  },
  'tariff/unknown-price': {
    severity: 'error',
    text: (v) => ({
      found: `the price ${quoted(v['price'])}`,
      expected: `a number, or one of the prices: ${v['known'] ?? ''}`,
      remedy: 'Write a number, correct the name, or add the price above those that use it.',
    }),
  },
  'tariff/days-not-ascending': {
    severity: 'error',
    text: (v) => ({
      found: `${v['day'] ?? ''} after ${v['before'] ?? ''}`,
      expected: 'days in order of time, each once',
      remedy: 'Put them in order.',
    }),
  },
  'tariff/unknown-season': {
    severity: 'error',
    text: (v) => ({
      found: `the season ${quoted(v['season'])}`,
      expected: `one of the seasons: ${v['known'] ?? ''}`,
      remedy: 'Add it under "seasons" or correct the name.',
    }),
  },
  'tariff/season-leap-day': {
    severity: 'error',
    text: () => ({
      found: 'a season that ends on 02-28, so that 29 February is in no season',
      expected: '"02-29", which is the 28th in a common year, or a season that begins on that day',
      remedy: 'Write "02-29".',
    }),
  },
  'tariff/credit-incomplete': {
    severity: 'error',
    text: (v) => ({
      found: v['found'] ?? '',
      expected: v['expected'] ?? '',
      remedy: v['remedy'] ?? '',
    }),
  },
  'tariff/inside-unclear': {
    severity: 'error',
    text: (v) => ({
      found: v['found'] ?? '',
      expected: 'one percentage above 0 and below 100',
      remedy: 'Write one "percent", or take "inside" out.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
