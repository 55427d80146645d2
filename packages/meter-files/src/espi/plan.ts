import type { MeteredQuantity } from '../stream.ts';
import type { Position } from './elements.ts';
import { quantityOf } from './flow.ts';
import type { Tell } from './log.ts';
import { qualityOf, VALID, type Quality } from './quality.ts';
import { typeNumbers, type ReadingType, type TypeNumbers } from './reading-type.ts';

/** How the readings of a MeterReading are taken. */
export interface Plan {
  readonly accumulation: 'intervals' | 'register';
  readonly quantity: MeteredQuantity;
  /** The unit in the file: "Wh", "kVArh". */
  readonly unit: string;
  /** A value times ten to this power is kWh; 0 for what is no active energy, which is kept as it is. */
  readonly power: number;
  /** The multiplier of the file, for findings. */
  readonly multiplier: number;
  /** The rate of readings that do not name one of their own; 0: none. */
  readonly tou: number;
  /** The quality of readings that do not name one of their own. */
  readonly quality: Quality;
  /** Seconds; NaN where the type does not say. */
  readonly intervalLength: number;
  readonly hasTier: boolean;
  /** Where the flow is told, for what is said when the whole feed is known. */
  readonly flowAt: Position;
}

/** Names of units by their code, uom; 72 and 73 stand in the schema, as the others do. */
const UNITS: ReadonlyMap<number, string> = new Map([
  [38, 'W'],
  [61, 'VA'],
  [63, 'VAr'],
  [71, 'VAh'],
  [72, 'Wh'],
  [73, 'VArh'],
]);

const PREFIXES: ReadonlyMap<number, string> = new Map([
  [-6, 'µ'],
  [-3, 'm'],
  [0, ''],
  [3, 'k'],
  [6, 'M'],
  [9, 'G'],
]);

/** The unit of the values in the file: with a prefix, or as a power of ten where there is no prefix. */
function unitText(uom: number, multiplier: number): string {
  const unit = UNITS.get(uom) ?? (Number.isNaN(uom) ? '' : `uom ${uom}`);
  const prefix = UNITS.has(uom) ? PREFIXES.get(multiplier) : undefined;
  if (prefix !== undefined) return `${prefix}${unit}`;
  return multiplier === 0 ? unit : `10^${multiplier} ${unit}`.trim();
}

/** Accumulations that are registers: bulk quantity, cumulative, and summation over the hours of a rate. */
const REGISTERS: readonly number[] = [1, 3, 9];

function accumulationOf(
  { accumulationBehaviour: field }: TypeNumbers,
  tell: Tell,
): Plan['accumulation'] | null {
  const { number, at } = field;
  // 0 is "not applicable, or implied by the unit".
  if (Number.isNaN(number) || number === 0) {
    const taken = 'the energy of each interval (4)';
    const expected = 'accumulationBehaviour 4 (energy of each interval) or 1 (readings of a register)';
    tell('espi/not-stated', at, { field: 'accumulationBehaviour', expected, taken });
    return 'intervals';
  }
  if (number === 4) return 'intervals';
  if (!REGISTERS.includes(number)) {
    tell('espi/accumulation', at, { value: String(number) });
    return null;
  }
  if (number === 3) tell('espi/cumulative', at);
  return 'register';
}

/** Whether a type is of electricity; one that does not say so is taken as that. */
function isElectricity({ commodity }: TypeNumbers, tell: Tell): boolean {
  if (commodity.number === 1) return true;
  if (!Number.isNaN(commodity.number)) {
    tell('espi/commodity', commodity.at, { commodity: String(commodity.number) });
    return false;
  }
  const expected = 'commodity 1, electricity as the meter counts it';
  tell('espi/not-stated', commodity.at, { field: 'commodity', expected, taken: 'electricity (1)' });
  return true;
}

/** Powers of ten of a watt-hour that a whole number of a kWh with 0 to 9 places, or of kWh, can show. */
const LEAST_MULTIPLIER = -6;
const LARGEST_MULTIPLIER = 12;

function multiplierOf(
  { powerOfTenMultiplier: field }: TypeNumbers,
  isKwh: boolean,
  tell: Tell,
): number | null {
  const { number, at } = field;
  if (Number.isNaN(number)) {
    const expected = 'powerOfTenMultiplier: 0 for Wh, 3 for kWh';
    tell('espi/not-stated', at, {
      field: 'powerOfTenMultiplier',
      expected,
      taken: 'values in the unit itself (0)',
    });
    return 0;
  }
  if (!isKwh || (number >= LEAST_MULTIPLIER && number <= LARGEST_MULTIPLIER)) return number;
  tell('espi/multiplier', at, { value: String(number) });
  return null;
}

const orZero = (number: number): number => (Number.isNaN(number) ? 0 : number);

/**
 * Work out from a ReadingType how its readings are taken, and tell what there is to tell of it.
 *
 * @returns null where its readings cannot be used
 */
export function planOf(type: ReadingType, tell: Tell): Plan | null {
  const numbers = typeNumbers(type, tell);
  if (numbers === null || !isElectricity(numbers, tell)) return null;
  const quantity = quantityOf(numbers, tell);
  const accumulation = accumulationOf(numbers, tell);
  const isKwh = quantity !== 'other';
  const multiplier = multiplierOf(numbers, isKwh, tell);
  if (accumulation === null || multiplier === null) return null;
  const { uom, tou, defaultQuality, intervalLength, consumptionTier, flowDirection } = numbers;
  return {
    accumulation,
    quantity,
    unit: unitText(uom.number, multiplier),
    power: isKwh ? multiplier - 3 : 0,
    multiplier,
    tou: orZero(tou.number),
    quality: Number.isNaN(defaultQuality.number) ? VALID : qualityOf(defaultQuality.number),
    intervalLength: intervalLength.number > 0 ? intervalLength.number : NaN,
    hasTier: orZero(consumptionTier.number) !== 0,
    flowAt: flowDirection.at,
  };
}
