export { readRegisterCsv, type CsvSource, type RegisterCsv } from './read-register-csv.ts';
export { locateInCsv } from './locate.ts';
export { LARGEST_FILE, tooLargeFinding } from './decode.ts';
export { DELIMITER_WORDS, type Delimiter } from './cells.ts';
export { FILE_FINDINGS, fileFinding, type FileFindingCode } from './findings.ts';
export { COLUMNS, type Column, type Header } from './header.ts';
export type { CsvRecord } from './records.ts';
export {
  METERED_QUANTITIES,
  VALUE_QUALITIES,
  type FileClock,
  type IntervalChunk,
  type MeteredQuantity,
  type MeterReader,
  type MeterSink,
  type RegisterValue,
  type Stream,
  type ValueQuality,
} from './stream.ts';
export * from './nem/index.ts';
export * from './espi/index.ts';
export * from './obis/index.ts';
export * from './table/index.ts';
export * from './collected/index.ts';
export * from './open/index.ts';
export * from './to-engine/index.ts';
