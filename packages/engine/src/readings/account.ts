import {
  decimalPlaces,
  decimalToWhole,
  wholeToDecimal,
  isDecimalText,
  parseDay,
  type DayNumber,
  type Finding,
  type Outcome,
  type Path,
} from '../quantity/index.ts';
import { inFileOrder, locate, readDocument } from '../tariff/index.ts';
import { accountSchema, type AccountDocument } from './account-document.ts';
import { meterFindings } from './check-meters.ts';
import { readingFinding } from './findings.ts';
import { meterSpans, type MeterSpan } from './meter-spans.ts';
import { indexed, laterFactors, plainAccount, textAt, type PlainAccount } from './plain-account.ts';

/** An account that has been read and checked. Power in whole watts, energy in whole watt-hours. */
export interface Account {
  readonly document: AccountDocument;
  readonly sanctionedLoad: number;
  readonly plantCapacity: number;
  readonly openingCredit: number;
  /** The first day of the account; null where it does not say. */
  readonly since: DayNumber | null;
  /** The day of the year, as mm-dd, that its owner chose for the settlement; null where there is none. */
  readonly settlementDay: string | null;
  /** The registers of the meters that are there now. */
  readonly registers: MeterSpan['totals'];
  /** The meters as they followed each other; at least one. */
  readonly spans: readonly MeterSpan[];
  /** Whether a battery stands in the house: its losses are no error of a meter. */
  readonly hasBattery: boolean;
}

/** More than this is no home: kW typed as watts, most likely. */
const LARGEST_HOME = 100_000;
/** Above this a connection often has a meter on current transformers. */
const LARGE_LOAD = 10_000;

const fine = (text: string): boolean => isDecimalText(text) && decimalPlaces(text) <= 3 && text.length < 13;
const aboveZero = (text: string): boolean => fine(text) && decimalToWhole(text, 3) > 0;

/** No connection has more kW, and no meter a larger factor: readings times it stay exact in a double. */
const MOST = { power: '100000', factor: '10000' } as const;

const isUpTo = (text: string, most: string): boolean => decimalToWhole(text, 3) <= decimalToWhole(most, 3);

/** Load, capacity and factors have to be above 0, and no larger than such things are. */
function numberFindings({ document, read }: PlainAccount): Finding[] {
  const { grid, generation } = document.meters;
  const factor = 'the multiplying factor';
  const later = laterFactors(document).map(
    ({ path }) => [factor, textAt(document, path), MOST.factor, path] as const,
  );
  const named: readonly (readonly [string, string, string, Path])[] = [
    ['the sanctioned load', document.sanctionedLoad, MOST.power, ['sanctionedLoad']],
    ['the plant capacity', document.plantCapacity, MOST.power, ['plantCapacity']],
    [factor, grid.multiplyingFactor, MOST.factor, ['meters', 'grid', 'multiplyingFactor']],
    [
      factor,
      generation?.multiplyingFactor ?? '1',
      MOST.factor,
      ['meters', 'generation', 'multiplyingFactor'],
    ],
    ['the capacity of the battery', document.batteryCapacity ?? '1', MOST.power, ['batteryCapacity']],
    ...later,
  ];
  return named
    .filter(
      ([, text, most, path]) => read[path.join('.')] !== null && !(aboveZero(text) && isUpTo(text, most)),
    )
    .map(([what, value, most, path]) =>
      readingFinding('account/not-above-zero', { path: indexed(path) }, { what, value, most }),
    );
}

function creditFindings({ document, read }: PlainAccount): Finding[] {
  if (read['openingCredit'] === null || creditUnits(document.openingCredit) !== null) return [];
  const values = { value: document.openingCredit };
  return [readingFinding('account/credit-not-a-number', { path: ['openingCredit'] }, values)];
}

/** Days that the settlement may go by. */
function dayFindings({ since, settlementDay }: AccountDocument): Finding[] {
  const findings: Finding[] = [];
  if (since !== undefined && parseDay(since) === null) {
    findings.push(
      readingFinding('account/no-such-day', { path: ['since'] }, { value: since, form: 'yyyy-mm-dd' }),
    );
  }
  if (settlementDay !== undefined && parseDay(`2000-${settlementDay}`) === null) {
    const values = { value: settlementDay, form: 'mm-dd' };
    findings.push(readingFinding('account/no-such-day', { path: ['settlementDay'] }, values));
  }
  return findings;
}

function plausibility(document: AccountDocument): Finding[] {
  const findings: Finding[] = [];
  for (const key of ['sanctionedLoad', 'plantCapacity'] as const) {
    if (!aboveZero(document[key]) || decimalToWhole(document[key], 3) <= LARGEST_HOME) continue;
    const offer = wholeToDecimal(decimalToWhole(document[key], 3), 6).replace(/\.?0+$/, '');
    const what = key === 'sanctionedLoad' ? 'a sanctioned load' : 'a plant';
    findings.push(
      readingFinding('account/load-in-watts', { path: [key], offer }, { what, value: document[key], offer }),
    );
  }
  const { sanctionedLoad: load, meters } = document;
  if (aboveZero(load) && decimalToWhole(load, 3) > LARGE_LOAD && meters.grid.multiplyingFactor === '1') {
    findings.push(
      readingFinding(
        'account/factor-on-large-load',
        { path: ['meters', 'grid', 'multiplyingFactor'] },
        { load },
      ),
    );
  }
  return findings;
}

/** A question that was answered stays as a note. */
function answered(finding: Finding, document: AccountDocument): Finding {
  const key = `${finding.code}:${String(finding.path.at(-1))}`;
  return document.confirmed?.includes(key) === true ? { ...finding, severity: 'note' } : finding;
}

/** The size of a credit, whether it was written with a minus sign or not. */
function creditUnits(text: string): number | null {
  const size = text.replace(/^-/, '');
  return fine(size) ? decimalToWhole(size, 3) : null;
}

function assemble(document: AccountDocument): Account {
  const spans = meterSpans(document.meters);
  const now = spans.at(-1) as MeterSpan;
  return {
    document,
    sanctionedLoad: decimalToWhole(document.sanctionedLoad, 3),
    plantCapacity: decimalToWhole(document.plantCapacity, 3),
    openingCredit: creditUnits(document.openingCredit) ?? 0,
    since: document.since === undefined ? null : parseDay(document.since),
    settlementDay: document.settlementDay ?? null,
    registers: now.totals,
    spans,
    hasBattery: document.batteryCapacity !== undefined,
  };
}

/**
 * Check an account document that has the right form. Numbers are read as people type them; the account
 * keeps them as plain decimals.
 *
 * @returns the account, or null when a number cannot be used; questions leave it usable
 */
export function checkAccount(document: AccountDocument): Outcome<Account | null> {
  const plain = plainAccount(document);
  const questions = plausibility(plain.document).map((finding) => answered(finding, document));
  const findings = [
    ...plain.findings,
    ...numberFindings(plain),
    ...questions,
    ...creditFindings(plain),
    ...dayFindings(document),
    ...meterFindings(document),
  ];
  const usable = findings.every((finding) => finding.severity !== 'error');
  return { value: usable ? assemble(plain.document) : null, findings };
}

/**
 * Read an account document.
 *
 * @param text  the JSON file, whole
 * @returns     the account, or null when it cannot be used; findings with line and column
 * @example
 * readAccount('{"format":"unitbook-account-1"}').value //=> null
 */
export function readAccount(text: string): Outcome<Account | null> {
  const read = readDocument<AccountDocument>(text, accountSchema);
  const checked = read.mended === null ? { value: null, findings: [] } : checkAccount(read.mended);
  const findings = inFileOrder([
    ...read.findings,
    ...checked.findings.map((finding) => locate(read.source, finding)),
  ]);
  return { value: read.value === null ? null : checked.value, findings };
}
