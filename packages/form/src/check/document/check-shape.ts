import { HOUSEHOLD_FORMAT } from '../../household/household.ts';
import { HOUSEHOLD } from '../../household/household-shape.ts';
import { isFields, misfits, type FieldShapes, type Shape } from '../../household/shape.ts';
import type { Finding } from '@unitbook/engine';
import { CHECK_FORMAT } from './typed-check.ts';

const TEXT: Shape = [];
const TEXTS: Shape = { under: TEXT };

const texts = (...names: readonly string[]): FieldShapes =>
  Object.fromEntries(names.map((name) => [`${name}?`, TEXT]));

const BILL: Shape = {
  fields: {
    from: TEXT,
    to: TEXT,
    ...texts('number', 'account', 'category', 'currency', 'issued', 'due', 'days', 'load', 'factor'),
    ...texts('arrears', 'lateFee', 'adjustment', 'sum', 'rounding', 'payable'),
    'status?': ['actual', 'estimated'],
    'serials?': { fields: texts('grid', 'generation') },
    'readings?': { under: { fields: texts('previous', 'present') } },
    'units?': TEXTS,
    'opening?': TEXTS,
    'closing?': TEXTS,
    'slabs?': { each: { fields: { units: TEXT, ...texts('rate', 'amount') } } },
    'lines?': { each: { fields: { charge: TEXT, amount: TEXT, ...texts('units', 'rate') } } },
    'paid?': { fields: { on: TEXT, amount: TEXT } },
  },
};

const CHECK: Shape = {
  fields: {
    format: [CHECK_FORMAT],
    bills: { each: BILL, least: 1 },
    'connected?': TEXT,
    'opening?': ['unknown'],
  },
};

/**
 * Everything in a document that a check cannot be made of, by path. Texts may be half typed numbers: they are told of
 * where they stand.
 *
 * @param document  of the format `unitbook-check-1`, or what calls itself so
 */
export function checkMisfits(document: Readonly<Record<string, unknown>>): readonly Finding[] {
  const { account, readings = [], tariff } = document;
  const household = { format: HOUSEHOLD_FORMAT, account, readings };
  const isTariff = typeof tariff === 'string' || isFields(tariff);
  return [
    ...misfits(document, CHECK, []),
    ...misfits(household, HOUSEHOLD, []),
    ...(isTariff ? [] : misfits(tariff, TEXT, ['tariff'])),
  ];
}
