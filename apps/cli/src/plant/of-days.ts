import {
  addDays,
  calendarDay,
  dayNumber,
  dayText,
  daysInMonth,
  type DayNumber,
  type Finding,
  type GenerationPeriod,
  type IntervalChannel,
  type PlantDay,
} from '@unitbook/engine';
import {
  coverageFindings,
  energyByDay,
  fileCoverage,
  localColumns,
  type Assign,
  type CollectedFile,
  type DayEnergy,
} from '@unitbook/meter-files';
import { commandFinding } from '../findings.ts';
import type { Generation } from './generation.ts';

const WATT_HOUR_PLACES = 3;
const DAY_MINUTES = 1440;

/** Only the streams of one quantity. */
const only =
  (channel: IntervalChannel): Assign =>
  ({ quantity }) =>
    quantity === channel ? channel : null;

const hasStream = ({ intervals }: CollectedFile, channel: IntervalChannel): boolean =>
  intervals.some(({ stream }) => stream.quantity === channel);

/** Days in whole watt-hours; what is finer is carried to the next day, so that sums stay as metered. */
function wholeDays(
  { days, places, isWhole }: DayEnergy,
  energy: readonly (number | null)[],
): {
  readonly wattHours: ReadonlyMap<DayNumber, number | null>;
  readonly below: readonly DayNumber[];
} {
  const up = 10n ** BigInt(Math.max(0, WATT_HOUR_PLACES - places));
  const down = 10n ** BigInt(Math.max(0, places - WATT_HOUR_PLACES));
  const wattHours = new Map<DayNumber, number | null>();
  const below: DayNumber[] = [];
  let left = 0n;
  days.forEach((day, index) => {
    const value = energy[index] ?? null;
    if (value === null || isWhole[index] !== true) {
      wattHours.set(day, null);
      return;
    }
    const exact = BigInt(value) * up + left;
    if (exact < 0n) below.push(day);
    const whole = exact < 0n ? 0n : exact / down;
    left = exact < 0n ? 0n : exact % down;
    wattHours.set(day, Number.parseInt(whole.toString(), 10));
  });
  return { wattHours, below };
}

/** The first and the last minute of each day in which something was made. */
function sunMinutes(
  file: CollectedFile,
  zone: string | null,
): ReadonlyMap<number, readonly [number, number]> {
  const spans = new Map<number, [number, number]>();
  const { value } = localColumns(file, { zone, assign: only('generation') });
  const made = value?.columns.generation ?? null;
  if (value === null || made === null) return spans;
  const { starts, minutes } = value.columns;
  made.forEach((energy, row) => {
    if (energy <= 0) return;
    const start = starts[row] as number;
    const day = Math.floor(start / DAY_MINUTES);
    const first = start - day * DAY_MINUTES;
    const span = spans.get(day) ?? [first, 0];
    span[1] = first + minutes - 1;
    spans.set(day, span);
  });
  return spans;
}

/** Calendar months of which every day is known. */
function wholeMonths(wattHours: ReadonlyMap<DayNumber, number | null>): readonly GenerationPeriod[] {
  const months: GenerationPeriod[] = [];
  for (const first of wattHours.keys()) {
    const { year, month, day } = calendarDay(first);
    if (day !== 1) continue;
    const count = daysInMonth(year, month);
    const days = Array.from({ length: count }, (_, index) => wattHours.get(addDays(first, index)) ?? null);
    const known = days.filter((one) => one !== null);
    if (known.length < count) continue;
    const sum = known.reduce((total, one) => total + one, 0);
    months.push({
      period: { from: dayNumber({ year, month, day: 1 }), to: addDays(first, count) },
      wattHours: sum,
    });
  }
  return months;
}

function belowZero(days: readonly DayNumber[]): readonly Finding[] {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return [];
  const values = { count: String(days.length), first: dayText(first), last: dayText(last) };
  return [commandFinding('command/day-below-zero', { path: [] }, values)];
}

/** What went to the grid on each day, to tell a register that stands still from a plant that does. */
function exportOf(file: CollectedFile, zone: string | null): ReadonlyMap<DayNumber, number | null> {
  if (!hasStream(file, 'export')) return new Map();
  const { value } = energyByDay(file, { zone, assign: only('export') });
  return value === null || value.export === null
    ? new Map()
    : wholeDays(value, value.export.energy).wattHours;
}

/**
 * What a plant made on single days and in the calendar months that are known in whole, from intervals of any
 * length. A day of which something is missing is not known.
 *
 * @param zone  where the plant is; null where the clock of the file is to stand
 * @returns     null where the file does not tell it
 */
export function generationOfDays(
  file: CollectedFile,
  zone: string | null,
): { readonly value: Generation | null; readonly findings: readonly Finding[] } {
  if (!hasStream(file, 'generation')) {
    const values = { what: 'a file without interval values of generation' };
    return { value: null, findings: [commandFinding('command/no-generation', { path: [] }, values)] };
  }
  const { value, findings } = energyByDay(file, { zone, assign: only('generation') });
  const covered = coverageFindings(
    fileCoverage(file).filter(({ stream }) => stream.quantity === 'generation'),
  );
  const all = [...file.findings, ...covered, ...findings];
  if (value === null || value.generation === null) return { value: null, findings: all };
  const { wattHours, below } = wholeDays(value, value.generation.energy);
  const [sun, given] = [sunMinutes(file, zone), exportOf(file, zone)];
  const days = [...wattHours].map(([day, made]): PlantDay => {
    const [exported, span] = [given.get(day) ?? null, sun.get(day)];
    return {
      day,
      wattHours: made,
      ...(exported === null ? {} : { exportWattHours: exported }),
      ...(span === undefined || made === null ? {} : { firstMinute: span[0], lastMinute: span[1] }),
    };
  });
  return { value: { periods: wholeMonths(wattHours), days, findings: belowZero(below) }, findings: all };
}
