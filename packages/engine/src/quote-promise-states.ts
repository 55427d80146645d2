import { calendarDay, commonMultiple, type Finding, type Period } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import { lifeBiller, lifeTariff, raisesOf, type LifeBiller } from './quote-life.ts';
import { chargeFactors, type PreparedQuote } from './quote-prepare.ts';
import type { PromisedUnits } from './quote-promised-units.ts';
import type { PeriodQuantities, PromisedColumns, PromiseRow } from './quote-promised-columns.ts';
import {
  makeLifeUnits,
  moneyGrid,
  PROMISE_CAUSES,
  UNIT_COLUMNS,
  type LifeUnits,
  type PeriodMoney,
  type PeriodUnits,
} from './quote/index.ts';

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
  { periods, columns }: Pick<Compared, 'periods' | 'columns'>,
): Billers | readonly Finding[] {
  const { input, tariff } = prepared;
  const { quantities, payable, settlementDay } = input.document;
  const terms = { ...input, quantities, settlementDay, periods, names: [...UNIT_COLUMNS, ...columns.names] };
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
export interface Compared {
  readonly periods: readonly Period[];
  readonly promised: PromisedUnits;
  readonly actual: readonly PeriodUnits[];
  /** Of each period as it came, what is known besides, by name. */
  readonly quantities: readonly PeriodQuantities[];
  readonly columns: PromisedColumns;
}

/** What a battery loses and holds of own use, as the rule of the quote has it; never more than all of it. */
export function lostOf({ lost }: PromisedUnits, at: number, units: PeriodUnits): number {
  return Math.min(units.selfUse, lost(at, units.generation, units.use));
}

/** The rows of all periods after so many causes. */
function rowsAfter(compared: Compared, causes: number): readonly PromiseRow[] {
  const { promised, actual, quantities, columns } = compared;
  return promised.units.map((one, at) => {
    const own = (made: number, used: number): number => promised.own(at, made, used);
    const units = mixed(one, actual[at] ?? one, causes, own);
    const assumed = { ...units, lost: lostOf(promised, at, units) };
    return causes >= 3
      ? columns.actual(at, assumed, quantities[at] ?? {}, one)
      : columns.assumed(at, assumed, one);
  });
}

/** Write rows into the columns that bills are made of. */
function write({ withPlant, withoutPlant, width }: LifeUnits, rows: readonly PromiseRow[]): void {
  rows.forEach((row, at) => {
    withPlant.set(row.withPlant, at * width);
    withoutPlant.set(row.withoutPlant, at * width);
  });
}

/** The money of every state between the promise and what came, on one grid. */
export interface PromiseStates {
  readonly states: readonly (readonly PeriodMoney[])[];
  readonly grid: number;
}

/**
 * Bill some periods as promised, and then with one cause after the other put to what came.
 *
 * Under time blocks use and generation change units by the shape of the profile; from own use on, units of each block
 * are those that came, so that when they were used is part of it.
 *
 * @param actual  the tariff of today
 * @returns       findings where there are no bills
 */
export function promiseStates(
  prepared: PreparedQuote,
  actual: Tariff,
  compared: Compared,
): PromiseStates | readonly Finding[] {
  const billers = billersOf(prepared, actual, compared);
  if (!('quoted' in billers)) return billers;
  const { quoted, charged, today } = billers;
  const { input } = prepared;
  const { periods, columns } = compared;
  const raises = raisesOf(chargeFactors(input).factors, input.years, yearsOf(prepared, periods));
  const units = makeLifeUnits(periods.length, UNIT_COLUMNS.length + columns.names.length);
  const states: State[] = [];
  for (let causes = 0; causes <= PROMISE_CAUSES.length; causes += 1) {
    write(units, rowsAfter(compared, causes));
    const biller = causes <= 3 ? quoted : causes === 4 ? (charged ?? today) : today;
    const found = biller.run(units, causes <= 3 ? raises : null, 'both');
    if (found.length > 0) return found;
    states.push(stateOf(biller));
  }
  const coins = moneyGrid(prepared.tariff.document.currency);
  const grid = states.reduce((all, state) => commonMultiple(all, state.grid), coins);
  return { states: states.map((state) => onFiner(state, grid)), grid };
}
