import { summaryPage, type BatchSummary } from '../batch/index.ts';
import type { CommandIo } from '../io.ts';
import type { TypedCommand } from './command.ts';

/** Print the summary of a table, as a page or as JSON: where the findings do not go, for they are to be piped on. */
export function tellSummary(summary: BatchSummary, { values, switches }: TypedCommand, io: CommandIo): void {
  const text = switches.has('json') ? JSON.stringify(summary, null, 2) : summaryPage(summary).join('\n');
  if (values.has('findings')) io.out(`${text}\n`);
  else io.err(`${text}\n`);
}
