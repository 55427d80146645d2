import {
  LARGEST_WHOLE,
  unfoldingFigure,
  type Figure,
  type FigureKind,
  type Finding,
  type Outcome,
  type Path,
} from '../quantity/index.ts';
import type { Constants } from './constants.ts';
import { evaluate } from './evaluate.ts';
import { billFinding } from './findings.ts';
import { AmountTooLarge } from './line-amount.ts';
import type { EnergySplit } from './period-parts.ts';
import type { PeriodPart, Prepared } from './prepare.ts';
import type { BillSource } from './trace.ts';
import { CREDIT } from './line-constants.ts';
import { isEnergy, ONE, ONE_THOUSANDTHS, QUANTITY_ORDER, type QuantityName } from './quantities.ts';

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

/** The figures in the order of the quantity vector: those every tariff knows, then the document's own. */
function inOrder(quantities: BillQuantities, names: readonly string[]): (Figure | null)[] {
  const figures: (Figure | null)[] = [
    quantities['billed'] ?? null,
    quantities['import'] ?? null,
    quantities['export'] ?? null,
    quantities['generation'] ?? null,
    quantities['self-consumption'] ?? null,
    quantities['total-use'] ?? null,
    quantities['sanctioned-load'] ?? null,
    quantities['plant-capacity'] ?? null,
    null,
  ];
  for (let at = QUANTITY_ORDER.length; at < names.length; at += 1) {
    figures.push(quantities[names[at] as string] ?? null);
  }
  return figures;
}

/** A balance of money on the grid of the bill. */
function onGrid(balance: Figure, { grid }: Constants, at: number): number {
  const times = grid / balance.denominator;
  const amount = (balance.numerator as number) * times;
  if (!Number.isInteger(times) || Math.abs(amount) > LARGEST_WHOLE) throw new AmountTooLarge(at);
  return amount;
}

/** Share out the quantities of one part and hand them to the evaluator's vector. */
function partQuantities({ quantities, at, split, prepared }: PartInput): readonly (Figure | null)[] {
  const { vector, constants } = prepared;
  const named = constants.shape.quantities;
  const figures = inOrder(quantities, named.names);
  for (let index = 0; index < figures.length; index += 1) {
    const whole = figures[index] ?? null;
    const figure = whole !== null && split.isSplit && isEnergy(named, index) ? split.share(whole, at) : whole;
    figures[index] = figure;
    if (figure === null) vector[index] = 0;
    else
      vector[index] = figure.unit === 'money' ? onGrid(figure, constants, 0) : (figure.numerator as number);
  }
  vector[ONE] = ONE_THOUSANDTHS;
  return figures;
}

function unknownQuantities(
  { used, shape, lines }: Constants,
  figures: readonly (Figure | null)[],
  path: Path,
): readonly Finding[] {
  if (used.every((index) => figures[index] !== null)) return NONE;
  const charged = shape.lines.filter((_, at) => lines[at]?.kind !== CREDIT);
  return charged.flatMap((line) =>
    [...new Set([line.quantity, line.chooser])]
      .filter((index) => index !== ONE && figures[index] === null)
      .map((index) => {
        const values = { charge: line.charge.label, quantity: shape.quantities.names[index] ?? '' };
        return billFinding('bill/quantity-unknown', { path }, values);
      }),
  );
}

function tooLarge(error: AmountTooLarge, constants: Constants, path: Path): Finding {
  const charge = constants.shape.lines[error.line]?.charge.label ?? '';
  return billFinding('bill/too-large', { path }, { charge });
}

/**
 * Bill the part of a period that one version of the charges is in force for: evaluate its lines, each of
 * which can then be unfolded.
 *
 * @returns the lines, or none with the reasons
 */
export function billPart(input: PartInput): Outcome<readonly BillLine[]> {
  const { prepared, part, path } = input;
  const { constants, kinds, vector, amounts } = prepared;
  let figures: readonly (Figure | null)[];
  try {
    figures = partQuantities(input);
    const findings = unknownQuantities(constants, figures, path);
    if (findings.length > 0) return { value: NONE, findings };
    evaluate(constants, vector, amounts);
  } catch (error) {
    if (error instanceof AmountTooLarge) return { value: NONE, findings: [tooLarge(error, constants, path)] };
    throw error;
  }
  const lines: Figure[] = [];
  const source = { constants, figures, lines };
  const version = part.version.item.name;
  const value: BillLine[] = [];
  for (let at = 0; at < kinds.length; at += 1) {
    const figure = unfoldingFigure(kinds[at] as FigureKind<BillSource>, amounts[at] as number, source);
    lines.push(figure);
    value.push({ figure, version, counts: constants.lines[at]?.adds ?? true });
  }
  return { value, findings: NONE };
}
