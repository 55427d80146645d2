import {
  addDays,
  dayText,
  parseDay,
  type DayNumber,
  type Finding,
  type Path,
  type Period,
} from '../quantity/index.ts';
import { tariffFinding } from './findings.ts';

/** The end of what is still in force: later than any day a reading can have. */
const OPEN_END = parseDay('9999-12-31') as DayNumber;

/** Something with its first and last day, as documents write them. */
export interface DatedText {
  readonly from: string;
  readonly through?: string | undefined;
}

/** Something with the half-open period it is in force. */
export interface InForce<Item> {
  readonly item: Item;
  readonly period: Period;
}

/** Whether something is still in force, without a last day. */
export function isOpenEnded(period: Period): boolean {
  return period.to === OPEN_END;
}

function readDated<Item extends DatedText>(
  item: Item,
  path: Path,
): { entry?: InForce<Item>; findings: Finding[] } {
  const from = parseDay(item.from);
  const through = item.through === undefined ? addDays(OPEN_END, -1) : parseDay(item.through);
  const findings: Finding[] = [];
  if (from === null)
    findings.push(tariffFinding('tariff/no-such-day', { path: [...path, 'from'] }, { value: item.from }));
  if (through === null) {
    findings.push(
      tariffFinding('tariff/no-such-day', { path: [...path, 'through'] }, { value: item.through ?? '' }),
    );
  }
  if (from === null || through === null) return { findings };
  if (through < from) {
    const values = { from: item.from, through: item.through ?? '' };
    return { findings: [tariffFinding('tariff/ends-before-it-begins', { path }, values)] };
  }
  return { entry: { item, period: { from, to: addDays(through, 1) } }, findings };
}

/**
 * Read the dates of dated versions and check that each begins where the one before ends.
 *
 * @param items  as the document lists them
 * @param place  the path of the list, and what one of them is called
 * @returns      in order of time; findings name the days of every gap and overlap
 */
export function readInForce<Item extends DatedText>(
  items: readonly Item[],
  place: {
    readonly path: Path;
    readonly one: string;
    readonly several: string;
    readonly name: (item: Item) => string;
  },
): { value: readonly InForce<Item>[]; findings: Finding[] } {
  const read = items.map((item, index) => ({ ...readDated(item, [...place.path, index]), index }));
  const findings = read.flatMap((one) => one.findings);
  const ordered = read
    .flatMap(({ entry, index }) => (entry === undefined ? [] : [{ entry, index }]))
    .sort((a, b) => a.entry.period.from - b.entry.period.from);
  ordered.forEach(({ entry, index }, at) => {
    const before = ordered[at - 1]?.entry;
    if (before === undefined || before.period.to === entry.period.from) return;
    const gap = before.period.to < entry.period.from;
    const first = gap ? before.period.to : entry.period.from;
    const end = gap ? entry.period.from : (Math.min(before.period.to, entry.period.to) as DayNumber);
    const values = {
      one: place.one,
      several: place.several,
      from: dayText(first),
      through: end === OPEN_END ? '' : dayText(addDays(end, -1)),
      before: place.name(before.item),
      after: place.name(entry.item),
    };
    findings.push(
      tariffFinding(gap ? 'tariff/gap' : 'tariff/overlap', { path: [...place.path, index, 'from'] }, values),
    );
  });
  return { value: ordered.map(({ entry }) => entry), findings };
}

/**
 * Those in force on any day of a period, in order of time.
 *
 * @example
 * inForceDuring([], { from: parseDay('2025-01-01'), to: parseDay('2025-02-01') }).length //=> 0
 */
export function inForceDuring<Item>(
  entries: readonly InForce<Item>[],
  period: Period,
): readonly InForce<Item>[] {
  return entries.filter((entry) => entry.period.from < period.to && entry.period.to > period.from);
}
