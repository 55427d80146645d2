import {
  addDays,
  dayText,
  periodDays,
  shareOut,
  type DayNumber,
  type Figure,
  type Finding,
  type Outcome,
  type Period,
} from '../quantity/index.ts';
import { inForceDuring, isOpenEnded, type InForce, type Tariff } from '../tariff/index.ts';
import { billFinding } from './findings.ts';
import type { PeriodPart } from './prepare.ts';
import { seasonChanges } from './seasons.ts';

const NONE: readonly never[] = [];

/** The days that something dated covers, in words. */
export function coveredDays(entries: readonly InForce<unknown>[]): string {
  const first = entries[0]?.period;
  const last = entries.at(-1)?.period;
  if (first === undefined || last === undefined) return 'none';
  const end = isOpenEnded(last) ? 'on' : `through ${dayText(addDays(last.to, -1))}`;
  return `from ${dayText(first.from)} ${end}`;
}

/** The days of a period that no charges cover: before the first version, or after the last. */
function uncovered(tariff: Tariff, period: Period): Finding {
  const first = tariff.versions[0]?.period.from ?? period.to;
  const isBefore = period.from < first;
  const from = isBefore ? period.from : later(period.from, tariff.versions.at(-1)?.period.to ?? period.from);
  const to = isBefore ? earlier(period.to, first) : period.to;
  const values = {
    from: dayText(from),
    through: dayText(addDays(to, -1)),
    covered: coveredDays(tariff.versions),
  };
  return billFinding('bill/no-tariff-in-force', { path: ['versions'] }, values);
}

const later = (a: DayNumber, b: DayNumber): DayNumber => (a > b ? a : b);
const earlier = (a: DayNumber, b: DayNumber): DayNumber => (a < b ? a : b);

/**
 * The versions of the charges that a period is billed under, with the days of each.
 *
 * @returns one part, or several where the document says that a change inside a period splits it; none,
 *          with a finding, when the charges do not cover the period
 */
export function periodParts(
  tariff: Tariff,
  period: Period,
  changes: readonly DayNumber[] = NONE,
): Outcome<readonly PeriodPart[]> {
  const { rule } = tariff.document.versionChange;
  const cuts = cutDays(tariff, period, changes);
  const isSplit = rule === 'split-by-days' && cuts.length > 0;
  for (const version of isSplit ? NONE : tariff.versions) {
    if (version.period.from <= period.from && version.period.to >= period.to) {
      const day = rule === 'in-force-on-last-day' ? addDays(period.to, -1) : period.from;
      return { value: [{ version, period, day }], findings: NONE };
    }
  }
  return rule === 'split-by-days' ? splitParts(tariff, period, cuts) : oneDaysVersion(tariff, period, rule);
}

/** The version of one day of the period bills the whole of it. */
function oneDaysVersion(
  tariff: Tariff,
  period: Period,
  rule: 'in-force-on-first-day' | 'in-force-on-last-day',
): Outcome<readonly PeriodPart[]> {
  const day = rule === 'in-force-on-last-day' ? addDays(period.to, -1) : period.from;
  const [version] = inForceDuring(tariff.versions, { from: day, to: addDays(day, 1) });
  if (version === undefined) return { value: NONE, findings: [uncovered(tariff, period)] };
  return { value: [{ version, period, day }], findings: NONE };
}

/** Days inside a period on which seasons or something of the account change, in order. */
function cutDays({ document }: Tariff, period: Period, changes: readonly DayNumber[]): readonly DayNumber[] {
  const inside = changes.filter((day) => day > period.from && day < period.to);
  const seasons = seasonChanges(document, period);
  return inside.length === 0 ? seasons : [...new Set([...seasons, ...inside])].sort((a, b) => a - b);
}

/** Each version bills the days it is in force, up to the next day on which something changes. */
function splitParts(
  tariff: Tariff,
  period: Period,
  cuts: readonly DayNumber[],
): Outcome<readonly PeriodPart[]> {
  const parts = inForceDuring(tariff.versions, period).flatMap((version): PeriodPart[] => {
    const from = later(version.period.from, period.from);
    const to = earlier(version.period.to, period.to);
    const ends = [from, ...cuts.filter((day) => day > from && day < to), to];
    return ends.slice(1).map((end, at) => {
      const start = ends[at] ?? from;
      return { version, period: { from: start, to: end }, day: start };
    });
  });
  const covered = parts.reduce((days, part) => days + periodDays(part.period), 0);
  if (covered !== periodDays(period)) return { value: NONE, findings: [uncovered(tariff, period)] };
  return { value: parts, findings: NONE };
}

/** How energy is shared between the parts of a period. */
export interface EnergySplit {
  readonly isSplit: boolean;
  /** What energy quantities are multiplied by: 1, or the days of the period where shares are exact. */
  readonly energyScale: number;
  /** The share of a figure that falls into a part, in thousandths times the energy scale. */
  readonly share: (figure: Figure, part: number) => Figure;
}

const wholePeriod: EnergySplit = { isSplit: false, energyScale: 1, share: (figure) => figure };

function ratioFigure(days: number, total: number): Figure {
  return {
    id: 'days-share',
    label: `Share of days (${String(days)} of ${String(total)})`,
    unit: 'ratio',
    numerator: days,
    denominator: total,
    operation: 'given',
    inputs: NONE,
    parameters: NONE,
    rounding: null,
    clause: '',
  };
}

/** The exact share of a figure that falls on some of the days. */
function exactShare(figure: Figure, ratio: Figure, clause: string): Figure {
  return {
    unit: figure.unit,
    id: `${figure.id}-share`,
    label: `${figure.label}, share of days`,
    numerator: (figure.numerator as number) * (ratio.numerator as number),
    denominator: figure.denominator * ratio.denominator,
    operation: 'product',
    inputs: [figure, ratio],
    parameters: NONE,
    rounding: null,
    clause,
  };
}

/** The same in whole counted units; what largest remainder added or took is a step of its own. */
function wholeShare(exact: Figure, numerator: number): Figure {
  if (numerator * exact.denominator === (exact.numerator as number) * 1000) {
    return { ...exact, numerator, denominator: 1000 };
  }
  const moved: Figure = {
    ...exact,
    id: `${exact.id}-moved`,
    label: 'Moved between the parts, so that units stay whole and none is lost (largest remainder)',
    numerator: numerator * (exact.denominator / 1000) - (exact.numerator as number),
    operation: 'given',
    inputs: NONE,
  };
  return {
    ...exact,
    id: `${exact.id}-whole`,
    numerator,
    denominator: 1000,
    operation: 'sum',
    inputs: [exact, moved],
  };
}

/**
 * Share the energy of a period among its parts by days, exactly or in whole counted units by largest
 * remainder, as the document says.
 */
export function splitEnergy(tariff: Tariff, period: Period, parts: readonly PeriodPart[]): EnergySplit {
  const { versionChange, units } = tariff.document;
  if (parts.length === 1 || versionChange.rule !== 'split-by-days') return wholePeriod;
  const days = parts.map((part) => periodDays(part.period));
  const total = periodDays(period);
  const exact = (figure: Figure, part: number): Figure =>
    exactShare(figure, ratioFigure(days[part] ?? 0, total), versionChange.clause);
  if (versionChange.units === 'exact') return { isSplit: true, energyScale: total, share: exact };
  const step = 10 ** (3 - (units.decimals.charCodeAt(0) - 48));
  const share = (figure: Figure, part: number): Figure => {
    // A credit can have decimals that units counted have not: then thousandths are shared out.
    const own = (figure.numerator as number) % step === 0 ? step : 1;
    const counted = shareOut((figure.numerator as number) / own, days)[part] ?? 0;
    return wholeShare(exact(figure, part), counted * own);
  };
  return { isSplit: true, energyScale: 1, share };
}
