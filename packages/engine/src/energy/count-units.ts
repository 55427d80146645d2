import {
  dayText,
  LARGEST_WHOLE,
  roundLargeQuotient,
  roundQuotient,
  unfoldingFigure,
  wholeProduct,
  type AppliedRounding,
  type Figure,
  type FigureKind,
  type Parameter,
} from '../quantity/index.ts';
import {
  READING_PLACES,
  shownBy,
  type Reading,
  type ReadingPair,
  type Register,
  type Stretch,
} from '../readings/index.ts';
import type { TariffDocument } from '../tariff/index.ts';

/** How a tariff counts units. */
export type UnitsRule = TariffDocument['units'];

const THOUSAND = 10 ** READING_PLACES;
const NONE: readonly never[] = [];
const UNIT_STEPS = { '0': '1', '1': '0.1', '2': '0.01', '3': '0.001' } as const;
/** Thousandths in one counted unit, by its decimals. */
const STEP_THOUSANDTHS = { '0': 1000, '1': 100, '2': 10, '3': 1 } as const;

/** What the units of one register were counted from. */
interface CountSource extends Stretch {
  readonly rule: UnitsRule;
}

/** Thousandths times the multiplying factor, rounded to counted units, in thousandths. */
function count(thousandths: number, register: Register, rule: UnitsRule): number {
  const step = STEP_THOUSANDTHS[rule.decimals];
  const { numerator, denominator } = register.factor;
  const product = thousandths * numerator;
  if (Math.abs(product) <= LARGEST_WHOLE)
    return roundQuotient(product, denominator * step, rule.rounding) * step;
  const exact = roundLargeQuotient(
    BigInt(thousandths) * BigInt(numerator),
    BigInt(denominator * step),
    rule.rounding,
  );
  return Number.parseInt((exact * BigInt(step)).toString(), 10);
}

const shown = (register: Register, reading: Reading): number => shownBy(reading, register) ?? 0;

/** The present reading, with the full scale added where the register passed it. */
function presentThousandths({ register, to, passed }: Stretch): number {
  const value = shown(register, to);
  return passed ? value + register.fullScale : value;
}

/** The reading it counted from: 0 where it began anew. */
function previousThousandths({ register, from, beganAnew }: Stretch): number {
  return beganAnew ? 0 : shown(register, from);
}

function countedUnits(source: CountSource): number {
  const { register, rule } = source;
  const present = presentThousandths(source);
  const previous = previousThousandths(source);
  if (rule.roundedAt === 'difference') return count(present - previous, register, rule);
  return count(present, register, rule) - count(previous, register, rule);
}

/**
 * Units that a register counted between two numbers it showed, in whole watt-hours, as {@link countStretch} counts
 * them but without a derivation: for trying what a bill would be with other readings.
 *
 * @param previous, present  thousandths as shown; present past the full scale where the register passed it
 * @example
 * countAdvance({ previous: 4342100, present: 4640300 }, makeRegister({ id: 'import', digits: '5', decimals: '1', multiplyingFactor: '1' }), { decimals: '0', rounding: 'down', roundedAt: 'reading' }) //=> 298000
 */
export function countAdvance(
  { previous, present }: { readonly previous: number; readonly present: number },
  register: Register,
  rule: Pick<UnitsRule, 'decimals' | 'rounding' | 'roundedAt'>,
): number {
  const own = { clause: '', ...rule };
  if (rule.roundedAt === 'difference') return count(present - previous, register, own);
  return count(present, register, own) - count(previous, register, own);
}

const END_LABELS = {
  import: { present: 'Import register, present', previous: 'Import register, previous' },
  export: { present: 'Export register, present', previous: 'Export register, previous' },
  generation: { present: 'Generation register, present', previous: 'Generation register, previous' },
} as const;

function plainFigure(
  words: { readonly id: string; readonly label: string; readonly clause?: string },
  numerator: number,
  from: { readonly operation: Figure['operation']; readonly inputs: readonly Figure[] },
): Figure {
  const { id, label, clause = '' } = words;
  const fixed = { unit: 'kWh', denominator: THOUSAND, parameters: NONE, rounding: null } as const;
  return { id, label, numerator, clause, ...fixed, ...from };
}

/** The register as the meter showed it on a day. */
function shownFigure(register: Register, reading: Reading, end: 'present' | 'previous'): Figure {
  const clause = `reading of ${dayText(reading.day)}`;
  const rate = register.rate === null ? '' : `, rate ${register.rate}`;
  const words = { id: `${register.key}-${end}`, label: `${END_LABELS[register.id][end]}${rate}`, clause };
  return plainFigure(words, shown(register, reading), { operation: 'given', inputs: NONE });
}

/** The present reading as a figure, past the full scale where the register passed it. */
function presentFigure(source: CountSource): Figure {
  const { register, to, passed: hasPassed } = source;
  const figure = shownFigure(register, to, 'present');
  if (!hasPassed) return figure;
  const words = {
    id: `${register.key}-full-scale`,
    label: 'Full scale of the register, which it passed',
    clause: 'account',
  };
  const fullScale = plainFigure(words, register.fullScale, { operation: 'given', inputs: NONE });
  const passed = { id: `${register.key}-passed`, label: `${figure.label}, past the full scale` };
  return plainFigure(passed, presentThousandths(source), { operation: 'sum', inputs: [figure, fullScale] });
}

function factorParameters(register: Register): readonly Parameter[] {
  if (register.factor.text === '1') return NONE;
  return [{ name: 'multiplying factor', text: register.factor.text, unit: 'ratio', clause: 'account' }];
}

/** The rounding to counted units, if it changed the value. */
function countRounding(
  thousandths: number,
  counted: number,
  { register, rule }: CountSource,
): AppliedRounding | null {
  const numerator = wholeProduct(thousandths, register.factor.numerator);
  if (wholeProduct(counted, register.factor.denominator) === numerator) return null;
  const exact = { numerator, denominator: register.factor.denominator * THOUSAND };
  return { step: UNIT_STEPS[rule.decimals], mode: rule.rounding, clause: rule.clause, ...exact };
}

/** A value times the factor, rounded to counted units: the value itself where that changes nothing. */
function countedFigure(input: Figure, source: CountSource): Figure {
  const { register, rule } = source;
  const thousandths = input.numerator as number;
  const numerator = count(thousandths, register, rule);
  const parameters = factorParameters(register);
  const rounding = countRounding(thousandths, numerator, source);
  if (rounding === null && parameters.length === 0) return input;
  const words = { id: `${input.id}-counted`, label: `${input.label}, in units counted`, clause: rule.clause };
  return {
    ...plainFigure(words, numerator, { operation: 'product', inputs: [input] }),
    parameters,
    rounding,
  };
}

/** The previous reading as a figure; 0 where the counter began anew. */
function previousFigure({ register, from, beganAnew }: CountSource): Figure {
  if (!beganAnew) return shownFigure(register, from, 'previous');
  const words = { id: `${register.key}-previous`, label: 'Where the counter began anew', clause: 'reset' };
  return plainFigure(words, 0, { operation: 'given', inputs: NONE });
}

/** Present and previous reading, counted one by one where the rule says so. */
function endFigures(source: CountSource): readonly Figure[] {
  const ends = [presentFigure(source), previousFigure(source)];
  return source.rule.roundedAt === 'reading' ? ends.map((end) => countedFigure(end, source)) : ends;
}

/** What a register moved between the readings of a stretch, before any factor. */
export function plainDifferenceOf(stretch: Stretch): Figure {
  const rule = { clause: '', decimals: '3', rounding: 'down', roundedAt: 'difference' } as const;
  return plainDifference({ ...stretch, rule });
}

/** Before the factor and the rounding of a difference, the plain difference. */
function plainDifference(source: CountSource): Figure {
  const words = { id: `${source.register.key}-difference`, label: 'Present less previous reading' };
  const value = presentThousandths(source) - previousThousandths(source);
  return plainFigure(words, value, { operation: 'difference', inputs: endFigures(source) });
}

/** What each channel counts, in words. */
export const UNIT_LABELS = {
  import: 'Units taken from the grid',
  export: 'Units given to the grid',
  generation: 'Units the plant made',
} as const;

function kindOf(id: Register['id'], roundedAt: UnitsRule['roundedAt']): FigureKind<CountSource> {
  const common = { id, label: UNIT_LABELS[id], unit: 'kWh', denominator: THOUSAND, clause: '' } as const;
  if (roundedAt === 'reading') return { ...common, operation: 'difference', inputs: endFigures };
  return {
    ...common,
    operation: 'product',
    inputs: (source) => [plainDifference(source)],
    parameters: ({ register }) => factorParameters(register),
    rounding: (source, numerator) => {
      const advance = presentThousandths(source) - previousThousandths(source);
      return countRounding(advance, numerator as number, source);
    },
  };
}

const kindsOf = (id: Register['id']): Readonly<Record<UnitsRule['roundedAt'], FigureKind<CountSource>>> => ({
  reading: kindOf(id, 'reading'),
  difference: kindOf(id, 'difference'),
});

const KINDS = {
  import: kindsOf('import'),
  export: kindsOf('export'),
  generation: kindsOf('generation'),
} as const;

/**
 * The units one register counted, in whole watt-hours, with the way there.
 *
 * Present minus previous reading, times the multiplying factor; decimals beyond the rule's are rounded
 * off each reading or off the difference, as the rule says.
 *
 * @returns a figure in kWh whose numerator is in watt-hours (denominator 1000)
 */
export function countStretch(stretch: Stretch, rule: UnitsRule): Figure {
  const source = { ...stretch, rule };
  return unfoldingFigure(KINDS[stretch.register.id][rule.roundedAt], countedUnits(source), source);
}

/**
 * The units one register counted between the two readings of a pair, in whole watt-hours: see
 * {@link countStretch}.
 */
export function countUnits(register: Register, pair: ReadingPair, rule: UnitsRule): Figure {
  const passed = pair.rolledOver.length > 0 && pair.rolledOver.includes(register.id);
  const source = { register, from: pair.from, to: pair.to, passed, beganAnew: false, rule };
  return unfoldingFigure(KINDS[register.id][rule.roundedAt], countedUnits(source), source);
}
