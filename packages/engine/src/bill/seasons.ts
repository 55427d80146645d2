import {
  addDays,
  calendarDay,
  dayNumber,
  daysInMonth,
  dayText,
  type DayNumber,
  type Period,
} from '../quantity/index.ts';
import { seasonsOn, type TariffDocument } from '../tariff/index.ts';

/** The seasons of a document that a day falls in. */
export function seasonsOf(document: TariffDocument, day: DayNumber): ReadonlySet<string> {
  return new Set(document.seasons === undefined ? [] : seasonsOn(document.seasons, dayText(day).slice(5)));
}

/** The day after a day of the year; 29 February is the end of February where it is missing. */
function dayAfter(monthDay: string, year: number): DayNumber {
  const [month = 1, date = 1] = monthDay.split('-').map((part) => Number.parseInt(part, 10));
  return addDays(dayNumber({ year, month, day: Math.min(date, daysInMonth(year, month)) }), 1);
}

/** A day of the year; 1 March for a 29 February that is missing. */
function firstDay(monthDay: string, year: number): DayNumber {
  const [month = 1, date = 1] = monthDay.split('-').map((part) => Number.parseInt(part, 10));
  return date > daysInMonth(year, month) ? dayAfter(monthDay, year) : dayNumber({ year, month, day: date });
}

/** The days inside a period on which a season begins or has just ended, in order of time. */
export function seasonChanges(document: TariffDocument, period: Period): readonly DayNumber[] {
  const seasons = Object.values(document.seasons ?? {});
  if (seasons.length === 0) return [];
  const { year } = calendarDay(period.from);
  const { year: last } = calendarDay(period.to);
  const days = new Set<DayNumber>();
  for (let at = year; at <= last; at += 1) {
    for (const { from, through } of seasons) {
      days.add(firstDay(from, at));
      days.add(dayAfter(through, at));
    }
  }
  return [...days].filter((day) => day > period.from && day < period.to).sort((a, b) => a - b);
}
