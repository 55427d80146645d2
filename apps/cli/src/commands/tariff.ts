import { readTariff, tariffJsonSchema, type Tariff } from '@unitbook/engine';
import { about, commandFinding, type PlacedFinding } from '../findings.ts';
import { TARIFF_HELP } from '../help.ts';
import type { CommandIo } from '../io.ts';
import { fileName, readDocumentText } from '../read/read-bytes.ts';
import { plainText } from '../render/text.ts';
import { finish, type Command, type TypedCommand } from './command.ts';

const SUBJECT = 'unitbook tariff';

function soundText({ document, versions }: Tariff): string {
  const names = versions.map(({ item }) => `${item.name} from ${item.from}`).join(', ');
  return `no problem found: ${document.name}; ${names}`;
}

function countText(count: number): string {
  return `${String(count)} ${count === 1 ? 'problem' : 'problems'}`;
}

interface Checked {
  readonly line: string;
  readonly wasRead: boolean;
  readonly findings: readonly PlacedFinding[];
}

async function checkFile(io: CommandIo, path: string): Promise<Checked> {
  const subject = fileName(path);
  const { text, findings } = await readDocumentText(io, path, 'unitbook-tariff-1');
  if (text === null) return { line: '', wasRead: false, findings: about(subject, findings) };
  const outcome = readTariff(text);
  const told = outcome.value === null ? countText(outcome.findings.length) : soundText(outcome.value);
  return {
    line: plainText(`${subject}  ${told}`),
    wasRead: true,
    findings: about(subject, outcome.findings),
  };
}

async function runTariff(typed: TypedCommand, io: CommandIo): Promise<number> {
  const isSchema = typed.switches.has('schema');
  if (isSchema && typed.others.length === 0) {
    io.out(`${JSON.stringify(tariffJsonSchema(), null, 2)}\n`);
    return 0;
  }
  if (isSchema || typed.others.length === 0) {
    const [first = ''] = typed.others;
    const finding = isSchema
      ? commandFinding(
          'command/extra-argument',
          { path: [] },
          { value: first, remedy: 'Leave it out, or leave --schema out to check it.' },
        )
      : commandFinding('command/no-file', { path: [] }, { expected: 'one tariff file or more, or --schema' });
    return finish(io, { ran: false, findings: about(SUBJECT, [finding]) });
  }
  const checked: Checked[] = [];
  for (const path of typed.others) checked.push(await checkFile(io, path));
  const lines = checked.map(({ line }) => line).filter((line) => line !== '');
  if (lines.length > 0) io.out(`${lines.join('\n')}\n`);
  return finish(io, {
    ran: checked.every(({ wasRead }) => wasRead),
    findings: checked.flatMap(({ findings }) => findings),
  });
}

/** `unitbook tariff`: what is wrong with tariff files. */
export const tariffCommand: Command = {
  name: 'tariff',
  help: TARIFF_HELP,
  options: { schema: null },
  run: runTariff,
};
