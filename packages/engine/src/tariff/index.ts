export { inForceDuring, isOpenEnded, type InForce } from './dated.ts';
export { TARIFF_FINDINGS, tariffFinding, type TariffFindingCode } from './findings.ts';
export { DOCUMENT_FINDINGS, documentFinding, type DocumentFindingCode } from './document-findings.ts';
export { inFileOrder, readDocument, type ReadDocument } from './read-document.ts';
export { locate, type SourceText } from './source-text.ts';
export { readTariff, type ReadTariff, type Tariff } from './read-tariff.ts';
export { decimalText, QUANTITIES } from './charge-schema.ts';
export {
  tariffJsonSchema,
  type Charge,
  type DayRule,
  type SettlementRule,
  type TariffDocument,
  type TariffVersion,
} from './schema.ts';
