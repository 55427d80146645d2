export { DIARY_DEEDS, plantDocumentSchema, type DiaryDeed, type PlantDocument } from './plant-document.ts';
export { checkPlant, readPlant } from './check-plant.ts';
export {
  capacityOn,
  isOutage,
  type DatedCapacity,
  type DiaryEntry,
  type Expected,
  type Plant,
} from './plant.ts';
export { PLANT_FINDINGS, plantFinding, type PlantFindingCode } from './findings.ts';
export type { GenerationDay, GenerationPeriod } from './last-years.ts';
export type { Judged, Judgement } from './judge.ts';
export { plantMonths } from './plant-months.ts';
export type { PlantMonth } from './month-notes.ts';
export type { PlantYields } from './yield-figures.ts';
export type { PlantDay } from './day-series.ts';
export { plantDays, type ChartDay, type PlantDays } from './plant-days.ts';
export { cleaningEffects, type CleaningEffect, type CleaningSide } from './cleaning-effects.ts';
export { upkeepCalendar, type UpkeepEntry } from './upkeep.ts';
export {
  UPKEEP_CAUTIONS,
  UPKEEP_TASKS,
  type UpkeepCaution,
  type UpkeepPeriod,
  type UpkeepTask,
} from './upkeep-tasks.ts';
export { cheapestCleaningDays, meanDirtLoss, type CleaningCost } from './dirt-loss.ts';
export { usualIrradiation } from './usual-irradiation.ts';
