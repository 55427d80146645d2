import {
  calendarDay,
  dayNumber,
  dayText,
  type DayNumber,
  type Finding,
  type IntervalChannel,
  type Outcome,
} from '@unitbook/engine';
import type { RegisterValue, Stream } from '../stream.ts';
import type { CollectedFile } from './collect.ts';
import { collectedFinding, type CollectedFindingCode } from './collected-findings.ts';
import { rowMinute, rowReading, type RowReading } from './row-reading.ts';
import { momentText, type RegisterSeries } from './register-list.ts';
import { selectRegisters, type ChosenRegister } from './register-selection.ts';
import type { Assign } from './selection.ts';
import { streamText } from './texts.ts';

/** What registers showed on a day, in kWh, digits as they stand in the file. */
export interface RegisterValues extends Readonly<Partial<Record<IntervalChannel, string>>> {
  /** Of registers of several rates, by the rate as the file numbers it. */
  readonly rates?: Readonly<Partial<Record<IntervalChannel, Readonly<Record<string, string>>>>>;
}

/** The readings of one day. */
export interface MeterReadingRow {
  readonly day: DayNumber;
  /** The minute of the day at which they were taken; null where the file gives the day alone. */
  readonly minute: number | null;
  readonly values: RegisterValues;
  /** Which were estimated or substituted: "import", or "import@1" for a rate. */
  readonly estimated: readonly string[];
  /** The first line of the file on which one of them stands. */
  readonly line: number;
}

/** Which readings are wanted. */
export interface RowOptions {
  /** The days; left out: every day that has a reading. */
  readonly on?: readonly DayNumber[];
  /** What each register is to be counted as; left out: what its own words say. */
  readonly assign?: Assign;
}

/** The name under which a row has a register. */
const nameOf = ({ channel, stream }: ChosenRegister): string =>
  stream.rate === null ? channel : `${channel}@${stream.rate}`;

const isEstimate = ({ quality }: RegisterValue): boolean =>
  quality === 'estimated' || quality === 'substituted';

function about(
  code: CollectedFindingCode,
  stream: Stream,
  values: Readonly<Record<string, string>>,
): Finding {
  return collectedFinding(code, { path: [] }, { register: streamText(stream), ...values });
}

/** The values of a row by quantity, and by rate where registers count rates. */
function valuesOf(readings: readonly RowReading[]): RegisterValues {
  const values: Partial<Record<IntervalChannel, string>> = {};
  const rates: Partial<Record<IntervalChannel, Record<string, string>>> = {};
  for (const { register, reading } of readings) {
    const { channel, stream } = register;
    if (stream.rate === null) values[channel] = reading.value;
    else rates[channel] = { ...rates[channel], [stream.rate]: reading.value };
  }
  return Object.keys(rates).length === 0 ? values : { ...values, rates };
}

/** The row of a day; null where no register was read on it. */
function rowOf(registers: readonly ChosenRegister[], day: DayNumber): Outcome<MeterReadingRow | null> {
  const minute = rowMinute(registers, day);
  const readings = registers.flatMap((register) => rowReading(register, day, minute) ?? []);
  if (readings.length === 0) return { value: null, findings: [] };
  const findings = readings
    .filter(({ reading }) => reading.minute !== minute)
    .map(({ register, reading }) => ({
      ...about('meter-file/reading-other-time', register.stream, {
        moment: momentText(reading),
        row: momentText({ day, minute }),
      }),
      position: { line: reading.line, column: 1 },
    }));
  const value = {
    day,
    minute,
    values: valuesOf(readings),
    estimated: readings.filter(({ reading }) => isEstimate(reading)).map(({ register }) => nameOf(register)),
    line: Math.min(...readings.map(({ reading }) => reading.line)),
  };
  return { value, findings };
}

/** The reading of a register on the day nearest to one, the earlier of two. */
function nearest({ readings }: RegisterSeries, day: DayNumber): RegisterValue | null {
  return readings.reduce<RegisterValue | null>(
    (best, one) => (best === null || Math.abs(one.day - day) < Math.abs(best.day - day) ? one : best),
    null,
  );
}

/** A register that was not read on a day that is wanted; the nearest day is offered, never taken. */
function notRead(register: ChosenRegister, day: DayNumber): readonly Finding[] {
  if (register.readings.some((one) => one.day === day)) return [];
  const other = nearest(register, day);
  if (other === null) return [];
  const offer = dayText(other.day);
  const finding = about('meter-file/no-reading-on', register.stream, { day: dayText(day), nearest: offer });
  return [{ ...finding, offer }];
}

/** Of a register the days on which only others were read, in one finding. */
function lackingDays(register: ChosenRegister, days: readonly DayNumber[]): readonly Finding[] {
  const own = new Set<number>(register.readings.map(({ day }) => day));
  const lacking = days.filter((day) => !own.has(day));
  const [first, last] = [lacking[0], lacking.at(-1)];
  if (first === undefined || last === undefined) return [];
  const values = { count: String(lacking.length), first: dayText(first), last: dayText(last) };
  return [about('meter-file/days-without', register.stream, values)];
}

const sortedDays = (days: Iterable<DayNumber>): readonly DayNumber[] =>
  [...new Set(days)].sort((a, b) => a - b);

/**
 * The first day of each month from the first reading of any register to the last, for `on`.
 *
 * @param file  collected
 */
export function firstDaysOfMonths({ registers }: Pick<CollectedFile, 'registers'>): readonly DayNumber[] {
  const days = sortedDays(registers.flatMap(({ readings }) => readings.map(({ day }) => day)));
  const [first, last] = [days[0], days.at(-1)];
  const months: DayNumber[] = [];
  if (first === undefined || last === undefined) return months;
  let { year, month } = calendarDay(first);
  for (let day = dayNumber({ year, month, day: 1 }); day <= last; day = dayNumber({ year, month, day: 1 })) {
    if (day >= first) months.push(day);
    [year, month] = month === 12 ? [year + 1, 1] : [year, month + 1];
  }
  return months;
}

/**
 * The register readings of a file as rows, one for each day.
 *
 * Of several readings of a day the row has those of the earliest minute at which most registers were read;
 * a register that was read at another minute of the day only is taken from there, with a question. The
 * nearest day is never taken for another.
 *
 * @param file     collected
 * @param options  the days, and what registers are counted as
 * @returns        rows in order of time, one for each day on which a register was read
 */
export function readingRows(
  file: CollectedFile,
  options: RowOptions = {},
): Outcome<readonly MeterReadingRow[]> {
  const { chosen, findings: said } = selectRegisters(file.registers, options.assign);
  const read = sortedDays(chosen.flatMap(({ readings }) => readings.map(({ day }) => day)));
  const days = options.on === undefined ? read : sortedDays(options.on);
  const rows = days.map((day) => rowOf(chosen, day));
  const absent = chosen.flatMap((register) =>
    options.on === undefined ? lackingDays(register, read) : days.flatMap((day) => notRead(register, day)),
  );
  return {
    value: rows.flatMap(({ value }) => value ?? []),
    findings: [...said, ...absent, ...rows.flatMap(({ findings }) => findings)],
  };
}
