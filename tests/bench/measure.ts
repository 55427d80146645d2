/** One thing to measure: what it does once for each of some bills. */
export interface Subject {
  readonly name: string;
  /** Do it so many times; returns something that depends on every result. */
  readonly run: (times: number) => number;
}

/** Nanoseconds for one, median of the samples. */
export type Timings = ReadonlyMap<string, number>;

const WARM_UP_MS = 250;
const SAMPLE_MS = 25;
const SAMPLES = 21;

let sink = 0;

function nanoseconds({ run }: Subject, times: number): number {
  const start = performance.now();
  sink += run(times);
  return ((performance.now() - start) * 1e6) / times;
}

/** How many times make a sample long enough to time. */
function timesFor(subject: Subject): number {
  let times = 1;
  const end = performance.now() + WARM_UP_MS;
  let last = 0;
  while (performance.now() < end) {
    last = nanoseconds(subject, times);
    if (last * times < SAMPLE_MS * 1e6) times = Math.min(times * 2, 1 << 20);
  }
  return Math.max(1, Math.round((SAMPLE_MS * 1e6) / last));
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? NaN;
}

/**
 * Time some subjects in one process, their samples taken in turn, so that a slow spell of the machine
 * falls on all of them.
 *
 * @returns medians by name; ratios of them are steady, the times themselves are not
 */
export function measure(subjects: readonly Subject[]): Timings {
  const times = subjects.map(timesFor);
  const samples = subjects.map((): number[] => []);
  for (let sample = 0; sample < SAMPLES; sample += 1) {
    subjects.forEach((subject, at) => samples[at]?.push(nanoseconds(subject, times[at] ?? 1)));
  }
  if (Number.isNaN(sink)) throw new Error('a subject returned no number');
  return new Map(subjects.map((subject, at) => [subject.name, median(samples[at] ?? [])]));
}
