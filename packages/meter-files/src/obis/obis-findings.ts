import { findingMaker, type Finding, type FindingKind, type FindingPlace } from '@unitbook/engine';
import { LIST_FINDINGS } from './list-findings.ts';
import { REGISTER_FINDINGS } from './register-findings.ts';
import { TELEGRAM_FINDINGS } from './telegram-findings.ts';

/** Everything that can be said of meter telegrams and of lists of OBIS registers, by code. */
export const OBIS_FINDINGS: Readonly<Record<ObisFindingCode, FindingKind>> = {
  ...REGISTER_FINDINGS,
  ...TELEGRAM_FINDINGS,
  ...LIST_FINDINGS,
};

/** A code of a finding about meter telegrams and lists of OBIS registers. */
export type ObisFindingCode =
  keyof typeof REGISTER_FINDINGS | keyof typeof TELEGRAM_FINDINGS | keyof typeof LIST_FINDINGS;

/** Make a finding about a meter telegram or a list of OBIS registers. */
export const obisFinding: (
  code: ObisFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<ObisFindingCode>(OBIS_FINDINGS);
