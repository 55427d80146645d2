import {
  billPeriod,
  decimalToWhole,
  exactText,
  givenFigure,
  parseDay,
  periodDays,
  prepareTariff,
  type Bill,
  type BillQuantities,
  type Charge,
  type DayNumber,
  type EnergyPeriod,
  type Figure,
  type Outcome,
  type Period,
  type QUANTITY_ORDER,
  type SurplusPayment,
  type Tariff,
  type TariffDocument,
} from '@unitbook/engine';
import { goodTariff } from './demo.ts';

/** A day that exists. */
export function dayOf(text: string): DayNumber {
  const day = parseDay(text);
  if (day === null) throw new RangeError(`"${text}" is no day`);
  return day;
}

/** A half-open period. */
export function periodOf(from: string, to: string): Period {
  return { from: dayOf(from), to: dayOf(to) };
}

/** Thirty days under one version of the demo tariff: no day rule scales anything. */
export const THIRTY_DAYS: Period = periodOf('2025-04-01', '2025-05-01');

/** Units or kilowatts that are simply given. */
export function figureOf(id: string, text: string, unit: 'kWh' | 'kW' = 'kWh'): Figure {
  const numerator = decimalToWhole(text, 3);
  return givenFigure({ id, label: id, unit, numerator, denominator: 1000, clause: '' });
}

/** What a figure comes to, as exact text. */
export function valueOf(figure: Pick<Figure, 'numerator' | 'denominator'>): string {
  return exactText(figure.numerator, figure.denominator);
}

/** The energy of a period, given outright. */
export function energyOf(
  units: { readonly import: string; readonly export: string; readonly generation?: string },
  period: Period = THIRTY_DAYS,
): EnergyPeriod {
  const { generation: made } = units;
  const thousandths = (text: string): number => decimalToWhole(text, 3);
  const given = (id: string, numerator: number): Figure =>
    givenFigure({ id, label: id, unit: 'kWh', numerator, denominator: 1000, clause: '' });
  const own = made === undefined ? null : thousandths(made) - thousandths(units.export);
  return {
    period,
    days: periodDays(period),
    isEstimated: false,
    import: figureOf('import', units.import),
    export: figureOf('export', units.export),
    generation: made === undefined ? null : figureOf('generation', made),
    selfConsumption: own === null ? null : given('self-consumption', own),
    totalUse: own === null ? null : given('total-use', thousandths(units.import) + own),
  };
}

/** A tariff of one version with the charges of a test; the rest bills whole units to the rupee. */
export function tariffOf(charges: readonly Charge[], parts: Partial<TariffDocument> = {}): Tariff {
  const document: TariffDocument = {
    format: 'unitbook-tariff-1',
    id: 'test',
    name: 'Test',
    supplier: 'TARESCO',
    currency: 'INR',
    sources: { T: { title: 'Tariff', publisher: 'Commission', year: '2024' } },
    units: { clause: 'T 1', decimals: '0', rounding: 'down', roundedAt: 'reading' },
    rounding: { clause: 'T 2', line: { step: '0.01', mode: 'half-up' }, total: 'none' },
    versionChange: { rule: 'in-force-on-first-day', clause: 'T 3' },
    versions: [{ name: 'V1', from: '2020-01-01', clause: 'T 4', charges: [...charges] }],
    settlements: [
      {
        from: '2020-01-01',
        scheme: 'unit-netting',
        clause: 'T 5',
        close: { clause: 'T 6', on: 'every-period', surplus: 'lapses' },
      },
    ],
    ...parts,
  };
  return goodTariff(JSON.stringify(document, null, 2));
}

/** What a test bills: quantities as decimal text, in the demo's thirty days where nothing else is said. */
export interface BillParts extends Partial<
  Readonly<Record<Exclude<(typeof QUANTITY_ORDER)[number], 'one'>, string>>
> {
  readonly period?: Period;
  readonly payments?: readonly SurplusPayment[];
}

/** Bill one period, with what stands in the way. */
export function tryBill(tariff: Tariff, parts: BillParts): Outcome<Bill | null> {
  const { period = THIRTY_DAYS, payments = [], ...texts } = parts;
  const quantities = Object.fromEntries(
    Object.entries(texts).map(([name, text]) => {
      const unit = name === 'sanctioned-load' || name === 'plant-capacity' ? 'kW' : 'kWh';
      return [name, figureOf(name, text, unit)];
    }),
  ) as BillQuantities;
  return billPeriod(prepareTariff(tariff), { period, quantities, payments, path: ['readings', 1] });
}

/** Bill one period that can be billed. */
export function billOf(tariff: Tariff, parts: BillParts): Bill {
  const { value, findings } = tryBill(tariff, parts);
  if (value === null) throw new Error(JSON.stringify(findings, null, 2));
  return value;
}

/** The amounts of a bill's lines in order, as exact text. */
export function amountsOf(bill: Bill): readonly (readonly [string, string])[] {
  return bill.lines.map(({ figure }) => [figure.id, valueOf(figure)] as const);
}

/** The amount of the only line of a bill. */
export function lineOf(tariff: Tariff, parts: BillParts): string {
  const { lines } = billOf(tariff, parts);
  if (lines.length !== 1) throw new Error(`${String(lines.length)} lines`);
  return lines.map(({ figure }) => valueOf(figure)).join();
}
