export { inForceDuring, isOpenEnded, type InForce } from './dated.ts';
export { TARIFF_FINDINGS, tariffFinding, type TariffFindingCode } from './findings.ts';
export { DOCUMENT_FINDINGS, documentFinding, type DocumentFindingCode } from './document-findings.ts';
export { inFileOrder, readDocument, type ReadDocument } from './read-document.ts';
export { locate, type SourceText } from './source-text.ts';
export { readTariff, type ReadTariff, type Tariff } from './read-tariff.ts';
export { QUANTITIES } from './charge-schema.ts';
export { decimalText } from './names.ts';
export { priceAt, type PriceAt } from './price-at.ts';
export { ratesNamed } from './rates-named.ts';
export {
  givenQuantities,
  operandsOf,
  quantitiesToGive,
  quantityUnits,
  restName,
  type NamedQuantity,
} from './known-quantities.ts';
export type { LedgerRule } from './ledger-schema.ts';
export type { Price } from './price-schema.ts';
export type { Definition, Measure, QuantityUnit } from './quantity-schema.ts';
export {
  tariffJsonSchema,
  type Charge,
  type DayRule,
  type LedgersRule,
  type SettlementRule,
  type TariffDocument,
  type TariffVersion,
  type UnitNettingRule,
} from './schema.ts';
export { sharingRuleFindings, type SharingRule } from './sharing-schema.ts';
export { EXTEND_FINDINGS } from './extend-findings.ts';
export {
  extendDocument,
  extendedId,
  readExtendedTariff,
  type ExtendedDocument,
  type Library,
} from './extend-document.ts';
export { DOCUMENT_LIMITS } from './json-text.ts';
export { textUnder } from './source-text.ts';
export { checkTimeBlocks } from './check-time-blocks.ts';
export {
  clockMinute,
  clockText,
  entriesOn,
  minuteEntries,
  namesHolidays,
  seasonsOn,
  weekdayOf,
  type DayKind,
} from './time-block-calendar.ts';
export { TIME_BLOCK_FINDINGS, timeBlockFinding, type TimeBlockFindingCode } from './time-block-findings.ts';
export { type TimeBlockEntry, type TimeBlocks } from './time-block-schema.ts';
export { isBorneInFull } from './check-split.ts';
