/** One line of the table: ours against something else, in nanoseconds. */
export interface BenchRow {
  readonly name: string;
  readonly ours: number;
  readonly against: number;
  /** Ours ÷ against where less is the goal, against ÷ ours where a multiple is. */
  readonly ratio: number;
  readonly goal: string;
  readonly met: boolean;
}

/** Something of the page against its limit. */
export function limitRow(name: string, ours: number, limit: number): BenchRow {
  return { name, ours, against: limit, ratio: ours / limit, goal: '≤ 1', met: ours <= limit };
}

/** One time against another, the first not more than so many times as long. */
export function ratioRow(name: string, ours: number, against: number, goal: number): BenchRow {
  const ratio = ours / against;
  return { name, ours, against, ratio, goal: `≤ ${String(goal)}`, met: ratio <= goal };
}

/** So many times as fast as another way. */
export function timesRow(name: string, ours: number, against: number, goal: number): BenchRow {
  const ratio = against / ours;
  return { name, ours, against, ratio, goal: `≥ ${String(goal)}`, met: ratio >= goal };
}
