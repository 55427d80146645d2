import { calendarDay, type Period } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import { needsProfile } from './quote-netting-windows.ts';
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

/** The year of a period from 0 on, and no more than the last. */
function yearOf({ start, years }: PreparedQuote['input'], { from }: Period): number {
  const [first, own] = [calendarDay(start), calendarDay(from)];
  const months = (own.year - first.year) * 12 + own.month - first.month;
  return Math.min(years - 1, Math.max(0, Math.floor(months / 12)));
}

/**
 * Year flows of a projection, with what was saved in place of what it expects of the same periods: that is the
 * promise of them, times what the projection of that year is of the promised one, cut to whole coins.
 */
function flowsWith(quote: Quote, quoted: Quote, { rows, grid }: SoFar): readonly number[] {
  const { years, outlay, input } = quote;
  const more = new Float64Array(years.length);
  for (const { period, promised, actual } of rows) {
    const year = yearOf(input, period);
    const [own, base] = [years[year]?.saving ?? 0, quoted.years[year]?.saving ?? 0];
    const expected = base === 0 || own === base ? promised.saving : (promised.saving * own) / base;
    more[year] = (more[year] as number) + ((actual.saving - expected) * quote.grid) / grid;
  }
  return [
    outlay.subsidy - outlay.price,
    ...years.map(({ net }, year) => net + Math.floor(more[year] as number)),
  ];
}

/**
 * The payback restated: with what was saved so far, and the rest of the life as quoted, or as it was so far.
 */
export function restatedPayback(prepared: PreparedQuote, soFar: SoFar): RestatedPayback {
  const { input, profile } = prepared;
  const { rows, tariff } = soFar;
  const quoted = workOutQuote(prepared);
  const sum = (key: 'use' | 'generation' | 'selfUse', of: 'actual' | 'promised'): number =>
    rows.reduce((all, row) => all + row[of][key], 0);
  const made = sum('generation', 'actual');
  const own = sum('selfUse', 'actual');
  const isAsPromised = own === sum('selfUse', 'promised') && made === sum('generation', 'promised');
  const goingOn = prepareQuote(
    {
      ...input,
      // The tariff of today has today's rates: what rose until now is in them.
      ratesOfYear: yearOf(input, (rows.at(-1) as PromisedPeriod).period),
      useFactors: timesRatio(input.useFactors, sum('use', 'actual'), sum('use', 'promised')),
      generationFactors: timesRatio(input.generationFactors, made, sum('generation', 'promised')),
      share: made === 0 || isAsPromised ? input.share : { numerator: own, denominator: made },
    },
    tariff,
    undefined,
    // What meters show of own use has the battery in it. Time blocks ask for the profile all the same.
    made === 0 || isAsPromised || needsProfile(tariff).length > 0
      ? { profile: profile?.source, withBattery: prepared.hasBattery }
      : { withBattery: false },
  );
  const projected = goingOn.value === null ? null : workOutQuote(goingOn.value);
  return {
    promised: quoted.measures.simple.first,
    restAsQuoted: simplePayback(flowsWith(quoted, quoted, soFar)).first,
    ifItGoesOn: projected === null ? null : simplePayback(flowsWith(projected, quoted, soFar)).first,
  };
}
