import { dayText, type Finding } from '@unitbook/engine';
import {
  collectMeterFile,
  coverageFindings,
  energyByDay,
  energyText,
  fileCoverage,
  type DayEnergy,
  type FileClock,
} from '@unitbook/meter-files';
import { exitStatus } from '../exit-status.ts';
import type { CommandIo } from '../io.ts';
import type { MessageStream } from '../message-stream.ts';
import type { MeterSource } from '../read/meter-source.ts';
import { CAUTIONS } from '../render/cautions.ts';
import { energyByMonth } from '../render/energy-by-month.ts';
import { clockWords, meterHead } from '../render/meter-head.ts';
import type { PageNotation } from '../render/notation.ts';
import { optionFinding } from './shared-options.ts';

/** What the energy of a file is counted by. */
export interface EnergyOptions {
  readonly by: 'day' | 'month';
  readonly zone: string | null;
  readonly notation: PageNotation;
}

const CHANNELS = ['import', 'export', 'generation'] as const;

/** A line for each day, for spreadsheets: exact decimals of kWh, nothing where there is no value. */
function dayLines(energy: DayEnergy): string {
  const text = (value: number | null | undefined): string =>
    value === null || value === undefined ? '' : energyText(value, energy.places);
  const rows = energy.days.map((day, index) =>
    [dayText(day), ...CHANNELS.map((channel) => text(energy[channel]?.energy[index]))].join(','),
  );
  return `${['day,import,export,generation', ...rows].join('\n')}\n`;
}

function monthPage(energy: DayEnergy, source: MeterSource, clock: string, notation: PageNotation): string {
  const head = meterHead('Energy by month', [
    ['File', source.subject],
    ['Kind', source.words],
    ['Clock', clock],
    ['Amounts', 'in units; 1 unit is 1 kWh'],
  ]);
  return [...head, '', ...energyByMonth(energy, notation), '', CAUTIONS, ''].join('\n');
}

/** Days of which something is missing, at the ends of the file or within. */
function notWhole({ days, isWhole }: DayEnergy): readonly Finding[] {
  const some = days.filter((_, index) => isWhole[index] !== true);
  const [first, last] = [some[0], some.at(-1)];
  if (first === undefined || last === undefined) return [];
  const values = { count: String(some.length), first: dayText(first), last: dayText(last) };
  return [optionFinding('command/days-not-whole', values)];
}

/** `unitbook readings FILE --monthly` and `--daily`: the energy of intervals by the local calendar. */
export async function runEnergy(
  source: MeterSource,
  messages: MessageStream,
  io: CommandIo,
  { by, zone, notation }: EnergyOptions,
): Promise<number> {
  const { sink, result } = collectMeterFile();
  const clock: FileClock = await source.read({ ...sink, finding: messages.add });
  const file = result(clock);
  const { value, findings } = energyByDay(file, { zone });
  const covered = coverageFindings(fileCoverage(file));
  const all = [...file.findings, ...covered, ...findings, ...(value === null ? [] : notWhole(value))];
  all.forEach(messages.add);
  if (value !== null)
    io.out(by === 'day' ? dayLines(value) : monthPage(value, source, clockWords(clock, zone), notation));
  return exitStatus({ ran: value !== null, findings: messages.counts() });
}
