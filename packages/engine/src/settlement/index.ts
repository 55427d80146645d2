export { closesBefore, closingDays } from './closes-before.ts';
export { holdsDayOfYear, lastDayOfYear } from './close-day.ts';
export { SETTLEMENT_FINDINGS, settlementFinding, type SettlementFindingCode } from './findings.ts';
export { settlePeriod, type PassbookEntry, type SettlePeriodOptions } from './settle-period.ts';
export { openingFigure, type LedgerEntry, type SurplusPayment } from './ledger-entry.ts';
export { emptyLedger, type LedgerState, type Lot } from './ledger.ts';
export { moneyBalance, moneyEntry, moneyOf, useOf, type MoneyUse } from './money-ledger.ts';
export type { AccountDays, PastPeriod } from './settle-context.ts';
export {
  prepareSettlement,
  problemFinding,
  settleLedgers,
  type LedgerStates,
  type PreparedSettlement,
  type SettleInput,
  type Settled,
} from './settle-ledgers.ts';
export { SettlementProblem } from './settlement-problem.ts';
export { SHARING_FINDINGS, sharingFinding, type SharingFindingCode } from './sharing-findings.ts';
export { type PoolMember } from './check-members.ts';
export { sharePool, type PoolShare, type SharedPool } from './share-pool.ts';
export { groupMembers, readGroup, type GroupDocument, type ReadGroup } from './group-document.ts';
export { paidRate } from './paid-rate.ts';
export { QuickLedger, quickMove, type QuickMove } from './quick-ledger.ts';
export { rememberedPeriod } from './quick-past.ts';
export { ratioOf, timesRatio, type Ratio } from './quick-ratio.ts';
export type { QuickPast, QuickRun, QuickTime } from './quick-run.ts';
export { quickQuantities, quickRuns, type QuickQuantities } from './quick-steps.ts';
