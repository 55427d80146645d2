import { findingMaker, type Finding, type FindingPlace } from '@unitbook/engine';
import { NEM_FILE_FINDINGS } from './file-findings.ts';
import { NEM12_FINDINGS } from './interval-findings.ts';
import { NEM13_FINDINGS } from './register-findings.ts';

/** Everything that can be said of a NEM12 or NEM13 file, by code. */
export const NEM_FINDINGS: typeof NEM_FILE_FINDINGS & typeof NEM12_FINDINGS & typeof NEM13_FINDINGS = {
  ...NEM_FILE_FINDINGS,
  ...NEM12_FINDINGS,
  ...NEM13_FINDINGS,
};

/** A code of a finding about a NEM12 or NEM13 file. */
export type NemFindingCode = keyof typeof NEM_FINDINGS;

/** Make a finding about a NEM12 or NEM13 file. */
export const nemFinding: (
  code: NemFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<NemFindingCode>(NEM_FINDINGS);
