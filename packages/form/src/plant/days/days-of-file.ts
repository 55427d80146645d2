import {
  roundLargeQuotient,
  type DayNumber,
  type Finding,
  type IntervalChannel,
  type PlantDay,
} from '@unitbook/engine';
import { energyByDay, localColumns, type CollectedFile, type LocalOptions } from '@unitbook/meter-files';

/** Decimal places of a kWh in watt-hours. */
const WATT_HOURS = 3;
const DAY_MINUTES = 1440;
/** From longer intervals it cannot be told when a plant begins and ends. */
const LONGEST_INTERVAL = 60;

/** The days that a file holds of a plant. */
export interface FileDays {
  readonly days: readonly PlantDay[];
  readonly findings: readonly Finding[];
}

/** Whole numbers of 10^-places kWh as whole watt-hours, rounded half-up where they are finer. */
function wattHours(energy: number, places: number): number {
  if (places <= WATT_HOURS) return energy * 10 ** (WATT_HOURS - places);
  const whole = roundLargeQuotient(BigInt(energy), 10n ** BigInt(places - WATT_HOURS), 'half-up');
  return Number.parseInt(whole.toString(), 10);
}

/** A file is read for one quantity alone: gaps of the others are no gaps of this one. */
const only = (channel: IntervalChannel, zone: string | null): LocalOptions => ({
  zone,
  assign: ({ quantity }) => (quantity === channel ? channel : null),
});

interface Energies {
  /** null on a day that is not whole. */
  readonly days: ReadonlyMap<DayNumber, number | null>;
  readonly findings: readonly Finding[];
}

function energies(file: CollectedFile, channel: IntervalChannel, zone: string | null): Energies {
  const has = file.intervals.some(({ stream }) => stream.quantity === channel);
  if (!has) return { days: new Map(), findings: [] };
  const { value, findings } = energyByDay(file, only(channel, zone));
  const own = value?.[channel] ?? null;
  const days = (value?.days ?? []).map((day, at): [DayNumber, number | null] => {
    const energy = own?.energy[at] ?? null;
    const isKnown = value?.isWhole[at] === true && energy !== null && energy >= 0;
    return [day, isKnown ? wattHours(energy, value.places) : null];
  });
  return { days: new Map(days), findings };
}

interface Minutes {
  readonly firstMinute: number;
  readonly lastMinute: number;
}

/** The first and the last minute of each day in which the plant made something. */
function runningMinutes(file: CollectedFile, zone: string | null): ReadonlyMap<number, Minutes> {
  const columns = localColumns(file, only('generation', zone)).value?.columns;
  const found = new Map<number, Minutes>();
  if (columns?.generation == null || columns.minutes > LONGEST_INTERVAL) return found;
  const { generation, minutes } = columns;
  columns.starts.forEach((start, row) => {
    if ((generation[row] ?? 0) <= 0) return;
    const day = Math.floor(start / DAY_MINUTES);
    const [first, last] = [start - day * DAY_MINUTES, start - day * DAY_MINUTES + minutes - 1];
    const known = found.get(day);
    found.set(day, {
      firstMinute: Math.min(known?.firstMinute ?? first, first),
      lastMinute: Math.max(known?.lastMinute ?? last, last),
    });
  });
  return found;
}

/**
 * What a plant made on each day of a file, what of it went to the grid, and when it ran. Days that are not
 * whole have no value.
 *
 * @param zone  where the plant is, for a file that names its clock; null: times stand as they are
 */
export function daysOfFile(file: CollectedFile, zone: string | null): FileDays {
  const made = energies(file, 'generation', zone);
  const given = energies(file, 'export', zone);
  const minutes = runningMinutes(file, zone);
  const days = [...made.days].map(([day, energy]): PlantDay => {
    const exported = given.days.get(day) ?? null;
    const running = energy === null ? undefined : minutes.get(day);
    return {
      day,
      wattHours: energy,
      ...(exported === null ? {} : { exportWattHours: exported }),
      ...running,
    };
  });
  return { days, findings: made.findings };
}
