import { describe, expect, it } from 'vitest';
import { explainFigure, figureValue, type Notation } from './explain.ts';
import { givenFigure, type Figure, type FigureUnit, type Operation, type Parameter } from './figure.ts';

const RUPEES: Notation = { number: (text) => text, money: (text) => `Rs ${text}`, moneyPlaces: 2 };

function given(numerator: number | bigint, unit: FigureUnit, denominator = 1): Figure {
  return givenFigure({ id: 'given', label: 'Given', unit, numerator, denominator, clause: 'account' });
}

function parameter(text: string, unit: FigureUnit): Parameter {
  return { name: 'p', text, unit, clause: 'T 1' };
}

/** What a figure made by an operation says of how it was made. */
function formulaOf(
  operation: Operation,
  inputs: readonly Figure[],
  parameters: readonly Parameter[] = [],
): string {
  const figure: Figure = { ...given(0, 'money'), operation, inputs, parameters };
  return explainFigure(figure, RUPEES).formula;
}

const units = (value: number): Figure => given(value, 'kWh');
const rupees = (paise: number): Figure => given(paise, 'money', 100);

describe('the formula of a figure', () => {
  it('is empty for what is given, and for a sum or a product of one', () => {
    expect(formulaOf('given', [])).toBe('');
    expect(formulaOf('sum', [units(5)])).toBe('');
    expect(formulaOf('product', [units(5)])).toBe('');
  });

  it.each<[Operation, readonly Figure[], readonly Parameter[], string]>([
    ['sum', [units(2), units(3)], [], '2 units + 3 units'],
    ['difference', [units(9), units(3), units(2)], [], '9 units − 3 units − 2 units'],
    ['excess', [units(313), units(278)], [], '313 units − 278 units, but not below 0'],
    ['least', [units(412), units(313)], [], 'the smaller of 412 units and 313 units'],
    ['product', [units(50)], [parameter('3.00', 'money/kWh')], '50 units × Rs 3.00 per unit'],
    ['product', [given(4, 'kW'), given(2, 'ratio', 3)], [], '4 kW × 2/3 (about 0.6667)'],
    ['quotient', [units(120), units(270)], [], '120 units ÷ 270 units'],
    ['share', [rupees(38520)], [parameter('6', 'percent')], '6 % of Rs 385.20'],
    ['share', [rupees(100), rupees(250)], [parameter('5', 'percent')], '5 % of (Rs 1.00 + Rs 2.50)'],
    [
      'part',
      [units(99)],
      [parameter('50', 'kWh'), parameter('150', 'kWh')],
      'the part of 99 units above 50 units, up to 150 units',
    ],
    ['part', [units(99)], [parameter('50', 'kWh')], 'the part of 99 units above 50 units'],
    ['shortfall', [rupees(15000), rupees(12000)], [], 'Rs 150.00 − Rs 120.00, but not below 0'],
    [
      'shortfall',
      [rupees(15000), rupees(12000), rupees(0)],
      [],
      'Rs 150.00 − (Rs 120.00 + Rs 0.00), but not below 0',
    ],
    [
      'at-least',
      [rupees(15000), rupees(12000), rupees(0)],
      [],
      'the larger of Rs 150.00 and Rs 120.00 + Rs 0.00',
    ],
  ])('reads as it is computed: %s', (operation, inputs, parameters, words) => {
    expect(formulaOf(operation, inputs, parameters)).toBe(words);
  });
});

describe('the value of a figure', () => {
  it.each<[Figure, string]>([
    [given(4, 'kW'), '4 kW'],
    [given(30, 'day'), '30 days'],
    [given(6, 'percent'), '6 %'],
    [given(1, 'ratio', 2), '0.5'],
    [given(4, 'ratio', 9), '4/9 (about 0.4444)'],
    [given(2, 'kWh', 3), '2/3 (about 0.67) units'],
    [given(190, 'kWh', 3), '190/3 (about 63.33) units'],
    [given(36, 'kWh/kWp/day', 10), '3.6 units per kWp and day'],
    [given(61291, 'money', 100), 'Rs 612.91'],
    [given(613, 'money'), 'Rs 613.00'],
    [given(-75, 'money'), 'Rs -75.00'],
    [given(23112, 'money', 1000), 'Rs 23.112'],
    [given(3, 'money/kWh'), 'Rs 3.00 per unit'],
    [given(60, 'money/kW'), 'Rs 60.00 per kW'],
    [given(10n ** 20n, 'kWh'), '100000000000000000000 units'],
  ])('is written with its unit', (figure, text) => {
    expect(figureValue(figure, RUPEES)).toBe(text);
  });

  it('has no decimals in a currency without coins, unless the value has', () => {
    const yen: Notation = { ...RUPEES, money: (text) => `¥${text}`, moneyPlaces: 0 };
    expect(figureValue(given(1200, 'money'), yen)).toBe('¥1200');
    expect(figureValue(given(12005, 'money', 10), yen)).toBe('¥1200.5');
  });

  it('goes through the notation, number by number', () => {
    const bracketed: Notation = {
      number: (text) => `<${text}>`,
      money: (text) => `[${text}]`,
      moneyPlaces: 2,
    };
    expect(figureValue(given(190, 'kWh', 3), bracketed)).toBe('190/3 (about <63.33>) units');
    expect(figureValue(given(-5, 'money'), bracketed)).toBe('[-5.00]');
  });
});

it('explains rounding, clauses and every input down to what was given', () => {
  const energy = rupees(38520);
  const tax: Figure = {
    id: 'tax',
    label: 'Electricity tax',
    unit: 'money',
    numerator: 2311,
    denominator: 100,
    operation: 'share',
    inputs: [energy],
    parameters: [parameter('6', 'percent')],
    rounding: { step: '0.01', mode: 'half-up', clause: 'TO-2024 cl. 6', numerator: 23112, denominator: 1000 },
    clause: 'TO-2024 cl. 5.2',
  };
  expect(explainFigure(tax, RUPEES)).toEqual({
    id: 'tax',
    label: 'Electricity tax',
    value: 'Rs 23.11',
    formula: '6 % of Rs 385.20',
    rounding: 'Rs 23.112 rounded to 0.01 (a half goes up)',
    clause: 'TO-2024 cl. 5.2',
    inputs: [
      {
        id: 'given',
        label: 'Given',
        value: 'Rs 385.20',
        formula: '',
        rounding: '',
        clause: 'account',
        inputs: [],
      },
    ],
  });
});
