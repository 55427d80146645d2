import { exactText, quotientText } from './decimal.ts';
import type { AppliedRounding, Choice, Figure, FigureUnit, Parameter } from './figure.ts';
import type { RoundingMode } from './rounding.ts';

/** How a surface writes numbers: grouping and signs are its own, the digits are the engine's. */
export interface Notation {
  /** A plain number, from an exact decimal text such as "-1234.5". */
  readonly number: (text: string) => string;
  /** An amount of money, from an exact decimal text. */
  readonly money: (text: string) => string;
  /** Decimals of the currency's smallest coin. */
  readonly moneyPlaces: number;
}

/** A figure in words: what a command prints and a page shows, from one and the same object. */
export interface Explanation {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  /** How the value follows from the inputs, such as "50 kWh × 3.00 + …"; empty for given figures. */
  readonly formula: string;
  /** The rounding that was carried out, in words; empty when none changed the value. */
  readonly rounding: string;
  readonly clause: string;
  readonly inputs: readonly Explanation[];
}

const UNIT_WORDS: Readonly<Record<FigureUnit, string>> = {
  kWh: ' units',
  kVAh: ' kVAh',
  kW: ' kW',
  kVA: ' kVA',
  count: '',
  class: '',
  day: ' days',
  money: '',
  'money/kWh': ' per unit',
  'money/kVAh': ' per kVAh',
  'money/kW': ' per kW',
  'money/kVA': ' per kVA',
  'money/count': ' each',
  percent: ' %',
  ratio: '',
  'kWh/kWp/day': ' units per kWp and day',
};

/** Pad a decimal to the coin; leave finer decimals as they are. */
function padded(text: string, places: number): string {
  const [whole = '', decimals = ''] = text.split('.');
  return places === 0 && decimals === '' ? whole : `${whole}.${decimals.padEnd(places, '0')}`;
}

function isMoney(unit: FigureUnit): boolean {
  return unit.startsWith('money');
}

/** A number with its unit; fractions that do not end are shown as such, with a rounded decimal. */
function written(text: string, unit: FigureUnit, notation: Notation): string {
  const words = UNIT_WORDS[unit];
  const [top = '', bottom] = text.split('/');
  if (bottom !== undefined) {
    const near = quotientText(BigInt(top), Number.parseInt(bottom, 10), unit === 'ratio' ? 4 : 2);
    return `${text} (about ${notation.number(near)})${words}`;
  }
  return isMoney(unit)
    ? `${notation.money(padded(text, notation.moneyPlaces))}${words}`
    : `${notation.number(text)}${words}`;
}

/**
 * A figure's value in words, with its unit.
 *
 * @param figure    any
 * @param notation  how numbers are written
 */
export function figureValue(figure: Figure, notation: Notation): string {
  return written(exactText(figure.numerator, figure.denominator), figure.unit, notation);
}

/** A parameter with its unit; of a scaled limit also the limit as the document states it, and the factor. */
function parameterValue(parameter: Parameter, notation: Notation): string {
  const [, scaling = ''] = /( \([^)]*\))$/.exec(parameter.name) ?? [];
  return `${written(parameter.text, parameter.unit, notation)}${scaling}`;
}

/** "508 units, above 500 units": which limit chose the rates. */
function choiceWords({ by, above, upTo }: Choice, notation: Notation): string {
  const bounds = [
    above === null ? '' : `above ${parameterValue(above, notation)}`,
    upTo === null ? '' : `up to ${parameterValue(upTo, notation)}`,
  ];
  return `chosen by ${figureValue(by, notation)}, ${bounds.filter((bound) => bound !== '').join(' and ')}`;
}

/** The verb of a rounding mode, and what becomes of a half. */
const MODE_WORDS: Readonly<Record<RoundingMode, readonly [string, string]>> = {
  'half-up': ['rounded', 'a half goes up'],
  'half-even': ['rounded', 'a half goes to the even one'],
  'half-down': ['rounded', 'a half goes down'],
  up: ['rounded up', ''],
  down: ['cut down', ''],
  floor: ['rounded down', 'below 0 away from it'],
  ceiling: ['rounded up', 'below 0 towards it'],
  'half-ceiling': ['rounded', 'a half goes to the higher one'],
  'half-floor': ['rounded', 'a half goes to the lower one'],
};

function roundingWords(rounding: AppliedRounding, unit: FigureUnit, notation: Notation): string {
  const exact = written(exactText(rounding.numerator, rounding.denominator), unit, notation);
  const [verb, half] = MODE_WORDS[rounding.mode];
  const step = rounding.step === '1' ? 'a whole number' : notation.number(rounding.step);
  return `${exact} ${verb} to ${step}${half === '' ? '' : ` (${half})`}`;
}

/** Terms of a sum; of one below 0 the sign is the sum's. */
function sumWords(terms: readonly string[]): string {
  const [first = '', ...rest] = terms;
  return rest.reduce(
    (sum, term) => (/^[-−]/.test(term) ? `${sum} − ${term.slice(1)}` : `${sum} + ${term}`),
    first,
  );
}

/** A term that is taken off: of one below 0 the sign stands in brackets. */
function bracketed(term: string): string {
  return /^[-−]/.test(term) ? `(${term})` : term;
}

/** How an operation reads, from the words of its inputs and parameters. */
function formula(figure: Figure, inputs: readonly string[], parameters: readonly string[]): string {
  const [first = '', ...rest] = inputs;
  switch (figure.operation) {
    case 'given':
      return '';
    case 'sum':
      return inputs.length > 1 ? sumWords(inputs) : '';
    case 'difference':
      return rest.length === 0 ? '' : [first, ...rest.map(bracketed)].join(' − ');
    case 'excess':
      return `${[first, ...rest].join(' − ')}, but not below 0`;
    case 'least':
      return inputs.length === 2
        ? `the smaller of ${inputs.join(' and ')}`
        : `the least of ${inputs.join(', ')}`;
    case 'greatest':
      return inputs.length === 2
        ? `the larger of ${inputs.join(' and ')}`
        : `the greatest of ${inputs.join(', ')}`;
    case 'product':
      return [...inputs, ...parameters].length > 1 ? [...inputs, ...parameters].join(' × ') : '';
    case 'quotient':
      return inputs.join(' ÷ ');
    case 'share':
      return `${parameters[0] ?? ''} of ${inputs.length > 1 ? `(${sumWords(inputs)})` : first}`;
    case 'inside':
      return `${parameters[0] ?? ''} of what ${sumWords(inputs)} and this come to together`;
    case 'credit':
      return `what ${first} of credit can meet of ${rest[0] ?? ''}, taken off`;
    case 'part':
      return `the part of ${first} above ${parameters[0] ?? '0'}${parameters[1] === undefined ? '' : `, up to ${parameters[1]}`}`;
    case 'shortfall':
      return `${first} − ${rest.length > 1 ? `(${sumWords(rest)})` : (rest[0] ?? '')}, but not below 0`;
    case 'at-least':
      return `the larger of ${first} and ${sumWords(rest)}`;
  }
}

/**
 * Put a figure and everything it follows from into words.
 *
 * @param figure    any
 * @param notation  how numbers are written
 * @returns         the same tree as text: value, formula, clause and rounding of every step
 */
export function explainFigure(figure: Figure, notation: Notation): Explanation {
  const values = figure.inputs.map((input) => figureValue(input, notation));
  const parameters = figure.parameters.map((parameter) => parameterValue(parameter, notation));
  const { rounding, choice } = figure;
  const worked = formula(figure, values, parameters);
  const chosen = choice === null || choice === undefined ? '' : choiceWords(choice, notation);
  return {
    id: figure.id,
    label: figure.label,
    value: figureValue(figure, notation),
    formula: [worked, chosen].filter((part) => part !== '').join('; '),
    rounding: rounding === null ? '' : roundingWords(rounding, figure.unit, notation),
    clause: figure.clause,
    inputs: figure.inputs.map((input) => explainFigure(input, notation)),
  };
}
