import { isMainThread, parentPort, workerData } from 'node:worker_threads';
import { readTariff, type Quotient, type Tariff, type TariffDocument } from '@unitbook/engine';
import { BlockChecker, type Block, type CheckedBlock } from './check-block.ts';
import { JsonBlockChecker } from './json-rows.ts';
import type { Tally } from './tally.ts';

/** What a worker is begun with: everything that can be told another thread. */
export interface WorkerTerms {
  readonly unitbook: 'batch';
  readonly tariff: TariffDocument;
  readonly otherTariffs: readonly TariffDocument[];
  readonly account: { readonly since?: string; readonly settlementDay?: string };
  readonly tolerance: Quotient | null;
  readonly isEvery: boolean;
  /** null: JSON lines. */
  readonly header: readonly string[] | null;
}

/** A block on its way to a worker. */
export interface WorkerTask {
  readonly index: number;
  readonly bytes: ArrayBuffer;
  readonly to: number;
  readonly line: number;
}

/** What comes back of it, with its bytes, to be used again. */
export interface WorkerAnswer {
  readonly index: number;
  readonly findings: Uint8Array;
  readonly side: Uint8Array;
  readonly tally: Tally;
  readonly bytes: ArrayBuffer;
}

function tariffOf(document: TariffDocument): Tariff {
  const { value, findings } = readTariff(JSON.stringify(document));
  if (value === null)
    throw new RangeError(`a tariff that was read is not read again: ${JSON.stringify(findings)}`);
  return value;
}

/** Make what checks blocks. */
export function blockChecker(terms: WorkerTerms): { readonly check: (block: Block) => CheckedBlock } {
  const { header, tolerance, account, isEvery } = terms;
  const common = {
    tariff: tariffOf(terms.tariff),
    otherTariffs: terms.otherTariffs.map(tariffOf),
    account,
    options: tolerance === null ? {} : { tolerance },
    isEvery,
  };
  return header === null ? new JsonBlockChecker(common) : new BlockChecker({ ...common, header });
}

const isTerms = (data: unknown): data is WorkerTerms =>
  typeof data === 'object' && data !== null && 'unitbook' in data && data.unitbook === 'batch';

/** Whether this thread was begun by a check of a table, to check blocks of it. */
export const isBatchWorker = (): boolean => !isMainThread && isTerms(workerData);

/** Check the blocks that come, until the one who sends them closes. Only where {@link isBatchWorker}. */
export function serveBatch(): void {
  if (parentPort === null || !isTerms(workerData)) throw new Error('this thread checks no tables');
  const port = parentPort;
  const checker = blockChecker(workerData);
  const encoder = new TextEncoder();
  port.on('message', ({ index, bytes, to, line }: WorkerTask) => {
    const { findings, side, tally } = checker.check({ bytes: new Uint8Array(bytes), from: 0, to, line });
    const answer: WorkerAnswer = { index, findings: encoder.encode(findings), side, tally, bytes };
    port.postMessage(answer, [bytes]);
  });
}
