import {
  addQuotients,
  decimalPlaces,
  decimalToWhole,
  subtractQuotients,
  wholeProduct,
  type Figure,
  type Quotient,
} from '../quantity/index.ts';
import type { SurplusPayment } from '../settlement/index.ts';
import type { BillLine } from './bill-part.ts';
import type { PreparedTariff } from './prepare.ts';
import { roundedFigure, stepRounding } from './step-rounding.ts';

const NONE: readonly never[] = [];

/** Units at their rate; a rate below 0 is a price that the household has to pay. */
function unitsPaid(payment: SurplusPayment, rate: string): Figure {
  const places = decimalPlaces(rate);
  const against = rate.startsWith('-') ? rate.slice(1) : `-${rate}`;
  return {
    id: 'surplus',
    label: payment.label,
    unit: 'money',
    numerator: wholeProduct(-(payment.units.numerator as number), decimalToWhole(rate, places)),
    denominator: 1000 * 10 ** places,
    operation: 'product',
    inputs: [payment.units],
    parameters: [{ name: 'rate', text: against, unit: 'money/kWh', clause: payment.clause }],
    rounding: null,
    clause: payment.clause,
  };
}

/** Money paid out of a ledger. */
function moneyPaid({ units, label, clause }: SurplusPayment): Figure {
  const { numerator, denominator } = units;
  const nothing: Figure = moneyFigure(
    { id: 'nothing', label: 'Nothing', clause },
    { numerator: 0, denominator },
    { operation: 'sum', inputs: NONE },
  );
  const value = { numerator: -(numerator as number), denominator };
  return moneyFigure({ id: 'surplus', label, clause }, value, {
    operation: 'difference',
    inputs: [nothing, units],
  });
}

/** The line that pays for surplus units: below 0, since it is in the household's favour. */
export function paymentLine(payment: SurplusPayment, prepared: PreparedTariff, version: string): BillLine {
  const exact = payment.rate === null ? moneyPaid(payment) : unitsPaid(payment, payment.rate);
  const lineRounding =
    payment.rounding === undefined ? prepared.lineRounding : stepRounding(payment.rounding);
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
  words: Pick<Figure, 'id' | 'label' | 'clause'>,
  value: Quotient,
  from: Pick<Figure, 'operation' | 'inputs'>,
): Figure {
  return {
    id: words.id,
    label: words.label,
    unit: 'money',
    numerator: value.numerator,
    denominator: value.denominator,
    operation: from.operation,
    inputs: from.inputs,
    parameters: NONE,
    rounding: null,
    clause: words.clause,
  };
}

const SUM = { id: 'sum', label: 'Sum of the lines', clause: '' };
const PAYABLE = { id: 'payable', label: 'Payable', clause: '' };

/**
 * Sum of the lines that count, on their common denominator.
 *
 * @throws NumberTooLarge when fractions of several versions have no common denominator that can be held
 */
export function sumOfLines(lines: readonly BillLine[]): Figure {
  const inputs: Figure[] = [];
  for (const { figure, counts } of lines) if (counts) inputs.push(figure);
  return moneyFigure(SUM, addQuotients(inputs), { operation: 'sum', inputs });
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
  const base = moneyFigure(PAYABLE, sum, { operation: 'sum', inputs: [sum] });
  if (prepared.totalRounding === null) return { payable: base, roundingDifference: null };
  const payable = roundedFigure(base, prepared.totalRounding, rounding.clause);
  const words = { id: 'rounding', label: rounding.differenceLabel ?? 'Rounding', clause: rounding.clause };
  const from = { operation: 'difference', inputs: [payable, sum] } as const;
  return { payable, roundingDifference: moneyFigure(words, subtractQuotients(payable, sum), from) };
}
