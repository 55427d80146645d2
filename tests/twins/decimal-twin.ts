import type { Charge, Rounding, TariffDocument } from '@unitbook/engine';
import {
  compare,
  dividedBy,
  fraction,
  largest,
  least,
  minus,
  plus,
  roundFraction,
  times,
  ZERO,
  type Fraction,
} from './fraction.ts';

/**
 * The naive twin of the engine's bills: it walks the document itself, charge by charge, in decimal.js.
 * It knows no grids, tables or steps, and shares no code with the engine.
 */

/** Quantities by the names documents use, in units and kW. */
export type TwinQuantities = Readonly<Record<string, Fraction>>;

/** What a twin bill is made from. */
export interface TwinInput {
  readonly document: TariffDocument;
  readonly charges: readonly Charge[];
  readonly quantities: TwinQuantities;
  /** The factor of each day rule. */
  readonly factors: Readonly<Record<string, Fraction>>;
  /** The day whose seasons apply, as yyyy-mm-dd. */
  readonly day: string;
  /** What ledgers of money bring forward, by id; left out: nothing. */
  readonly balances?: Readonly<Record<string, Fraction>>;
}

/** Amounts by line id, lines charged again for a base as "line on quantity", and the totals. */
export interface TwinBill {
  readonly amounts: ReadonlyMap<string, Fraction>;
  readonly sum: Fraction;
  readonly payable: Fraction;
}

const ONE = fraction(1);

interface Row {
  readonly upTo?: string | undefined;
}

interface Scope {
  readonly input: TwinInput;
  readonly amounts: Map<string, Fraction>;
}

const factorOf = (charge: Charge, { input }: Scope): Fraction =>
  'scaledBy' in charge && charge.scaledBy !== undefined ? (input.factors[charge.scaledBy] ?? ONE) : ONE;

/** A limit of units, scaled by the day factor and rounded as the rule says. */
function limitOf(row: Row, charge: Charge, scope: Scope): Fraction | null {
  if (row.upTo === undefined) return null;
  const scaled = times(fraction(row.upTo), factorOf(charge, scope));
  if (!('scaledBy' in charge) || charge.scaledBy === undefined) return scaled;
  const rounding = scope.input.document.dayRules?.[charge.scaledBy]?.limits;
  const isScaled = compare(factorOf(charge, scope), ONE) !== 0;
  return rounding === undefined || !isScaled ? scaled : roundFraction(scaled, rounding);
}

const quantityOf = (name: string, { input }: Scope): Fraction => input.quantities[name] ?? ZERO;

const isPower = (name: string): boolean => name === 'sanctioned-load' || name === 'plant-capacity';

/** The first row whose limit a quantity does not exceed; limits of power are never scaled. */
function reached<Item extends Row>(rows: readonly Item[], by: string, charge: Charge, scope: Scope): Item {
  const x = quantityOf(by, scope);
  for (const row of rows) {
    const limit = isPower(by) && row.upTo !== undefined ? fraction(row.upTo) : limitOf(row, charge, scope);
    if (limit === null || compare(x, limit) <= 0) return row;
  }
  throw new Error(`no row for ${by}`);
}

/** Each part of a quantity at its own rate. */
function telescopic(
  rows: readonly (Row & { readonly rate: string })[],
  x: Fraction,
  limit: (row: Row) => Fraction | null,
): Fraction {
  let below = ZERO;
  let amount = ZERO;
  for (const row of rows) {
    const upper = limit(row);
    const end = upper === null ? x : least(x, upper);
    if (compare(end, below) > 0) amount = plus(amount, times(minus(end, below), fraction(row.rate)));
    if (upper === null || compare(x, upper) <= 0) break;
    below = upper;
  }
  return amount;
}

function perKilowatt(charge: Charge & { kind: 'per-kilowatt' }, scope: Scope): Fraction {
  const x = quantityOf(charge.on, scope);
  const rows = charge.bands ?? [{ rate: charge.rate ?? '0' }];
  const isTelescopic = charge.chosenBy === undefined && charge.method === 'telescopic';
  const amount = isTelescopic
    ? telescopic(rows, x, (row) => (row.upTo === undefined ? null : fraction(row.upTo)))
    : times(x, fraction(reached(rows, charge.chosenBy ?? charge.on, charge, scope).rate));
  return times(amount, factorOf(charge, scope));
}

/** A charge on units; `on` replaces the quantity when a base charges it again. */
function onUnits(
  charge: Charge & { kind: 'slabs' | 'slab-tables' | 'per-unit' },
  on: string,
  scope: Scope,
): Fraction {
  const x = quantityOf(on, scope);
  const limit = (row: Row): Fraction | null => limitOf(row, charge, scope);
  if (charge.kind === 'slabs') {
    if (charge.method === 'telescopic') return telescopic(charge.slabs, x, limit);
    return times(x, fraction(reached(charge.slabs, charge.chosenBy ?? on, charge, scope).rate));
  }
  if (charge.kind === 'slab-tables') {
    return telescopic(reached(charge.tables, charge.chosenBy ?? on, charge, scope).slabs, x, limit);
  }
  const first = charge.firstUnits === undefined ? null : limit({ upTo: charge.firstUnits });
  return times(first === null ? x : least(x, first), fraction(charge.rate));
}

function fixed(charge: Charge & { kind: 'fixed' }, scope: Scope): Fraction {
  const { steps, chosenBy } = charge;
  const amount =
    steps === undefined || chosenBy === undefined
      ? charge.amount
      : reached(steps, chosenBy, charge, scope).amount;
  return times(fraction(amount ?? '0'), factorOf(charge, scope));
}

const sumOf = (ids: readonly string[], { amounts }: Scope): Fraction =>
  ids.reduce((sum, id) => plus(sum, amounts.get(id) ?? ZERO), ZERO);

function percentage(charge: Charge & { kind: 'percentage' }, scope: Scope): Fraction {
  const { steps, chosenBy } = charge;
  const percent =
    steps === undefined || chosenBy === undefined
      ? charge.percent
      : reached(steps, chosenBy, charge, scope).percent;
  const ids = charge.of.map((base) => (typeof base === 'string' ? base : recomputed(base, scope)));
  const hundredths = times(fraction(percent ?? '0'), fraction('0.01'));
  const sum = sumOf(ids, scope);
  // Inside its own base a tax of 20 percent is a quarter of the rest.
  return charge.inside === true
    ? dividedBy(times(sum, hundredths), minus(ONE, hundredths))
    : times(sum, hundredths);
}

/** Charge a line above again on another quantity, and remember it. */
function recomputed(base: { readonly line: string; readonly recomputedOn: string }, scope: Scope): string {
  const id = `${base.line} on ${base.recomputedOn}`;
  const charge = scope.input.charges.find((one) => one.id === base.line);
  if (charge !== undefined && !isInSeason(charge, scope.input)) return id;
  if (charge === undefined || !('on' in charge) || charge.kind === 'per-kilowatt') throw new Error(id);
  scope.amounts.set(id, rounded(onUnits(charge, base.recomputedOn, scope), charge, scope));
  return id;
}

function minimum(charge: Charge & { kind: 'minimum' }, scope: Scope): Fraction {
  const smallest = times(fraction(charge.amount), factorOf(charge, scope));
  const sum = sumOf(charge.of, scope);
  return charge.as === 'shortfall' ? largest(ZERO, minus(smallest, sum)) : largest(smallest, sum);
}

/** What there is of credit, as far as the lines it is set against take it; what they may take at most is rounded, and never above them. */
function credit(charge: Charge & { kind: 'credit' }, scope: Scope): Fraction {
  const { earned = [], ledger, against, percent } = charge;
  const opening = ledger === undefined ? ZERO : (scope.input.balances?.[ledger] ?? ZERO);
  const available = plus(opening, sumOf(earned, scope));
  const owed = largest(ZERO, sumOf(against, scope));
  const most =
    percent === undefined
      ? owed
      : rounded(times(owed, times(fraction(percent), fraction('0.01'))), charge, scope);
  return minus(ZERO, largest(ZERO, least(available, least(most, owed))));
}

function exactAmount(charge: Charge, scope: Scope): Fraction {
  switch (charge.kind) {
    case 'slabs':
    case 'slab-tables':
    case 'per-unit':
      return onUnits(charge, charge.on, scope);
    case 'per-kilowatt':
      return perKilowatt(charge, scope);
    case 'fixed':
      return fixed(charge, scope);
    case 'percentage':
      return percentage(charge, scope);
    case 'minimum':
      return minimum(charge, scope);
    case 'credit':
      return credit(charge, scope);
  }
}

function rounded(amount: Fraction, charge: Charge, { input }: Scope): Fraction {
  const rounding: Rounding | 'none' = charge.rounding ?? input.document.rounding.line;
  return rounding === 'none' ? amount : roundFraction(amount, rounding);
}

/** A minimum that is a floor is not rounded where it is only the sum of lines above; credit is never rounded. */
function lineAmount(charge: Charge, scope: Scope): Fraction {
  const exact = exactAmount(charge, scope);
  if (charge.kind === 'credit') return exact;
  const isSum =
    charge.kind === 'minimum' && charge.as === 'floor' && compare(exact, sumOf(charge.of, scope)) === 0;
  return isSum ? exact : rounded(exact, charge, scope);
}

/** Whether a charge applies on the day: month and day compare as texts; a season can run over the new year. */
function isInSeason({ season }: Charge, { document, day }: TwinInput): boolean {
  if (season === undefined) return true;
  const { from = '', through = '' } = document.seasons?.[season] ?? {};
  const at = day.slice(5);
  return from <= through ? from <= at && at <= through : from <= at || at <= through;
}

/** Lines that are no part of the sum: those that say so, and those under a floor. */
function leftOut(charge: Charge): readonly string[] {
  const own = charge.inTotal === false ? [charge.id] : [];
  return charge.kind === 'minimum' && charge.as === 'floor' ? [...own, ...charge.of] : own;
}

/** The bill of one version, by the document's own words. */
export function twinBill(input: TwinInput): TwinBill {
  const scope: Scope = { input, amounts: new Map() };
  const charges = input.charges.filter((charge) => isInSeason(charge, input));
  for (const charge of charges) scope.amounts.set(charge.id, lineAmount(charge, scope));
  const earning = input.charges.flatMap((charge) => (charge.kind === 'credit' ? (charge.earned ?? []) : []));
  const out = new Set([...charges.flatMap(leftOut), ...earning]);
  const counted = charges.map((charge) => charge.id).filter((id) => !out.has(id));
  const sum = sumOf(counted, scope);
  const { total } = input.document.rounding;
  return { amounts: scope.amounts, sum, payable: total === 'none' ? sum : roundFraction(sum, total) };
}
