import { type DayNumber, type Figure, type Finding, type Outcome } from '../../quantity/index.ts';
import { basisWords, tableExpectation } from './expectation.ts';
import { judge } from './judge.ts';
import { earlierExpectation, type GenerationDay, type GenerationPeriod, type History } from './last-years.ts';
import type { Plant } from './plant.ts';
import { capacityParts, type CapacityPart } from './service-days.ts';
import { generationFigure, plantYields } from './yield-figures.ts';
import { over } from './exact-figures.ts';
import { judgedFindings, untold, type PlantMonth, type Reason } from './month-notes.ts';

const LEAST_DAYS = 7;

interface Told {
  readonly expected: Figure;
  readonly basis: string;
  readonly years: number;
}

/** Why a period cannot be judged before any expectation is looked for. */
function reasonAgainst(
  { period, isEstimated }: GenerationPeriod,
  parts: readonly CapacityPart[],
  plant: Plant,
): Reason | null {
  const days = parts.reduce((sum, part) => sum + part.days, 0);
  const running = parts.reduce((sum, part) => sum + part.inService.length, 0);
  if (days < period.to - period.from) return 'no-plant';
  if (isEstimated === true) return 'estimated';
  if (days < LEAST_DAYS) return 'short';
  if (running < LEAST_DAYS) return 'outage';
  return plant.expected === null ? 'no-expectation' : null;
}

function expectation(
  one: GenerationPeriod,
  parts: readonly CapacityPart[],
  plant: Plant,
  history: History,
): Told | Reason {
  const reason = reasonAgainst(one, parts, plant);
  if (reason !== null) return reason;
  const { period } = one;
  const table = tableExpectation(plant, parts);
  const earlier =
    plant.expected?.kind === 'last-years' ? earlierExpectation(period, parts, history, plant) : null;
  const expected = table ?? earlier?.figure ?? null;
  if (expected === null) return 'no-earlier-year';
  if (expected.numerator <= 0) return 'nothing-expected';
  const years = earlier?.years ?? [];
  return { expected, basis: basisWords(plant, period, years), years: years.length };
}

const SHARE = { id: 'share-of-expected', label: 'Units made over units expected', unit: 'ratio' } as const;

function monthOf(
  one: GenerationPeriod,
  plant: Plant,
  history: History,
): PlantMonth & { reason: Reason | null } {
  const { period, wattHours, irradiation = null } = one;
  const parts = capacityParts(period, plant);
  const days = parts.reduce((sum, part) => sum + part.days, 0);
  const made = generationFigure(wattHours);
  const told = expectation(one, parts, plant, history);
  const running = parts.reduce((sum, part) => sum + part.inService.length, 0);
  const common = {
    period,
    generation: made,
    daysInService: running,
    // Irradiation of days before the plant would count against it.
    ...plantYields(made, parts, days < period.to - period.from ? null : irradiation),
  };
  if (typeof told === 'string') {
    const none = {
      expected: null,
      basis: '',
      share: null,
      judgement: 'cannot-be-told',
      judged: null,
    } as const;
    return { ...common, ...none, reason: told };
  }
  const { expected, basis, years } = told;
  const judged = judge(made, expected, { plant, days: running, years });
  const share = over(SHARE, made, [expected]);
  return { ...common, expected, basis, share, judgement: judged.judgement, judged, reason: null };
}

function historyOf(periods: readonly GenerationPeriod[], days: readonly GenerationDay[]): History {
  const known = new Map<DayNumber, number>();
  for (const { day, wattHours } of days) if (wattHours !== null) known.set(day, wattHours);
  return { periods, days: known };
}

/**
 * What a plant made in each period, its yields by IEC 61724-1, what was to be expected of it, and how the
 * two compare.
 *
 * What was expected follows the calendar months that a period overlaps, in exact parts. Days that the diary
 * names an outage are left out of it. Where earlier years are gone by, they are looked for among the days
 * given and, where those do not hold every day, among the periods.
 *
 * @param periods  half-open, each with what the plant made in whole watt-hours
 * @param plant    as `readPlant` gives it
 * @param days     what it made on single days; left out: none are known
 * @returns        one month to each period; findings on those that are not fine, at ["periods", index]
 * @throws RangeError when a period has no days or an energy is no whole number from 0 on: a caller's bug
 */
export function plantMonths(
  periods: readonly GenerationPeriod[],
  plant: Plant,
  days: readonly GenerationDay[] = [],
): Outcome<readonly PlantMonth[]> {
  for (const { period, wattHours } of periods) {
    if (period.to <= period.from) throw new RangeError('a period without days');
    if (!Number.isSafeInteger(wattHours) || wattHours < 0) throw new RangeError('no whole watt-hours');
  }
  const history = historyOf(periods, days);
  const findings: Finding[] = [];
  const value = periods.map((one, index) => {
    const { reason, ...month } = monthOf(one, plant, history);
    const path = ['periods', index] as const;
    if (reason === null) findings.push(...judgedFindings(month, path));
    else findings.push(untold(one, reason, path));
    return month;
  });
  return { value, findings };
}
