import type { Finding } from '@unitbook/engine';
import { VALUE_QUALITIES, type RegisterValue } from '../stream.ts';
import type { CollectedFile } from './collect.ts';
import { collectedFinding } from './collected-findings.ts';
import { decimalOf, decimalText, lessDecimal } from './decimal-text.ts';
import type { IntervalSeries } from './interval-series.ts';
import { momentText, type RegisterSeries } from './register-list.ts';
import { DAY_MINUTES, durationText, streamText } from './texts.ts';

/** What a register went on between two readings of it. */
interface Advance {
  readonly start: number;
  readonly minutes: number;
  readonly value: number;
  readonly quality: number;
  readonly line: number;
}

const minuteOf = ({ day, minute }: RegisterValue): number => day * DAY_MINUTES + (minute ?? 0);
const qualityOf = ({ quality }: RegisterValue): number => VALUE_QUALITIES.indexOf(quality);

/** A register that shows the same for so long, while others of its meter go on, is asked about. */
const STUCK_MINUTES = 3 * DAY_MINUTES;

/** The whole steps between two readings; −1 where the register fell, −2 where they are too many. */
function stepsBetween(before: RegisterValue, after: RegisterValue, places: number): number {
  const { whole, places: own } = lessDecimal(decimalOf(after.value), decimalOf(before.value));
  if (whole < 0n) return -1;
  const steps = whole * 10n ** BigInt(places - own);
  return steps > BigInt(Number.MAX_SAFE_INTEGER) ? -2 : Number.parseInt(steps.toString(), 10);
}

const placesOf = ({ readings }: RegisterSeries): number =>
  readings.reduce((most, { value }) => Math.max(most, decimalOf(value).places), 0);

function fell({ stream }: RegisterSeries, before: RegisterValue, after: RegisterValue): Finding {
  const values = {
    register: streamText(stream),
    before: decimalText(decimalOf(before.value)),
    after: decimalText(decimalOf(after.value)),
    from: momentText(before),
    to: momentText(after),
  };
  const made = collectedFinding('meter-file/register-fell', { path: [] }, values);
  return { ...made, position: { line: after.line, column: 1 } };
}

/** The advances of a register, and what is to be said of its falls. */
function advancesOf(series: RegisterSeries, places: number): { advances: Advance[]; findings: Finding[] } {
  const advances: Advance[] = [];
  const findings: Finding[] = [];
  series.readings.forEach((after, index) => {
    const before = series.readings[index - 1];
    if (before === undefined) return;
    const [start, end] = [minuteOf(before), minuteOf(after)];
    const value = stepsBetween(before, after, places);
    if (value < 0) findings.push(fell(series, before, after));
    else if (end > start) {
      const quality = Math.max(qualityOf(before), qualityOf(after));
      advances.push({ start, minutes: end - start, value, quality, line: after.line });
    }
  });
  return { advances, findings };
}

/** Advances of one length as a series. */
function seriesOf({ stream }: RegisterSeries, places: number, own: readonly Advance[]): IntervalSeries {
  return {
    stream,
    minutes: own[0]?.minutes ?? DAY_MINUTES,
    places,
    starts: Int32Array.from(own, ({ start }) => start),
    values: Float64Array.from(own, ({ value }) => value),
    qualities: Uint8Array.from(own, ({ quality }) => quality),
    lines: Int32Array.from(own, ({ line }) => line),
  };
}

/** Stretches without an advance that last for days: the first and the last moment of each. */
function stillStretches(advances: readonly Advance[]): readonly { from: number; to: number; line: number }[] {
  const stretches: { from: number; to: number; line: number }[] = [];
  for (const { start, minutes, value, line } of advances) {
    const last = stretches.at(-1);
    if (value > 0) continue;
    if (last?.to === start) last.to = start + minutes;
    else stretches.push({ from: start, to: start + minutes, line });
  }
  return stretches.filter(({ from, to }) => to - from >= STUCK_MINUTES);
}

interface Read {
  readonly series: RegisterSeries;
  readonly places: number;
  readonly advances: readonly Advance[];
}

/** A register that stands still for days while another of the same meter goes on. */
function stuckFindings(read: readonly Read[]): Finding[] {
  return read.flatMap(({ series, advances }) =>
    stillStretches(advances).flatMap(({ from, to, line }) => {
      const others = read.filter(
        (one) => one.series !== series && one.series.stream.meter === series.stream.meter,
      );
      const moved = others.some((one) =>
        one.advances.some(({ start, minutes, value }) => value > 0 && start < to && start + minutes > from),
      );
      // Nothing made at night, nothing given in winter: a register that never counted is no fault.
      const counted = advances.some(({ value }) => value > 0);
      if (!moved || !counted) return [];
      const values = {
        register: streamText(series.stream),
        time: durationText(to - from),
        from: momentText({
          day: Math.floor(from / DAY_MINUTES) as RegisterValue['day'],
          minute: from % DAY_MINUTES,
        }),
        to: momentText({
          day: Math.floor(to / DAY_MINUTES) as RegisterValue['day'],
          minute: to % DAY_MINUTES,
        }),
      };
      const made = collectedFinding('meter-file/register-stuck', { path: [] }, values);
      return [{ ...made, position: { line, column: 1 } }];
    }),
  );
}

/** The advances by their length, the shortest first. */
function byLength(advances: readonly Advance[]): readonly (readonly Advance[])[] {
  const lengths = new Map<number, Advance[]>();
  for (const advance of advances) {
    const own = lengths.get(advance.minutes) ?? [];
    own.push(advance);
    lengths.set(advance.minutes, own);
  }
  return [...lengths.entries()].sort(([a], [b]) => a - b).map(([, own]) => own);
}

/**
 * The registers of a file as intervals: what each went on from one reading to the next, on the clock of the
 * readings. A gap in the readings is one long interval: its energy is known, its course is not. Where a
 * register falls there is no interval: it passed its full scale, was changed or began anew, and the file does
 * not say which.
 *
 * @param file     collected; its own intervals stay what they are
 * @param longest  minutes; longer intervals, of gaps, are left out: time blocks cannot be told in them
 * @returns     the file with the intervals of its registers, without the registers, and with findings about
 *              falls and about registers that stand still for three days while others go on
 */
export function registerIntervals(file: CollectedFile, longest = Infinity): CollectedFile {
  if (file.registers.length === 0) return file;
  const findings: Finding[] = [];
  const read = file.registers.map((series): Read => {
    const places = placesOf(series);
    const { advances, findings: own } = advancesOf(series, places);
    findings.push(...own);
    return { series, places, advances };
  });
  findings.push(...stuckFindings(read));
  const intervals = read.flatMap(({ series, places, advances }) =>
    byLength(advances.filter(({ minutes }) => minutes <= longest)).map((own) =>
      seriesOf(series, places, own),
    ),
  );
  return {
    clock: file.intervals.length > 0 ? file.clock : { offset: null },
    intervals: [...file.intervals, ...intervals],
    registers: [],
    findings: [...file.findings, ...findings],
  };
}

/**
 * A file of registers alone with what they went on as intervals; any other as it is.
 *
 * @param longest  minutes; see {@link registerIntervals}
 * @returns        the file, and what is to be said of its registers
 */
export function withIntervals(
  file: CollectedFile,
  longest?: number,
): { readonly file: CollectedFile; readonly told: readonly Finding[] } {
  if (file.intervals.length > 0 || file.registers.length === 0) return { file, told: [] };
  const made = registerIntervals(file, longest);
  return { file: made, told: made.findings.slice(file.findings.length) };
}
