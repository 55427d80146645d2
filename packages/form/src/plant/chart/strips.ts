import { addDays, calendarDay, dayNumber, type DayNumber, type Period } from '@unitbook/engine';
import type { ChartModel, Strip } from './chart-model.ts';

/** A strip of months shows at most so many days: two years and a little, for bills that run over. */
const MOST_DAYS = 760;

/** The span of some periods; null for none. */
function spanOf(periods: readonly Period[]): Period | null {
  const [first] = periods;
  if (first === undefined) return null;
  return periods.reduce(
    ({ from, to }, one) => ({ from: one.from < from ? one.from : from, to: one.to > to ? one.to : to }),
    { from: first.from, to: first.to },
  );
}

/** The first day of the quarter of a day. */
function quarterOf(day: DayNumber): DayNumber {
  const { year, month } = calendarDay(day);
  return dayNumber({ year, month: month - ((month - 1) % 3), day: 1 });
}

/** The first day of the next quarter. */
const nextQuarter = (first: DayNumber): DayNumber => quarterOf(addDays(first, 100));

/** Months of a row, as many as a strip holds, counted back from the last. */
function monthSpans(model: ChartModel): readonly Period[] {
  const spans: Period[] = [];
  let rest = [...model.bars];
  while (rest.length > 0) {
    const end = rest.at(-1)?.to ?? (0 as DayNumber);
    const own = rest.filter(({ from }) => end - from <= MOST_DAYS);
    // A single period longer than that has a strip of its own.
    const shown = own.length === 0 ? rest.slice(-1) : own;
    const span = spanOf(shown);
    if (span !== null) spans.unshift(span);
    rest = rest.slice(0, rest.length - shown.length);
  }
  return spans;
}

function daySpans(model: ChartModel): readonly Period[] {
  const span = spanOf(model.bars);
  if (span === null) return [];
  const spans: Period[] = [];
  for (let from = quarterOf(span.from); from < span.to; from = nextQuarter(from))
    spans.push({ from, to: nextQuarter(from) });
  return spans;
}

/** Cut a chart into strips: days by quarters of the calendar, months by two years at most. */
export function stripsOf(model: ChartModel): readonly Strip[] {
  const spans = model.by === 'days' ? daySpans(model) : monthSpans(model);
  return spans.map((span) => ({ ...span, model }));
}
