import {
  billPeriod,
  decimalToWhole,
  givenFigure,
  parseDay,
  QUANTITY_ORDER,
  type DayNumber,
  type Figure,
  type Period,
} from '@unitbook/engine';
import { billFigures, type Figures } from './bill-figures.ts';
import { tariffNamed } from './load-tariffs.ts';

/** Quantities of one period billed under a tariff, where a source has no register readings. */
export interface BillRun {
  readonly tariff: string;
  readonly from: string;
  readonly to: string;
  readonly quantities: Readonly<Record<string, string>>;
}

/** A day, or an error that quotes it. */
export function dayOf(text: string): DayNumber {
  const day = parseDay(text);
  if (day === null) throw new RangeError(`"${text}" is no day`);
  return day;
}

/** A half-open period from two days. */
export function periodOf(from: string, to: string): Period {
  return { from: dayOf(from), to: dayOf(to) };
}

function quantity(name: string, text: string): Figure {
  const isPower = name === 'sanctioned-load' || name === 'plant-capacity';
  const numerator = decimalToWhole(text, 3);
  const unit = isPower ? 'kW' : 'kWh';
  return givenFigure({ id: name, label: name, unit, numerator, denominator: 1000, clause: 'case' });
}

/**
 * Bill the quantities of a case and name everything in the bill.
 *
 * @throws Error when there is no bill, with the reason
 */
export function runBill({ tariff, from, to, quantities }: BillRun): Figures {
  const unknown = Object.keys(quantities).find((name) => !QUANTITY_ORDER.some((known) => known === name));
  if (unknown !== undefined) throw new Error(`no quantity "${unknown}"`);
  const { value, findings } = billPeriod(tariffNamed(tariff), {
    period: periodOf(from, to),
    quantities: Object.fromEntries(
      Object.entries(quantities).map(([name, text]) => [name, quantity(name, text)]),
    ),
    payments: [],
    path: [],
  });
  if (value === null) throw new Error(findings.map((finding) => finding.found).join('; '));
  return billFigures(value);
}
