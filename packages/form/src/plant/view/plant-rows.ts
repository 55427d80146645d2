import {
  dayText,
  exactText,
  periodDays,
  quotientText,
  wholeToDecimal,
  type Quotient,
} from '@unitbook/engine';
import { judgementWords } from './judgement-words.ts';
import type { MonthView } from './month-views.ts';
import type { PlantView } from './view-plant.ts';
import { dayYield, YIELD_PLACES } from './yields.ts';

/** A table: its heads and its lines, as plain text. */
export interface Rows {
  readonly heads: readonly string[];
  readonly lines: readonly (readonly string[])[];
}

const HUNDRED = 100n;

/** A quotient rounded for reading; '' for none. */
export function rounded(figure: Quotient | null, places: number): string {
  return figure === null ? '' : quotientText(figure.numerator, figure.denominator, places);
}

/** A ratio in percent with one decimal; '' for none. */
export function percentOf(figure: Quotient | null): string {
  return figure === null ? '' : quotientText(BigInt(figure.numerator) * HUNDRED, figure.denominator, 1);
}

const MONTH_HEADS = [
  'from',
  'to',
  'days',
  'days_in_service',
  'made_kwh',
  'specific_yield_kwh_per_kwp_day',
  'specific_yield_in_service',
  'capacity_utilisation_percent',
  'performance_ratio_usual_irradiation',
  'expected_kwh',
  'share_of_expected_percent',
  'one_sigma_percent',
  'judgement',
] as const;

function monthLine(month: MonthView): readonly string[] {
  const { period, made, expected, share, judged } = month;
  return [
    dayText(period.from),
    dayText(period.to),
    String(periodDays(period)),
    String(month.daysInService),
    exactText(made.numerator, made.denominator),
    rounded(month.specificYield, YIELD_PLACES),
    rounded(month.specificYieldInService ?? month.specificYield, YIELD_PLACES),
    percentOf(month.capacityUtilisation),
    rounded(month.performanceRatio, YIELD_PLACES),
    rounded(expected, 1),
    percentOf(share),
    judged?.sigmaPercent ?? '',
    judgementWords(month),
  ];
}

/** The months as lines of a file; `to` is the day of the closing reading. */
export function monthRows({ months }: Pick<PlantView, 'months'>): Rows {
  return { heads: MONTH_HEADS, lines: months.map(monthLine) };
}

const DAY_HEADS = [
  'day',
  'made_kwh',
  'specific_yield_kwh_per_kwp',
  'expected_kwh_per_kwp',
  'expected_low',
  'expected_high',
  'diary',
  'findings',
] as const;

const yieldText = (value: number | null | undefined): string =>
  value === null || value === undefined ? '' : wholeToDecimal(value, YIELD_PLACES);

/** The days as lines of a file; a day that is not known has no value. */
export function dayRows({ days, diary, plant }: PlantView): Rows {
  if (days === null || plant === null) return { heads: DAY_HEADS, lines: [] };
  const lines = days.days.map(({ day, wattHours }) => {
    const band = days.bands.find(({ from, to }) => from <= day && day < to);
    const entries = diary.filter(({ date, through }) => date <= day && day <= through);
    const findings = days.findings.filter((one) => one.days.from <= day && day < one.days.to);
    return [
      dayText(day),
      wattHours === null ? '' : exactText(wattHours, 1000),
      yieldText(wattHours === null ? null : dayYield(wattHours, day, plant)),
      yieldText(band?.middle),
      yieldText(band?.low),
      yieldText(band?.high),
      entries.map(({ did, note }) => (note === '' ? did : `${did}: ${note}`)).join('; '),
      findings.map(({ finding }) => finding.code.replace('plant/', '')).join('; '),
    ];
  });
  return { heads: DAY_HEADS, lines };
}
