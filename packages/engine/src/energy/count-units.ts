import { roundQuotient, wholeToDecimal, type Figure, type Parameter } from '../quantity/index.ts';
import { READING_PLACES, type Reading, type ReadingPair, type Register } from '../readings/index.ts';
import type { TariffDocument } from '../tariff/index.ts';

/** How a tariff counts units. */
export type UnitsRule = TariffDocument['units'];

/** Thousandths in one counted unit of a rule: 1000 for whole units. */
function unitStep(rule: UnitsRule): number {
  return 10 ** (READING_PLACES - (rule.decimals.charCodeAt(0) - 48));
}

const THOUSAND = 10 ** READING_PLACES;
const NONE: readonly never[] = [];

/** The register as the meter showed it on a day. */
function shownFigure(register: Register, reading: Reading, end: 'present' | 'previous'): Figure {
  return {
    id: `${register.id}-${end}`,
    label: END_LABELS[register.id][end],
    unit: 'kWh',
    numerator: reading[register.id] ?? 0,
    denominator: THOUSAND,
    operation: 'given',
    inputs: NONE,
    parameters: NONE,
    rounding: null,
    clause: '',
  };
}

const END_LABELS = {
  import: { present: 'Import register, present', previous: 'Import register, previous' },
  export: { present: 'Export register, present', previous: 'Export register, previous' },
  generation: { present: 'Generation register, present', previous: 'Generation register, previous' },
} as const;

const UNIT_LABELS = {
  import: 'Units taken from the grid',
  export: 'Units given to the grid',
  generation: 'Units the plant made',
} as const;

/** A value in thousandths times the multiplying factor, rounded to counted units. */
interface Counted {
  readonly value: number;
  readonly isRounded: boolean;
  readonly numerator: number;
  readonly denominator: number;
}

function count(thousandths: number, register: Register, rule: UnitsRule): Counted {
  const step = unitStep(rule);
  const numerator = thousandths * register.factor.numerator;
  const denominator = register.factor.denominator * step;
  const value = roundQuotient(numerator, denominator, rule.rounding) * step;
  const isRounded = value * register.factor.denominator !== numerator;
  return { value, isRounded, numerator, denominator: register.factor.denominator * THOUSAND };
}

function factorParameters(register: Register): readonly Parameter[] {
  if (register.factor.text === '1') return NONE;
  return [{ name: 'multiplying factor', text: register.factor.text, unit: 'ratio', clause: 'account' }];
}

/** The figure of a counted value: the input times the factor, then the rounding. */
function countedFigure(input: Figure, counted: Counted, register: Register, rule: UnitsRule): Figure {
  const parameters = factorParameters(register);
  if (!counted.isRounded && parameters.length === 0) return input;
  return {
    id: `${input.id}-counted`,
    label: `${input.label}, in units counted`,
    unit: 'kWh',
    numerator: counted.value,
    denominator: THOUSAND,
    operation: 'product',
    inputs: [input],
    parameters,
    rounding: counted.isRounded
      ? {
          step: wholeToDecimal(1, rule.decimals.charCodeAt(0) - 48),
          mode: rule.rounding,
          clause: rule.clause,
          numerator: counted.numerator,
          denominator: counted.denominator,
        }
      : null,
    clause: rule.clause,
  };
}

function arithmetic(
  id: string,
  label: string,
  numerator: number,
  operation: 'sum' | 'difference',
  inputs: Figure[],
): Figure {
  return {
    id,
    label,
    unit: 'kWh',
    numerator,
    denominator: THOUSAND,
    operation,
    inputs,
    parameters: NONE,
    rounding: null,
    clause: '',
  };
}

/** Add the full scale to a register that passed it. */
function beyondFullScale(figure: Figure, register: Register): Figure {
  const fullScale: Figure = {
    ...figure,
    id: `${register.id}-full-scale`,
    label: 'Full scale of the register, which it passed',
    numerator: register.fullScale,
    operation: 'given',
    inputs: NONE,
    parameters: NONE,
    rounding: null,
    clause: 'account',
  };
  const value = (figure.numerator as number) + register.fullScale;
  return arithmetic(`${register.id}-passed`, `${figure.label}, past the full scale`, value, 'sum', [
    figure,
    fullScale,
  ]);
}

/**
 * The units one register counted in a period, in whole watt-hours, with the way there.
 *
 * Present minus previous reading, times the multiplying factor; decimals beyond the rule's are rounded
 * off each reading or off the difference, as the rule says.
 *
 * @returns a figure in kWh whose numerator is in watt-hours (denominator 1000)
 */
export function countUnits(register: Register, pair: ReadingPair, rule: UnitsRule): Figure {
  const present = shownFigure(register, pair.to, 'present');
  const previous = shownFigure(register, pair.from, 'previous');
  const passed = pair.rolledOver.includes(register.id);
  const end = passed ? beyondFullScale(present, register) : present;
  const label = UNIT_LABELS[register.id];
  if (rule.roundedAt === 'difference') {
    const advance = (end.numerator as number) - (previous.numerator as number);
    const difference = arithmetic(register.id, label, advance, 'difference', [end, previous]);
    return countedFigure(difference, count(advance, register, rule), register, rule);
  }
  const to = count(end.numerator as number, register, rule);
  const from = count(previous.numerator as number, register, rule);
  return arithmetic(register.id, label, to.value - from.value, 'difference', [
    countedFigure(end, to, register, rule),
    countedFigure(previous, from, register, rule),
  ]);
}
