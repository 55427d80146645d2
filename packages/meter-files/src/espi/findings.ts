import { findingMaker, type Finding, type FindingPlace } from '@unitbook/engine';
import { FEED_FINDINGS } from './feed-findings.ts';
import { READING_FINDINGS } from './reading-findings.ts';
import { TYPE_FINDINGS } from './type-findings.ts';

/** A code of a finding about an ESPI feed. */
export type EspiFindingCode =
  keyof typeof FEED_FINDINGS | keyof typeof TYPE_FINDINGS | keyof typeof READING_FINDINGS;

/** Everything that can be said of an ESPI feed, by code. */
export const ESPI_FINDINGS: Parameters<typeof findingMaker<EspiFindingCode>>[0] = {
  ...FEED_FINDINGS,
  ...TYPE_FINDINGS,
  ...READING_FINDINGS,
};

/** Make a finding about an ESPI feed. */
export const espiFinding: (
  code: EspiFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<EspiFindingCode>(ESPI_FINDINGS);
