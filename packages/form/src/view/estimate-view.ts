import {
  estimateCosts,
  readTypedDay,
  type EstimateCost,
  type PreparedTariff,
  type ReadingRow,
  type RegisterId,
} from '@unitbook/engine';
import type { BookView } from './view-book.ts';

/** Whether some register of a row is an estimate. */
const isEstimate = ({ status, estimated = [] }: ReadingRow): boolean =>
  status === 'estimated' || estimated.length > 0;

/** Whether some register of a row is an estimate or stands in the place of one. */
const wasEstimate = (row: ReadingRow | undefined): boolean =>
  row !== undefined && (isEstimate(row) || (row.edits ?? []).some((edit) => edit.wasEstimated === true));

/**
 * The rows up to the first that was never estimated, at the end of a month or after it: there the run of
 * bills ends. Null where the rows end before, and one of them is still an estimate.
 */
function rowsOfRun(rows: readonly ReadingRow[], closing: number): readonly ReadingRow[] | null {
  const after = rows.slice(closing).filter(({ event }) => event === undefined);
  const end = rows.findIndex(
    (row, index) => index >= closing && row.event === undefined && !wasEstimate(row),
  );
  if (end >= 0) return rows.slice(0, end + 1);
  return after.some(isEstimate) ? null : rows;
}

/** Whether a reading that was estimated opens or closes a month: only then is there a cost to look for. */
function touchesEstimate(rows: readonly ReadingRow[], closing: number): boolean {
  const before = rows.slice(0, closing).findLast(({ event }) => event === undefined);
  return wasEstimate(rows[closing]) || wasEstimate(before);
}

/** What estimates cost, and whose right number nobody knows. */
export interface ToldCost {
  readonly cost: EstimateCost;
  /** The registers that are told by a share by days; all of them where a reading was estimated whole. */
  readonly shared: readonly RegisterId[] | 'all';
}

/** The registers that are still estimates in the bills of a cost. */
function sharedIn(rows: readonly ReadingRow[], { isByDays, period }: EstimateCost): ToldCost['shared'] {
  if (!isByDays) return [];
  const inside = rows.filter(({ date }) => {
    const day = readTypedDay(date)?.day ?? null;
    return day !== null && day >= period.from && day <= period.to;
  });
  if (inside.some(({ status }) => status === 'estimated')) return 'all';
  return [...new Set(inside.flatMap(({ estimated }) => estimated ?? []))];
}

/**
 * What the estimates around a month cost: worked out only where one opens or closes it, and no further than
 * the next actual reading, since every keystroke asks for it.
 *
 * @param closing  the place of the row that closes the month
 * @returns        null where nothing was estimated, or where no actual reading tells yet what was right
 */
export function estimateCostAt(view: BookView, tariff: PreparedTariff, closing: number): ToldCost | null {
  const { rows, places } = view.typed;
  const at = places.indexOf(closing);
  const month = view.rows[closing]?.month ?? null;
  const { account } = view.account;
  if (month === null || account === null || !touchesEstimate(rows, at)) return null;
  const readings = rowsOfRun(rows, at);
  if (readings === null) return null;
  const { to } = month.energy.period;
  const costs = estimateCosts({ account, tariff, readings }).value;
  const cost = costs.find(({ months }) => months.some(({ period }) => period.to === to));
  return cost === undefined ? null : { cost, shared: sharedIn(readings, cost) };
}
