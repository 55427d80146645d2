import packageText from '../package.json?raw';
import { readArguments } from './arguments.ts';
import { billCommand } from './commands/bill.ts';
import { checkCommand } from './commands/check.ts';
import { finish, type Command } from './commands/command.ts';
import { demoCommand } from './commands/demo.ts';
import { parquetCommand } from './commands/parquet.ts';
import { plantCommand } from './commands/plant.ts';
import { promiseCommand } from './commands/promise.ts';
import { quoteCommand } from './commands/quote.ts';
import { readingsCommand } from './commands/readings.ts';
import { tariffCommand } from './commands/tariff.ts';
import { about, commandFinding } from './findings.ts';
import { HELP } from './help.ts';
import type { CommandIo } from './io.ts';

const COMMANDS: readonly Command[] = [
  billCommand,
  readingsCommand,
  plantCommand,
  quoteCommand,
  promiseCommand,
  checkCommand,
  parquetCommand,
  tariffCommand,
  demoCommand,
];

const VERSION = (JSON.parse(packageText) as { version: string }).version;

async function runCommand(command: Command, argv: readonly string[], io: CommandIo): Promise<number> {
  const typed = readArguments(argv, command.options, command.repeated);
  if (typed.switches.has('help')) {
    io.out(command.help);
    return 0;
  }
  if (typed.findings.length > 0)
    return finish(io, { ran: false, findings: about(`unitbook ${command.name}`, typed.findings) });
  return command.run(typed, io);
}

/**
 * Run the command that was typed.
 *
 * @param argv  the words after `unitbook`
 * @param io    files, streams and the clock
 * @returns     the exit status: 0 clean, 1 findings, 2 could not run
 */
export async function run(argv: readonly string[], io: CommandIo): Promise<number> {
  const [name = '', ...rest] = argv.map((word) => (word === '-h' ? '--help' : word));
  if (name === '--help' || name === 'help') {
    io.out(HELP);
    return 0;
  }
  if (name === '--version') {
    io.out(`unitbook ${VERSION}\n`);
    return 0;
  }
  const command = COMMANDS.find((one) => one.name === name);
  if (command !== undefined) return runCommand(command, rest, io);
  const allowed = COMMANDS.map((one) => one.name).join(', ');
  const finding = commandFinding('command/unknown-command', { path: [] }, { name, allowed });
  return finish(io, { ran: false, findings: about('unitbook', [finding]) });
}
