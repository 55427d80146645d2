export {
  billLedgerMonth,
  type LedgerChains,
  type LedgerMonth,
  type LedgerMonthInput,
} from './ledger-savings.ts';
export { billMonth, type MonthBills, type MonthInput, type Savings } from './savings.ts';
export { powerFigures, type AccountPowers } from './power-figure.ts';
