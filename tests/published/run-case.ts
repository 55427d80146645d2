import { prefixed, type Figures } from './bill-figures.ts';
import type { CaseRun, PublishedCase } from './case.ts';
import { deriveFigure } from './derive.ts';
import { runBill, type BillRun } from './run-bill.ts';
import { runBook, type BookRun } from './run-book.ts';
import { runCall, type CallRun } from './run-call.ts';

/** What came out of a case, beside what its source says. Only the names that are expected. */
export interface CaseResult {
  readonly ok: boolean;
  readonly got: Readonly<Record<string, string>>;
  readonly expected: Readonly<Record<string, string>>;
  /** Why the case stopped before anything came out; null when it ran. */
  readonly stopped: string | null;
}

function runOne(run: CaseRun): Figures {
  const figures =
    run.call === 'keepBook'
      ? runBook(run as unknown as BookRun)
      : run.call === 'billPeriod'
        ? runBill(run as unknown as BillRun)
        : runCall(run.call, run as CallRun);
  return run.name === undefined ? figures : prefixed(figures, `${run.name} `);
}

function figuresOf({ runs, derived = [] }: PublishedCase): Figures {
  const figures: Figures = Object.assign({}, ...runs.map(runOne)) as Figures;
  for (const one of derived) figures[one.name] = deriveFigure(one, figures);
  return figures;
}

/**
 * Run a case through the engine and compare exact texts, character by character.
 *
 * @returns what came out under the names expected; a name that did not come out is "missing"
 */
export function runCase(one: PublishedCase): CaseResult {
  const { expected } = one;
  const names = Object.keys(expected);
  let figures: Figures = {};
  let stopped: string | null = null;
  try {
    figures = figuresOf(one);
  } catch (error) {
    stopped = String(error);
  }
  const got = Object.fromEntries(names.map((name) => [name, figures[name] ?? 'missing']));
  return { ok: names.every((name) => got[name] === expected[name]), got, expected, stopped };
}
