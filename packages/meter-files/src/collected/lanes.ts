import type { Finding, IntervalChannel } from '@unitbook/engine';
import type { Stream } from '../stream.ts';
import type { CollectedFile } from './collect.ts';
import { collectedFinding } from './collected-findings.ts';
import { fileCoverage, type StreamCoverage } from './coverage.ts';
import type { IntervalSeries } from './interval-series.ts';
import { gapsWithin, mergedRanges, withoutRanges, type MinuteRange } from './minute-ranges.ts';
import { selectStreams, type Assign, type Assigned } from './selection.ts';
import { minuteText, streamText } from './texts.ts';

/**
 * One register that counts towards a quantity. Several meters can have counted it one after another, or
 * beside each other.
 */
export interface Lane {
  readonly channel: IntervalChannel;
  readonly name: string;
  readonly series: readonly IntervalSeries[];
  /** The stretches for which all of its meters have values, in order, in minutes of the file. */
  readonly covered: readonly MinuteRange[];
}

/** The registers that are counted; each quantity is the sum of its own. */
export interface Lanes {
  readonly lanes: readonly Lane[];
  /** From the first value to the last of all; from 0 to 0 where there is none. */
  readonly span: MinuteRange;
  readonly findings: readonly Finding[];
}

interface Member {
  readonly stream: Stream;
  readonly series: readonly IntervalSeries[];
  readonly coverage: StreamCoverage;
}

const hasValues = ({ coverage }: Member): boolean => coverage.covered.length > 0;

/** What several meters cover together: nothing counts in a gap of one of them. */
function commonRanges(members: readonly Member[]): readonly MinuteRange[] {
  const all = mergedRanges(members.flatMap(({ coverage }) => coverage.covered));
  return withoutRanges(all, mergedRanges(members.flatMap(({ coverage }) => coverage.gaps)));
}

function metersNote(name: string, members: readonly Member[]): Finding {
  const spans = members.map(({ stream, coverage: { covered } }) => {
    const [first, last] = [covered[0]?.from ?? 0, covered.at(-1)?.to ?? 0];
    return `${stream.meter} from ${minuteText(first)} to ${minuteText(last)}`;
  });
  const values = { register: name, meters: spans.join('; ') };
  return collectedFinding('meter-file/several-meters', { path: [] }, values);
}

function laneOf(channel: IntervalChannel, members: readonly Member[]): { lane: Lane; notes: Finding[] } {
  const [one] = members as readonly [Member];
  const name = streamText(members.length === 1 ? one.stream : { ...one.stream, meter: '' });
  const lane: Lane = {
    channel,
    name,
    series: members.flatMap(({ series }) => series),
    covered: commonRanges(members),
  };
  return { lane, notes: members.length === 1 ? [] : [metersNote(name, members)] };
}

/** Put streams of one register of one point together. */
function grouped(chosen: readonly Assigned[]): readonly (readonly Assigned[])[] {
  const groups = new Map<string, Assigned[]>();
  for (const one of chosen) {
    const { point, register, rate } = one.stream;
    const key = JSON.stringify([one.channel, point, register, rate]);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()];
}

/** From the first minute to the last of some stretches. */
function spanOf(ranges: readonly MinuteRange[]): MinuteRange {
  if (ranges.length === 0) return { from: 0, to: 0 };
  return {
    from: ranges.reduce((first, { from }) => Math.min(first, from), Infinity),
    to: ranges.reduce((last, { to }) => Math.max(last, to), -Infinity),
  };
}

/**
 * The registers of a file that count towards import, export and generation.
 *
 * A register that has no value at all is left out.
 *
 * @param file    collected
 * @param assign  what each stream is to be counted as; left out: what its own words say
 */
export function lanesOf(file: CollectedFile, assign?: Assign): Lanes {
  const coverage = new Map(fileCoverage(file).map((one) => [one.stream, one]));
  const { chosen, findings } = selectStreams([...coverage.keys()], assign);
  const member = ({ stream }: Assigned): Member => ({
    stream,
    series: file.intervals.filter((series) => series.stream === stream),
    coverage: coverage.get(stream) as StreamCoverage,
  });
  const made = grouped(chosen).flatMap((group) => {
    const members = group.map(member).filter(hasValues);
    const [first] = group;
    return members.length === 0 || first === undefined ? [] : [laneOf(first.channel, members)];
  });
  const lanes = made.map(({ lane }) => lane);
  const said = [...findings, ...made.flatMap(({ notes }) => notes)];
  if (lanes.length === 0) said.push(collectedFinding('meter-file/no-intervals', { path: [] }));
  return { lanes, span: spanOf(lanes.flatMap(({ covered }) => covered)), findings: said };
}

/** The stretches of a window for which a register has no value. */
export function missingOf({ covered }: Lane, window: MinuteRange): readonly MinuteRange[] {
  return gapsWithin(covered, window);
}
