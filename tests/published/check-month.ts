import {
  addDays,
  dayText,
  type BookMonth,
  type Figure,
  type Period,
  type TariffDocument,
} from '@unitbook/engine';
import { expect } from 'vitest';
import { passbookOf } from '../support/passbook.ts';
import { chargeOneByOne, type ChargedPart, type SlabRows } from './charge-one-by-one.ts';
import { deriveFigure } from './derive.ts';
import { moneyText, plainText } from './figure-text.ts';
import type { MeasuredHome } from './measured-homes.ts';
import { readRational, roundText } from './rational.ts';
import { dayOf } from './run-bill.ts';

const sum = (...of: readonly string[]): string => deriveFigure({ name: 'sum', op: 'sum', of }, {});
const less = (...of: readonly string[]): string =>
  deriveFigure({ name: 'difference', op: 'difference', of }, {});
const text = (figure: Figure | null): string => (figure === null ? 'unknown' : plainText(figure));

/** Whole units of a reading: the demo tariff cuts decimals off each reading. */
const cut = (reading: string): string => roundText(readRational(reading), { step: '1', mode: 'down' });

/** The versions in force in a period, with the days of each. */
function partsOf(document: TariffDocument, period: Period): ChargedPart[] {
  return document.versions.flatMap(({ from, through, charges }) => {
    const first = Math.max(dayOf(from), period.from);
    const end = Math.min(through === undefined ? period.to : addDays(dayOf(through), 1), period.to);
    const energy = charges.find((charge) => charge.id === 'energy');
    const slabs: SlabRows = energy?.kind === 'slabs' ? energy.slabs : [];
    return end > first ? [{ slabs, days: end - first }] : [];
  });
}

/**
 * Check the energy of a cycle against its readings: whole units of each register, and the balance
 * import + self-consumption = use > 0, export + self-consumption = generation.
 *
 * @param index  of the reading that opens the cycle
 */
export function checkEnergy({ energy }: BookMonth, home: MeasuredHome, index: number): void {
  const [from, to] = [home.readings[index], home.readings[index + 1]];
  if (from === undefined || to === undefined) throw new Error('no reading');
  expect(dayText(energy.period.to)).toBe(to.date);
  for (const id of ['import', 'export', 'generation'] as const) {
    expect(text(energy[id])).toBe(less(cut(to[id]), cut(from[id])));
  }
  const use = sum(text(energy.import), text(energy.selfConsumption));
  expect(text(energy.totalUse)).toBe(use);
  expect(text(energy.generation)).toBe(sum(text(energy.export), text(energy.selfConsumption)));
  expect(readRational(use).top > 0n).toBe(true);
  expect(readRational(text(energy.selfConsumption)).top >= 0n).toBe(true);
}

/** Check that no unit is lost: taken = billed + set off; brought + given = set off + paid + lapsed + carried. */
export function checkPassbook(month: BookMonth): void {
  const { opening, imported, exported, setOff, billed, paid, lapsed, closing } = passbookOf(month);
  expect(sum(text(billed), text(setOff))).toBe(text(imported));
  expect(sum(text(setOff), text(paid), text(lapsed), text(closing))).toBe(sum(text(opening), text(exported)));
}

/** Check that lines sum to the total, that rounding is accounted for, and the energy charge unit by unit. */
export function checkBill(month: BookMonth, document: TariffDocument): void {
  const { bill } = month;
  const counted = bill.lines.filter((line) => line.counts).map((line) => text(line.figure));
  expect(sum(...counted)).toBe(text(bill.sum));
  expect(sum(text(bill.sum), text(bill.roundingDifference))).toBe(text(bill.payable));
  const energy = bill.lines.filter((line) => line.figure.id === 'energy');
  expect(energy.map((line) => moneyText(line.figure, bill.currency))).toEqual(
    chargeOneByOne(text(passbookOf(month).billed), partsOf(document, bill.period)),
  );
}
