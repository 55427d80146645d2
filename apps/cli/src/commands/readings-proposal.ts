import type { Finding } from '@unitbook/engine';
import { layoutText, proposeTable, type TableProposal, type ToldKind } from '@unitbook/meter-files';
import { exitStatus } from '../exit-status.ts';
import type { CommandIo } from '../io.ts';
import type { MessageStream } from '../message-stream.ts';
import { meterHead } from '../render/meter-head.ts';
import { alternativeWords, decisionWords, proposalLines } from '../render/table-proposal.ts';
import { optionFinding } from './shared-options.ts';

/** A table of which nothing says what its columns are. */
export interface UnknownTable {
  readonly subject: string;
  readonly head: string;
  readonly told: ToldKind;
}

/** A question for each decision that the table leaves in doubt. */
function doubts({ decisions, layout }: TableProposal): readonly Finding[] {
  return decisions
    .filter(({ certain }) => !certain)
    .map((decision) => {
      const { column, position, evidence } = decision;
      const name = column === null ? '' : (layout.header[column] ?? '').trim();
      const where = column === null ? '' : `column ${String(column + 1)}${name === '' ? '' : ` "${name}"`}, `;
      const values = {
        detected: `${where}${decisionWords(decision)}`,
        evidence,
        else: alternativeWords(decision),
      };
      return {
        ...optionFinding('command/columns-doubt', values),
        ...(position === null ? {} : { position }),
      };
    });
}

/** `unitbook readings FILE --propose`: what the columns may be, as a document to check and confirm. */
export function runProposal({ head }: UnknownTable, messages: MessageStream, io: CommandIo): number {
  const proposal = proposeTable(head);
  [...proposal.findings, ...doubts(proposal)].forEach(messages.add);
  io.out(layoutText(proposal.layout));
  return exitStatus({ ran: true, findings: messages.counts() });
}

/** A table that nobody said the columns of: what they may be, and what to do. Nothing of it is read. */
export function runUnknownTable(
  { subject, head, told }: UnknownTable,
  messages: MessageStream,
  io: CommandIo,
): number {
  const proposal = proposeTable(head);
  const remedy =
    'Save what is proposed: unitbook readings FILE --propose > columns.json. Check columns.json, above all what ' +
    'is not certain, and write "confirmed": true in it. Then type unitbook readings FILE --columns columns.json.';
  const finding = optionFinding('command/needs-columns', { why: told.why, remedy });
  [...proposal.findings, finding].forEach(messages.add);
  const page = meterHead('What the columns of a table may be', [
    ['File', subject],
    ['Kind', `a table; told by ${told.why}`],
    ['Read', 'nothing: a person has to confirm the columns first'],
  ]);
  io.out([...page, ...proposalLines(proposal), ''].join('\n'));
  return exitStatus({ ran: true, findings: messages.counts() });
}
