import type { Finding, FindingKind, FindingText } from './quantity/index.ts';
import { DOCUMENT_FINDINGS, TARIFF_FINDINGS } from './tariff/index.ts';
import { READING_FINDINGS } from './readings/index.ts';
import { ENERGY_FINDINGS } from './energy/index.ts';
import { SETTLEMENT_FINDINGS } from './settlement/index.ts';
import { BILL_FINDINGS } from './bill/index.ts';

/** Every kind of finding the engine makes, by code. */
export const ENGINE_FINDINGS: Readonly<Record<string, FindingKind>> = {
  ...DOCUMENT_FINDINGS,
  ...TARIFF_FINDINGS,
  ...READING_FINDINGS,
  ...ENERGY_FINDINGS,
  ...SETTLEMENT_FINDINGS,
  ...BILL_FINDINGS,
};

/**
 * The sentences of a finding with its amounts in the reader's grouping: "42,061 units in 31 days".
 *
 * @param finding  of the engine; of another maker, its own sentences are kept
 * @param number   how an exact decimal text is written
 * @example
 * describeFinding({ code: 'other/code', severity: 'note', path: [], values: {}, found: 'a', expected: 'b', remedy: 'c' }, (text) => text).found //=> "a"
 */
export function describeFinding(finding: Finding, number: (text: string) => string): FindingText {
  const kind = ENGINE_FINDINGS[finding.code];
  if (kind === undefined) return { found: finding.found, expected: finding.expected, remedy: finding.remedy };
  const grouped = (kind.grouped ?? []).map((key) => [key, number(finding.values[key] ?? '')]);
  return kind.text({ ...finding.values, ...(Object.fromEntries(grouped) as Record<string, string>) });
}
