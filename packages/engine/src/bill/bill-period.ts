import {
  NumberTooLarge,
  type Figure,
  type Finding,
  type Outcome,
  type Path,
  type Period,
} from '../quantity/index.ts';
import type { SurplusPayment } from '../settlement/index.ts';
import { billPart, type BillLine, type BillQuantities } from './bill-part.ts';
import { billFinding } from './findings.ts';
import { periodParts, splitEnergy } from './period-parts.ts';
import { preparedFor, type PeriodPart, type PreparedTariff } from './prepare.ts';
import { paymentLine, sumOfLines, totalOf, type Total } from './total.ts';

/** A bill: lines in the tariff's order, their sum, and the amount payable. */
export interface Bill extends Total {
  readonly period: Period;
  readonly lines: readonly BillLine[];
  readonly sum: Figure;
  readonly currency: string;
}

/** What a bill is made of besides the tariff. */
export interface BillInput {
  readonly period: Period;
  readonly quantities: BillQuantities;
  /** Surplus units to pay in this bill. */
  readonly payments: readonly SurplusPayment[];
  /** Where the reading stands that closes the period, for findings. */
  readonly path: Path;
}

const NONE: readonly never[] = [];

/**
 * Bill one period under a tariff, every line with its derivation.
 *
 * @param prepared  the tariff in normal form
 * @param input     the period, its quantities and what the settlement pays in this bill
 * @returns         the bill, or null with the reason
 */
export function billPeriod(prepared: PreparedTariff, input: BillInput): Outcome<Bill | null> {
  const { period, quantities, path } = input;
  const { value: parts, findings } = periodParts(prepared.tariff, period);
  if (parts.length === 0) return { value: null, findings };
  const split = splitEnergy(prepared.tariff, period, parts);
  const lines: BillLine[] = [];
  const problems: Finding[] = [];
  for (let at = 0; at < parts.length; at += 1) {
    const part = parts[at] as PeriodPart;
    const ready = preparedFor(prepared, part, period, split.energyScale);
    const billed = billPart({ quantities, part, at, split, prepared: ready, path });
    for (const line of billed.value) lines.push(line);
    for (const finding of billed.findings) problems.push(finding);
  }
  if (problems.length > 0) return { value: null, findings: problems };
  return closeBill(prepared, input, lines);
}

/** Add what the settlement pays, then sum and round. */
function closeBill(
  prepared: PreparedTariff,
  { period, path, payments }: BillInput,
  charged: readonly BillLine[],
): Outcome<Bill | null> {
  const { currency } = prepared.tariff.document;
  const version = charged.at(-1)?.version ?? '';
  try {
    const lines = [...charged, ...payments.map((payment) => paymentLine(payment, prepared, version))];
    const sum = sumOfLines(lines);
    const { payable, roundingDifference } = totalOf(sum, prepared);
    return { value: { period, lines, sum, roundingDifference, payable, currency }, findings: NONE };
  } catch (error) {
    if (!(error instanceof NumberTooLarge)) throw error;
    return {
      value: null,
      findings: [billFinding('bill/too-large', { path }, { charge: 'Sum of the lines' })],
    };
  }
}
