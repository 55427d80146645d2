export { closesBefore } from './closes-before.ts';
export { holdsDayOfYear } from './close-day.ts';
export { SETTLEMENT_FINDINGS, settlementFinding, type SettlementFindingCode } from './findings.ts';
export {
  settlePeriod,
  type PassbookEntry,
  type SettlePeriodOptions,
  type SurplusPayment,
} from './settle-period.ts';
