import { findingMaker, type Finding, type FindingPlace } from '../quantity/index.ts';
import { PAIR_FINDINGS } from './pair-findings.ts';
import { TYPED_FINDINGS } from './typed-findings.ts';

/** Everything that can be said of readings and accounts, by code. */
export const READING_FINDINGS = { ...TYPED_FINDINGS, ...PAIR_FINDINGS } as const;

/** A code of a finding about readings or an account. */
export type ReadingFindingCode = keyof typeof READING_FINDINGS;

/** Make a finding about readings or an account. */
export const readingFinding: (
  code: ReadingFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<ReadingFindingCode>(READING_FINDINGS);
