import {
  addDays,
  dayText,
  periodDays,
  shareOut,
  type Figure,
  type Finding,
  type Outcome,
  type Period,
} from '../quantity/index.ts';
import { inForceDuring, isOpenEnded, type InForce, type Tariff } from '../tariff/index.ts';
import { billFinding } from './findings.ts';
import type { PeriodPart } from './prepare.ts';

/** The days that something dated covers, in words. */
export function coveredDays(entries: readonly InForce<unknown>[]): string {
  const first = entries[0]?.period;
  const last = entries.at(-1)?.period;
  if (first === undefined || last === undefined) return 'none';
  const end = isOpenEnded(last) ? 'on' : `through ${dayText(addDays(last.to, -1))}`;
  return `from ${dayText(first.from)} ${end}`;
}

function uncovered(tariff: Tariff, period: Period): Finding {
  const values = {
    from: dayText(period.from),
    through: dayText(addDays(period.to, -1)),
    covered: coveredDays(tariff.versions),
  };
  return billFinding('bill/no-tariff-in-force', { path: ['versions'] }, values);
}

/**
 * The versions of the charges that a period is billed under, with the days of each.
 *
 * @returns one part, or several where the document says that a change inside a period splits it; none,
 *          with a finding, when the charges do not cover the period
 */
export function periodParts(tariff: Tariff, period: Period): Outcome<readonly PeriodPart[]> {
  const { rule } = tariff.document.versionChange;
  const day = rule === 'in-force-on-last-day' ? addDays(period.to, -1) : period.from;
  const asked = rule === 'split-by-days' ? period : { from: day, to: addDays(day, 1) };
  const parts = inForceDuring(tariff.versions, asked).map((version): PeriodPart => {
    const from = version.period.from > asked.from ? version.period.from : asked.from;
    const to = version.period.to < asked.to ? version.period.to : asked.to;
    return { version, period: rule === 'split-by-days' ? { from, to } : period };
  });
  const covered = parts.reduce((days, part) => days + periodDays(part.period), 0);
  if (covered !== periodDays(period)) return { value: [], findings: [uncovered(tariff, period)] };
  return { value: parts, findings: [] };
}

/** How energy is shared between the parts of a period. */
export interface EnergySplit {
  /** What energy quantities are multiplied by: 1, or the days of the period where shares are exact. */
  readonly energyScale: number;
  /** The share of a figure that falls into a part, in thousandths times the energy scale. */
  readonly share: (figure: Figure, part: number) => Figure;
}

const NONE: readonly never[] = [];

const wholePeriod: EnergySplit = { energyScale: 1, share: (figure) => figure };

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

function shared(
  figure: Figure,
  numerator: number,
  denominator: number,
  ratio: Figure,
  clause: string,
): Figure {
  const label = `${figure.label}, share of days`;
  return {
    ...figure,
    id: `${figure.id}-share`,
    label,
    numerator,
    denominator,
    operation: 'product',
    inputs: [figure, ratio],
    parameters: NONE,
    rounding: null,
    clause,
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
  const { clause } = versionChange;
  if (versionChange.units === 'exact') {
    return {
      energyScale: total,
      share: (figure, part) => {
        const own = days[part] ?? 0;
        return shared(
          figure,
          (figure.numerator as number) * own,
          1000 * total,
          ratioFigure(own, total),
          clause,
        );
      },
    };
  }
  const step = 10 ** (3 - (units.decimals.charCodeAt(0) - 48));
  return {
    energyScale: 1,
    share: (figure, part) => {
      const whole = shareOut((figure.numerator as number) / step, days)[part] ?? 0;
      const exact = (figure.numerator as number) * (days[part] ?? 0);
      const rounding = {
        step: units.decimals,
        mode: 'half-up' as const,
        clause,
        numerator: exact,
        denominator: 1000 * total,
      };
      const value = shared(figure, whole * step, 1000, ratioFigure(days[part] ?? 0, total), clause);
      return exact === whole * step * total
        ? value
        : {
            ...value,
            operation: 'given',
            inputs: [figure],
            rounding: null,
            label: `${value.label}, whole units by largest remainder (exact ${String(rounding.numerator)}/${String(rounding.denominator)})`,
          };
    },
  };
}
