import {
  commonMultiple,
  decimalPlaces,
  decimalToWhole,
  roundQuotient,
  type Figure,
  type Finding,
  type Outcome,
  type Path,
  type Period,
} from '../quantity/index.ts';
import type { SurplusPayment } from '../settlement/index.ts';
import type { Rounding } from '../quantity/index.ts';
import { quantityVector } from './constants.ts';
import { evaluate } from './evaluate.ts';
import { billFinding } from './findings.ts';
import { AmountTooLarge } from './line-amount.ts';
import { periodParts, splitEnergy, type EnergySplit } from './period-parts.ts';
import { preparedFor, type PeriodPart, type Prepared, type PreparedTariff } from './prepare.ts';
import { isEnergy, QUANTITY_COUNT, QUANTITY_ORDER, type QuantityName } from './quantities.ts';
import { traceLines } from './trace.ts';

/** A figure for each quantity of a bill; those not known are left out. `one` needs none. */
export type BillQuantities = Readonly<Partial<Record<QuantityName, Figure>>>;

/** One line of a bill as it is printed. */
export interface BillLine {
  readonly figure: Figure;
  /** The version of the charges it stands in. */
  readonly version: string;
  /** Whether it counts in the total; lines under a floor and lines charged again for a base do not. */
  readonly counts: boolean;
}

/** A bill: lines in the tariff's order, their sum, and the amount payable. */
export interface Bill {
  readonly period: Period;
  readonly lines: readonly BillLine[];
  readonly sum: Figure;
  /** Payable less sum: what the rounding of the total added; null where the total is not rounded. */
  readonly roundingDifference: Figure | null;
  /** Below 0 when the bill is in the household's favour. */
  readonly payable: Figure;
  readonly currency: string;
}

/** What a bill is made of besides the tariff. */
export interface BillInput {
  readonly period: Period;
  readonly quantities: BillQuantities;
  /** Surplus units to pay in this bill. */
  readonly payments: readonly SurplusPayment[];
  /** Where the reading stands that closes the period, for findings. */
  readonly path: Path;
}

const NONE: readonly never[] = [];
const ONE_THOUSANDTHS = 1000;

interface PartInput {
  readonly input: BillInput;
  readonly part: PeriodPart;
  readonly at: number;
  readonly split: EnergySplit;
  readonly prepared: Prepared;
}

/** The quantities of one part as figures and as the vector the evaluator takes. */
function partQuantities({ input, at, split }: PartInput): {
  figures: (Figure | null)[];
  vector: Float64Array;
} {
  const vector = quantityVector();
  const figures: (Figure | null)[] = [];
  for (let index = 0; index < QUANTITY_COUNT; index += 1) {
    const name = QUANTITY_ORDER[index] as QuantityName;
    const whole = input.quantities[name];
    const figure = whole === undefined ? null : isEnergy(index) ? split.share(whole, at) : whole;
    figures.push(figure);
    vector[index] = name === 'one' ? ONE_THOUSANDTHS : figure === null ? 0 : (figure.numerator as number);
  }
  return { figures, vector };
}

function unknownQuantities(partInput: PartInput, figures: readonly (Figure | null)[]): Finding[] {
  const { prepared, input } = partInput;
  const one = QUANTITY_COUNT - 1;
  return prepared.constants.shape.lines.flatMap((line) =>
    [...new Set([line.quantity, line.chooser])]
      .filter((index) => index !== one && figures[index] === null)
      .map((index) => {
        const values = { charge: line.charge.label, quantity: QUANTITY_ORDER[index] ?? '' };
        return billFinding('bill/quantity-unknown', { path: input.path }, values);
      }),
  );
}

/** Bill one part of a period: evaluate, then explain what was evaluated. */
function billPart(partInput: PartInput): Outcome<readonly BillLine[]> {
  const { prepared, part, input } = partInput;
  const { figures, vector } = partQuantities(partInput);
  const findings = unknownQuantities(partInput, figures);
  if (findings.length > 0) return { value: NONE, findings };
  const { constants, tables } = prepared;
  const amounts = new Float64Array(constants.lines.length);
  try {
    evaluate(constants, vector, amounts);
  } catch (error) {
    if (!(error instanceof AmountTooLarge)) throw error;
    const values = {
      most: '9007199254740991',
      charge: constants.shape.lines[error.line]?.charge.label ?? '',
    };
    return { value: NONE, findings: [billFinding('bill/too-large', { path: input.path }, values)] };
  }
  const traced = traceLines({ constants, tables, quantities: vector, amounts, figures });
  const value = traced.map((figure, index): BillLine => {
    const line = constants.lines[index];
    return { figure, version: part.version.item.name, counts: line?.adds ?? true };
  });
  return { value, findings: NONE };
}

/** The line that pays for surplus units: below 0, since it is in the household's favour. */
function paymentLine(payment: SurplusPayment, rounding: Rounding | 'none', version: string): BillLine {
  const places = decimalPlaces(payment.rate);
  const denominator = 1000 * 10 ** places;
  const numerator = 0 - (payment.units.numerator as number) * decimalToWhole(payment.rate, places);
  const base = {
    id: 'surplus',
    label: payment.label,
    unit: 'money' as const,
    operation: 'product' as const,
    inputs: [payment.units],
    clause: payment.clause,
  };
  const parameters = [
    { name: 'rate', text: `-${payment.rate}`, unit: 'money/kWh' as const, clause: payment.clause },
  ];
  const exact: Figure = { ...base, parameters, numerator, denominator, rounding: null };
  return {
    figure: rounding === 'none' ? exact : roundedFigure(exact, rounding, payment.clause),
    version,
    counts: true,
  };
}

/** A figure rounded to a step; the same when that changes nothing. */
function roundedFigure(figure: Figure, rounding: Rounding, clause: string): Figure {
  const places = decimalPlaces(rounding.step);
  const step = decimalToWhole(rounding.step, places);
  const numerator = figure.numerator as number;
  const steps = roundQuotient(numerator * 10 ** places, figure.denominator * step, rounding.mode);
  const value = { numerator: steps * step, denominator: 10 ** places };
  if (value.numerator * figure.denominator === numerator * value.denominator) return { ...figure, ...value };
  return {
    ...figure,
    ...value,
    rounding: { ...rounding, clause, numerator, denominator: figure.denominator },
  };
}

/** Sum of money figures on their common denominator. */
function sumFigure(lines: readonly BillLine[]): Figure {
  const counted = lines.filter((line) => line.counts).map((line) => line.figure);
  const denominator = counted.reduce((common, figure) => commonMultiple(common, figure.denominator), 1);
  const numerator = counted.reduce(
    (sum, figure) => sum + (figure.numerator as number) * (denominator / figure.denominator),
    0,
  );
  return {
    id: 'sum',
    label: 'Sum of the lines',
    unit: 'money',
    numerator,
    denominator,
    operation: 'sum',
    inputs: counted,
    parameters: NONE,
    rounding: null,
    clause: '',
  };
}

function total(prepared: PreparedTariff, sum: Figure): Pick<Bill, 'roundingDifference' | 'payable'> {
  const { rounding } = prepared.tariff.document;
  const base: Figure = { ...sum, id: 'payable', label: 'Payable', operation: 'sum', inputs: [sum] };
  if (rounding.total === 'none') return { payable: base, roundingDifference: null };
  const payable = roundedFigure(base, rounding.total, rounding.clause);
  const denominator = commonMultiple(payable.denominator, sum.denominator);
  const numerator =
    (payable.numerator as number) * (denominator / payable.denominator) -
    (sum.numerator as number) * (denominator / sum.denominator);
  const label = rounding.differenceLabel ?? 'Rounding';
  const difference: Figure = {
    ...sum,
    id: 'rounding',
    label,
    numerator,
    denominator,
    operation: 'difference',
    inputs: [payable, sum],
    clause: rounding.clause,
  };
  return { payable, roundingDifference: difference };
}

/**
 * Bill one period under a tariff, every line with its derivation.
 *
 * @param prepared  the tariff in normal form
 * @param input     the period, its quantities and what the settlement pays in this bill
 * @returns         the bill, or null with the reason
 */
export function billPeriod(prepared: PreparedTariff, input: BillInput): Outcome<Bill | null> {
  const { value: parts, findings } = periodParts(prepared.tariff, input.period);
  if (parts.length === 0) return { value: null, findings };
  const split = splitEnergy(prepared.tariff, input.period, parts);
  const billed = parts.map((part, at) =>
    billPart({
      input,
      part,
      at,
      split,
      prepared: preparedFor(prepared, part, input.period, split.energyScale),
    }),
  );
  const problems = billed.flatMap((part) => part.findings);
  if (problems.length > 0) return { value: null, findings: problems };
  const { document } = prepared.tariff;
  const version = parts.at(-1)?.version.item.name ?? '';
  const payments = input.payments.map((payment) => paymentLine(payment, document.rounding.line, version));
  const lines = [...billed.flatMap((part) => part.value), ...payments];
  const sum = sumFigure(lines);
  return {
    value: { period: input.period, lines, sum, ...total(prepared, sum), currency: document.currency },
    findings: NONE,
  };
}
