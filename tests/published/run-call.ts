import {
  dayFactor,
  decimalPlaces,
  decimalToWhole,
  exactText,
  isLeapYear,
  minorUnitDigits,
  periodDays,
  roundQuotient,
  shareOut,
  wholeToDecimal,
  type DayRule,
} from '@unitbook/engine';
import type { Figures } from './bill-figures.ts';
import { roundingMode } from './rational.ts';
import { periodOf } from './run-bill.ts';

/** The arguments of an engine call by name; each call reads its own. */
export interface CallRun {
  readonly values?: readonly string[];
  readonly step?: string;
  readonly mode?: string;
  readonly weights?: readonly string[];
  readonly rule?: unknown;
  readonly periods?: readonly (readonly string[])[];
}

const text = (value: string | undefined, what: string): string => {
  if (value === undefined) throw new Error(`${what} is missing`);
  return value;
};

/** Each value rounded to a step: the value is the name of the figure. */
function roundEach({ values = [], step, mode }: CallRun): Figures {
  const size = text(step, 'step');
  return Object.fromEntries(
    values.map((value) => {
      const places = Math.max(decimalPlaces(value), decimalPlaces(size));
      const divisor = decimalToWhole(size, places);
      const steps = roundQuotient(decimalToWhole(value, places), divisor, roundingMode(text(mode, 'mode')));
      const printed = size.split('.')[1]?.length ?? 0;
      return [value, wholeToDecimal(steps * decimalToWhole(size, printed), printed)];
    }),
  );
}

/** Amounts shared by weights in whole steps: `share1`, `share2` …, and how many got each amount. */
function shareAmount({ values = [], step, weights = [] }: CallRun): Figures {
  const places = text(step, 'step').split('.')[1]?.length ?? 0;
  const whole = decimalToWhole(text(values[0], 'values'), places);
  const shares = shareOut(
    whole,
    weights.map((weight) => decimalToWhole(weight, 0)),
  ).map((share) => wholeToDecimal(share, places));
  const figures: Figures = {};
  shares.forEach((share, index) => {
    figures[`share${index + 1}`] = share;
    figures[`of ${share}`] = String(shares.filter((other) => other === share).length);
  });
  return figures;
}

/** Days and, where a rule is given, its factor: `days1`, `factor1` … */
function periodFigures({ periods = [], rule }: CallRun): Figures {
  const figures: Figures = {};
  periods.forEach(([from, to], index) => {
    const period = periodOf(text(from, 'from'), text(to, 'to'));
    figures[`days${index + 1}`] = String(periodDays(period));
    if (rule === undefined) return;
    const { numerator, denominator } = dayFactor(rule as DayRule, period);
    figures[`factor${index + 1}`] = exactText(numerator, denominator);
  });
  return figures;
}

const CALLS: Readonly<Record<string, (run: CallRun) => Figures>> = {
  roundQuotient: roundEach,
  shareOut: shareAmount,
  dayFactor: periodFigures,
  periodDays: periodFigures,
  isLeapYear: ({ values = [] }) =>
    Object.fromEntries(
      values.map((year) => [`${year} is`, isLeapYear(decimalToWhole(year, 0)) ? 'leap' : 'common']),
    ),
  minorUnitDigits: ({ values = [] }) =>
    Object.fromEntries(values.map((code) => [code, String(minorUnitDigits(code))])),
  /** For figures that only `derived` works out, with the engine's rounding. */
  given: ({ values = [] }) => Object.fromEntries(values.map((value) => [value, value])),
};

/**
 * Call a function of the engine by name.
 *
 * @throws Error when no such call is known
 */
export function runCall(name: string, run: CallRun): Figures {
  const call = CALLS[name];
  if (call === undefined) throw new Error(`no call "${name}"`);
  return call(run);
}
