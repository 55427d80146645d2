import type { Quotient, Tariff } from '@unitbook/engine';
import type { PlacedFinding } from '../findings.ts';
import type { BatchSummary } from './summary.ts';

/** How a table of bills is checked. */
export interface BatchOptions {
  /** The table; "-": standard input. */
  readonly rows: string;
  readonly form?: 'csv' | 'ndjson';
  readonly tariff: Tariff;
  /** Tariffs of other categories of the same place, for bills by the wrong one. */
  readonly otherTariffs?: readonly Tariff[];
  /** What all accounts have in common: when they joined, and the day on which their bank closes. */
  readonly account?: { readonly since?: string; readonly settlementDay?: string };
  /** How far an amount of money may be off and still agree; left out: 0. */
  readonly tolerance?: Quotient;
  /** The file of findings; left out: standard output. */
  readonly out?: string;
  /** The file of rows that cannot be used; left out: beside the file of findings, or nowhere. */
  readonly side?: string;
  /** Go on where a check of the same table ended before it was done. */
  readonly isResumed?: boolean;
  /** Threads that check; 1: this one alone. Left out: as many as there are cores. */
  readonly workers?: number;
  /** Whether bills that are right get a line, too. */
  readonly isEvery?: boolean;
  /** Files that the tariffs were read from: they must not be written over. */
  readonly tariffFiles?: readonly string[];
  /** Only this part of the table, from 1, of so many; together they are the whole. */
  readonly part?: { readonly index: number; readonly count: number };
  /** Whether the last line of the findings is what the rows came to, for `joinParts`. */
  readonly withTally?: boolean;
  /** Bytes of a block, about; for tests. */
  readonly blockBytes?: number;
  /** Milliseconds between entries of the journal; for tests. */
  readonly journalEvery?: number;
}

/** What a check of a table touches outside the program, besides its files. */
export interface BatchIo {
  /** Write to standard output. */
  readonly write: (bytes: Uint8Array) => Promise<void>;
  /** Write to standard error. */
  readonly err: (text: string) => void;
  /** Whether standard error is a terminal, where progress is shown. */
  readonly isTerminal: boolean;
  /** Milliseconds of a clock that only goes on. */
  readonly now: () => number;
  /** The script of this program, for other threads: it calls `serveBatch` where `isBatchWorker`. null: no threads. */
  readonly entry: string | URL | null;
  /** Cores at hand. */
  readonly cores: number;
}

/** What a check of a table came to. */
export interface BatchResult {
  /** 0: all is right; 1: something was found; 2: it could not be done, or not to its end. */
  readonly status: 0 | 1 | 2;
  /** null where it was not done. */
  readonly summary: BatchSummary | null;
  readonly findings: readonly PlacedFinding[];
}
