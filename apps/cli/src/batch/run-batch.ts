import { FileTrouble, troubleFindings } from './file-trouble.ts';
import { journalFingerprint } from './fingerprint.ts';
import { resumedJournal, type Journal, type ResumedJournal } from './journal.ts';
import { goOn, openRows, type OpenRows } from './open-rows.ts';
import type { BatchIo, BatchOptions, BatchResult } from './options.ts';
import { fileSink, noSink, streamSink } from './output.ts';
import { inPart } from './part.ts';
import { keepHeapsSmall, ownThread, Workers, type Pool } from './pool.ts';
import { batchRefusals, sidePath } from './refusals.ts';
import { summaryOf } from './summary.ts';
import { Taking } from './taking.ts';
import { isClean, type Tally } from './tally.ts';

const encoder = new TextEncoder();

const notDone = (findings: BatchResult['findings']): BatchResult => ({ status: 2, summary: null, findings });

async function sinksOf(
  options: BatchOptions,
  io: BatchIo,
  { headerText }: OpenRows,
  journal: Journal | null,
) {
  const { out } = options;
  const path = sidePath(options);
  const findings = out === undefined ? streamSink(io.write) : fileSink(out, journal?.findings ?? 0);
  try {
    const side = path === undefined ? noSink() : fileSink(path, journal?.side ?? 0);
    if (side.length() === 0) await side.write(encoder.encode(headerText));
    return { findings, side };
  } catch (error) {
    findings.close();
    throw error;
  }
}

function poolOf(options: BatchOptions, io: BatchIo, header: OpenRows['header']): Pool {
  const { tariff, otherTariffs = [], account = {}, tolerance = null, isEvery = false } = options;
  const terms = {
    unitbook: 'batch',
    tariff: tariff.document,
    otherTariffs: otherTariffs.map(({ document }) => document),
    account,
    tolerance,
    isEvery,
    header,
  } as const;
  const workers = options.workers ?? io.cores;
  keepHeapsSmall();
  return workers <= 1 || io.entry === null ? ownThread(terms) : new Workers(terms, workers - 1, io.entry);
}

/** The journal to go on with; findings where there is none to go on with. */
function journalOf(options: BatchOptions, { of, table }: OpenRows): ResumedJournal {
  const { out, isResumed } = options;
  if (out === undefined || isResumed !== true) return { journal: null, findings: [] };
  return resumedJournal({ out, side: sidePath(options) }, journalFingerprint(options, of, table));
}

/** What a check came to; not whole where whoever reads the findings reads no more. */
interface Checked {
  readonly tally: Tally;
  readonly isWhole: boolean;
}

async function checkAll(
  options: BatchOptions,
  io: BatchIo,
  opened: OpenRows,
  journal: Journal | null,
): Promise<Checked> {
  const reader = journal === null ? opened.reader : await goOn(opened, options, journal);
  const sinks = await sinksOf(options, io, opened, journal);
  const taking = new Taking(sinks, { options, io, opened }, journal);
  const pool = poolOf(options, io, opened.header);
  const { size } = opened.table;
  try {
    const blocks = inPart(reader, options.part, { from: opened.reader.position, size });
    for (let block = await blocks(); block !== null; block = await blocks()) {
      const place = { position: reader.position, line: reader.line };
      await pool.add(block, (result) => taking.take(result, place));
    }
    await pool.end();
    await taking.end(reader);
    return { tally: taking.tally, isWhole: true };
  } catch (error) {
    if (error instanceof FileTrouble && error.isClosedPipe) return { tally: taking.tally, isWhole: false };
    throw error;
  } finally {
    await pool.close();
    sinks.findings.close();
    sinks.side.close();
  }
}

function resultOf({ tally, isWhole }: Checked, { document }: BatchOptions['tariff']): BatchResult {
  const { id, supplier, currency } = document;
  if (!isClean(tally))
    return {
      status: 1,
      summary: isWhole ? summaryOf(tally, { id, supplier, currency }) : null,
      findings: [],
    };
  // Rows that nobody looked at are not right, even if all above them are.
  if (!isWhole) return notDone([]);
  return { status: 0, summary: summaryOf(tally, { id, supplier, currency }), findings: [] };
}

async function checkOpened(options: BatchOptions, io: BatchIo, opened: OpenRows): Promise<BatchResult> {
  try {
    const { journal, findings } = journalOf(options, opened);
    if (findings.length > 0) return notDone(findings);
    const checked =
      journal?.isDone === true
        ? { tally: journal.tally, isWhole: true }
        : await checkAll(options, io, opened, journal);
    return resultOf(checked, options.tariff);
  } finally {
    await opened.table.close();
  }
}

/**
 * Check a table of bills: findings as JSON lines in the order of the rows, and a summary. Memory does not grow with
 * the table; a check that was killed goes on where its journal ended, without a row lost or doubled.
 */
export async function runBatch(options: BatchOptions, io: BatchIo): Promise<BatchResult> {
  const refused = batchRefusals(options);
  if (refused.length > 0) return notDone(refused);
  try {
    const opened = await openRows(options);
    return 'table' in opened ? await checkOpened(options, io, opened) : notDone(opened.findings);
  } catch (error) {
    if (!(error instanceof FileTrouble)) throw error;
    return notDone(troubleFindings(error, options.out !== undefined));
  }
}
