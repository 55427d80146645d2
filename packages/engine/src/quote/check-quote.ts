import {
  decimalPlaces,
  decimalToWhole,
  MONTH_NAMES,
  parseDay,
  wholeToDecimal,
  type DayNumber,
  type Finding,
  type Outcome,
} from '../quantity/index.ts';
import { inFileOrder, locate, readDocument } from '../tariff/index.ts';
import { dayFindings, lifeFindings, numberFindings } from './check-numbers.ts';
import { quoteSchema, type QuoteDocument } from './document/quote-document.ts';
import { readGeneration } from './expected-generation.ts';
import { lossFactor, percentFactor, yearFactors } from './factors.ts';
import { quoteFinding } from './findings.ts';
import { selfUsed } from './own-use/share-use.ts';
import { fillMonths, filledFinding, missingFinding, readMonths } from './months.ts';
import { onGrid, outlayOf } from './outlay.ts';
import type { MonthlyUnits, QuoteInput, Share } from './quote-input.ts';
import { RANGES } from './ranges.ts';

const FILL = 'Ask for the bill, or add "fill": "mean" or "neighbours" to have it filled and marked.';

/** A percentage as a ratio. */
export function shareOf(percent: string): Share {
  const places = decimalPlaces(percent);
  return { numerator: decimalToWhole(percent, places), denominator: 100 * 10 ** places };
}

interface ReadUse {
  readonly units: MonthlyUnits | null;
  readonly filled: readonly number[];
  readonly findings: readonly Finding[];
}

function readUse({ use }: QuoteDocument, step: number): ReadUse {
  const path = ['use', 'months'];
  const { values, missing, findings } = readMonths(use.months, RANGES.units, path);
  if (findings.length > 0) return { units: null, filled: [], findings };
  if (missing.length === 0) return { units: values.map((value) => value ?? 0), filled: [], findings };
  if (use.fill === undefined || missing.length === 12) {
    return { units: null, filled: [], findings: [missingFinding(missing, path, FILL)] };
  }
  const units = fillMonths(values, use.fill, step);
  return { units, filled: missing, findings: [filledFinding(missing, path, use.fill)] };
}

/** Own use that a month has no use for. */
function selfUseFindings(input: QuoteInput): readonly Finding[] {
  const { share, use, generation, unitStep: step } = input;
  if (share === null) return [];
  return generation.flatMap((made, month) => {
    const used = use[month] ?? 0;
    const own = selfUsed(made, made, { share, step });
    if (own <= used) return [];
    const values = {
      month: MONTH_NAMES[month] ?? '',
      share: input.document.selfUse?.share ?? '',
      made: wholeToDecimal(made, 3).replace(/\.0+$/, ''),
      own: wholeToDecimal(own, 3).replace(/\.0+$/, ''),
      used: wholeToDecimal(used, 3).replace(/\.0+$/, ''),
      most: String(Math.floor((used * 100) / made)),
    };
    return [quoteFinding('quote/self-use-above-use', { path: ['selfUse', 'share'] }, values)];
  });
}

const CENTS = 100;

function moneyFindings(document: QuoteDocument, watts: number): readonly Finding[] {
  const { price, subsidy } = outlayOf(document, CENTS, watts);
  const { loan } = document;
  const text = (amount: number): string => wholeToDecimal(amount, 2);
  const borrowed = loan === undefined ? 0 : onGrid(loan.amount, CENTS);
  return [
    ...(borrowed > price
      ? [
          quoteFinding(
            'quote/loan-above-price',
            { path: ['loan', 'amount'] },
            { amount: text(borrowed), price: text(price) },
          ),
        ]
      : []),
    ...(subsidy > price
      ? [
          quoteFinding(
            'quote/subsidy-above-price',
            { path: ['subsidy'] },
            { amount: text(subsidy), price: text(price) },
          ),
        ]
      : []),
  ];
}

function subsidyFindings({ subsidy }: QuoteDocument): readonly Finding[] {
  if (subsidy === undefined || (subsidy.amount === undefined) !== (subsidy.tiers === undefined)) return [];
  const found = subsidy.amount === undefined ? 'none' : 'both';
  return [quoteFinding('quote/needs-one-of', { path: ['subsidy'] }, { found, choices: 'amount and tiers' })];
}

function policyFindings({ uncertainty, policies = [] }: QuoteDocument): readonly Finding[] {
  const name = uncertainty?.policy?.name;
  if (name === undefined || policies.some((one) => one.name === name)) return [];
  const known = policies.map((one) => `"${one.name}"`).join(', ') || 'none is listed';
  return [quoteFinding('quote/policy-unknown', { path: ['uncertainty', 'policy', 'name'] }, { name, known })];
}

/**
 * Check a quote document that has the right form.
 *
 * @returns the quote ready to be billed, or null when something cannot be used; notes leave it usable
 */
export function checkQuote(document: QuoteDocument): Outcome<QuoteInput | null> {
  const unitStep = document.units === 'thousandths' ? 1 : 1000;
  const plain = [...dayFindings(document), ...numberFindings(document), ...lifeFindings(document)];
  const structure = [...subsidyFindings(document), ...policyFindings(document)];
  const use = readUse(document, unitStep);
  if (plain.length > 0) return { value: null, findings: [...plain, ...structure, ...use.findings] };
  const watts = decimalToWhole(document.plant.kWp, 3);
  const made = readGeneration(document.generation, watts, unitStep);
  const money = structure.length > 0 ? structure : moneyFindings(document, watts);
  const findings = [...money, ...use.findings, ...made.findings];
  if (use.units === null || made.units === null || money.length > 0) return { value: null, findings };
  const value = assemble(document, {
    use: use.units,
    generation: made.units,
    filled: use.filled,
    watts,
    unitStep,
  });
  const own = selfUseFindings(value);
  return { value: own.length > 0 ? null : value, findings: [...findings, ...own] };
}

function assemble(
  document: QuoteDocument,
  parts: Pick<QuoteInput, 'use' | 'generation' | 'filled' | 'watts' | 'unitStep'>,
): QuoteInput {
  const { selfUse, degradation, use } = document;
  const years = decimalToWhole(document.years, 0);
  return {
    ...parts,
    document,
    start: parseDay(document.start) ?? (0 as DayNumber),
    years,
    share: selfUse?.share === undefined ? null : shareOf(selfUse.share),
    useFactors: yearFactors(years, [percentFactor(use.growth ?? '0')]),
    generationFactors: yearFactors(years, [lossFactor(degradation.first), lossFactor(degradation.later)]),
  };
}

/**
 * Read a quote document and list everything that is wrong with it.
 *
 * @param text  the JSON file, whole
 * @returns     the quote, or null when it cannot be used; findings with line and column, in file order
 * @example
 * readQuote('{"format":"unitbook-quote-1"}').value //=> null
 */
export function readQuote(text: string): Outcome<QuoteInput | null> {
  const read = readDocument<QuoteDocument>(text, quoteSchema);
  const checked = read.mended === null ? { value: null, findings: [] } : checkQuote(read.mended);
  const findings = inFileOrder([
    ...read.findings,
    ...checked.findings.map((finding) => locate(read.source, finding)),
  ]);
  return { value: read.value === null ? null : checked.value, findings };
}
