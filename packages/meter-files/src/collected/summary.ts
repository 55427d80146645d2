import type { Finding } from '@unitbook/engine';
import type { MeterSink, RegisterValue, Stream } from '../stream.ts';
import { byName } from './collect.ts';
import { collectedFinding } from './collected-findings.ts';
import { coverageFindings } from './tell-coverage.ts';
import { keepFindings } from './finding-keeper.ts';
import { RegisterEnds, type RegisterSummary } from './register-summary.ts';
import { StreamSums, type StreamSummary } from './stream-summary.ts';
import { durationText, streamText } from './texts.ts';

/** What a meter file comes to. */
export interface MeterFileSummary {
  /** Of intervals, in the order of their names. */
  readonly streams: readonly StreamSummary[];
  readonly registers: readonly RegisterSummary[];
  /** Those of the reader, then those about gaps and doubled intervals. */
  readonly findings: readonly Finding[];
}

/** Sums a meter file up while it is read. */
export interface MeterSummariser {
  /** For the reader. */
  readonly sink: MeterSink;
  readonly result: () => MeterFileSummary;
}

/** An interval that comes twice is counted twice: to tell it, all would have to be held. */
function doubledFindings(streams: readonly StreamSummary[]): readonly Finding[] {
  return streams
    .filter(({ coverage }) => coverage.doubled > 0)
    .map(({ stream, coverage: { doubled } }) => {
      const values = { register: streamText(stream), length: durationText(doubled) };
      return collectedFinding('meter-file/counted-twice', { path: [] }, values);
    });
}

function wentBack(registers: readonly RegisterSummary[]): readonly Finding[] {
  return registers
    .filter(({ advance }) => advance === null)
    .map(({ stream, first, last }) => {
      const values = { register: streamText(stream), first: first.value, last: last.value };
      const position = { line: last.line, column: 1 };
      return { ...collectedFinding('meter-file/register-went-back', { path: [] }, values), position };
    });
}

/**
 * Sum a meter file up as it is read: what is held does not grow with the file, only with its streams, its
 * months and its gaps.
 *
 * @example
 * const { sink, result } = summariseMeterFile();
 * const stream = { point: '', meter: '', register: 'E1', quantity: 'import', rate: null, unit: 'kWh' };
 * sink.intervals({ stream, start: 0, minutes: 15, places: 3, values: new Float64Array([250, 120]), qualities: null, line: 2 });
 * result().streams[0].total //=> "0.37"
 */
export function summariseMeterFile(): MeterSummariser {
  const streams = new Map<Stream, StreamSums>();
  const registers = new Map<Stream, RegisterEnds>();
  const kept = keepFindings();
  const sink: MeterSink = {
    intervals: (chunk) => {
      const sums = streams.get(chunk.stream) ?? new StreamSums(chunk.stream);
      streams.set(chunk.stream, sums);
      sums.add(chunk);
    },
    register: (value: RegisterValue) => {
      const ends = registers.get(value.stream) ?? new RegisterEnds(value.stream);
      registers.set(value.stream, ends);
      ends.add(value);
    },
    finding: kept.add,
  };
  const result = (): MeterFileSummary => {
    const sums = [...streams].sort(([a], [b]) => byName(a, b)).map(([, one]) => one.result());
    const ends = [...registers].sort(([a], [b]) => byName(a, b)).flatMap(([, one]) => one.result() ?? []);
    const findings = [
      ...kept.findings(),
      ...coverageFindings(sums.map(({ coverage }) => coverage)),
      ...doubledFindings(sums),
      ...wentBack(ends),
    ];
    return { streams: sums, registers: ends, findings };
  };
  return { sink, result };
}
