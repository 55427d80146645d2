/** One thing to measure: what it does once for each of some bills. */
export interface Subject {
  readonly name: string;
  /** Do it so many times; returns something that depends on every result. */
  readonly run: (times: number) => number;
}

/** Nanoseconds for one, median of the samples. */
export type Timings = ReadonlyMap<string, number>;

/** How long to warm up, how long a sample lasts, and how many there are. */
export interface Measuring {
  readonly warmUpMs: number;
  readonly sampleMs: number;
  readonly samples: number;
}

const USUAL: Measuring = { warmUpMs: 250, sampleMs: 25, samples: 21 };

let sink = 0;

function nanoseconds({ run }: Subject, times: number): number {
  const start = performance.now();
  sink += run(times);
  return ((performance.now() - start) * 1e6) / times;
}

/** How many times make a sample long enough to time. */
function timesFor(subject: Subject, { warmUpMs, sampleMs }: Measuring): number {
  let times = 1;
  const end = performance.now() + warmUpMs;
  let last = 0;
  while (performance.now() < end) {
    last = nanoseconds(subject, times);
    if (last * times < sampleMs * 1e6) times = Math.min(times * 2, 1 << 20);
  }
  return Math.max(1, Math.round((sampleMs * 1e6) / last));
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
export function measure(subjects: readonly Subject[], measuring: Measuring = USUAL): Timings {
  const times = subjects.map((subject) => timesFor(subject, measuring));
  const samples = subjects.map((): number[] => []);
  for (let sample = 0; sample < measuring.samples; sample += 1) {
    subjects.forEach((subject, at) => samples[at]?.push(nanoseconds(subject, times[at] ?? 1)));
  }
  if (Number.isNaN(sink)) throw new Error('a subject returned no number');
  return new Map(subjects.map((subject, at) => [subject.name, median(samples[at] ?? [])]));
}
