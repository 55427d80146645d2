import { commonMultiple, decimalPlaces, decimalToWhole, type Figure } from '../quantity/index.ts';
import type { SurplusPayment } from '../settlement/index.ts';
import type { BillLine } from './bill-part.ts';
import type { PreparedTariff } from './prepare.ts';
import { roundedFigure } from './step-rounding.ts';

const NONE: readonly never[] = [];

/** The line that pays for surplus units: below 0, since it is in the household's favour. */
export function paymentLine(payment: SurplusPayment, prepared: PreparedTariff, version: string): BillLine {
  const places = decimalPlaces(payment.rate);
  const exact: Figure = {
    id: 'surplus',
    label: payment.label,
    unit: 'money',
    numerator: 0 - (payment.units.numerator as number) * decimalToWhole(payment.rate, places),
    denominator: 1000 * 10 ** places,
    operation: 'product',
    inputs: [payment.units],
    parameters: [{ name: 'rate', text: `-${payment.rate}`, unit: 'money/kWh', clause: payment.clause }],
    rounding: null,
    clause: payment.clause,
  };
  const { lineRounding } = prepared;
  return {
    figure:
      lineRounding === null
        ? exact
        : roundedFigure(exact, lineRounding, prepared.tariff.document.rounding.clause),
    version,
    counts: true,
  };
}

function moneyFigure(
  id: string,
  label: string,
  numerator: number,
  from: Pick<Figure, 'denominator' | 'operation' | 'inputs' | 'clause'>,
): Figure {
  return {
    id,
    label,
    unit: 'money',
    numerator,
    denominator: from.denominator,
    operation: from.operation,
    inputs: from.inputs,
    parameters: NONE,
    rounding: null,
    clause: from.clause,
  };
}

/** Sum of the lines that count, on their common denominator. */
export function sumOfLines(lines: readonly BillLine[]): Figure {
  const inputs: Figure[] = [];
  let denominator = 1;
  for (const { figure, counts } of lines) {
    if (!counts) continue;
    inputs.push(figure);
    if (figure.denominator !== denominator) denominator = commonMultiple(denominator, figure.denominator);
  }
  let numerator = 0;
  for (const figure of inputs) numerator += (figure.numerator as number) * (denominator / figure.denominator);
  return moneyFigure('sum', 'Sum of the lines', numerator, {
    denominator,
    operation: 'sum',
    inputs,
    clause: '',
  });
}

/** What is to be paid, and what the rounding of the total added. */
export interface Total {
  /** Payable less sum; null where the total is not rounded. */
  readonly roundingDifference: Figure | null;
  /** Below 0 when the bill is in the household's favour. */
  readonly payable: Figure;
}

/** Round the sum of a bill as the document says. */
export function totalOf(sum: Figure, prepared: PreparedTariff): Total {
  const { rounding } = prepared.tariff.document;
  const { denominator } = sum;
  const exact = sum.numerator as number;
  const base = moneyFigure('payable', 'Payable', exact, {
    denominator,
    operation: 'sum',
    inputs: [sum],
    clause: '',
  });
  if (prepared.totalRounding === null) return { payable: base, roundingDifference: null };
  const payable = roundedFigure(base, prepared.totalRounding, rounding.clause);
  const common = commonMultiple(payable.denominator, denominator);
  const difference =
    (payable.numerator as number) * (common / payable.denominator) - exact * (common / denominator);
  const from = {
    denominator: common,
    operation: 'difference',
    inputs: [payable, sum],
    clause: rounding.clause,
  } as const;
  return {
    payable,
    roundingDifference: moneyFigure('rounding', rounding.differenceLabel ?? 'Rounding', difference, from),
  };
}
