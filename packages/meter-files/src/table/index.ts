export { readTableLayout } from './check-layout.ts';
export { TABLE_FINDINGS, tableFinding, type TableFindingCode } from './findings.ts';
export { layoutKey } from './layout-key.ts';
export {
  tableLayoutSchema,
  type TableColumn,
  type TableLayout,
  type TableLayoutDocument,
  type ValueColumn,
} from './layout-document.ts';
export type { DecisionSubject, TableDecision } from './propose/decision.ts';
export { proposeTable, type TableProposal } from './propose/propose-table.ts';
export { tableReader } from './read-table.ts';
