import {
  addDays,
  readingFinding,
  readTypedDay,
  type DayNumber,
  type Finding,
  type Period,
  type ReadingRow,
} from '@unitbook/engine';
import {
  coverageFindings,
  energyByDay,
  energyInPeriods,
  fileCoverage,
  isZone,
  locateInCsv,
  monthsBetween,
  readingRows,
  toReadingRows,
  type CollectedFile,
  type PeriodEnergy,
  type RegisterCsv,
} from '@unitbook/meter-files';
import { isEvent } from '../household/household.ts';
import { assignOf, OWN_WORDS, pointsOf, type Counting } from './assign.ts';
import type { Offer } from './fit-book.ts';
import { likelyMode, type DaysMode } from './offered-days.ts';

/** What a person chooses about a file. */
export interface Choices extends Counting {
  readonly mode: DaysMode;
  /** The day of the month of the readings that are wanted. */
  readonly monthDay: number;
  /** The day of the month on which bills close; null: it was not chosen. */
  readonly cycleDay: number | null;
  readonly picked: ReadonlySet<DayNumber>;
  /** Readings that are to take the place of what was typed, by offering and day: "registers 20209". */
  readonly replace: ReadonlySet<string>;
  /** The offerings for which the account is to be set, so that their readings fit. */
  readonly setsAccount: ReadonlySet<string>;
  /** As typed. */
  readonly zone: string;
}

/** Readings that a file holds. */
interface RegisterPart {
  readonly offers: readonly Offer[];
  /** How many readings tell of a change of meters, and are no readings of a month. */
  readonly events: number;
  readonly findings: readonly Finding[];
}

/** What the intervals of a file come to, month by month. */
export interface IntervalPart {
  readonly periods: readonly PeriodEnergy[];
  /** The days that the file covers; null where that cannot be told. */
  readonly span: Period | null;
  readonly findings: readonly Finding[];
}

/** A file that was read, and what was chosen about it. */
export interface Session {
  /** null for a list of readings of our own. */
  readonly file: CollectedFile | null;
  readonly csv: RegisterCsv | null;
  /** About the file as it was read. */
  readonly findings: readonly Finding[];
  readonly choices: Choices;
  readonly registers: RegisterPart;
  /** null where there are no intervals, or something has to be chosen first. */
  readonly intervals: IntervalPart | null;
}

const FIRST_CHOICES: Choices = {
  ...OWN_WORDS,
  mode: 'all',
  monthDay: 1,
  cycleDay: null,
  picked: new Set(),
  replace: new Set(),
  setsAccount: new Set(),
  zone: '',
};

/** Whether the times of intervals have to be moved to the clock of a place. */
export function needsZone({ file }: Pick<Session, 'file'>): boolean {
  return file !== null && file.intervals.length > 0 && file.clock.offset !== null;
}

/** Whether a file has several connections, and nobody has said which is meant. */
export function lacksPoint({ file, choices }: Pick<Session, 'file' | 'choices'>): boolean {
  return file !== null && choices.point === null && choices.counts.size === 0 && pointsOf(file).length > 1;
}

const NO_REGISTERS: RegisterPart = { offers: [], events: 0, findings: [] };

function registerPart(file: CollectedFile, counting: Counting): RegisterPart {
  if (file.registers.every(({ readings }) => readings.length === 0)) return NO_REGISTERS;
  const assign = assignOf(counting);
  const { value, findings } = readingRows(file, assign === undefined ? {} : { assign });
  const rows = toReadingRows(value);
  const offers = value.flatMap(({ day }, at): Offer[] => {
    const row = rows[at];
    return row === undefined ? [] : [{ day, row }];
  });
  return { offers, events: 0, findings };
}

function intervalPart(file: CollectedFile, choices: Choices): IntervalPart | null {
  const { zone, cycleDay } = choices;
  if (file.intervals.length === 0 || cycleDay === null) return null;
  if (needsZone({ file }) && !isZone(zone.trim())) return null;
  const assign = assignOf(choices);
  const options = {
    zone: needsZone({ file }) ? zone.trim() : null,
    ...(assign === undefined ? {} : { assign }),
  };
  const { value, findings } = energyByDay(file, options);
  const [first, last] = [value?.days[0], value?.days.at(-1)];
  if (first === undefined || last === undefined) return { periods: [], span: null, findings };
  const span = { from: first, to: addDays(last, 1) };
  const { periods } = monthsBetween(span, cycleDay);
  const energy = energyInPeriods(
    file,
    periods.filter(({ from, to }) => from >= span.from && to <= span.to),
    options,
  );
  return { periods: energy.value, span, findings: energy.findings };
}

/** A row of our own list as a reading that can be taken over; what keeps it from being one is told. */
function ownOffer(csv: RegisterCsv, row: ReadingRow, index: number): Offer | Finding {
  const path = ['readings', index, 'date'];
  const day = readTypedDay(row.date)?.day ?? null;
  if (day === null)
    return locateInCsv(csv.source, readingFinding('reading/no-day', { path }, { value: row.date }));
  return { day, row };
}

function ownPart(csv: RegisterCsv): RegisterPart {
  const all = csv.value.map((row, index) => (isEvent(row) ? null : ownOffer(csv, row, index)));
  const offers = all.filter((one): one is Offer => one !== null && 'day' in one);
  return {
    offers: offers.sort((a, b) => a.day - b.day),
    events: csv.value.filter(isEvent).length,
    findings: all.filter((one): one is Finding => one !== null && 'code' in one),
  };
}

/** The session with other choices: only what depends on them is worked out again. */
export function withChoices(session: Session, change: Partial<Choices>): Session {
  const choices = { ...session.choices, ...change };
  const { file } = session;
  if (file === null) return { ...session, choices };
  const isOther = 'point' in change || 'counts' in change;
  const registers = isOther ? registerPart(file, choices) : session.registers;
  const isMoved = isOther || 'zone' in change || 'cycleDay' in change;
  return {
    ...session,
    choices,
    registers,
    intervals: isMoved ? intervalPart(file, choices) : session.intervals,
  };
}

/** Begin with a meter file that was read. */
export function sessionOf(file: CollectedFile, findings: readonly Finding[]): Session {
  const registers = registerPart(file, OWN_WORDS);
  const mode = likelyMode(registers.offers.map(({ day }) => day));
  const told = [...findings, ...coverageFindings(fileCoverage(file))];
  const choices: Choices = { ...FIRST_CHOICES, mode };
  return { file, csv: null, findings: told, choices, registers, intervals: null };
}

/** Begin with a list of readings of our own. */
export function ownSession(csv: RegisterCsv): Session {
  const registers = ownPart(csv);
  const choices: Choices = {
    ...FIRST_CHOICES,
    mode: likelyMode(registers.offers.map(({ day }) => day)),
  };
  return { file: null, csv, findings: csv.findings, choices, registers, intervals: null };
}
