import { readAccount, readTariff } from '@unitbook/engine';
import { changed } from '../support/demo.ts';
import { changedTariff } from './changed-tariff.ts';
import type { MessageCase } from './message-case.ts';

const CLAUSE_MEANING =
  'The clause: the key of one of the sources, then the place, such as "TO-2024 cl. 4.2".';
const DECIMAL_REMEDY = 'Write it like "3.10" or "-1.50".';
const DECIMAL_MEANING = 'a decimal number: digits, one point at most, no grouping, no exponent';
const TEXT_MEANING = 'a decimal number written as text, so that no digit is lost on the way';
const VALUE_REMEDY = 'Write what is expected.';

/** Everything that can be wrong with the form of a document. */
export const DOCUMENT_CASES: readonly MessageCase[] = [
  {
    code: 'document/not-json',
    when: 'the file is empty',
    make: () => readTariff('').findings,
    at: '1:1',
    found: 'the file is not JSON here: the file is empty',
    expected: 'one JSON object',
    remedy: 'Correct the text at this place; nothing after it could be read.',
  },
  {
    code: 'document/not-json',
    when: 'a comma stands twice',
    make: changedTariff('"format": "unitbook-tariff-1",', '"format": "unitbook-tariff-1",,'),
    at: '3:33',
    found: 'the file is not JSON here: property name expected',
    expected: 'one JSON object',
    remedy: 'Correct the text at this place; nothing after it could be read.',
  },
  {
    code: 'document/duplicate-key',
    when: 'a key stands twice',
    make: changedTariff('"id": "tarumira-domestic",', '"id": "tarumira-domestic",\n  "id": "other",'),
    at: '5:9',
    found: 'the key "id" stands here a second time',
    expected: 'each key once',
    remedy: 'Keep one of the two; a reader could take either.',
  },
  {
    code: 'document/number-not-text',
    when: 'a number has no quotation marks',
    make: changedTariff('"divisor": "30"', '"divisor": 30'),
    at: '37:18',
    found: 'the number 30 without quotation marks',
    expected: TEXT_MEANING,
    remedy: 'Write "30".',
  },
  {
    code: 'document/number-not-text',
    when: 'a number with trailing zeros has no quotation marks',
    make: changedTariff('"rate": "60.00"', '"rate": 60.00'),
    at: '128:19',
    found: 'the number 60.00 without quotation marks',
    expected: TEXT_MEANING,
    remedy: 'Write "60.00".',
  },
  {
    code: 'document/number-not-text',
    when: 'the step of a rounding has no quotation marks',
    make: changedTariff('"line": { "step": "0.01"', '"line": { "step": 0.01'),
    at: '29:23',
    found: 'the number 0.01 without quotation marks',
    expected: TEXT_MEANING,
    remedy: 'Write "0.01".',
  },
  {
    code: 'document/not-a-decimal',
    when: 'a rate has a comma',
    make: changedTariff('"rate": "60.00"', '"rate": "60,00"'),
    at: '128:19',
    found: '"60,00"',
    expected: DECIMAL_MEANING,
    remedy: DECIMAL_REMEDY,
  },
  {
    code: 'document/not-a-decimal',
    when: 'the step of a rounding has a comma',
    make: changedTariff('"line": { "step": "0.01"', '"line": { "step": "0,01"'),
    at: '29:23',
    found: '"0,01"',
    expected: DECIMAL_MEANING,
    remedy: DECIMAL_REMEDY,
  },
  {
    code: 'document/unknown-key',
    when: 'a key of the document means nothing',
    make: changedTariff('"supplier": "TARESCO",', '"supplier": "TARESCO",\n  "colour": "green",'),
    at: '7:13',
    found: 'the key "colour", which means nothing here',
    expected:
      'one of $schema, format, id, name, supplier, invented, currency, sources, units, rounding, measures, ' +
      'prices, timeBlocks, seasons, dayRules, versionChange, trueUp, versions, settlements',
    remedy: 'Correct the spelling or take the key out.',
  },
  {
    code: 'document/unknown-key',
    when: 'a key of a charge means nothing',
    make: changedTariff(
      '"clause": "TO-2024 cl. 5.2",',
      '"clause": "TO-2024 cl. 5.2",\n          "note": "x",',
    ),
    at: '169:19',
    found: 'the key "note", which means nothing here',
    expected:
      'one of kind, id, label, clause, rounding, season, inTotal, percent, chosenBy, steps, of, inside',
    remedy: 'Correct the spelling or take the key out.',
  },
  {
    code: 'document/missing-key',
    when: 'a slab has no rate',
    make: changedTariff('{ "rate": "8.00" }', '{ }'),
    at: '142:13',
    found: 'no "rate"',
    expected:
      'Money per unit (kWh). A decimal number written as text, such as "3.10", or the name of one of the prices.',
    remedy: 'Add "rate".',
  },
  {
    code: 'document/missing-key',
    when: 'a charge has no clause',
    make: changedTariff('"clause": "TO-2024 cl. 5.1",\n          ', ''),
    at: '156:9',
    found: 'no "clause"',
    expected: CLAUSE_MEANING,
    remedy: 'Add "clause".',
  },
  {
    code: 'document/missing-key',
    when: 'nothing says which quantity chooses a step',
    make: changedTariff(
      '"clause": "TO-2024 cl. 5.2",\n          "percent": "6",',
      '"clause": "TO-2024 cl. 5.2",\n          "steps": [{ "percent": "6" }],',
    ),
    at: '164:9',
    found: 'no "chosenBy"',
    expected: 'the quantity that chooses the step',
    remedy: 'Add "chosenBy".',
  },
  {
    code: 'document/missing-key',
    when: 'nothing says how bands are applied',
    make: changedTariff('"rate": "60.00",', '"bands": [{ "rate": "60.00" }],'),
    at: '122:9',
    found: 'no "method"',
    expected: '"telescopic" or "whole": how bands are applied',
    remedy: 'Add "method".',
  },
  {
    code: 'document/missing-key',
    when: 'a span of days has one end',
    make: changedTariff(',\n      "unscaledThrough": "33"', ''),
    at: '34:14',
    found: 'no "unscaledThrough"',
    expected: 'the other end of the span that begins or ends with "unscaledFrom"',
    remedy: 'Add "unscaledThrough".',
  },
  {
    code: 'document/missing-key',
    when: 'an account has no load',
    make: () => readAccount(changed(ACCOUNT, '"sanctionedLoad":"4",', '')).findings,
    at: '1:1',
    found: 'no "sanctionedLoad"',
    expected:
      'Sanctioned load of the connection in kW, from the bill. ' + 'A number written as text, such as "3.3".',
    remedy: 'Add "sanctionedLoad".',
  },
  {
    code: 'document/wrong-value',
    when: 'a value is not on the list',
    make: changedTariff('"decimals": "0"', '"decimals": "4"'),
    at: '26:55',
    found: '"4"',
    expected: 'Decimals of a billed unit: "0" bills whole units; one of "0", "1", "2", "3"',
    remedy: VALUE_REMEDY,
  },
  {
    code: 'document/wrong-value',
    when: 'there is no such kind of charge',
    make: changedTariff(
      '"kind": "percentage",\n          "clause": "TO-2024 cl. 5.2"',
      '"kind": "percent",\n          "clause": "TO-2024 cl. 5.2"',
    ),
    at: '167:19',
    found: '"percent"',
    expected:
      'one of "slabs", "slab-tables", "per-unit", "per-kilowatt", "fixed", "percentage", "minimum", "credit"',
    remedy: VALUE_REMEDY,
  },
  {
    code: 'document/wrong-value',
    when: 'a rounding has a mode that there is not',
    make: changedTariff(
      '"total": { "step": "1", "mode": "half-up" }',
      '"total": { "step": "1", "mode": "nearest" }',
    ),
    at: '30:37',
    found: '"nearest"',
    expected:
      'half-up, half-even … on the magnitude; floor, ceiling … signed; one of "half-up", "half-even", ' +
      '"half-down", "up", "down", "floor", "ceiling", "half-ceiling", "half-floor"',
    remedy: VALUE_REMEDY,
  },
  {
    code: 'document/wrong-value',
    when: 'a number stands where true or false belongs',
    make: changedTariff('"invented": true', '"invented": 1'),
    at: '7:15',
    found: '1',
    expected: 'true: for demos, no real place; true or false',
    remedy: VALUE_REMEDY,
  },
  {
    code: 'document/wrong-value',
    when: 'a list is empty',
    make: changedTariff(
      '{ "upTo": "50", "rate": "3.00" },\n            { "upTo": "150", "rate": "4.80" },\n' +
        '            { "upTo": "300", "rate": "6.50" },\n            { "rate": "8.00" }\n          ',
      '',
    ),
    at: '138:20',
    found: '[\n            ]',
    expected: 'In ascending order of `upTo`; at least one',
    remedy: VALUE_REMEDY,
  },
];

const ACCOUNT =
  '{"format":"unitbook-account-1","id":"A","sanctionedLoad":"4","plantCapacity":"5","openingCredit":"0",' +
  '"meters":{"grid":{"serial":"P","multiplyingFactor":"1",' +
  '"import":{"digits":"5","decimals":"1"},"export":{"digits":"5","decimals":"1"}}}}';
