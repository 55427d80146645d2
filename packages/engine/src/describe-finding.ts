import { groupedText, type Finding, type FindingKind, type FindingText } from './quantity/index.ts';
import { DOCUMENT_FINDINGS, EXTEND_FINDINGS, TARIFF_FINDINGS, TIME_BLOCK_FINDINGS } from './tariff/index.ts';
import { READING_FINDINGS } from './readings/index.ts';
import { ENERGY_FINDINGS, INTERVAL_FINDINGS, PLANT_FINDINGS } from './energy/index.ts';
import { SETTLEMENT_FINDINGS, SHARING_FINDINGS } from './settlement/index.ts';
import { BILL_FINDINGS } from './bill/index.ts';
import { QUOTE_FINDINGS } from './quote/index.ts';
import { CHECK_FINDINGS, DISPUTE_FINDINGS } from './audit/index.ts';
import { PERIOD_FINDINGS } from './period-findings.ts';

/** The kinds of findings that a surface may write anew. */
const KINDS: Readonly<Record<string, FindingKind>> = {
  ...DOCUMENT_FINDINGS,
  ...TARIFF_FINDINGS,
  ...READING_FINDINGS,
  ...ENERGY_FINDINGS,
  ...SETTLEMENT_FINDINGS,
  ...BILL_FINDINGS,
};

/**
 * Every kind of finding the engine makes, by code. Those left out above hold no amounts, or the page has no need of
 * them when it opens: its pages of the plant and the quote write theirs anew themselves.
 */
// A call marked so is left out of a page that does not use it; bare spreads stay, and all these texts with them.
export const ENGINE_FINDINGS: Readonly<Record<string, FindingKind>> = /* @__PURE__ */ (() => ({
  ...KINDS,
  ...EXTEND_FINDINGS,
  ...TIME_BLOCK_FINDINGS,
  ...INTERVAL_FINDINGS,
  ...PLANT_FINDINGS,
  ...SHARING_FINDINGS,
  ...PERIOD_FINDINGS,
  ...QUOTE_FINDINGS,
  ...CHECK_FINDINGS,
  ...DISPUTE_FINDINGS,
}))();

/**
 * The sentences of a finding with its amounts in the reader's grouping: "42,061 units in 31 days".
 *
 * @param finding  of the engine; of another maker, its own sentences are kept
 * @param number   how an exact decimal text is written
 * @example
 * describeFinding({ code: 'other/code', severity: 'note', path: [], values: {}, found: 'a', expected: 'b', remedy: 'c' }, (text) => text).found //=> "a"
 */
export function describeFinding(finding: Finding, number: (text: string) => string): FindingText {
  const kind = KINDS[finding.code];
  if (kind === undefined) return { found: finding.found, expected: finding.expected, remedy: finding.remedy };
  return groupedText(kind, finding.values, number);
}
