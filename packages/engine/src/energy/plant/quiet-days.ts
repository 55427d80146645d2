import { commonDivisor, dayText, exactText, quotientText, type Finding } from '../../quantity/index.ts';
import { placesOf, runsOf, type DayFindings, type Run, type SeriesDay } from './day-series.ts';
import { plantFinding, type PlantFindingCode } from './findings.ts';

type Series = readonly SeriesDay[];
type Values = Readonly<Record<string, string>>;

/** A finding about a run of days: where it begins, and its first and last day. */
function runFinding(code: PlantFindingCode, { from, to }: Run, series: Series, values: Values = {}): Finding {
  const [first, last] = [series[from]?.day, series[to - 1]?.day].map((day) =>
    day === undefined ? '' : dayText(day),
  );
  const span = { first: first ?? '', last: last ?? '', count: String(to - from) };
  return plantFinding(code, { path: ['days', first ?? ''] }, { ...span, ...values });
}

/** Days without a value. */
export function missingDays(series: Series): readonly Finding[] {
  return runsOf(series, ({ wattHours }) => wattHours === null).map((run) =>
    runFinding('plant/missing-days', run, series),
  );
}

/** How many days with a value on either side tell what is usual. */
const AROUND = 7;

/** The mean of the nearest days that made something, in kWh with one decimal. */
function usualAround({ from, to }: Run, series: Series): string {
  const made = (days: Series): readonly number[] =>
    days.map(({ wattHours }) => wattHours ?? 0).filter((wattHours) => wattHours > 0);
  const near = [...made(series.slice(0, from)).slice(-AROUND), ...made(series.slice(to)).slice(0, AROUND)];
  const sum = near.reduce((total, wattHours) => total + wattHours, 0);
  return near.length === 0 ? '0' : quotientText(sum, near.length * 1000, 1);
}

/** A register stands still, not the plant, where energy went to the grid on two days or more of the run. */
const LEAST_EXPORT_DAYS = 2;

function zeroFinding(run: Run, series: Series): Finding {
  const given = series.slice(run.from, run.to).map(({ exportWattHours }) => exportWattHours ?? 0);
  if (given.filter((wattHours) => wattHours > 0).length >= LEAST_EXPORT_DAYS) {
    const sum = given.reduce((total, wattHours) => total + wattHours, 0);
    return runFinding('plant/stuck-register', run, series, { export: exactText(sum, 1000) });
  }
  return runFinding('plant/zero-days', run, series, { around: usualAround(run, series) });
}

/**
 * Days on which the plant made nothing. Those before its first unit are taken for days before it ran, unless
 * its first day is known; those the diary calls an outage are no finding.
 *
 * @param isBegun  whether the plant document gives the first day of the plant
 */
export function zeroDays(series: Series, isBegun: boolean): DayFindings {
  const start = isBegun ? 0 : series.findIndex(({ wattHours }) => (wattHours ?? 0) > 0);
  const runs = runsOf(series, ({ wattHours }) => wattHours === 0);
  const asked = runsOf(series, ({ wattHours, isOutage }) => wattHours === 0 && !isOutage);
  const findings = asked.map((run) =>
    run.to <= start ? runFinding('plant/nothing-yet', run, series) : zeroFinding(run, series),
  );
  return { findings, unfit: runs.flatMap(placesOf) };
}

/** A value of so many steps of the meter hardly comes three times in a row by chance. */
const FINE_STEPS = 100;
const LEAST_FINE_RUN = 3;
/** Coarse values, such as whole units, come again by chance: 20 values, seven in a row once in millions. */
const LEAST_COARSE_RUN = 7;

/** The same value, not 0, on days in a row: three, or seven where values are coarse. Our own rule. */
export function sameValues(series: Series): DayFindings {
  const step = series.reduce((divisor, { wattHours }) => {
    if (wattHours === null || wattHours === 0) return divisor;
    return divisor === 0 ? wattHours : commonDivisor(divisor, wattHours);
  }, 0);
  const runs = runsOf(
    series,
    ({ wattHours }) => (wattHours ?? 0) > 0,
    (one, before) => one.wattHours === before.wattHours,
  ).filter((run) => {
    const value = series[run.from]?.wattHours ?? 0;
    return run.to - run.from >= (value >= FINE_STEPS * step ? LEAST_FINE_RUN : LEAST_COARSE_RUN);
  });
  const findings = runs.map((run) =>
    runFinding('plant/same-value', run, series, {
      units: exactText(series[run.from]?.wattHours ?? 0, 1000),
    }),
  );
  return { findings, unfit: runs.flatMap(placesOf) };
}
