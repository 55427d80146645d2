import { statSync } from 'node:fs';
import { about, type PlacedFinding } from '../findings.ts';
import type { BlockReader } from './blocks.ts';
import { fileFailure, isFileError } from './file-failure.ts';
import { batchFinding } from './findings.ts';
import { goOn, openRows, type OpenRows } from './open-rows.ts';
import type { BatchIo, BatchOptions, BatchResult } from './options.ts';
import {
  fileSink,
  noSink,
  readJournal,
  streamSink,
  writeJournal,
  type Journal,
  type Sink,
} from './output.ts';
import { inPart } from './part.ts';
import { keepHeapsSmall, ownThread, Workers, type BlockResult, type Pool } from './pool.ts';
import { progressLine } from './progress.ts';
import { summaryOf } from './summary.ts';
import { addTally, emptyTally, type Tally } from './tally.ts';

const encoder = new TextEncoder();

/** Milliseconds between entries of the journal. */
const JOURNAL_EVERY = 1000;
/** Milliseconds between lines of progress. */
const PROGRESS_EVERY = 200;

/** Takes in what blocks came to, in their order. */
class Taking {
  readonly tally: Tally;
  private readonly findings: Sink;
  private readonly side: Sink;
  private readonly terms: { readonly options: BatchOptions; readonly io: BatchIo; readonly opened: OpenRows };
  private readonly begun: { readonly at: number; readonly position: number; readonly rows: number };
  private noted: number;
  private shown: number;

  constructor(
    sinks: { readonly findings: Sink; readonly side: Sink },
    terms: Taking['terms'],
    journal: Journal | null,
  ) {
    this.findings = sinks.findings;
    this.side = sinks.side;
    this.terms = terms;
    this.tally = journal?.tally ?? emptyTally();
    const at = terms.io.now();
    this.begun = { at, position: journal?.position ?? 0, rows: this.tally.rows };
    this.noted = at;
    this.shown = at;
  }

  /** Write what a block came to; whatever was written before the journal notes it is cut off by a resumption. */
  async take(
    { findings, side, tally }: BlockResult,
    place: Pick<BlockReader, 'position' | 'line'>,
  ): Promise<void> {
    await this.findings.write(findings);
    await this.side.write(side);
    addTally(this.tally, tally);
    const { io, options } = this.terms;
    const now = io.now();
    if (now - this.noted >= (options.journalEvery ?? JOURNAL_EVERY)) {
      this.note(place, false);
      this.noted = now;
    }
    if (io.isTerminal && now - this.shown >= PROGRESS_EVERY) {
      this.show(place.position, now);
      this.shown = now;
    }
  }

  private show(position: number, now: number): void {
    const { io, opened } = this.terms;
    const { verdicts, rows } = this.tally;
    const wrong = (verdicts['wrong']?.bills ?? 0) + (verdicts['follows']?.bills ?? 0);
    const span = { size: opened.table.size, from: this.begun.position, elapsed: now - this.begun.at };
    io.err(`\r\u001b[K${progressLine({ position, rows: rows - this.begun.rows, wrong }, span)}`);
  }

  /** Note how far the check has come. */
  note({ position, line }: Pick<BlockReader, 'position' | 'line'>, isDone: boolean): void {
    const { options, opened } = this.terms;
    if (options.out === undefined) return;
    this.findings.settle();
    this.side.settle();
    writeJournal(options.out, {
      format: 'unitbook-batch-journal-1',
      of: opened.of,
      position,
      line,
      findings: this.findings.length(),
      side: this.side.length(),
      tally: this.tally,
      isDone,
    });
  }

  async end(place: Pick<BlockReader, 'position' | 'line'>): Promise<void> {
    if (this.terms.options.withTally === true)
      await this.findings.write(encoder.encode(`${JSON.stringify({ tally: this.tally })}\n`));
    this.note(place, true);
    if (this.terms.io.isTerminal) this.terms.io.err('\r\u001b[K');
  }
}

/** The file beside the findings for rows that cannot be used. */
const sidePath = ({ side, out, form }: BatchOptions): string | undefined =>
  side ?? (out === undefined ? undefined : `${out}.unread.${form ?? 'csv'}`);

async function sinksOf(
  options: BatchOptions,
  io: BatchIo,
  { headerText }: OpenRows,
  journal: Journal | null,
) {
  const { out } = options;
  const path = sidePath(options);
  const findings = out === undefined ? streamSink(io.write) : fileSink(out, journal?.findings ?? 0);
  const side = path === undefined ? noSink() : fileSink(path, journal?.side ?? 0);
  if (side.length() === 0) await side.write(encoder.encode(headerText));
  return { findings, side };
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

/** The journal to go on with; findings where it is of another check. */
function journalOf(
  { out, isResumed }: BatchOptions,
  { of }: OpenRows,
): Journal | null | readonly PlacedFinding[] {
  if (out === undefined || isResumed !== true) return null;
  const journal = readJournal(out);
  if (journal === null) return null;
  const refused = (reason: string) =>
    about(out, [batchFinding('batch/cannot-resume', { path: [] }, { reason })]);
  if (journal.of !== of)
    return refused('the journal of a check of another table, tariff or choice of options');
  const size = statSync(out, { throwIfNoEntry: false })?.size ?? 0;
  return size < journal.findings ? refused('fewer findings than its journal tells of') : journal;
}

const isFindings = (value: Journal | null | readonly PlacedFinding[]): value is readonly PlacedFinding[] =>
  Array.isArray(value);

async function checkAll(
  options: BatchOptions,
  io: BatchIo,
  opened: OpenRows,
  journal: Journal | null,
): Promise<Tally> {
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
  } finally {
    await pool.close();
    sinks.findings.close();
    sinks.side.close();
  }
  return taking.tally;
}

function resultOf(tally: Tally, { document }: BatchOptions['tariff']): BatchResult {
  const { id, supplier, currency } = document;
  const { right, 'right-but-surprising': surprising } = tally.verdicts;
  const isClean = (right?.bills ?? 0) + (surprising?.bills ?? 0) === tally.rows;
  return { status: isClean ? 0 : 1, summary: summaryOf(tally, { id, supplier, currency }), findings: [] };
}

/** Refuse what cannot be done before anything is opened. */
function optionFindings({ part, out, isResumed, rows }: BatchOptions): readonly PlacedFinding[] {
  const found: { readonly found: string; readonly expected: string; readonly remedy: string }[] = [];
  if (part !== undefined && !(part.index >= 1 && part.index <= part.count))
    found.push({
      found: `part ${String(part.index)} of ${String(part.count)}`,
      expected: 'a part from 1 to as many as there are',
      remedy: 'Number the parts from 1.',
    });
  if (part !== undefined && rows === '-')
    found.push({
      found: 'a part of standard input',
      expected: 'a file, of which every part reads its own rows',
      remedy: 'Name the file.',
    });
  if (isResumed === true && out === undefined)
    found.push({
      found: 'a check to go on with, whose findings go to standard output',
      expected: 'a file of findings',
      remedy: 'Name it with --findings.',
    });
  return about(
    'unitbook check',
    found.map((values) => batchFinding('batch/options', { path: [] }, values)),
  );
}

/**
 * Check a table of bills: findings as JSON lines in the order of the rows, and a summary. Memory does not grow with
 * the table; a check that was killed goes on where its journal ended, without a row lost or doubled.
 */
export async function runBatch(options: BatchOptions, io: BatchIo): Promise<BatchResult> {
  const refused = optionFindings(options);
  if (refused.length > 0) return { status: 2, summary: null, findings: refused };
  let path = options.rows;
  try {
    const opened = await openRows(options);
    if ('findings' in opened) return { status: 2, summary: null, findings: opened.findings };
    path = options.out ?? 'standard output';
    try {
      const journal = journalOf(options, opened);
      if (isFindings(journal)) return { status: 2, summary: null, findings: journal };
      const tally = journal?.isDone === true ? journal.tally : await checkAll(options, io, opened, journal);
      return resultOf(tally, options.tariff);
    } finally {
      await opened.table.close();
    }
  } catch (error) {
    if (!isFileError(error)) throw error;
    // Whoever reads our output may stop reading: that is no failure.
    if (error.code === 'EPIPE') return { status: 0, summary: null, findings: [] };
    return { status: 2, summary: null, findings: fileFailure(path, error) };
  }
}
