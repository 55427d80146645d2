import {
  LARGEST_WHOLE,
  unfoldingFigure,
  type Figure,
  type Finding,
  type Outcome,
  type Path,
} from '../quantity/index.ts';
import { quantityVector, type Constants } from './constants.ts';
import { evaluate } from './evaluate.ts';
import { billFinding } from './findings.ts';
import { AmountTooLarge } from './line-amount.ts';
import type { EnergySplit } from './period-parts.ts';
import type { PeriodPart, Prepared } from './prepare.ts';
import { isEnergy, QUANTITY_COUNT, QUANTITY_ORDER, type QuantityName } from './quantities.ts';

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

/** What one part of a period is billed from. */
export interface PartInput {
  readonly quantities: BillQuantities;
  readonly part: PeriodPart;
  /** Place of the part in the period. */
  readonly at: number;
  readonly split: EnergySplit;
  readonly prepared: Prepared;
  readonly path: Path;
}

const NONE: readonly never[] = [];
const ONE = QUANTITY_COUNT - 1;
const ONE_THOUSANDTHS = 1000;

/** The figures in the order of the quantity vector. */
function inOrder(quantities: BillQuantities): (Figure | null)[] {
  return [
    quantities.billed ?? null,
    quantities.import ?? null,
    quantities.export ?? null,
    quantities.generation ?? null,
    quantities['self-consumption'] ?? null,
    quantities['total-use'] ?? null,
    quantities['sanctioned-load'] ?? null,
    quantities['plant-capacity'] ?? null,
    null,
  ];
}

/** The quantities of one part as figures and as the vector the evaluator takes. */
function partQuantities({ quantities, at, split }: PartInput): {
  figures: (Figure | null)[];
  vector: Float64Array;
} {
  const vector = quantityVector();
  const figures = inOrder(quantities);
  for (let index = 0; index < ONE; index += 1) {
    const whole = figures[index] ?? null;
    if (whole === null) continue;
    const figure = split.energyScale !== 0 && isEnergy(index) ? split.share(whole, at) : whole;
    figures[index] = figure;
    vector[index] = figure.numerator as number;
  }
  vector[ONE] = ONE_THOUSANDTHS;
  return { figures, vector };
}

function unknownQuantities(
  { used, shape }: Constants,
  figures: readonly (Figure | null)[],
  path: Path,
): readonly Finding[] {
  const unknown = used.filter((index) => figures[index] === null);
  if (unknown.length === 0) return NONE;
  return shape.lines.flatMap((line) =>
    [...new Set([line.quantity, line.chooser])]
      .filter((index) => unknown.includes(index))
      .map((index) => {
        const values = { charge: line.charge.label, quantity: QUANTITY_ORDER[index] ?? '' };
        return billFinding('bill/quantity-unknown', { path }, values);
      }),
  );
}

function tooLarge(error: AmountTooLarge, constants: Constants, path: Path): Finding {
  const charge = constants.shape.lines[error.line]?.charge.label ?? '';
  return billFinding('bill/too-large', { path }, { most: String(LARGEST_WHOLE), charge });
}

/**
 * Bill the part of a period that one version of the charges is in force for: evaluate its lines, each of
 * which can then be unfolded.
 *
 * @returns the lines, or none with the reasons
 */
export function billPart(input: PartInput): Outcome<readonly BillLine[]> {
  const { prepared, part, path } = input;
  const { constants, kinds } = prepared;
  const { figures, vector } = partQuantities(input);
  const findings = unknownQuantities(constants, figures, path);
  if (findings.length > 0) return { value: NONE, findings };
  const amounts = new Float64Array(kinds.length);
  try {
    evaluate(constants, vector, amounts);
  } catch (error) {
    if (error instanceof AmountTooLarge) return { value: NONE, findings: [tooLarge(error, constants, path)] };
    throw error;
  }
  const traced: Figure[] = [];
  const source = { constants, quantities: vector, amounts, figures, lines: traced };
  const version = part.version.item.name;
  const value = kinds.map((kind, index): BillLine => {
    const figure = unfoldingFigure(kind, amounts[index] ?? 0, source);
    traced.push(figure);
    return { figure, version, counts: constants.lines[index]?.adds ?? true };
  });
  return { value, findings: NONE };
}
