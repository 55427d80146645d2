import { monthParts, type Period } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import { prepareQuote, type PreparedQuote } from './quote-prepare.ts';
import { workOutQuote } from './quote-work-out.ts';
import {
  nearestDouble,
  simplePayback,
  timesFactor,
  type PromisedPeriod,
  type Quote,
  type RestatedPayback,
  type YearFactors,
} from './quote/index.ts';

/** What happened so far. */
interface SoFar {
  readonly rows: readonly PromisedPeriod[];
  readonly grid: number;
  readonly tariff: Tariff;
}

function timesRatio({ exact }: YearFactors, actual: number, promised: number): YearFactors {
  if (promised <= 0) return { exact, doubles: Float64Array.from(exact, nearestDouble) };
  const ratio = { numerator: BigInt(actual), denominator: BigInt(promised) };
  const scaled = exact.map((factor) => timesFactor(factor, ratio));
  return { exact: scaled, doubles: Float64Array.from(scaled, nearestDouble) };
}

/** How many months of the life have passed: whole ones. */
function monthsPassed({ input }: PreparedQuote, last: Period): number {
  return monthParts({ from: input.start, to: last.to }).filter(({ days, length }) => days === length).length;
}

/**
 * Year flows with what happened in place of the months that have passed: savings of a year that is not whole are
 * those that came and the twelfths of the projection that are left, cut to whole coins.
 */
function flowsWith(quote: Quote, came: number, passed: number): readonly number[] {
  const { years, outlay, grid } = quote;
  const coins = (value: number): number => Math.floor(value * grid) / grid;
  const flows = [outlay.subsidy - outlay.price];
  const before = Math.floor(passed / 12);
  const share = (passed - before * 12) / 12;
  const expected =
    years.slice(0, before).reduce((sum, { saving }) => sum + saving, 0) +
    (years[before]?.saving ?? 0) * share;
  years.forEach(({ saving, cost }, year) => {
    const isPast = year < before;
    // What came is spread over the years as the projection is: only the sum is known to be different.
    const own = isPast ? saving : year === before ? saving * share : 0;
    const rest = isPast ? 0 : saving - own;
    const real = expected === 0 ? 0 : (came * own) / expected;
    flows.push(coins(real + rest) - cost);
  });
  return flows.map((flow) => Math.floor(flow));
}

/**
 * The payback restated: with what was saved so far, and the rest of the life as quoted, or as it was so far.
 */
export function restatedPayback(prepared: PreparedQuote, { rows, grid, tariff }: SoFar): RestatedPayback {
  const { input, profile } = prepared;
  const quoted = workOutQuote(prepared);
  const sum = (key: 'use' | 'generation' | 'selfUse', of: 'actual' | 'promised'): number =>
    rows.reduce((all, row) => all + row[of][key], 0);
  const came = (rows.reduce((all, { actual }) => all + actual.saving, 0) * quoted.grid) / grid;
  const last = rows.at(-1);
  const passed = last === undefined ? 0 : monthsPassed(prepared, last.period);
  const made = sum('generation', 'actual');
  const goingOn = prepareQuote(
    {
      ...input,
      useFactors: timesRatio(input.useFactors, sum('use', 'actual'), sum('use', 'promised')),
      generationFactors: timesRatio(input.generationFactors, made, sum('generation', 'promised')),
      share: made === 0 ? input.share : { numerator: sum('selfUse', 'actual'), denominator: made },
    },
    tariff,
    undefined,
    // What meters show of own use has the battery in it.
    made === 0 ? { profile } : { withBattery: false },
  );
  const own = goingOn.value === null ? null : workOutQuote(goingOn.value);
  return {
    promised: quoted.measures.simple.first,
    restAsQuoted: simplePayback(flowsWith(quoted, came, passed)).first,
    ifItGoesOn: own === null ? null : simplePayback(flowsWith(own, came, passed)).first,
  };
}
