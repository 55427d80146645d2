import type { Finding } from '@unitbook/engine';
import { collectedFinding, type CollectedFindingCode } from './collected-findings.ts';
import type { StreamCoverage } from './coverage.ts';
import { gapsWithin, mergedRanges, rangeMinutes, type MinuteRange } from './minute-ranges.ts';
import { DAY_MINUTES, durationText, minuteText, streamText } from './texts.ts';

/** Gaps of a week and more are told one by one. */
const LONG_GAP = 7 * DAY_MINUTES;

/** One register of a point, whichever meters counted it one after another. */
interface Register {
  readonly name: string;
  readonly point: string;
  readonly covered: readonly MinuteRange[];
  readonly first: number;
  readonly end: number;
}

function make(code: CollectedFindingCode, values: Readonly<Record<string, string>>): Finding {
  return collectedFinding(code, { path: [] }, values);
}

/** Put together what meters covered that counted the same register of a point. */
function registersOf(coverage: readonly StreamCoverage[]): readonly Register[] {
  const groups = new Map<string, StreamCoverage[]>();
  for (const one of coverage) {
    const { point, register, quantity, rate } = one.stream;
    const key = JSON.stringify([point, register, quantity, rate]);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].flatMap((group) => {
    const covered = mergedRanges(group.flatMap((one) => one.covered));
    const [first, last, one] = [covered[0], covered.at(-1), group[0]];
    if (first === undefined || last === undefined || one === undefined) return [];
    const stream = group.length === 1 ? one.stream : { ...one.stream, meter: '' };
    return [{ name: streamText(stream), point: stream.point, covered, first: first.from, end: last.to }];
  });
}

function gapFindings({ name, covered, first, end }: Register): readonly Finding[] {
  const gaps = gapsWithin(covered, { from: first, to: end });
  const isLong = ({ from, to }: MinuteRange): boolean => to - from >= LONG_GAP;
  const long = gaps.filter(isLong).map(({ from, to }) =>
    make('meter-file/gap', {
      register: name,
      from: minuteText(from),
      to: minuteText(to),
      length: durationText(to - from),
    }),
  );
  const short = gaps.filter((gap) => !isLong(gap));
  const [one, last] = [short[0], short.at(-1)];
  if (one === undefined || last === undefined) return long;
  const values = {
    register: name,
    count: String(short.length),
    first: minuteText(one.from),
    last: minuteText(last.from),
    length: durationText(rangeMinutes(short)),
  };
  return [...long, make('meter-file/short-gaps', values)];
}

/** Whether a register begins later or ends earlier than others of its point. */
function edgeFindings(register: Register, all: readonly Register[]): readonly Finding[] {
  const others = all.filter(({ point }) => point === register.point);
  const first = Math.min(...others.map((other) => other.first));
  const end = Math.max(...others.map((other) => other.end));
  const edge = (code: CollectedFindingCode, own: number, other: number): readonly Finding[] => {
    const length = durationText(Math.abs(own - other));
    const values = { register: register.name, own: minuteText(own), other: minuteText(other), length };
    return own === other ? [] : [make(code, values)];
  };
  return [
    ...edge('meter-file/begins-late', register.first, first),
    ...edge('meter-file/ends-early', register.end, end),
  ];
}

function streamFindings({ stream, missing, doubled, covered }: StreamCoverage): readonly Finding[] {
  const values = { register: streamText(stream), count: String(missing), length: durationText(doubled) };
  if (covered.length === 0) return [make('meter-file/no-values', values)];
  return missing === 0 ? [] : [make('meter-file/values-missing', values)];
}

/**
 * What is to be said of what the streams of a file cover: gaps of a week and more one by one, shorter ones
 * in one sum, a register that begins later or ends earlier than others of its point, values that are not
 * there. A register that several meters counted one after another is taken as one. What counts no active
 * energy is left alone.
 *
 * @param coverage  of all streams of a file
 */
export function coverageFindings(coverage: readonly StreamCoverage[]): readonly Finding[] {
  const energy = coverage.filter(({ stream }) => stream.quantity !== 'other');
  const registers = registersOf(energy);
  return [
    ...energy.flatMap(streamFindings),
    ...registers.flatMap((register) => [...gapFindings(register), ...edgeFindings(register, registers)]),
  ];
}
