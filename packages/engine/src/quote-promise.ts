import type { Finding, Outcome } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import type { EnergyPeriod } from './energy/index.ts';
import type { PreparedQuote } from './quote-prepare.ts';
import { promiseBlockFindings } from './quote-promise-blocks.ts';
import { lostOf, promiseStates, type Compared } from './quote-promise-states.ts';
import { PromisedColumns, type PeriodQuantities } from './quote-promised-columns.ts';
import { promisedUnits } from './quote-promised-units.ts';
import { restatedPayback } from './quote-restate.ts';
import {
  batteryOf,
  drawTerms,
  generationBand,
  PROMISE_CAUSES,
  quoteFinding,
  type CausePart,
  type PeriodMoney,
  type PeriodUnits,
  type PromisedPeriod,
  type PromiseReport,
} from './quote/index.ts';

/** What really happened: periods off readings, one after the other, and the tariff they were billed by. */
export interface PromiseActual {
  /** Each with generation: without it use is not known. */
  readonly energies: readonly EnergyPeriod[];
  /**
   * What is known of each of them besides, by name: units of time blocks such as `import@peak`, as registers of rates
   * count them, and measures. Left out: nothing.
   */
  readonly quantities?: readonly PeriodQuantities[];
  readonly tariff: Tariff;
}

function actualUnits(energies: readonly EnergyPeriod[]): readonly PeriodUnits[] | null {
  const all = energies.map(({ generation, selfConsumption, totalUse }) =>
    generation === null || selfConsumption === null || totalUse === null
      ? null
      : {
          use: totalUse.numerator as number,
          generation: generation.numerator as number,
          selfUse: selfConsumption.numerator as number,
        },
  );
  return all.every((one) => one !== null) ? all : null;
}

function totalOf(parts: readonly (PeriodUnits & PeriodMoney)[]): PeriodUnits & PeriodMoney {
  const sum = (key: keyof (PeriodUnits & PeriodMoney)): number =>
    parts.reduce((all, part) => all + part[key], 0);
  return {
    use: sum('use'),
    generation: sum('generation'),
    selfUse: sum('selfUse'),
    before: sum('before'),
    after: sum('after'),
    surplus: sum('surplus'),
    saving: sum('saving'),
  };
}

function partsAt(states: readonly (readonly PeriodMoney[])[], at: number): readonly CausePart[] {
  return PROMISE_CAUSES.map((cause, step) => {
    const [before, after] = [states[step]?.[at], states[step + 1]?.[at]];
    return {
      cause,
      bill: (after?.after ?? 0) - (before?.after ?? 0),
      saving: (after?.saving ?? 0) - (before?.saving ?? 0),
    };
  });
}

/** What is lost in all periods, by sides; null where the quote has no battery. */
function lostIn(prepared: PreparedQuote, { promised, actual }: Compared): PromiseReport['lost'] {
  if (!prepared.hasBattery || batteryOf(prepared.input.document) === null) return null;
  const sum = (side: readonly PeriodUnits[]): number =>
    side.reduce((all, units, at) => all + lostOf(promised, at, units), 0);
  return { promised: sum(promised.units), actual: sum(actual) };
}

/** That the tariff of today counts in another money than that of the quote. */
function otherCurrency({ tariff }: PreparedQuote, { document }: Tariff): readonly Finding[] {
  const [own, other] = [tariff.document.currency, document.currency];
  return own === other ? [] : [quoteFinding('quote/other-currency', { path: [] }, { own, other })];
}

/** That periods from before the start do not count. */
function leftOut(count: number): readonly Finding[] {
  if (count === 0) return [];
  const words = count === 1 ? 'a period' : `${String(count)} periods`;
  return [quoteFinding('quote/promise-leaves-out', { path: ['start'] }, { count: words })];
}

/**
 * Set what happened against a quote: each period as promised and as it came, and the difference split among use,
 * generation, own use, charges and scheme, in this order, so that the parts sum to it exactly. Each part is what
 * the bills change when that cause alone is put to what happened, those before it already so.
 *
 * Under time blocks own use has in it when units were used: promised blocks are those of the profile.
 *
 * @param prepared  the quote under the tariff of its day
 * @param actual    what happened
 * @returns         null with a finding where generation was not metered or a period cannot be billed
 */
export function checkPromise(prepared: PreparedQuote, actual: PromiseActual): Outcome<PromiseReport | null> {
  const { tariff } = actual;
  // Readings of the time before the plant are no part of its promise.
  const isSince = ({ period }: EnergyPeriod): boolean => period.from >= prepared.input.start;
  const energies = actual.energies.filter(isSince);
  const quantities = (actual.quantities ?? []).filter((_, at) => {
    const energy = actual.energies[at];
    return energy !== undefined && isSince(energy);
  });
  const money = otherCurrency(prepared, tariff);
  if (money.length > 0) return { value: null, findings: money };
  const came = actualUnits(energies);
  if (energies.length === 0) {
    return { value: null, findings: [quoteFinding('quote/promise-before-start', { path: ['start'] })] };
  }
  if (came === null)
    return { value: null, findings: [quoteFinding('quote/promise-without-generation', { path: [] })] };
  const ofBlocks = promiseBlockFindings(prepared, tariff, energies, quantities);
  if (ofBlocks.length > 0) return { value: null, findings: ofBlocks };
  const periods = energies.map(({ period }) => period);
  const promised = promisedUnits(prepared, periods);
  const columns = new PromisedColumns(prepared, periods);
  const compared = { periods, promised, actual: came, quantities, columns };
  const worked = promiseStates(prepared, tariff, compared);
  if (!('states' in worked)) return { value: null, findings: worked };
  const { states, grid } = worked;
  const rows = periods.map((period, at): PromisedPeriod => ({
    period,
    promised: { ...(promised.units[at] as PeriodUnits), ...(states[0]?.[at] as PeriodMoney) },
    actual: { ...(came[at] as PeriodUnits), ...(states.at(-1)?.[at] as PeriodMoney) },
    parts: partsAt(states, at),
  }));
  const lost = lostIn(prepared, compared);
  const findings = leftOut(actual.energies.length - energies.length);
  return { value: reportOf(prepared, { rows, grid, tariff, lost }), findings };
}

function reportOf(
  prepared: PreparedQuote,
  {
    rows,
    grid,
    tariff,
    lost,
  }: Pick<PromiseReport, 'grid' | 'lost'> & {
    readonly rows: readonly PromisedPeriod[];
    readonly tariff: Tariff;
  },
): PromiseReport {
  const promised = totalOf(rows.map((row) => row.promised));
  const actual = totalOf(rows.map((row) => row.actual));
  const terms = drawTerms(prepared.input.document);
  const sigma = Math.hypot(terms.generation, terms.yearToYear);
  return {
    grid,
    periods: rows,
    promised,
    actual,
    parts: PROMISE_CAUSES.map((cause, at) => ({
      cause,
      bill: rows.reduce((sum, { parts }) => sum + (parts[at]?.bill ?? 0), 0),
      saving: rows.reduce((sum, { parts }) => sum + (parts[at]?.saving ?? 0), 0),
    })),
    generation: generationBand(actual.generation, promised.generation, { months: rows.length, sigma }),
    lost,
    payback: restatedPayback(prepared, { rows, grid, tariff }),
  };
}
