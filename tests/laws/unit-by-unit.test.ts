import { describe, expect, it } from 'vitest';
import { demoTariff } from '../support/demo.ts';
import { amountsOf, billOf, valueOf } from '../support/make.ts';

/**
 * The demo tariff of 2024 as somebody would bill it with a pencil: one unit after the other, in paisa.
 * For a month of 27 to 33 days, in whole units and whole kilowatts. Rates from causes.md's invented order
 * TO-2024, clauses 4.1 to 6.
 */
function pencilBill(units: number, load: number): { lines: (readonly [string, number])[]; payable: number } {
  let energy = 0;
  let fuel = 0;
  let subsidy = 0;
  for (let unit = 1; unit <= units; unit += 1) {
    energy += unit <= 50 ? 300 : unit <= 150 ? 480 : unit <= 300 ? 650 : 800;
    fuel += 40;
    if (unit <= 50) subsidy -= 150;
  }
  let fixed = 0;
  for (let kilowatt = 1; kilowatt <= load; kilowatt += 1) fixed += 6000;
  const minimum = fixed + energy < 15_000 ? 15_000 - fixed - energy : 0;
  const taxHundredths = energy * 6;
  const tax = Math.trunc(taxHundredths / 100) + (taxHundredths % 100 >= 50 ? 1 : 0);
  const sum = fixed + energy + minimum + fuel + tax + subsidy;
  const rupees = Math.trunc(sum / 100) + (sum % 100 >= 50 ? 1 : 0);
  const lines = [
    ['fixed', fixed],
    ['energy', energy],
    ['minimum', minimum],
    ['fuel', fuel],
    ['tax', tax],
    ['subsidy', subsidy],
  ] as const;
  return { lines: [...lines], payable: rupees };
}

/** Whole paisa as the exact text of rupees. */
function rupees(paisa: number): string {
  const digits = String(Math.abs(paisa)).padStart(3, '0');
  const text = `${digits.slice(0, -2)}.${digits.slice(-2)}`.replace(/\.?0+$/, '');
  return paisa < 0 ? `-${text}` : text;
}

describe('every bill of the demo tariff', () => {
  const tariff = demoTariff();

  it.each([1, 2, 3, 4, 7])('is the pencil bill, unit by unit, with a load of %i kW', (load) => {
    for (let units = 0; units <= 420; units += 1) {
      const bill = billOf(tariff, { billed: String(units), 'sanctioned-load': String(load) });
      const pencil = pencilBill(units, load);
      expect(amountsOf(bill)).toEqual(pencil.lines.map(([id, paisa]) => [id, rupees(paisa)]));
      expect(valueOf(bill.payable)).toBe(String(pencil.payable));
    }
  });
});
