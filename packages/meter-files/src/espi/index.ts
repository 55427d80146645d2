export { espiReader, type EspiReader } from './reader.ts';
export { ESPI_FINDINGS, espiFinding, type EspiFindingCode } from './findings.ts';
export { dstRule, type DstRule } from './dst-rule.ts';
export { clockChangeDays, localMinute, type LocalTimeParameters } from './local-time.ts';
export { HELD_READINGS } from './held.ts';
