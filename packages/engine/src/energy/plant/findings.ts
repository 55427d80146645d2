import { findingMaker, type Finding, type FindingPlace } from '../../quantity/index.ts';
import { PLANT_DAY_FINDINGS } from './day-findings.ts';
import { PLANT_DOCUMENT_FINDINGS } from './document-findings.ts';
import { PLANT_LEVEL_FINDINGS } from './level-findings.ts';
import { PLANT_MONTH_FINDINGS } from './month-findings.ts';

/** Everything that can be said of a plant: its document, its months and its days, by code. */
export const PLANT_FINDINGS = {
  ...PLANT_DOCUMENT_FINDINGS,
  ...PLANT_MONTH_FINDINGS,
  ...PLANT_DAY_FINDINGS,
  ...PLANT_LEVEL_FINDINGS,
} as const;

/** A code of a finding about a plant. */
export type PlantFindingCode = keyof typeof PLANT_FINDINGS;

/** Make a finding about a plant. */
export const plantFinding: (
  code: PlantFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<PlantFindingCode>(PLANT_FINDINGS);
