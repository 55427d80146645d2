import type { TableLayout } from '../layout-document.ts';
import type { TableDecision, Witness } from './decision.ts';
import type { HeadColumns } from './head-columns.ts';
import type { HeadSeries } from './head-series.ts';
import { plainName } from './header-words.ts';
import type { HeadRows } from './split-head.ts';
import { labelInName, timeTexts } from './time-columns.ts';
import { minutesOf, type MinutesGuess } from './value-series.ts';

/** What the times of a table are like. */
export interface TimeGuess {
  readonly clock: TableLayout['clock'];
  readonly label: 'start' | 'end';
  readonly minutes: MinutesGuess['minutes'];
  readonly decisions: readonly TableDecision[];
}

type Part = Pick<TableDecision, 'detected' | 'evidence' | 'alternatives' | 'certain'>;

/** Whether a table has dates without times. */
const areDays = ({ dateTime, date, time }: HeadColumns['times']): boolean =>
  dateTime < 0 && time < 0 && date >= 0;

function clockOf({ names, times }: HeadColumns, { offsets }: HeadSeries): Part {
  const { having, without } = offsets;
  if (having > 0) {
    const evidence =
      without > 0 ? 'some times have an offset from UTC, not all' : 'each time has its offset from UTC';
    return {
      detected: 'in-text',
      evidence,
      alternatives: without > 0 ? ['local', 'utc'] : [],
      certain: without === 0,
    };
  }
  const name = [times.dateTime, times.date, times.time].map((at) => plainName(names[at] ?? '')).join(' ');
  const [utc] = /\b(?:utc|gmt|zulu)\b/.exec(name) ?? [];
  if (utc !== undefined)
    return {
      detected: 'utc',
      evidence: `"${utc}" in the name of the column`,
      alternatives: ['local'],
      certain: true,
    };
  const isDays = times.dateTime < 0 && times.time < 0;
  if (isDays)
    return { detected: 'local', evidence: 'there are dates alone', alternatives: [], certain: true };
  return {
    detected: 'local',
    evidence:
      'no offset is written; whether the clock keeps daylight saving, and of which place, is not told',
    alternatives: ['local with a time zone', 'utc', 'a fixed offset'],
    certain: false,
  };
}

const START: Part = { detected: 'start', evidence: '', alternatives: ['end'], certain: false };

function labelOf(rows: HeadRows, columns: HeadColumns, minutes: MinutesGuess['minutes']): Part {
  const { times, names } = columns;
  const named = labelInName(names[Math.max(times.dateTime, times.time)] ?? '');
  if (named !== null)
    return { detected: named, evidence: 'the name of the column says so', alternatives: [], certain: true };
  if (areDays(times)) return { ...START, evidence: 'a date names its day', alternatives: [], certain: true };
  const texts = timeTexts(rows.data, times);
  if (texts.some((text) => text.startsWith('24')))
    return { detected: 'end', evidence: 'no interval begins at 24:00', alternatives: [], certain: true };
  const [first = ''] = texts;
  const step = Number.parseInt(minutes, 10);
  const isOneIn =
    step <= 60 &&
    new RegExp(`^(?:${step === 60 ? '0?1:00' : `0?0:${String(step).padStart(2, '0')}`})`).test(first);
  if (isOneIn)
    return {
      detected: 'end',
      evidence: 'the first time is one interval after midnight',
      alternatives: ['start'],
      certain: false,
    };
  return { ...START, evidence: 'nothing tells it; most tables give the start' };
}

function minutesGuess({ times }: HeadColumns, { steps }: HeadSeries): MinutesGuess {
  const isDays = times.dateTime < 0 && times.time < 0;
  return isDays ? { minutes: '1440', evidence: 'there are dates alone', certain: true } : minutesOf(steps);
}

const OTHER_MINUTES = ['5', '15', '30', '60', '1440'];

/** What the times of a table are like: by which clock, how far apart, and which end of an interval they name. */
export function timeGuess(
  rows: HeadRows,
  columns: HeadColumns,
  series: HeadSeries,
  place: (witness: Witness) => TableDecision['position'],
): TimeGuess {
  const clock = clockOf(columns, series);
  const minutes = minutesGuess(columns, series);
  const label = labelOf(rows, columns, minutes.minutes);
  const at = Math.max(columns.times.dateTime, columns.times.date);
  const [row] = rows.data;
  const position = row === undefined || at < 0 ? null : place({ row, at });
  const alternatives = minutes.certain ? [] : OTHER_MINUTES.filter((one) => one !== minutes.minutes);
  const length = {
    detected: minutes.minutes,
    evidence: minutes.evidence,
    certain: minutes.certain,
    alternatives,
  };
  const about = { column: at < 0 ? null : at, position };
  return {
    clock: clock.detected,
    label: label.detected === 'end' ? 'end' : 'start',
    minutes: minutes.minutes,
    decisions: [
      { about: 'clock', ...about, ...clock },
      { about: 'minutes', ...about, ...length },
      { about: 'label', ...about, ...label },
    ],
  };
}
