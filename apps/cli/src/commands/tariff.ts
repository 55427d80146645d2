import { tariffJsonSchema, type Tariff } from '@unitbook/engine';
import { about, type PlacedFinding } from '../findings.ts';
import { TARIFF_HELP } from '../help.ts';
import type { CommandIo } from '../io.ts';
import { localeFindings } from '../locale.ts';
import { fileName } from '../read/read-bytes.ts';
import { readTariffFile } from '../read/tariff-file.ts';
import { plainText } from '../render/text.ts';
import { finish, type Command, type TypedCommand } from './command.ts';
import { runTariffCases } from './tariff-cases.ts';
import { checkTariffOptions } from './tariff-options.ts';
import { runTariffYear } from './tariff-year.ts';

const SUBJECT = 'unitbook tariff';

function soundText({ document, versions }: Tariff): string {
  const names = versions.map(({ item }) => `${item.name} from ${item.from}`).join(', ');
  return `no problem found: ${document.name}; ${names}`;
}

/** How many problems there are, those that are not listed counted in. */
function problemCount(placed: readonly PlacedFinding[]): number {
  return placed.reduce((sum, { finding }) => {
    const isRest = finding.code === 'document/more-problems';
    return sum + (isRest ? Number.parseInt(finding.values['count'] ?? '0', 10) : 1);
  }, 0);
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
  const { value, wasRead, findings } = await readTariffFile(io, path);
  if (!wasRead) return { line: '', wasRead, findings };
  const told = value === null ? countText(problemCount(findings)) : soundText(value);
  return { line: plainText(`${subject}  ${told}`), wasRead, findings };
}

async function runTariff(typed: TypedCommand, io: CommandIo): Promise<number> {
  const problems = [
    ...about(SUBJECT, checkTariffOptions(typed)),
    ...localeFindings(typed.values.get('locale'), SUBJECT),
  ];
  if (problems.length > 0) return finish(io, { ran: false, findings: problems });
  if (typed.switches.has('schema')) {
    io.out(`${JSON.stringify(tariffJsonSchema(), null, 2)}\n`);
    return 0;
  }
  if (typed.values.has('cases')) return runTariffCases(typed, io);
  if (typed.switches.has('year')) return runTariffYear(typed, io);
  const checked: Checked[] = [];
  for (const path of typed.others) checked.push(await checkFile(io, path));
  const lines = checked.map(({ line }) => line).filter((line) => line !== '');
  if (lines.length > 0) io.out(`${lines.join('\n')}\n`);
  return finish(io, {
    ran: checked.every(({ wasRead }) => wasRead),
    findings: checked.flatMap(({ findings }) => findings),
  });
}

/** `unitbook tariff`: what is wrong with tariff files, and what a tariff makes of cases and of a year. */
export const tariffCommand: Command = {
  name: 'tariff',
  help: TARIFF_HELP,
  options: {
    cases: 'FILE',
    case: 'ID',
    explain: null,
    json: null,
    year: null,
    units: 'UNITS',
    load: 'KW',
    quantity: 'NAME=VALUE',
    cliff: 'TIMES',
    locale: 'TAG',
    schema: null,
  },
  repeated: ['quantity'],
  run: runTariff,
};
