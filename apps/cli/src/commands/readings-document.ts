import { collectMeterFile, readingsDocumentText } from '@unitbook/meter-files';
import { exitStatus } from '../exit-status.ts';
import type { CommandIo } from '../io.ts';
import type { MessageStream } from '../message-stream.ts';
import { meterRows, type WantedDays } from '../read/meter-rows.ts';
import type { MeterSource } from '../read/meter-source.ts';

const leaveOut = (): void => undefined;

/** `unitbook readings FILE --document`: the readings of registers as a readings document. */
export async function runDocument(
  source: MeterSource,
  messages: MessageStream,
  io: CommandIo,
  on: WantedDays,
): Promise<number> {
  if (source.own !== null) {
    // As typed, with events and edits; what cannot be read in it is told all the same.
    await source.read({ intervals: leaveOut, register: leaveOut, finding: messages.add });
    io.out(readingsDocumentText(source.own.rows));
    return exitStatus({ ran: true, findings: messages.counts() });
  }
  const { sink, result } = collectMeterFile();
  const file = result(await source.read({ ...sink, finding: messages.add }));
  const { rows, findings } = meterRows(file, on);
  [...file.findings, ...findings].forEach(messages.add);
  if (rows.length > 0) io.out(readingsDocumentText(rows));
  return exitStatus({ ran: rows.length > 0, findings: messages.counts() });
}
