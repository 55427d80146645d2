import { readTariff } from '@unitbook/engine';
import { changed, DEMO_TARIFF } from '../support/demo.ts';
import { changedTariff } from './changed-tariff.ts';
import type { MessageCase } from './message-case.ts';

const TAX = '"clause": "TO-2024 cl. 5.2",\n          "percent": "6",\n          "of": ["energy"]';
const taxOf = (base: string) => changedTariff(TAX, TAX.replace('"energy"', base));

const ONE_OF_TWO = { expected: '"rate" or "bands"', remedy: 'Keep exactly one of the two.' } as const;
const LIMITS = {
  expected: 'limits that ascend from above 0',
  remedy: 'Put them in ascending order or correct the limit.',
} as const;
const ABOVE_ZERO = { expected: 'a number above 0', remedy: 'Correct the number.' } as const;

const COUNTED_ONCE = {
  expected: 'lines that are each counted once',
  remedy: 'Name a line once: itself, or one floor that stands in for it.',
} as const;
/** The demo with the minimum of its newer version made a floor, and one more change. */
const withFloor = (from: string, to: string) => () => {
  const floor =
    '"clause": "TO-2024 cl. 4.4",\n          "amount": "150.00",\n          "of": ["fixed", "energy"],\n          "as": ';
  const tariff = changed(DEMO_TARIFF, `${floor}"shortfall"`, `${floor}"floor"`);
  return readTariff(changed(tariff, from, to)).findings;
};

/** Everything that can be wrong with what the charges of a tariff say. */
export const CHARGE_CASES: readonly MessageCase[] = [
  {
    code: 'tariff/unknown-currency',
    when: 'the currency is not in ISO 4217',
    make: changedTariff('"currency": "INR"', '"currency": "INX"'),
    at: '8:15',
    found: 'the currency "INX"',
    expected: 'a currency code of ISO 4217, such as "INR"',
    remedy: 'Correct the code.',
  },
  {
    code: 'tariff/clause-without-source',
    when: 'a clause names no source',
    make: changedTariff('"TO-2024 cl. 5.2"', '"TO-2025 cl. 5.2"'),
    at: '168:21',
    found: 'the clause "TO-2025 cl. 5.2"',
    expected: 'a clause that begins with one of the sources: TO-2023, TO-2024, NMR-2021',
    remedy: 'Add the source under "sources" or correct the clause.',
  },
  {
    code: 'tariff/slabs-not-ascending',
    when: 'a limit equals the one before',
    make: changedTariff('"upTo": "150", "rate": "4.80"', '"upTo": "50.0", "rate": "4.80"'),
    at: '140:23',
    found: 'the limit 50.0 after the limit 50',
    ...LIMITS,
  },
  {
    code: 'tariff/slabs-not-ascending',
    when: 'the first limit is 0',
    make: changedTariff('"upTo": "50", "rate": "3.00"', '"upTo": "0", "rate": "3.00"'),
    at: '139:23',
    found: 'the limit 0 after the limit 0',
    ...LIMITS,
  },
  {
    code: 'tariff/slab-limit-missing',
    when: 'a slab before the last has no limit',
    make: changedTariff('{ "upTo": "300", "rate": "6.50" }', '{ "rate": "6.50" }'),
    at: '141:13',
    found: 'a slab without "upTo" that is not the last',
    expected: 'an upper limit on every slab but the last',
    remedy: 'Add "upTo".',
  },
  {
    code: 'tariff/last-slab-limited',
    when: 'the last slab has a limit',
    make: changedTariff('{ "rate": "8.00" }', '{ "upTo": "500", "rate": "8.00" }'),
    at: '142:23',
    found: 'the last slab ends at 500',
    expected: 'a last slab without "upTo", so that every quantity has a rate',
    remedy: 'Take "upTo" out of the last slab or add a slab after it.',
  },
  {
    code: 'tariff/same-id-twice',
    when: 'two charges have one id',
    make: changedTariff(
      '"id": "tax",\n          "label": "Electricity tax",\n          "kind": "percentage",\n          "clause": "TO-2024',
      '"id": "fuel",\n          "label": "Electricity tax",\n          "kind": "percentage",\n          "clause": "TO-2024',
    ),
    at: '165:17',
    found: 'a second charge with the id "fuel"',
    expected: 'each id once in a version',
    remedy: 'Give this charge another id.',
  },
  {
    code: 'tariff/unknown-line',
    when: 'a base stands below',
    make: taxOf('"subsidy"'),
    at: '170:18',
    found: 'the line "subsidy"',
    expected: 'a line above this one: "fixed", "energy", "minimum", "fuel"',
    remedy: 'Name a line above, or move this charge below the line it names.',
  },
  {
    code: 'tariff/counted-twice',
    when: 'a tax is on a line twice',
    make: taxOf('"energy", "energy"'),
    at: '170:28',
    found: '"energy" twice',
    ...COUNTED_ONCE,
  },
  {
    code: 'tariff/counted-twice',
    when: 'a tax is on a floor and on a line under it',
    make: withFloor(TAX, TAX.replace('"energy"', '"energy", "minimum"')),
    at: '170:28',
    found: 'the floor "minimum" and "energy", which it stands in for',
    ...COUNTED_ONCE,
  },
  {
    code: 'tariff/counted-twice',
    when: 'two floors stand in for one line',
    make: withFloor(
      `"kind": "percentage",\n          ${TAX}`,
      '"kind": "minimum",\n"clause": "TO-2024 cl. 5.2",\n"amount": "9", "as": "floor", "scaledBy": "month",\n"of": ["energy"]',
    ),
    at: '170:8',
    found: '"energy", which the floor "minimum" stands in for',
    ...COUNTED_ONCE,
  },
  {
    code: 'tariff/split-unscaled',
    when: 'a charge for a whole month has no day rule, and a change splits the month',
    make: changedTariff('"rate": "60.00",\n          "scaledBy": "month"', '"rate": "60.00"'),
    at: '122:9',
    found: '"fixed" without "scaledBy", where a change of the charges splits the period',
    expected: 'a day rule, so that each part bears its share only',
    remedy: 'Add "scaledBy" with one of the day rules, or let one version bill the whole period.',
  },
  {
    code: 'tariff/line-not-recomputable',
    when: 'a charge per kilowatt is charged again on units',
    make: taxOf('{ "line": "fixed", "recomputedOn": "import" }'),
    at: '170:18',
    found: 'the line "fixed", of kind per-kilowatt, charged again on another quantity',
    expected: 'a line of kind slabs, slab-tables or per-unit',
    remedy: 'Name a line that is charged on units, or name the line itself.',
  },
  {
    code: 'tariff/unknown-day-rule',
    when: 'a charge is scaled by a rule that there is not',
    make: changedTariff(
      '"rate": "60.00",\n          "scaledBy": "month"',
      '"rate": "60.00",\n          "scaledBy": "months"',
    ),
    at: '129:23',
    found: 'the day rule "months"',
    expected: 'one of the day rules: "month"',
    remedy: 'Add it under "dayRules" or correct the name.',
  },
  {
    code: 'tariff/one-of-two',
    when: 'both are there',
    make: changedTariff(
      '"rate": "60.00",',
      '"rate": "60.00", "bands": [{ "rate": "60.00" }], "method": "whole",',
    ),
    at: '122:9',
    found: 'both "rate" and "bands"',
    ...ONE_OF_TWO,
  },
  {
    code: 'tariff/one-of-two',
    when: 'neither is there',
    make: changedTariff('"rate": "60.00",\n          ', ''),
    at: '122:9',
    found: 'neither "rate" nor "bands"',
    ...ONE_OF_TWO,
  },
  {
    code: 'tariff/no-effect',
    when: 'a chooser stands beside telescopic slabs',
    make: changedTariff(
      '"slabs": [\n            { "upTo": "50", "rate": "3.00" }',
      '"chosenBy": "import", "slabs": [\n            { "upTo": "50", "rate": "3.00" }',
    ),
    at: '138:23',
    found: '"chosenBy" beside the method "telescopic"',
    expected: 'a quantity that chooses only where one of several is chosen for the whole',
    remedy: 'Take "chosenBy" out, or write steps, or the method "whole".',
  },
  {
    code: 'tariff/step-not-positive',
    when: 'a step is 0',
    make: changedTariff('"total": { "step": "1"', '"total": { "step": "0.00"'),
    at: '30:24',
    found: '"step" is 0.00',
    ...ABOVE_ZERO,
  },
  {
    code: 'tariff/step-not-positive',
    when: 'a divisor is below 0',
    make: changedTariff('"divisor": "30"', '"divisor": "-30"'),
    at: '37:18',
    found: '"divisor" is -30',
    ...ABOVE_ZERO,
  },
  {
    code: 'tariff/finer-than-grid',
    when: 'a rate has nine decimals',
    make: changedTariff('"rate": "3.00"', '"rate": "3.000000001"'),
    at: '139:37',
    found: '"3.000000001", with 9 decimals',
    expected: 'at most 8 decimals here',
    remedy: 'Round it as the order does, or state it in another unit.',
  },
  {
    code: 'tariff/finer-than-grid',
    when: 'a limit has four decimals',
    make: changedTariff('"upTo": "50", "rate": "3.00"', '"upTo": "50.0005", "rate": "3.00"'),
    at: '139:23',
    found: '"50.0005", with 4 decimals',
    expected: 'at most 3 decimals here',
    remedy: 'Round it as the order does, or state it in another unit.',
  },
  {
    code: 'tariff/too-large',
    when: 'a rate has ten digits before the point',
    make: changedTariff('"rate": "3.00"', '"rate": "1234567890.00"'),
    at: '139:37',
    found: '"1234567890.00"',
    expected: 'at most 9 digits before the point, and 15 in all',
    remedy: 'Correct the number, or state it in another unit.',
  },
  {
    code: 'tariff/span-reversed',
    when: 'a span of days ends before it begins',
    make: changedTariff('"unscaledFrom": "27"', '"unscaledFrom": "34"'),
    at: '39:26',
    found: 'a span that begins at 34 days and ends at 33',
    expected: '"unscaledThrough" on or after "unscaledFrom"',
    remedy: 'Put the two in order.',
  },
];
