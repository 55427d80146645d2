export type { BillLine, BillQuantities } from './bill-part.ts';
export {
  billPeriod,
  chargePeriod,
  closeBill,
  type Bill,
  type BillInput,
  type ChargedPeriod,
  type QuantityChange,
} from './bill-period.ts';
export {
  billLedgers,
  EMPTY_CHAIN,
  ledgersWithoutRule,
  type LedgerBill,
  type LedgerBillInput,
  type LedgerChain,
} from './bill-ledgers.ts';
export { makeConstants, quantityVector, type Constants } from './constants.ts';
export type { LineConstants } from './line-constants.ts';
export { dayFactor, type DayFactor } from './day-factor.ts';
export { evaluate } from './evaluate.ts';
export { AmountTooLarge } from './line-amount.ts';
export {
  billColumns,
  evaluateColumns,
  isColumnar,
  type BillColumns,
  type ColumnRaises,
} from './evaluate-columns.ts';
export { isRaisable, type ExactFactor, type LineRaises } from './raised.ts';
export { BILL_FINDINGS, billFinding, type BillFindingCode } from './findings.ts';
export { coveredDays } from './period-parts.ts';
export {
  preparedFor,
  prepareTariff,
  type PeriodPart,
  type Prepared,
  type PreparedTariff,
} from './prepare.ts';
export { ledgerName, QUANTITY_ORDER, type QuantityName } from './quantities.ts';
export { ratesOf, reprice } from './reprice.ts';
export { shapeOf, type Shape, type ShapeLine } from './shape.ts';
export {
  creditGrid,
  evaluateQuick,
  evaluateQuickRaised,
  quickParts,
  type QuickPart,
  type UsedQuantity,
} from './quick-parts.ts';
export { stepRounding, type StepRounding } from './step-rounding.ts';
