export { countBlocks, countChannel, type BlockUnits } from './count-channel.ts';
export { countAdvance, countUnits, type UnitsRule } from './count-units.ts';
export { ENERGY_FINDINGS, energyFinding, type EnergyFindingCode } from './findings.ts';
export { energyRatios, measureEnergy, type EnergyPeriod, type EnergyRatios } from './measure-energy.ts';
export { useBounds, type Bounds, type UseBounds } from './use-bounds.ts';
export { blockClock, type BlockClock, type BlockDay } from './block-clock.ts';
export {
  INTERVAL_CHANNELS,
  intervalRowsToColumns,
  type IntervalChannel,
  type IntervalColumns,
  type IntervalRow,
} from './interval-columns.ts';
export { INTERVAL_FINDINGS, intervalFinding, type IntervalFindingCode } from './interval-findings.ts';
export type { IntervalRules, NettingWindow } from './interval-windows.ts';
export {
  intervalFigure,
  measureIntervals,
  measureIntervalYear,
  type ChannelTotals,
  type IntervalPeriod,
} from './measure-intervals.ts';
export {
  METER_LIMITS,
  meterBand,
  meterBandText,
  meterLimit,
  type MeterBand,
  type MeterBandText,
  type MeteredPart,
  type MeterLimit,
} from './meter-accuracy.ts';
export * from './plant/index.ts';
