import { roundQuotient, type Figure, type Parameter } from '../quantity/index.ts';
import { READING_PLACES, type Reading, type ReadingPair, type Register } from '../readings/index.ts';
import type { TariffDocument } from '../tariff/index.ts';

/** How a tariff counts units. */
export type UnitsRule = TariffDocument['units'];

/** Thousandths in one counted unit of a rule: 1000 for whole units. */
function unitStep(rule: UnitsRule): number {
  return 10 ** (READING_PLACES - (rule.decimals.charCodeAt(0) - 48));
}

const THOUSAND = 10 ** READING_PLACES;
const UNIT_STEPS = { '0': '1', '1': '0.1', '2': '0.01', '3': '0.001' } as const;
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
          step: UNIT_STEPS[rule.decimals],
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
  operation: 'sum' | 'difference',
  inputs: readonly Figure[],
  result: { readonly id: string; readonly label: string; readonly numerator: number },
): Figure {
  return {
    id: result.id,
    label: result.label,
    unit: 'kWh',
    numerator: result.numerator,
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
  return arithmetic('sum', [figure, fullScale], {
    id: `${register.id}-passed`,
    label: `${figure.label}, past the full scale`,
    numerator: (figure.numerator as number) + register.fullScale,
  });
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
  const { id } = register;
  if (rule.roundedAt === 'difference') {
    const advance = (end.numerator as number) - (previous.numerator as number);
    const difference = arithmetic('difference', [end, previous], { id, label, numerator: advance });
    return countedFigure(difference, count(advance, register, rule), register, rule);
  }
  const to = count(end.numerator as number, register, rule);
  const from = count(previous.numerator as number, register, rule);
  const ends = [countedFigure(end, to, register, rule), countedFigure(previous, from, register, rule)];
  return arithmetic('difference', ends, { id, label, numerator: to.value - from.value });
}
