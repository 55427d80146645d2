import {
  isDecimalText,
  periodDays,
  type DayNumber,
  type FigureKind,
  type Period,
} from '../quantity/index.ts';
import {
  priceAt,
  quantitiesToGive,
  quantityUnits,
  ratesNamed,
  type InForce,
  type LedgersRule,
  type NamedQuantity,
  type Tariff,
  type TariffDocument,
  type TariffVersion,
} from '../tariff/index.ts';
import { prepareSettlement, type PreparedSettlement } from '../settlement/index.ts';
import { makeConstants, quantityVector, type Constants } from './constants.ts';
import { dayFactor, lowestTerms, type DayFactor } from './day-factor.ts';
import { seasonsOf } from './seasons.ts';
import { shapeOf, type RateReader, type Shape, type ShapeLine } from './shape.ts';
import { stepRounding, type StepRounding } from './step-rounding.ts';
import { traceTables } from './trace-tables.ts';
import type { BillSource } from './trace.ts';

/** A version of the charges for one set of day factors, ready to bill and to explain. */
export interface Prepared {
  readonly constants: Constants;
  /** How each line unfolds. */
  readonly kinds: readonly FigureKind<BillSource>[];
  /** Whether a line sets credit off, which ledgers of money follow. */
  readonly hasCredit: boolean;
  /** Room for the evaluator, used anew by every bill. */
  readonly vector: Float64Array;
  readonly amounts: Float64Array;
}

/** A tariff in normal form, with what has been worked out for the periods billed so far. */
export interface PreparedTariff {
  readonly tariff: Tariff;
  /** Roundings of a line and of the total, as whole numbers; null for none. */
  readonly lineRounding: StepRounding | null;
  readonly totalRounding: StepRounding | null;
  /** What has been worked out, by version; filled as periods are billed. */
  readonly prepared: ReadonlyMap<TariffVersion, Memory>;
  /** Every quantity that an account or a period can give under any of its settlement rules. */
  readonly quantities: ReadonlyMap<string, NamedQuantity>;
  /** Every quantity that any of its settlement rules knows, given or worked out. */
  readonly units: ReadonlyMap<string, NamedQuantity>;
  /**
   * Whether units are given that no one can tell the source of, or blocks beside unit netting: what bills
   * would be without solar cannot be told then.
   */
  readonly isSavingUnclear: boolean;
  /** Whether any of its ledgers is of money. */
  readonly hasMoney: boolean;
  /** Settlement rules of scheme `ledgers` in normal form. */
  readonly settlements: ReadonlyMap<LedgersRule, PreparedSettlement>;
}

/** What has been worked out for one version. */
export interface Memory {
  /** Normal forms, by the seasons in force and what its prices come to. */
  readonly shapes: Map<string, Shape>;
  /** The prices that its charges name. */
  readonly prices: readonly string[];
  readonly byDates: Map<number, Prepared>;
  readonly byFactors: Map<string, Prepared>;
}

/** A price that is not in force: no bill can be made. */
export class NoPriceInForce extends Error {}

/**
 * Bring a tariff into normal form, once for any number of bills.
 *
 * @param tariff  read and checked
 */
export function prepareTariff(tariff: Tariff): PreparedTariff {
  const prepared = new Map<TariffVersion, Memory>();
  const charged = new Set<string>();
  for (const { item } of tariff.versions) {
    prepared.set(item, {
      shapes: new Map(),
      prices: ratesNamed(item.charges),
      byDates: new Map(),
      byFactors: new Map(),
    });
    for (const name of chargedQuantities(item)) charged.add(name);
  }
  const settlements = new Map<LedgersRule, PreparedSettlement>();
  for (const { item } of tariff.settlements) {
    if (item.scheme === 'ledgers') settlements.set(item, prepareSettlement(tariff.document, item, charged));
  }
  const { rounding } = tariff.document;
  const { document } = tariff;
  const quantities = quantitiesToGive(document);
  return {
    tariff,
    prepared,
    quantities,
    units: new Map(document.settlements.flatMap((rule) => [...quantityUnits(document, rule)])),
    isSavingUnclear: isSavingUnclear(document),
    hasMoney: document.settlements.some(
      (rule) => rule.scheme === 'ledgers' && rule.ledgers?.some(({ unit }) => unit === 'money') === true,
    ),
    settlements,
    lineRounding: stepRounding(rounding.line),
    totalRounding: stepRounding(rounding.total),
  };
}

function isSavingUnclear({ measures = {}, timeBlocks, settlements }: TariffDocument): boolean {
  const counted = Object.values(measures).filter(({ unit }) => unit === 'kWh' || unit === 'kVAh');
  const hasBank = settlements.some(({ scheme }) => scheme === 'unit-netting');
  return (
    counted.some(({ window }) => window === undefined || hasBank) || (timeBlocks !== undefined && hasBank)
  );
}

/** The quantities that the charges of a version are counted on or chosen by. */
function chargedQuantities({ charges }: TariffVersion): readonly string[] {
  return charges.flatMap((charge) => [
    ...('on' in charge ? [charge.on] : []),
    ...('chosenBy' in charge && charge.chosenBy !== undefined ? [charge.chosenBy] : []),
    ...(charge.kind === 'percentage'
      ? charge.of.flatMap((base) => (typeof base === 'string' ? [] : [base.recomputedOn]))
      : []),
  ]);
}

/** The part of a period that one version is in force for. */
export interface PeriodPart {
  readonly version: InForce<TariffVersion>;
  readonly period: Period;
  /** The day whose seasons apply; left out: the first. */
  readonly day?: DayNumber;
}

/** Reads rates: numbers as they stand, prices as of the billing period. */
function rateReader(document: TariffDocument, period: Period): RateReader {
  return (rate) => {
    if (isDecimalText(rate)) return { text: rate, clause: '' };
    const price = priceAt(document, rate, period);
    if ('problem' in price) throw new NoPriceInForce(price.problem);
    return price;
  };
}

/** A tax inside its own base is less than the whole of it, whatever a price comes to. */
function refuseInside({ isInside, charge, tables, ratePlaces }: ShapeLine): void {
  const rate = tables[0]?.pieces[0];
  if (!isInside || rate === undefined || (rate.rate >= 0 && rate.rate < 100 * 10 ** ratePlaces)) return;
  throw new NoPriceInForce(
    `the percentage of "${charge.label}" comes to ${rate.rateText}, and is to be inside its base`,
  );
}

/** The normal form of a version for the seasons and prices of a period. */
function shapeFor(memory: Memory, part: PeriodPart, whole: Period, document: TariffDocument) {
  const seasons = seasonsOf(document, part.day ?? part.period.from);
  const rateOf = rateReader(document, whole);
  const prices = memory.prices.map((name) => rateOf(name));
  const key = [...seasons, ...prices.map(({ text, clause }) => `${text} ${clause}`)].join(' ');
  const shape = memory.shapes.get(key) ?? shapeOf(part.version.item, document, { rateOf, seasons });
  for (const line of shape.lines) refuseInside(line);
  memory.shapes.set(key, shape);
  return { shape, key };
}

function factorsFor(document: TariffDocument, part: PeriodPart, whole: Period): Record<string, DayFactor> {
  const { versionChange } = document;
  const shared = versionChange.rule === 'split-by-days' && versionChange.factor === 'share-of-period';
  const factors: Record<string, DayFactor> = {};
  for (const [name, rule] of Object.entries(document.dayRules ?? {})) {
    if (!shared) factors[name] = dayFactor(rule, part.period);
    else {
      const factor = dayFactor(rule, whole);
      const top = factor.numerator * periodDays(part.period);
      factors[name] = lowestTerms(top, factor.denominator * periodDays(whole));
    }
  }
  return factors;
}

/** A short key for factors: they repeat from month to month. */
function factorKey(factors: Readonly<Record<string, DayFactor>>, energyScale: number): string {
  let key = String(energyScale);
  for (const name in factors) {
    const factor = factors[name] as DayFactor;
    key += ` ${String(factor.numerator)}/${String(factor.denominator)}`;
  }
  return key;
}

/** A number for the dates of a period: first day and length. */
function dateKey(period: Period): number {
  return period.from * 65_536 + (period.to - period.from);
}

/** What quantities and balances are counted in. */
interface Scales {
  /** What energy quantities are multiplied by: 1, or the days of a period split exactly. */
  readonly energyScale: number;
  /** Balances of money come in 1/money; left out: there are none. */
  readonly money?: number;
}

/**
 * The constants for the part of a period that one version is in force for.
 *
 * Remembered by dates, which whole districts share, and behind that by factors, which most months share.
 *
 * @param part         version and days
 * @param whole        the whole billing period
 * @param scales       what quantities and balances are counted in
 * @throws             NoPriceInForce where a price is not in force
 */
export function preparedFor(
  prepared: PreparedTariff,
  part: PeriodPart,
  whole: Period,
  { energyScale, money = 1 }: Scales,
): Prepared {
  const memory = prepared.prepared.get(part.version.item) as Memory;
  const key = part.period === whole ? dateKey(whole) : null;
  const sameDates = key === null ? undefined : memory.byDates.get(key);
  if (sameDates !== undefined && sameDates.constants.grid % money === 0) return sameDates;
  const { document } = prepared.tariff;
  const { shape, key: shapeKey } = shapeFor(memory, part, whole, document);
  const factors = factorsFor(document, part, whole);
  const plainKey = `${shapeKey} ${factorKey(factors, energyScale)}`;
  const plain = memory.byFactors.get(plainKey) ?? makePrepared(shape, { factors, energyScale, money: 1 });
  memory.byFactors.set(plainKey, plain);
  if (plain.constants.grid % money !== 0) {
    const finerKey = `${plainKey} ${String(money)}`;
    const finer = memory.byFactors.get(finerKey) ?? makePrepared(shape, { factors, energyScale, money });
    memory.byFactors.set(finerKey, finer);
    return finer;
  }
  const ready = plain;
  if (key !== null) memory.byDates.set(key, ready);
  return ready;
}

function makePrepared(
  shape: Shape,
  {
    factors,
    energyScale,
    money,
  }: {
    readonly factors: Readonly<Record<string, DayFactor>>;
    readonly energyScale: number;
    readonly money: number;
  },
): Prepared {
  const constants = makeConstants(shape, factors, energyScale, money);
  const amounts = new Float64Array(constants.lines.length);
  const hasCredit = shape.lines.some(({ kind }) => kind === 'credit');
  return { constants, kinds: traceTables(constants), hasCredit, vector: quantityVector(constants), amounts };
}
