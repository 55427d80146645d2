export { crc16 } from './checksum.ts';
export { parseObis, type ObisCode } from './code.ts';
export { obisMeaning, type ObisMeaning } from './meaning.ts';
export { OBIS_FINDINGS, obisFinding, type ObisFindingCode } from './obis-findings.ts';
export { registerListReader } from './register-list-reader.ts';
export { telegramReader } from './telegram-reader.ts';
