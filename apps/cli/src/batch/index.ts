export { runBatch } from './run-batch.ts';
export type { BatchIo, BatchOptions, BatchResult } from './options.ts';
export { isBatchWorker, serveBatch } from './worker.ts';
export { BATCH_FINDINGS, batchFinding } from './findings.ts';
export { summaryPage, type BatchSummary } from './summary.ts';
export { joinParts } from './join-parts.ts';
export { fileFailure, isFileError } from './file-failure.ts';
