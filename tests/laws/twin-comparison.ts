import {
  dayText,
  evaluate,
  ledgerName,
  parseDay,
  preparedFor,
  prepareTariff,
  QUANTITY_ORDER,
  quantityVector,
  readTariff,
  type Period,
  type Prepared,
  type Tariff,
  type TariffDocument,
} from '@unitbook/engine';
import { makeRandom, type Random } from '../support/random.ts';
import { twinBill, type TwinBill, type TwinInput, type TwinQuantities } from '../twins/decimal-twin.ts';
import { twinFactor } from '../twins/twin-factor.ts';
import { compare, fraction, fractionText, type Fraction } from '../twins/fraction.ts';
import { MONEY_LEDGERS } from './random-charge.ts';
import { randomTariff } from './random-tariff.ts';

/** What comparing generated bills came to. */
export interface Comparison {
  readonly bills: number;
  readonly tariffs: number;
  /** Bills that the engine refused because they need too many digits. */
  readonly refused: number;
  /** Of these, bills whose lines are all rounded and whose units, scaled, a double holds: there should be none. */
  readonly refusedRounded: number;
  /** The first few differences, in words. */
  readonly differences: readonly string[];
}

/** Read a generated document as a file would be read. */
export function readDocumentText(document: TariffDocument): Tariff {
  const read = readTariff(JSON.stringify(document));
  if (read.value === null)
    throw new Error(JSON.stringify(read.findings.map(({ code, path }) => ({ code, path }))));
  return read.value;
}

function randomPeriod(random: Random): Period {
  const from = (parseDay('2024-01-01') ?? 0) + random.below(700);
  const days = random.chance(60) ? 27 + random.below(7) : 1 + random.below(70);
  return { from, to: from + days } as Period;
}

/** Thousandths: mostly whole units, sometimes on a limit, sometimes huge. */
function randomUnits(random: Random): number {
  const dice = random.below(20);
  if (dice === 0) return 0;
  if (dice < 3) return random.below(500_000);
  if (dice === 3) return random.below(2 ** 31) * 1000;
  return random.below(700) * 1000;
}

function fillQuantities(random: Random, vector: Float64Array): TwinQuantities {
  const named: Record<string, Fraction> = {};
  QUANTITY_ORDER.forEach((name, index) => {
    const isPower = name === 'sanctioned-load' || name === 'plant-capacity';
    const value = name === 'one' ? 1000 : isPower ? random.below(1000) * 10 : randomUnits(random);
    vector[index] = value;
    named[name] = fraction(value, 1000);
  });
  return named;
}

/** Balances of the ledgers of money that a version names, in hundredths, on the grid of its bills. */
function fillBalances(random: Random, { constants }: Prepared, vector: Float64Array): TwinInput['balances'] {
  const balances: Record<string, Fraction> = {};
  for (const ledger of MONEY_LEDGERS) {
    const at = constants.shape.quantities.names.indexOf(ledgerName(ledger));
    if (at < 0) continue;
    const hundredths = random.chance(30) ? 0 : random.below(100_000);
    vector[at] = (hundredths * constants.grid) / 100;
    balances[ledger] = fraction(hundredths, 100);
  }
  return balances;
}

/** The first line that differs, in words. */
function difference(prepared: Prepared, amounts: Float64Array, total: number, twin: TwinBill): string | null {
  const { constants } = prepared;
  for (const [index, line] of constants.shape.lines.entries()) {
    const ours = fraction(amounts[index] ?? 0, constants.grid);
    const theirs = twin.amounts.get(line.id);
    if (theirs === undefined || compare(ours, theirs) !== 0) {
      return `${line.id} (${line.charge.kind}): ${fractionText(ours)} here, ${theirs === undefined ? 'nothing' : fractionText(theirs)} by the twin`;
    }
  }
  const sum = fraction(total, constants.grid);
  return compare(sum, twin.sum) === 0
    ? null
    : `sum: ${fractionText(sum)} here, ${fractionText(twin.sum)} by the twin`;
}

/** Whether a quantity times the days it is scaled by is more than a double holds: two thousand million units, say. */
function isBeyond({ constants }: Prepared, vector: Float64Array): boolean {
  return constants.lines.some((line) => {
    const scaled = [
      (vector[line.quantity] ?? 0) * line.scale,
      (vector[line.chooser] ?? 0) * line.chooserScale,
    ];
    return scaled.some((value) => value > Number.MAX_SAFE_INTEGER);
  });
}

/** Compare bills of one generated tariff; differences are added to the list. Returns how many were refused. */
function compareTariff(
  random: Random,
  document: TariffDocument,
  bills: number,
  differences: string[],
): { refused: number; beyond: number } {
  const tariff = readDocumentText(document);
  const prepared = prepareTariff(tariff);
  const [version] = tariff.versions;
  if (version === undefined) throw new Error('no version');
  const period = randomPeriod(random);
  const ready = preparedFor(prepared, { version, period }, period, { energyScale: 1 });
  const factors = Object.fromEntries(
    Object.entries(document.dayRules ?? {}).map(([name, rule]) => [name, twinFactor(rule, period)]),
  );
  const vector = quantityVector(ready.constants);
  const day = dayText(period.from);
  const amounts = new Float64Array(ready.constants.lines.length);
  let refused = 0;
  let beyond = 0;
  for (let bill = 0; bill < bills; bill += 1) {
    const quantities = fillQuantities(random, vector);
    const balances = fillBalances(random, ready, vector) ?? {};
    const twin = twinBill({ document, charges: version.item.charges, quantities, factors, day, balances });
    try {
      const found = difference(ready, amounts, evaluate(ready.constants, vector, amounts), twin);
      if (found !== null && differences.length < 5)
        differences.push(
          `${found}\n${JSON.stringify(document.versions[0]?.charges)}\n${JSON.stringify([...vector])}`,
        );
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      refused += 1;
      if (isBeyond(ready, vector)) beyond += 1;
    }
  }
  return { refused, beyond };
}

/**
 * Compare so many generated bills of generated tariffs with the decimal twin, line by line.
 *
 * @param bills      how many
 * @param perTariff  bills under each tariff
 */
export function compareWithTwin(bills: number, perTariff: number, seed: number): Comparison {
  const random = makeRandom(seed);
  const differences: string[] = [];
  const tariffs = bills / perTariff;
  let refused = 0;
  let refusedRounded = 0;
  for (let index = 0; index < tariffs; index += 1) {
    const isExact = random.chance(10);
    const here = compareTariff(random, randomTariff(random, isExact), perTariff, differences);
    refused += here.refused;
    if (!isExact) refusedRounded += here.refused - here.beyond;
  }
  return { bills, tariffs, refused, refusedRounded, differences };
}
