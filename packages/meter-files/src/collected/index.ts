export { byName, collectMeterFile, type CollectedFile, type MeterCollector } from './collect.ts';
export { COLLECTED_FINDINGS, collectedFinding, type CollectedFindingCode } from './collected-findings.ts';
export { trackCoverage, fileCoverage, type CoverageTracker, type StreamCoverage } from './coverage.ts';
export { energyByDay, type DayChannel, type DayEnergy } from './energy-by-day.ts';
export { energyInPeriods, type PeriodEnergy } from './energy-in-periods.ts';
export { keepFindings, MOST_OF_ONE_CODE, type FindingKeeper } from './finding-keeper.ts';
export type { IntervalSeries } from './interval-series.ts';
export { localColumns, type LocalIntervals, type LocalOptions } from './local-columns.ts';
export type { MinuteRange } from './minute-ranges.ts';
export {
  firstDaysOfMonths,
  readingRows,
  type MeterReadingRow,
  type RegisterValues,
  type RowOptions,
} from './reading-rows.ts';
export { momentText, type RegisterSeries } from './register-list.ts';
export type { RegisterSummary } from './register-summary.ts';
export type { Assign } from './selection.ts';
export type { MonthSummary, StreamSummary } from './stream-summary.ts';
export { summariseMeterFile, type MeterFileSummary, type MeterSummariser } from './summary.ts';
export { coverageFindings } from './tell-coverage.ts';
export { durationText, minuteText, streamText } from './texts.ts';
export { isZone, zoneClock, type ClockChange, type ZoneClock } from './zone-clock.ts';
export { registerIntervals } from './register-intervals.ts';
