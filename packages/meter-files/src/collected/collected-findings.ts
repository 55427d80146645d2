import { findingMaker, type Finding, type FindingPlace } from '@unitbook/engine';
import { OPEN_FINDINGS } from '../open/open-findings.ts';
import { COVERAGE_FINDINGS } from './coverage-findings.ts';
import { ENERGY_FILE_FINDINGS } from './energy-findings.ts';
import type { Values } from './finding-words.ts';
import { LOCAL_FINDINGS } from './local-findings.ts';
import { READING_FINDINGS } from './reading-findings.ts';
import { SERIES_FINDINGS } from './series-findings.ts';

/** Everything that can be said of a meter file, whatever its format, by code. */
export const COLLECTED_FINDINGS = {
  ...OPEN_FINDINGS,
  ...SERIES_FINDINGS,
  ...COVERAGE_FINDINGS,
  ...LOCAL_FINDINGS,
  ...ENERGY_FILE_FINDINGS,
  ...READING_FINDINGS,
} as const satisfies Parameters<typeof findingMaker>[0];

/** A code of a finding about a meter file, whatever its format. */
export type CollectedFindingCode = keyof typeof COLLECTED_FINDINGS;

/** Make a finding about a meter file, whatever its format. */
export const collectedFinding: (code: CollectedFindingCode, place: FindingPlace, values?: Values) => Finding =
  findingMaker<CollectedFindingCode>(COLLECTED_FINDINGS);
