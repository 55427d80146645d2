import type { BlockReader } from './blocks.ts';
import { journalFingerprint } from './fingerprint.ts';
import { writeJournal, type Journal } from './journal.ts';
import type { OpenRows } from './open-rows.ts';
import type { BatchIo, BatchOptions } from './options.ts';
import type { Sink } from './output.ts';
import type { BlockResult } from './pool.ts';
import { progressLine } from './progress.ts';
import { tallyLine } from './tally-line.ts';
import { addTally, emptyTally, type Tally } from './tally.ts';

const encoder = new TextEncoder();

/** Milliseconds between entries of the journal. */
const JOURNAL_EVERY = 1000;
/** Milliseconds between lines of progress. */
const PROGRESS_EVERY = 200;
const CLEAR_LINE = '\r\u001b[K';

/** How far the table is dealt with. */
export type Place = Pick<BlockReader, 'position' | 'line'>;

/** What blocks are taken in with. */
export interface TakingTerms {
  readonly options: BatchOptions;
  readonly io: BatchIo;
  readonly opened: OpenRows;
}

/** Takes in what blocks came to, in their order. */
export class Taking {
  readonly tally: Tally;
  private readonly findings: Sink;
  private readonly side: Sink;
  private readonly terms: TakingTerms;
  private readonly of: string;
  private readonly begun: { readonly at: number; readonly position: number; readonly rows: number };
  private noted: number;
  private shown: number;

  /** @param journal  of the check that goes on; null: it begins */
  constructor(
    sinks: { readonly findings: Sink; readonly side: Sink },
    terms: TakingTerms,
    journal: Journal | null,
  ) {
    this.findings = sinks.findings;
    this.side = sinks.side;
    this.terms = terms;
    this.of = journalFingerprint(terms.options, terms.opened.of, terms.opened.table);
    this.tally = journal?.tally ?? emptyTally();
    const at = terms.io.now();
    this.begun = { at, position: journal?.position ?? 0, rows: this.tally.rows };
    this.noted = at;
    this.shown = at;
  }

  /** Write what a block came to; whatever was written before the journal notes it is cut off by a resumption. */
  async take({ findings, side, tally }: BlockResult, place: Place): Promise<void> {
    // Counted first: where nobody reads on, it is known all the same that something was found.
    addTally(this.tally, tally);
    await this.findings.write(findings);
    await this.side.write(side);
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
    io.err(`${CLEAR_LINE}${progressLine({ position, rows: rows - this.begun.rows, wrong }, span)}`);
  }

  /** Note how far the check has come. */
  private note({ position, line }: Place, isDone: boolean): void {
    const { out } = this.terms.options;
    if (out === undefined) return;
    this.findings.settle();
    this.side.settle();
    writeJournal(out, {
      format: 'unitbook-batch-journal-1',
      of: this.of,
      position,
      line,
      findings: this.findings.length(),
      side: this.side.length(),
      tally: this.tally,
      isDone,
    });
  }

  /** All blocks are taken in: end the findings, and note that nothing is left to do. */
  async end(place: Place): Promise<void> {
    const { options, opened, io } = this.terms;
    if (options.withTally === true) {
      const { index, count } = options.part ?? { index: 1, count: 1 };
      const part = `${String(index)}/${String(count)}`;
      const tariff = options.tariff.document.id;
      const line = tallyLine({ tally: this.tally, part, of: opened.of, tariff });
      await this.findings.write(encoder.encode(line));
    }
    this.note(place, true);
    if (io.isTerminal) io.err(CLEAR_LINE);
  }
}
