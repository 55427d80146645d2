import type { CommandIo } from '../io.ts';
import type { OptionNames } from '../arguments.ts';
import { inReadingOrder, type PlacedFinding } from '../findings.ts';
import { exitStatus } from '../exit-status.ts';
import { findingLines } from '../render/finding-line.ts';

/** A command: what it is called, what it takes, what it does. */
export interface Command {
  readonly name: string;
  readonly help: string;
  readonly options: OptionNames;
  /** Options that can be given several times; left out: none. */
  readonly repeated?: readonly string[];
  readonly run: (typed: TypedCommand, io: CommandIo) => Promise<number>;
}

/** What was typed after the name of a command, once its form is right. */
export interface TypedCommand {
  readonly values: ReadonlyMap<string, string>;
  readonly lists: ReadonlyMap<string, readonly string[]>;
  readonly switches: ReadonlySet<string>;
  readonly others: readonly string[];
}

/**
 * End a command: print what was found, and work out its status.
 *
 * @param outcome  whether the command could run, and everything it found
 */
export function finish(
  io: CommandIo,
  outcome: { readonly ran: boolean; readonly findings: readonly PlacedFinding[] },
): number {
  const lines = findingLines(inReadingOrder(outcome.findings));
  if (lines.length > 0) io.err(`${lines.join('\n')}\n`);
  return exitStatus({ ran: outcome.ran, findings: outcome.findings.map(({ finding }) => finding) });
}
