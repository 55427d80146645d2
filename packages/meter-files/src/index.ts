export { readRegisterCsv, type CsvSource, type RegisterCsv } from './read-register-csv.ts';
export { locateInCsv } from './locate.ts';
export { LARGEST_FILE, tooLargeFinding } from './decode.ts';
export { DELIMITER_WORDS, type Delimiter } from './cells.ts';
export { FILE_FINDINGS, fileFinding, type FileFindingCode } from './findings.ts';
export { COLUMNS, type Column, type Header } from './header.ts';
export type { CsvRecord } from './records.ts';
