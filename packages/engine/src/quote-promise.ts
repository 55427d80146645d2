import { calendarDay, commonMultiple, type Finding, type Outcome, type Period } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import type { EnergyPeriod } from './energy/index.ts';
import { lifeBiller, lifeTariff, raisesOf, type LifeBiller } from './quote-life.ts';
import { chargeFactors, type PreparedQuote } from './quote-prepare.ts';
import { promisedUnits, type PromisedUnits } from './quote-promised-units.ts';
import { restatedPayback } from './quote-restate.ts';
import {
  drawTerms,
  generationBand,
  makeLifeUnits,
  moneyGrid,
  PROMISE_CAUSES,
  quoteFinding,
  WIDTH,
  type CausePart,
  type LifeUnits,
  type PeriodMoney,
  type PeriodUnits,
  type PromisedPeriod,
  type PromiseReport,
} from './quote/index.ts';

/** What really happened: periods off readings, one after the other, and the tariff they were billed by. */
export interface PromiseActual {
  /** Each with generation: without it use is not known. */
  readonly energies: readonly EnergyPeriod[];
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

/** What is reckoned with after so many causes: the first of them as they came, the others as promised. */
function mixed(
  promised: PeriodUnits,
  actual: PeriodUnits,
  causes: number,
  own: (made: number, used: number) => number,
): PeriodUnits {
  const use = causes >= 1 ? actual.use : promised.use;
  const generation = causes >= 2 ? actual.generation : promised.generation;
  const selfUse = causes >= 3 ? actual.selfUse : own(generation, use);
  return { use, generation, selfUse };
}

/** Write units into the columns that bills are made of. */
function write(into: LifeUnits, units: readonly PeriodUnits[], watts: number): void {
  units.forEach(({ use, generation, selfUse }, at) => {
    into.withPlant.set([use - selfUse, generation - selfUse, generation, watts], at * WIDTH);
    into.withoutPlant[at * WIDTH] = use;
  });
}

/** Money of every period, after so many causes, on the grid of its own bills. */
interface State {
  readonly grid: number;
  readonly money: readonly PeriodMoney[];
}

function stateOf({ bills }: LifeBiller): State {
  const money = Array.from(bills.before, (before, at) => {
    const [after, surplus] = [bills.after[at] as number, bills.surplus[at] as number];
    return { before, after, surplus, saving: before - after + surplus };
  });
  return { grid: bills.grid, money };
}

/** The same on a finer grid. */
const onFiner = ({ grid, money }: State, finer: number): readonly PeriodMoney[] =>
  money.map(({ before, after, surplus, saving }) => {
    const times = finer / grid;
    return { before: before * times, after: after * times, surplus: surplus * times, saving: saving * times };
  });

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

/** The billers of the last steps: quote, its settlement under the charges of today, all of today. */
interface Billers {
  readonly quoted: LifeBiller;
  readonly charged: LifeBiller | null;
  readonly today: LifeBiller;
}

type Document = Tariff['document'];

function billersOf(
  prepared: PreparedQuote,
  actual: Tariff,
  periods: readonly Period[],
): Billers | readonly Finding[] {
  const { input, tariff } = prepared;
  const { quantities, payable } = input.document;
  const terms = { ...input, quantities, periods };
  const { raised } = chargeFactors(input);
  const today = lifeTariff(actual, payable);
  if (today.value === null) return today.findings;
  // Prices that only the quote's settlement knows come with it.
  const settled = (document: Document): Document => ({
    ...document,
    settlements: tariff.document.settlements,
    prices: { ...tariff.document.prices, ...document.prices },
  });
  const charged = lifeTariff(actual, payable, settled);
  return {
    quoted: lifeBiller(tariff, terms, raised),
    charged: charged.value === null ? null : lifeBiller(charged.value, terms, []),
    today: lifeBiller(today.value, terms, []),
  };
}

/** The year of a period from 0 on, and no more than the last. */
function yearsOf({ input }: PreparedQuote, periods: readonly Period[]): Int32Array {
  const start = calendarDay(input.start);
  return Int32Array.from(periods, ({ from }) => {
    const { year, month } = calendarDay(from);
    return Math.min(input.years - 1, Math.floor(((year - start.year) * 12 + month - start.month) / 12));
  });
}

/** What units are known of some periods. */
interface Compared {
  readonly promised: PromisedUnits;
  readonly actual: readonly PeriodUnits[];
  readonly periods: readonly Period[];
}

/** The money of every state between the promise and what came, on one grid, or why there is none. */
function statesOf(
  prepared: PreparedQuote,
  { charged, quoted, today }: Billers,
  { promised, actual, periods }: Compared,
): { readonly states: readonly (readonly PeriodMoney[])[]; readonly grid: number } | readonly Finding[] {
  const { input } = prepared;
  const raises = raisesOf(chargeFactors(input).factors, input.years, yearsOf(prepared, periods));
  const units = makeLifeUnits(periods.length);
  const states: State[] = [];
  for (let causes = 0; causes <= PROMISE_CAUSES.length; causes += 1) {
    const row = promised.units.map((one, at) =>
      mixed(one, actual[at] ?? one, causes, (made, used) => promised.own(at, made, used)),
    );
    write(units, row, input.watts);
    const biller = causes <= 3 ? quoted : causes === 4 ? (charged ?? today) : today;
    const found = biller.run(units, causes <= 3 ? raises : null, 'both');
    if (found.length > 0) return found;
    states.push(stateOf(biller));
  }
  const coins = moneyGrid(prepared.tariff.document.currency);
  const grid = states.reduce((all, state) => commonMultiple(all, state.grid), coins);
  return { states: states.map((state) => onFiner(state, grid)), grid };
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

/**
 * Set what happened against a quote: each period as promised and as it came, and the difference split among use,
 * generation, own use, charges and scheme, in this order, so that the parts sum to it exactly. Each part is what
 * the bills change when that cause alone is put to what happened, those before it already so.
 *
 * @param prepared  the quote under the tariff of its day
 * @param actual    what happened
 * @returns         null with a finding where generation was not metered or a period cannot be billed
 */
export function checkPromise(prepared: PreparedQuote, actual: PromiseActual): Outcome<PromiseReport | null> {
  const { tariff } = actual;
  // Readings of the time before the plant are no part of its promise.
  const energies = actual.energies.filter(({ period }) => period.from >= prepared.input.start);
  const periods = energies.map(({ period }) => period);
  const came = actualUnits(energies);
  const [first, last] = [periods[0], periods.at(-1)];
  if (first === undefined || last === undefined || first.from < prepared.input.start) {
    return { value: null, findings: [quoteFinding('quote/promise-before-start', { path: ['start'] })] };
  }
  if (came === null)
    return { value: null, findings: [quoteFinding('quote/promise-without-generation', { path: [] })] };
  const blocks = prepared.profile?.blocks ?? [];
  if (blocks.length > 0) {
    const values = { blocks: blocks.join(', ') };
    return { value: null, findings: [quoteFinding('quote/promise-by-blocks', { path: [] }, values)] };
  }
  const promised = promisedUnits(prepared, periods);
  const billers = billersOf(prepared, tariff, periods);
  if (!('quoted' in billers)) return { value: null, findings: billers };
  const worked = statesOf(prepared, billers, { promised, actual: came, periods });
  if (!('states' in worked)) return { value: null, findings: worked };
  const { states, grid } = worked;
  const rows = periods.map((period, at): PromisedPeriod => ({
    period,
    promised: { ...(promised.units[at] as PeriodUnits), ...(states[0]?.[at] as PeriodMoney) },
    actual: { ...(came[at] as PeriodUnits), ...(states.at(-1)?.[at] as PeriodMoney) },
    parts: partsAt(states, at),
  }));
  return { value: reportOf(prepared, { rows, grid, tariff }), findings: [] };
}

function reportOf(
  prepared: PreparedQuote,
  {
    rows,
    grid,
    tariff,
  }: { readonly rows: readonly PromisedPeriod[]; readonly grid: number; readonly tariff: Tariff },
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
    payback: restatedPayback(prepared, { rows, grid, tariff }),
  };
}
