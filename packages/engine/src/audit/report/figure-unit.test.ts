import { expect, it } from 'vitest';
import kvahText from '../../../../../tariffs-examples/india/pspcl-kvah/tariff.json?raw';
import { readTariff } from '../../tariff/index.ts';
import { figureUnit } from './figure-unit.ts';

it.each([
  ['units.import', 'kWh'],
  ['units.import-kvah', 'kVAh'],
  ['units.import@peak', 'kWh'],
  ['line.Fuel adj. charge', 'money'],
  ['closing.credit', 'kWh'],
  ['days', 'day'],
])('%s counts %s', (name, unit) => {
  const { value } = readTariff(kvahText);
  if (value === null) throw new Error('the example cannot be read');
  expect(figureUnit(name, value.document)).toBe(unit);
});
