import { sortedQuantile } from './finance/index.ts';

/** What draws come to: money in units of money, in doubles. */
export interface DrawResults {
  /** Draws that were billed. */
  readonly count: number;
  /** Draws that plain arithmetic has no room for: they are in no other figure. */
  readonly unbilled: number;
  /** Years; Infinity where the price does not come back within the life. */
  readonly payback: Float64Array;
  /** Saving of the first year. */
  readonly saving: Float64Array;
  /** Net of all years less the net price. */
  readonly lifeNet: Float64Array;
  /** What is left of the price after each year: a row for each draw, years + 1 columns. */
  readonly cumulative: Float64Array;
}

/** Values that are reached with a chance of 10, 25, 50, 75 and 90 %. */
export interface Exceeded {
  readonly p10: number;
  readonly p25: number;
  readonly p50: number;
  readonly p75: number;
  readonly p90: number;
}

/** A band by years. */
export interface Band {
  readonly p10: readonly number[];
  readonly p50: readonly number[];
  readonly p90: readonly number[];
}

/** What many draws say together. */
export interface DrawSummary {
  readonly count: number;
  readonly unbilled: number;
  /** P90: not longer than this in 90 of 100 draws; Infinity: longer than the life. */
  readonly payback: Exceeded;
  /** Draws in which the price does not come back within the life. */
  readonly never: number;
  /** P90: at least this much in 90 of 100 draws. */
  readonly saving: Exceeded;
  readonly lifeNet: Exceeded;
  /** What is left of the price after each year: P90 is reached in 90 of 100 draws. */
  readonly band: Band;
}

function exceeded(values: Float64Array, isLessBetter: boolean): Exceeded {
  const sorted = Float64Array.from(values).sort();
  const at = (part: number): number => sortedQuantile(sorted, isLessBetter ? part : 1 - part);
  return { p10: at(0.1), p25: at(0.25), p50: at(0.5), p75: at(0.75), p90: at(0.9) };
}

/** One results object of several. */
export function joinDraws(parts: readonly DrawResults[]): DrawResults {
  const join = (key: 'payback' | 'saving' | 'lifeNet' | 'cumulative'): Float64Array => {
    const all = new Float64Array(parts.reduce((sum, part) => sum + part[key].length, 0));
    let at = 0;
    for (const part of parts) {
      all.set(part[key], at);
      at += part[key].length;
    }
    return all;
  };
  return {
    count: parts.reduce((sum, { count }) => sum + count, 0),
    unbilled: parts.reduce((sum, { unbilled }) => sum + unbilled, 0),
    payback: join('payback'),
    saving: join('saving'),
    lifeNet: join('lifeNet'),
    cumulative: join('cumulative'),
  };
}

/**
 * Quantiles of draws: of savings what is exceeded, of paybacks what is not.
 *
 * @param results  at least one draw
 */
export function summariseDraws(results: DrawResults): DrawSummary {
  const { count, unbilled, payback, saving, lifeNet, cumulative } = results;
  const width = cumulative.length / count;
  const years = Array.from({ length: width }, (_, year) =>
    exceeded(
      Float64Array.from({ length: count }, (_one, draw) => cumulative[draw * width + year] as number),
      false,
    ),
  );
  return {
    count,
    unbilled,
    payback: exceeded(payback, true),
    never: payback.reduce((sum, years_) => sum + +(years_ === Infinity), 0),
    saving: exceeded(saving, false),
    lifeNet: exceeded(lifeNet, false),
    band: {
      p10: years.map(({ p10 }) => p10),
      p50: years.map(({ p50 }) => p50),
      p90: years.map(({ p90 }) => p90),
    },
  };
}
