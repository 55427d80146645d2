import type { Finding } from '@unitbook/engine';
import type { Stream } from '../stream.ts';
import { collectedFinding, type CollectedFindingCode } from './collected-findings.ts';
import type { IntervalRows } from './interval-rows.ts';
import { inOrder } from './order-rows.ts';
import { withoutOverlaps } from './overlaps.ts';
import { noDoubles, onceEach } from './same-start.ts';
import { tallyPosition, tallyValues, type Tally } from './tally.ts';
import { streamText } from './texts.ts';

/** Intervals of one stream and one length, in order of time, each start once, none over another. */
export interface IntervalSeries {
  readonly stream: Stream;
  /** How long each is. */
  readonly minutes: number;
  /** Decimal places of a kWh. */
  readonly places: number;
  /** The minute at which each begins, since 1970-01-01 00:00 on the clock of the file. */
  readonly starts: Int32Array;
  /** Whole numbers of 10^-places kWh; NaN where the file has no value. */
  readonly values: Float64Array;
  /** Indexes into VALUE_QUALITIES. */
  readonly qualities: Uint8Array;
  /** The line on which the chunk begins that each came in. */
  readonly lines: Int32Array;
}

/** Where findings go, and what each says of the rows it is about. */
interface Teller {
  readonly rows: IntervalRows;
  readonly tell: (finding: Finding) => void;
}

function tellTally({ rows, tell }: Teller, code: CollectedFindingCode, tally: Tally, both = ''): void {
  if (tally.count === 0) return;
  const { stream, minutes, places } = rows;
  const values = {
    ...tallyValues(tally),
    register: streamText(stream),
    minutes: String(minutes),
    places: String(places),
    both,
  };
  tell({ ...collectedFinding(code, { path: [] }, values), ...tallyPosition(tally) });
}

/**
 * Put the intervals of a stream in order, and tell of those that are doubled, lie over each other or are
 * too fine to be counted.
 *
 * @param stream   the stream
 * @param lengths  its rows, one for each length of intervals
 * @param tell     where findings go
 * @returns        the shortest intervals first
 */
export function seriesOfStream(
  stream: Stream,
  lengths: readonly IntervalRows[],
  tell: (finding: Finding) => void,
): readonly IntervalSeries[] {
  const byLength = [...lengths].sort((a, b) => a.minutes - b.minutes);
  const once = byLength.map((rows) => {
    const doubles = noDoubles();
    const columns = onceEach(inOrder(rows), rows.places, doubles);
    const teller = { rows, tell };
    tellTally(teller, 'meter-file/interval-too-fine', rows.tooFine);
    tellTally(teller, 'meter-file/interval-conflict', doubles.conflict, doubles.conflictText);
    tellTally(teller, 'meter-file/interval-replaced', doubles.replaced, doubles.replacedText);
    tellTally(teller, 'meter-file/interval-repeated', doubles.repeated);
    return { minutes: rows.minutes, columns };
  });
  return withoutOverlaps(once).flatMap(({ minutes, columns, overlaps }, index) => {
    const rows = byLength[index] as IntervalRows;
    tellTally({ rows, tell }, 'meter-file/interval-overlap', overlaps);
    return columns.starts.length === 0 ? [] : [{ stream, minutes, places: rows.places, ...columns }];
  });
}
