import type { Finding } from '@unitbook/engine';
import {
  collectedFinding,
  summariseMeterFile,
  zoneClock,
  type FileClock,
  type MeterFileSummary,
} from '@unitbook/meter-files';
import { exitStatus } from '../exit-status.ts';
import type { CommandIo } from '../io.ts';
import type { MessageStream } from '../message-stream.ts';
import type { MeterSource } from '../read/meter-source.ts';
import { CAUTIONS } from '../render/cautions.ts';
import { clockWords, meterHead } from '../render/meter-head.ts';
import { goodWords, meterSummary, type SummaryStyle } from '../render/meter-summary.ts';
import type { PageNotation } from '../render/notation.ts';

/** How a summary is printed. */
export interface SummaryOptions {
  readonly zone: string | null;
  readonly notation: PageNotation;
}

const asItStands = (minute: number): number => minute;

/** From minutes of the file to those that are shown. */
function shownBy(
  { streams }: MeterFileSummary,
  { offset }: FileClock,
  zone: string | null,
): SummaryStyle['toShown'] {
  if (zone === null || offset === null || streams.length === 0) return asItStands;
  const from = streams.reduce((least, { first }) => Math.min(least, first), Infinity) - offset;
  const to = streams.reduce((most, { end }) => Math.max(most, end), -Infinity) - offset;
  const { toLocal } = zoneClock(zone, from, to);
  return (minute) => toLocal(minute - offset);
}

/** A zone says nothing where times are local as they stand. */
function zoneNotes(
  { streams }: MeterFileSummary,
  { offset }: FileClock,
  zone: string | null,
): readonly Finding[] {
  if (zone === null || offset !== null || streams.length === 0) return [];
  return [collectedFinding('meter-file/zone-not-needed', { path: [] }, { zone })];
}

function clockEntries(summary: MeterFileSummary, clock: FileClock, zone: string | null) {
  const text =
    summary.streams.length === 0 ? 'local days, as the registers were read' : clockWords(clock, zone);
  return [['Clock', text]] as const;
}

/** `unitbook readings FILE`: what is in a meter file. Nothing is held but sums. */
export async function runSummary(
  source: MeterSource,
  messages: MessageStream,
  io: CommandIo,
  { zone, notation }: SummaryOptions,
): Promise<number> {
  const { sink, result } = summariseMeterFile();
  const clock = await source.read({ ...sink, finding: messages.add });
  const summary = result();
  [...summary.findings, ...zoneNotes(summary, clock, zone)].forEach(messages.add);
  const counts = messages.counts();
  const head = meterHead('What is in a meter file', [
    ['File', source.subject],
    ['Kind', source.words],
    ...clockEntries(summary, clock, zone),
    ['Good', goodWords(summary, notation)],
  ]);
  const style: SummaryStyle = { notation, toShown: shownBy(summary, clock, zone) };
  io.out([...head, ...meterSummary(summary, counts, style), '', CAUTIONS, ''].join('\n'));
  return exitStatus({ ran: true, findings: counts });
}
