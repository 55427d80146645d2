import type { TariffDocument } from '@unitbook/engine';
import { summaryOf, type BatchSummary } from './summary.ts';
import { addTally, emptyTally, type Tally } from './tally.ts';

/** The beginning of the line that tells what the rows of a part came to. */
const TALLY = '{"tally":';

/**
 * Put the findings of parts together: lines of findings go on as they are, in the order in which they come; what the
 * parts came to is added up.
 *
 * @param lines  of all parts, part by part
 * @param write  takes each line, with its line break
 * @returns      the summary of the whole, and how many parts there were
 */
export async function joinParts(
  lines: AsyncIterable<string>,
  write: (line: string) => Promise<void>,
  tariff: Pick<TariffDocument, 'id' | 'supplier' | 'currency'>,
): Promise<{ readonly summary: BatchSummary; readonly parts: number }> {
  const tally = emptyTally();
  let parts = 0;
  for await (const line of lines) {
    if (line.startsWith(TALLY)) {
      addTally(tally, (JSON.parse(line) as { readonly tally: Tally }).tally);
      parts += 1;
    } else if (line !== '') await write(`${line}\n`);
  }
  return { summary: summaryOf(tally, tariff), parts };
}
