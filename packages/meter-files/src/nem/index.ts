export { nem12Reader } from './nem12.ts';
export { nem13Reader } from './nem13.ts';
export { NEM_FINDINGS, nemFinding, type NemFindingCode } from './nem-findings.ts';
