import { commonMultiple, givenFigure, type Figure, type Period } from '../quantity/index.ts';
import type { Constants } from './constants.ts';
import { evaluate } from './evaluate.ts';
import { evaluateRaised } from './evaluate-raised.ts';
import { CREDIT } from './line-constants.ts';
import { periodParts, splitEnergy } from './period-parts.ts';
import { NoPriceInForce, preparedFor, type PeriodPart, type PreparedTariff } from './prepare.ts';
import { isEnergy, ledgerName, ONE, ONE_THOUSANDTHS } from './quantities.ts';
import type { LineRaises } from './raised.ts';

/** Where a credit line and the lines that earn it stand, and the ledger they are about. */
export interface QuickCredit {
  readonly ledger: string;
  readonly line: number;
  readonly earned: readonly number[];
}

/** A quantity that lines use: its name and its place in the vector. */
export interface UsedQuantity {
  readonly name: string;
  readonly at: number;
  /** What a part of the period gets of it; null: the whole. */
  readonly share: ((value: number) => number) | null;
}

/** The charges of a part of a period, ready to be evaluated again and again. */
export interface QuickPart {
  readonly constants: Constants;
  readonly vector: Float64Array;
  readonly amounts: Float64Array;
  readonly used: readonly UsedQuantity[];
  /** The places of what is used. */
  readonly places: Int32Array;
  /** Whether quantities are shared among the parts of the period. */
  readonly isShared: boolean;
  readonly credits: readonly QuickCredit[];
  /** Places of the balances that credit lines find, by ledger. */
  readonly balances: ReadonlyMap<string, number>;
}

type Split = ReturnType<typeof splitEnergy>;

const UNITS: Figure = givenFigure({
  id: 'units',
  label: 'Units',
  unit: 'kWh',
  numerator: 0,
  denominator: 1000,
  clause: '',
});

function shareOf(constants: Constants, quantity: number, split: Split, part: number): UsedQuantity['share'] {
  if (!split.isSplit || !isEnergy(constants.shape.quantities, quantity)) return null;
  return (value) => split.share({ ...UNITS, numerator: value }, part).numerator as number;
}

function creditsOf({ shape }: Constants): readonly QuickCredit[] {
  return shape.lines.flatMap(({ charge, earned }, line) =>
    charge.kind === 'credit' && charge.ledger !== undefined ? [{ ledger: charge.ledger, line, earned }] : [],
  );
}

function quickPart(constants: Constants, split: Split, part: number): QuickPart {
  const { names } = constants.shape.quantities;
  const vector = new Float64Array(names.length);
  vector[ONE] = ONE_THOUSANDTHS;
  const credits = creditsOf(constants);
  const lines = constants.lines.filter(({ kind }) => kind === CREDIT);
  const places = lines.filter(({ quantity }) => quantity !== ONE).map(({ quantity }) => quantity);
  const balances = credits.flatMap(({ ledger }) => {
    const at = places.find((place) => names[place] === ledgerName(ledger));
    return at === undefined ? [] : [[ledger, at] as const];
  });
  return {
    constants,
    vector,
    amounts: new Float64Array(constants.lines.length),
    used: constants.used.map((at) => ({
      name: names[at] ?? '',
      at,
      share: shareOf(constants, at, split, part),
    })),
    places: Int32Array.from(constants.used),
    isShared: split.isSplit,
    credits,
    balances: new Map(balances),
  };
}

/**
 * The charges of a period, part by part, ready to be evaluated with other quantities again and again.
 *
 * @param money  balances of money come in 1/money
 * @returns      null where only `billPeriod` can say why there are none, or how parts pass credit on
 */
export function quickParts(
  prepared: PreparedTariff,
  period: Period,
  money: number,
): readonly QuickPart[] | null {
  const { value: parts } = periodParts(prepared.tariff, period);
  if (parts.length === 0) return null;
  const split = splitEnergy(prepared.tariff, period, parts);
  const scales = { energyScale: split.energyScale, money };
  const constantsOf = (part: PeriodPart): Constants => preparedFor(prepared, part, period, scales).constants;
  try {
    const quick = parts.map((part, at) => quickPart(constantsOf(part), split, at));
    const passesOn = quick.length > 1 && quick.some(({ credits }) => credits.length > 0);
    return passesOn || quick.some(({ constants }) => !constants.isExact) ? null : quick;
  } catch (error) {
    if (error instanceof NoPriceInForce) return null;
    throw error;
  }
}

/** What a part of the period gets of each quantity. */
function shareQuantities({ vector, used }: QuickPart): void {
  for (const { at, share } of used) if (share !== null) vector[at] = share(vector[at] as number);
}

/**
 * The sum of the lines that count, on the grid of the charges.
 *
 * @param from  places in `values` of what the charges use
 * @throws      AmountTooLarge when an amount is beyond 2^53
 */
export function evaluateQuick(part: QuickPart, values: Float64Array, from: Int32Array): number {
  const { constants, vector, amounts } = part;
  takeQuantities(part, values, from);
  return evaluate(constants, vector, amounts);
}

/** The same where rates have risen. */
export function evaluateQuickRaised(
  part: QuickPart,
  values: Float64Array,
  from: Int32Array,
  raises: LineRaises,
): number {
  const { constants, vector, amounts } = part;
  takeQuantities(part, values, from);
  return evaluateRaised(constants, vector, amounts, raises);
}

function takeQuantities(part: QuickPart, values: Float64Array, from: Int32Array): void {
  const { vector, places } = part;
  for (let index = 0; index < from.length; index += 1) {
    vector[places[index] as number] = values[from[index] as number] as number;
  }
  if (part.isShared) shareQuantities(part);
}

/** What the balances of money that credits of some charges leave are counted in. */
export function creditGrid(parts: readonly QuickPart[]): number {
  const grids = parts.flatMap(({ credits, constants }) => (credits.length > 0 ? [constants.grid] : []));
  return grids.reduce(commonMultiple, 1);
}
