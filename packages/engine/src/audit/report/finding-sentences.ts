import { BILL_FINDINGS } from '../../bill/index.ts';
import { ENERGY_FINDINGS } from '../../energy/index.ts';
import {
  groupedText,
  parseDay,
  type Finding,
  type FindingKind,
  type FindingText,
} from '../../quantity/index.ts';
import { READING_FINDINGS } from '../../readings/index.ts';
import { SETTLEMENT_FINDINGS } from '../../settlement/index.ts';
import { DOCUMENT_FINDINGS, TARIFF_FINDINGS } from '../../tariff/index.ts';
import { CHECK_FINDINGS } from '../findings.ts';
import { DISPUTE_FINDINGS } from './dispute-findings.ts';
import { capital, type ReportNotation } from './report-words.ts';

/** What can be said of printed bills, and of what they are checked against. */
const KINDS: Readonly<Record<string, FindingKind>> = {
  ...DOCUMENT_FINDINGS,
  ...TARIFF_FINDINGS,
  ...READING_FINDINGS,
  ...ENERGY_FINDINGS,
  ...SETTLEMENT_FINDINGS,
  ...BILL_FINDINGS,
  ...CHECK_FINDINGS,
  ...DISPUTE_FINDINGS,
};

const ISO_DAY = /\b\d{4}-\d{2}-\d{2}\b/g;

/** A text whose days are written as the household writes them; what is no day of the calendar stays. */
export function withDays(text: string, { day }: Pick<ReportNotation, 'day'>): string {
  return text.replace(ISO_DAY, (iso) => (parseDay(iso) === null ? iso : day(iso)));
}

/** The sentences of a finding with its amounts grouped. */
function grouped(finding: Finding, { number }: Pick<ReportNotation, 'number'>): FindingText {
  const kind = KINDS[finding.code];
  // A finding of another maker keeps its own sentences.
  return kind === undefined ? finding : groupedText(kind, finding.values, number);
}

/**
 * The sentences of a finding about printed bills, with amounts and days as the household writes them.
 *
 * @param notation  how numbers and days are written
 * @example
 * findingSentences({ code: 'other/code', severity: 'note', path: [], values: {}, found: 'a day, 2025-05-01', expected: 'b', remedy: 'c' }, { number: (text) => text, money: (text) => text, moneyPlaces: 2, day: () => 'May' }).found //=> "a day, May"
 */
export function findingSentences(finding: Finding, notation: ReportNotation): FindingText {
  const { found, expected, remedy } = grouped(finding, notation);
  return {
    found: withDays(found, notation),
    expected: withDays(expected, notation),
    remedy: withDays(remedy, notation),
  };
}

/** What was found and what was expected, as an item of a list. */
export function foundWords(finding: Finding, notation: ReportNotation): string {
  const { found, expected } = findingSentences(finding, notation);
  return `${capital(found)}; expected: ${expected}`;
}
