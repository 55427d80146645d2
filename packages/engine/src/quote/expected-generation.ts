import {
  decimalToWhole,
  roundLargeQuotient,
  roundQuotient,
  shareOut,
  type Finding,
} from '../quantity/index.ts';
import type { QuoteDocument } from './document/quote-document.ts';
import { quoteFinding } from './findings.ts';
import { missingFinding, readMonths } from './months.ts';
import type { MonthlyUnits } from './quote-input.ts';
import { rangeFindings, RANGES } from './ranges.ts';

/** Days of the months of a common year. */
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

type Part = QuoteDocument['generation'];

/** What a plant makes in the months of its first year, with what is wrong. */
export interface ReadGeneration {
  /** null where it cannot be worked out. */
  readonly units: MonthlyUnits | null;
  readonly findings: readonly Finding[];
}

const PATH = ['generation'];
const CHOICES = 'months, year and irradiation';
const COMPLETE = 'Give every month: no rule fills what a plant will make.';

function fromTable(table: Readonly<Record<string, string>>, key: 'months' | 'irradiation') {
  const range = key === 'months' ? RANGES.units : RANGES.irradiation;
  const read = readMonths(table, range, [...PATH, key]);
  const missing = read.missing.length === 0 ? [] : [missingFinding(read.missing, [...PATH, key], COMPLETE)];
  const findings = [...read.findings, ...missing];
  const values = findings.length > 0 ? null : read.values.map((value) => value ?? 0);
  return { values, findings };
}

/** Irradiation × capacity × performance ratio, a common year, rounded half-up to whole steps. */
function fromIrradiation(part: Part, watts: number, step: number): ReadGeneration {
  const { irradiation = {}, unit, performanceRatio } = part;
  const lacks = Object.entries({ unit, performanceRatio }).flatMap(([key, value]) =>
    value === undefined ? [key] : [],
  );
  const read = fromTable(irradiation, 'irradiation');
  const incomplete = lacks.map((missing) =>
    quoteFinding('quote/irradiation-incomplete', { path: PATH }, { missing }),
  );
  const ratio = rangeFindings(performanceRatio, RANGES.ratio, [...PATH, 'performanceRatio']);
  const findings = [...read.findings, ...incomplete, ...ratio];
  if (read.values === null || findings.length > 0) return { units: null, findings };
  const part1000 = BigInt(decimalToWhole(performanceRatio ?? '0', 3)) * BigInt(watts);
  const units = read.values.map((value, month) => {
    const days = unit === 'kWh/m2/day' ? (DAYS[month] ?? 0) : 1;
    // Thousandths of kWh/m² × thousandths of kW × thousandths of the ratio: 10^9 for one kWh.
    const top = BigInt(value) * BigInt(days) * part1000;
    return (
      Number.parseInt(roundLargeQuotient(top, 1_000_000n * BigInt(step), 'half-up').toString(), 10) * step
    );
  });
  return { units, findings };
}

function fromMonths({ months = {} }: Part): ReadGeneration {
  const { values, findings } = fromTable(months, 'months');
  return { units: values, findings };
}

/** What is said of irradiation where there is none: it changes nothing, and somebody may think that it does. */
function unusedFindings({ unit, performanceRatio }: Part): readonly Finding[] {
  return Object.entries({ unit, performanceRatio }).flatMap(([key, value]) =>
    value === undefined ? [] : [quoteFinding('quote/irradiation-unused', { path: [...PATH, key] }, { key })],
  );
}

function fromYear(year: string, step: number): ReadGeneration {
  const findings = rangeFindings(year, RANGES.yearUnits, [...PATH, 'year']);
  if (findings.length > 0) return { units: null, findings };
  const steps = roundQuotient(decimalToWhole(year, 3), step, 'half-up');
  return { units: shareOut(steps, [...DAYS]).map((share) => share * step), findings };
}

/**
 * What the plant makes in each calendar month of its first year: its own table, a year shared out by days, or
 * irradiation × capacity × performance ratio.
 *
 * @param watts  of all modules
 * @param step   months are whole multiples of so many thousandths
 */
export function readGeneration(part: Part, watts: number, step: number): ReadGeneration {
  const given = [part.months, part.year, part.irradiation].filter((one) => one !== undefined).length;
  if (given !== 1) {
    const values = { found: given === 0 ? 'none' : String(given), choices: CHOICES };
    return { units: null, findings: [quoteFinding('quote/needs-one-of', { path: PATH }, values)] };
  }
  if (part.irradiation !== undefined) return fromIrradiation(part, watts, step);
  const read = part.year === undefined ? fromMonths(part) : fromYear(part.year, step);
  return { units: read.units, findings: [...read.findings, ...unusedFindings(part)] };
}
