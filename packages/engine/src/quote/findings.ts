import { findingMaker, type Finding, type FindingPlace } from '../quantity/index.ts';
import { QUOTE_FLYER_FINDINGS } from './flyer-findings.ts';
import { QUOTE_INPUT_FINDINGS } from './input-findings.ts';
import { QUOTE_LIFE_FINDINGS } from './life-findings.ts';
import { QUOTE_PROFILE_FINDINGS } from './profile-findings.ts';
import { QUOTE_WARNING_FINDINGS } from './warning-findings.ts';

/** Everything that can be said of a quote, by code. */
export const QUOTE_FINDINGS = {
  ...QUOTE_INPUT_FINDINGS,
  ...QUOTE_LIFE_FINDINGS,
  ...QUOTE_PROFILE_FINDINGS,
  ...QUOTE_WARNING_FINDINGS,
  ...QUOTE_FLYER_FINDINGS,
} as const;

/** A code of a finding about a quote. */
export type QuoteFindingCode = keyof typeof QUOTE_FINDINGS;

/** Make a finding about a quote. */
export const quoteFinding: (
  code: QuoteFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<QuoteFindingCode>(QUOTE_FINDINGS);
