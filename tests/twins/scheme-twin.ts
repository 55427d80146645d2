import { addDays, addMonths, differenceInCalendarDays, format, getDaysInMonth, parseISO } from 'date-fns';
import type { Charge, LedgersRule, Rounding, TariffDocument, UnitsPeriod } from '@unitbook/engine';
import { twinBill } from './decimal-twin.ts';
import {
  compare,
  dividedBy,
  fraction,
  largest,
  least,
  minus,
  plus,
  roundFraction,
  times,
  ZERO,
  type Fraction,
} from './fraction.ts';
import { priceOf } from './twin-price.ts';

/**
 * The naive twin of the scheme `ledgers`: it walks the document, definition by definition, lot by lot and
 * line by line, in decimal.js, with texts and date-fns for days. It shares no code with the engine.
 */

type Definition = NonNullable<LedgersRule['quantities']>[number];
type Ledger = NonNullable<LedgersRule['ledgers']>[number];

/** What a twin year is made from. */
export interface SchemeInput {
  readonly document: TariffDocument;
  readonly since: string;
  readonly settlementDay: string;
  /** Balances brought forward, by ledger. */
  readonly opening: Readonly<Record<string, string>>;
  readonly periods: readonly UnitsPeriod[];
}

/** One ledger in one period. */
interface TwinLedger {
  readonly opening: Fraction;
  readonly added: Fraction;
  readonly used: Fraction;
  readonly paid: Fraction;
  readonly lapsed: Fraction;
  readonly closing: Fraction;
}

/** One period. */
export interface TwinMonth {
  readonly quantities: ReadonlyMap<string, Fraction>;
  /** In the order of the bill; a period that is split has the lines of each part. */
  readonly lines: readonly (readonly [id: string, amount: Fraction])[];
  /** What ledgers pay in this bill, each below 0. */
  readonly payments: readonly Fraction[];
  readonly payable: Fraction;
  readonly ledgers: ReadonlyMap<string, TwinLedger>;
}

interface Lot {
  /** The first day after the period that earned it. */
  readonly born: string;
  left: Fraction;
}

interface Account {
  readonly lots: Lot[];
  /** The first day of the periods in a row that ended with something left. */
  creditSince: string | null;
}

type Quantities = Map<string, Fraction>;

const HUNDRED = fraction(100);
const DECIMAL = /^-?\d/;
const negative = (value: Fraction): Fraction => minus(ZERO, value);
const isMore = (a: Fraction, b: Fraction): boolean => compare(a, b) > 0;
const sum = (values: readonly Fraction[]): Fraction => values.reduce(plus, ZERO);
/** The same value in lowest terms: a year of fractions would need more digits than decimal.js keeps. */
function reduced({ top, bottom }: Fraction): Fraction {
  const scale = 10n ** BigInt(Math.max(top.decimalPlaces(), bottom.decimalPlaces()));
  const whole = (value: Fraction['top']): bigint => BigInt(value.times(scale.toString()).toFixed(0));
  let [a, b] = [whole(top), whole(bottom)];
  while (b !== 0n) [a, b] = [b, a % b];
  const divisor = a < 0n ? -a : a;
  return divisor === 0n ? ZERO : fraction(whole(top) / divisor, (whole(bottom) / divisor).toString());
}
const isoDay = (date: Date): string => format(date, 'yyyy-MM-dd');
const lastDay = ({ to }: UnitsPeriod): string => isoDay(addDays(parseISO(to), -1));
const daysOf = ({ from, to }: UnitsPeriod): number => differenceInCalendarDays(parseISO(to), parseISO(from));

const round = (value: Fraction, rounding: Rounding | undefined): Fraction =>
  rounding === undefined ? value : roundFraction(value, rounding);

/** A day of some year; the last of February where it has no 29th. */
function dayIn(year: number, monthDay: string): string {
  const day = `${String(year)}-${monthDay}`;
  const isLeap = getDaysInMonth(new Date(year, 1, 1)) === 29;
  return monthDay === '02-29' && !isLeap ? `${String(year)}-02-28` : day;
}

const yearOf = (day: string): number => Number.parseInt(day.slice(0, 4), 10);

/** Units of a supply go to a demand, one route after the other. */
function net(definition: Definition & { is: 'netting' }, quantities: Quantities): void {
  const { id, supply, demand, most, rounding } = definition;
  const supplied = new Map(supply.map((name) => [name, quantities.get(name) ?? ZERO]));
  const wanted = new Map(demand.map((name) => [name, quantities.get(name) ?? ZERO]));
  let allowed = most === undefined ? null : (quantities.get(most) ?? ZERO);
  let total = ZERO;
  for (const { from, to, worth } of twinRoutes(definition)) {
    const had = supplied.get(from) ?? ZERO;
    const lacked = wanted.get(to) ?? ZERO;
    const rate = dividedBy(fraction(worth), HUNDRED);
    const isOne = compare(rate, fraction(1)) === 0;
    const worthOf = isOne ? had : round(times(had, rate), rounding);
    let met = least(worthOf, lacked);
    if (allowed !== null) met = least(met, allowed);
    const upward = rounding === undefined ? undefined : ({ ...rounding, mode: 'up' } as const);
    const used = isOne ? met : least(had, round(dividedBy(met, rate), upward));
    supplied.set(from, minus(had, used));
    wanted.set(to, minus(lacked, met));
    if (allowed !== null) allowed = minus(allowed, met);
    total = plus(total, met);
  }
  quantities.set(id, total);
  for (const [name, left] of [...supplied, ...wanted]) quantities.set(`${id}.${name}`, left);
}

interface Route {
  readonly from: string;
  readonly to: string;
  readonly worth: string;
}

/** The ways of a netting, written out in the order of its words. */
function twinRoutes({ supply, demand, routes }: Definition & { is: 'netting' }): readonly Route[] {
  if (typeof routes !== 'string') return routes.map((route) => ({ ...route, worth: route.worth ?? '100' }));
  const pairs: Route[] = [];
  for (const to of demand) for (const from of supply) pairs.push({ from, to, worth: '100' });
  const block = (name: string): string | undefined => name.split('@')[1];
  const inside = pairs.filter(({ from, to }) => block(from) === block(to));
  if (routes === 'same-block') return inside;
  const outside = pairs.filter(({ from, to }) => block(from) !== block(to));
  return routes === 'any' ? pairs : [...inside, ...outside];
}

/** A year in the making. */
class TwinYear {
  private readonly input: SchemeInput;
  private readonly rule: LedgersRule;
  private readonly accounts = new Map<string, Account>();
  private readonly past: { readonly period: UnitsPeriod; readonly quantities: Quantities }[] = [];
  private due: Fraction[] = [];

  constructor(input: SchemeInput) {
    this.input = input;
    const [rule] = input.document.settlements;
    if (rule?.scheme !== 'ledgers') throw new Error('no ledgers');
    this.rule = rule;
    const first = input.periods[0]?.from ?? '';
    for (const { id } of rule.ledgers ?? []) {
      const left = fraction(input.opening[id] ?? '0');
      const lots = compare(left, ZERO) === 0 ? [] : [{ born: first, left }];
      this.accounts.set(id, { lots, creditSince: lots.length === 0 ? null : first });
    }
  }

  private account(id: string): Account {
    const account = this.accounts.get(id);
    if (account === undefined) throw new Error(id);
    return account;
  }

  private balance(id: string): Fraction {
    return reduced(sum(this.account(id).lots.map(({ left }) => left)));
  }

  month(period: UnitsPeriod): TwinMonth {
    const quantities = this.quantities(period);
    const ledgers = new Map<string, TwinLedger>();
    const now: Fraction[] = this.due;
    this.due = [];
    const close = (ledger: Ledger, keeps: Fraction, adds: Fraction): void => {
      const { line, payment } = this.close(ledger, { keeps, adds, period, quantities });
      ledgers.set(ledger.id, line);
      if (payment === null) return;
      if (ledger.payment?.inBill === 'same') now.push(payment);
      else this.due.push(payment);
    };
    const bill = this.bill(period, quantities);
    for (const ledger of this.rule.ledgers ?? []) {
      const isUnits = ledger.unit === 'kWh';
      const keeps = isUnits ? quantities.get(ledger.keeps ?? '') : bill.credit.get(ledger.id)?.keeps;
      const adds = isUnits ? quantities.get(ledger.adds ?? '') : bill.credit.get(ledger.id)?.adds;
      close(ledger, keeps ?? this.balance(ledger.id), adds ?? ZERO);
    }
    this.past.push({ period, quantities });
    const { total } = this.input.document.rounding;
    const all = plus(bill.sum, sum(now));
    const payable = total === 'none' ? all : roundFraction(all, total);
    return { quantities, lines: bill.lines, payments: now, payable, ledgers };
  }

  /** Part after part: each is charged on its days, and finds what the one before left of the money. */
  private bill(period: UnitsPeriod, quantities: Quantities) {
    const { document } = this.input;
    const money = (this.rule.ledgers ?? []).filter(({ unit }) => unit === 'money').map(({ id }) => id);
    const credit = new Map(money.map((id) => [id, { keeps: this.balance(id), adds: ZERO }]));
    const lines: (readonly [string, Fraction])[] = [];
    let total = ZERO;
    for (const { day, days, charges } of partsOf(document, period)) {
      const share = dividedBy(fraction(days), fraction(daysOf(period)));
      const shared = [...quantities].map(([name, value]) =>
        isPower(name, document) ? ([name, value] as const) : ([name, times(value, share)] as const),
      );
      const factors = { month: dividedBy(fraction(days), fraction(30)) };
      const balances = Object.fromEntries(money.map((id) => [id, this.available(credit.get(id))]));
      const priced = charges.map((charge) => pricedCharge(charge, document, period));
      const bill = twinBill({
        document,
        charges: priced,
        quantities: Object.fromEntries(shared),
        factors,
        day,
        balances,
      });
      lines.push(...bill.amounts);
      total = plus(total, bill.sum);
      for (const charge of charges) {
        if (charge.kind !== 'credit' || charge.ledger === undefined) continue;
        const amount = (id: string): Fraction => bill.amounts.get(id) ?? ZERO;
        const before = this.available(credit.get(charge.ledger));
        const used = negative(amount(charge.id));
        const fromBefore = least(before, used);
        const earned = sum((charge.earned ?? []).map(amount));
        const left = minus(earned, minus(used, fromBefore));
        credit.set(charge.ledger, { keeps: minus(before, fromBefore), adds: left });
      }
    }
    return { lines, sum: total, credit: this.untangled(credit, lines) };
  }

  private available(credit: { readonly keeps: Fraction; readonly adds: Fraction } | undefined): Fraction {
    return credit === undefined ? ZERO : plus(credit.keeps, credit.adds);
  }

  /** Over all parts: what is used comes out of the balance brought forward first, and the rest was earned. */
  private untangled(
    credit: ReadonlyMap<string, { readonly keeps: Fraction; readonly adds: Fraction }>,
    lines: readonly (readonly [string, Fraction])[],
  ) {
    return new Map(
      [...credit].map(([id, left]) => {
        const used = negative(sum(lines.filter(([line]) => line === 'credit').map(([, amount]) => amount)));
        const keeps = largest(ZERO, minus(this.balance(id), used));
        return [id, { keeps, adds: minus(this.available(left), keeps) }] as const;
      }),
    );
  }

  private close(
    rule: Ledger,
    {
      keeps,
      adds,
      period,
      quantities,
    }: { keeps: Fraction; adds: Fraction; period: UnitsPeriod; quantities: Quantities },
  ): { line: TwinLedger; payment: Fraction | null } {
    const account = this.account(rule.id);
    const opening = this.balance(rule.id);
    const used = minus(opening, keeps);
    take(account.lots, used);
    if (isMore(adds, ZERO)) account.lots.push({ born: period.to, left: adds });
    account.creditSince = isMore(this.balance(rule.id), ZERO) ? (account.creditSince ?? period.from) : null;
    let lapsed = this.endLives(rule, account, period);
    let paid = ZERO;
    if (rule.close !== undefined && this.isClosing(rule.close, period)) {
      if (rule.close.surplus === 'paid') {
        paid = this.paid(rule, this.balance(rule.id), quantities);
        take(account.lots, paid);
      }
      if (rule.close.surplus === 'lapses' || rule.payment?.rest === 'lapses') {
        lapsed = plus(lapsed, this.balance(rule.id));
        account.lots.length = 0;
      }
    }
    const closing = this.balance(rule.id);
    if (!isMore(closing, ZERO)) account.creditSince = null;
    const line = { opening, added: adds, used, paid, lapsed, closing };
    return { line, payment: isMore(paid, ZERO) ? this.payment(rule, paid, period) : null };
  }

  /** Drop what has outlived its time; what was dropped. */
  private endLives({ life }: Ledger, account: Account, period: UnitsPeriod): Fraction {
    if (life === undefined) return ZERO;
    const months = Number.parseInt(life.months, 10);
    const dead = account.lots.filter(({ born }) => {
      const begun = life.of === 'time-in-credit' ? (account.creditSince ?? period.to) : born;
      return isoDay(addMonths(parseISO(begun), months)) <= period.to;
    });
    const kept = account.lots.filter((lot) => !dead.includes(lot));
    account.lots.splice(0, account.lots.length, ...kept);
    return sum(dead.map(({ left }) => left));
  }

  private paid({ payment }: Ledger, balance: Fraction, quantities: Quantities): Fraction {
    const threshold = fraction(payment?.above ?? payment?.atLeast ?? '0');
    if (payment?.above !== undefined && !isMore(balance, threshold)) return ZERO;
    if (payment?.atLeast !== undefined && isMore(threshold, balance)) return ZERO;
    const due = payment?.pays === 'excess' ? minus(balance, threshold) : balance;
    return payment?.most === undefined ? due : least(due, quantities.get(payment.most) ?? ZERO);
  }

  private payment({ payment, unit }: Ledger, paid: Fraction, period: UnitsPeriod): Fraction {
    const { document } = this.input;
    const rate = unit === 'money' ? fraction(1) : priceOf(document, payment?.rate ?? '0', period);
    const { line } = document.rounding;
    const rounding = payment?.rounding ?? (line === 'none' ? undefined : line);
    return round(negative(times(paid, rate)), rounding);
  }

  /** Whether a day of the close falls in a period, day by day. */
  private isClosing({ on, everyYears }: NonNullable<Ledger['close']>, period: UnitsPeriod): boolean {
    if (on === 'every-period') return true;
    const { since, settlementDay } = this.input;
    if (on === 'anniversary') return endsOwnYears(since, period, Number.parseInt(everyYears ?? '1', 10));
    const names = on === 'chosen' ? [settlementDay] : on;
    for (let day = period.from; day < period.to; day = isoDay(addDays(parseISO(day), 1))) {
      for (const name of names) {
        if (day !== dayIn(yearOf(day), name)) continue;
        if (everyYears === undefined) return true;
        let first = yearOf(since);
        while (dayIn(first, name) <= since) first += 1;
        const elapsed = yearOf(day) - first;
        if (elapsed >= 0 && elapsed % Number.parseInt(everyYears, 10) === 0) return true;
      }
    }
    return false;
  }

  /** Everything that is given in a period, and everything that is worked out from it. */
  private quantities(period: UnitsPeriod): Quantities {
    const quantities: Quantities = new Map();
    for (const [name, text] of Object.entries(period.quantities)) quantities.set(name, fraction(text));
    for (const channel of ['import', 'export']) {
      const blocks = [...quantities].filter(([name]) => name.startsWith(`${channel}@`));
      if (!quantities.has(channel)) quantities.set(channel, sum(blocks.map(([, value]) => value)));
    }
    quantities.set('days', fraction(daysOf(period)));
    for (const { id, unit } of this.rule.ledgers ?? []) {
      if (unit === 'kWh') quantities.set(id, this.balance(id));
    }
    for (const [name, { whenMissing }] of Object.entries(this.input.document.measures ?? {})) {
      if (whenMissing === 'zero' && !quantities.has(name)) quantities.set(name, ZERO);
    }
    for (const definition of this.rule.quantities ?? []) {
      if (definition.is === 'netting') net(definition, quantities);
      else quantities.set(definition.id, this.defined(definition, quantities, period));
    }
    return quantities;
  }

  private defined(
    definition: Exclude<Definition, { is: 'netting' }>,
    quantities: Quantities,
    period: UnitsPeriod,
  ): Fraction {
    const value = (name: string): Fraction =>
      DECIMAL.test(name) ? fraction(name) : (quantities.get(name) ?? ZERO);
    const exact = (): Fraction => {
      switch (definition.is) {
        case 'part': {
          const top = value(definition.of);
          const limited = definition.upTo === undefined ? top : least(top, value(definition.upTo));
          return largest(ZERO, minus(limited, value(definition.above ?? '0')));
        }
        case 'choice': {
          const by = value(definition.by);
          const step = definition.steps.find(({ upTo }) => upTo === undefined || !isMore(by, fraction(upTo)));
          return value(step?.take ?? '0');
        }
        case 'quotient':
          return dividedBy(value(definition.of), value(definition.by));
        case 'running-total':
          return sum(this.lookedBack(definition, quantities, period));
        case 'mean': {
          const values = this.lookedBack(definition, quantities, period);
          return values.length === 0 ? ZERO : dividedBy(sum(values), fraction(values.length));
        }
        case 'days-share':
          return times(
            value(definition.of),
            dividedBy(fraction(wantedDays(definition, period)), fraction(daysOf(period))),
          );
        case 'percent':
          return times(sum(definition.of.map(value)), dividedBy(fraction(definition.percent), HUNDRED));
        default:
          return combined(definition.is, definition.of.map(value));
      }
    };
    return round(exact(), 'rounding' in definition ? definition.rounding : undefined);
  }

  /** The latest day, up to a day, on which the year of a total began. */
  private yearBegan(since: string, until: string): string {
    const { since: first, settlementDay } = this.input;
    const isChosen = since === 'chosen';
    const name = isChosen ? settlementDay : since === 'anniversary' ? first.slice(5) : since;
    // Where its owner chose the last day of the year, the next one begins the day after.
    const begins = [-1, 0]
      .map((years) => dayIn(yearOf(until) + years, name))
      .map((day) => (isChosen ? isoDay(addDays(parseISO(day), 1)) : day))
      .filter((day) => day <= until);
    return begins.at(-1) ?? isoDay(addDays(parseISO(dayIn(yearOf(until) - 2, name)), 1));
  }

  private lookedBack(
    definition: Definition & { is: 'running-total' | 'mean' },
    quantities: Quantities,
    period: UnitsPeriod,
  ): readonly Fraction[] {
    const { of, through } = definition;
    const now = through === 'this-period' ? [{ period, quantities }] : [];
    const all = [...this.past, ...now];
    const since = definition.is === 'running-total' ? definition.since : undefined;
    let counted = all;
    if (since !== undefined) {
      const from = this.yearBegan(since, period.from);
      counted = all.filter((one) => one.period.from >= from);
    } else if (definition.periods !== undefined) {
      counted = all.slice(-Number.parseInt(definition.periods, 10));
    }
    return counted.map((one) => one.quantities.get(of) ?? ZERO);
  }
}

/** Whether a period holds the last day of so many years of the account's own, counted from its first day. */
function endsOwnYears(since: string, period: UnitsPeriod, years: number): boolean {
  for (let count = years; count < 200; count += years) {
    const year = yearOf(since) + count;
    const isLeap = getDaysInMonth(new Date(year, 1, 1)) === 29;
    const next =
      since.endsWith('02-29') && !isLeap ? `${String(year)}-03-01` : `${String(year)}${since.slice(4)}`;
    const last = isoDay(addDays(parseISO(next), -1));
    if (last >= period.from && last < period.to) return true;
  }
  return false;
}

/** The days that a share of a period is counted for. */
function wantedDays({ days, when }: Definition & { is: 'days-share' }, period: UnitsPeriod): number {
  const own = daysOf(period);
  const month = days === 'month-of-last-day' ? lastDay(period) : period.from;
  const wanted = days.startsWith('month') ? getDaysInMonth(parseISO(month)) : Number.parseInt(days, 10);
  return when === 'longer' ? Math.min(own, wanted) : wanted;
}

function combined(is: string, values: readonly Fraction[]): Fraction {
  const [first = ZERO, ...rest] = values;
  switch (is) {
    case 'difference':
      return rest.reduce(minus, first);
    case 'excess':
      return largest(ZERO, rest.reduce(minus, first));
    case 'least':
      return values.reduce(least);
    case 'greatest':
      return values.reduce(largest);
    case 'product':
      return values.reduce(times);
    default:
      return sum(values);
  }
}

/** Take from the oldest lots first; those used up are gone. */
function take(lots: Lot[], amount: Fraction): void {
  let wanted = amount;
  while (isMore(wanted, ZERO)) {
    const [oldest] = lots;
    if (oldest === undefined) throw new Error('more was taken than there was');
    const taken = least(wanted, oldest.left);
    oldest.left = reduced(minus(oldest.left, taken));
    wanted = reduced(minus(wanted, taken));
    if (!isMore(oldest.left, ZERO)) lots.shift();
  }
}

/** Whether a quantity is the same on every day of a period, and so in every part of it. */
function isPower(name: string, { measures = {} }: TariffDocument): boolean {
  const { unit } = measures[name] ?? { unit: 'kWh' };
  return ['sanctioned-load', 'plant-capacity'].includes(name) || ['kW', 'kVA', 'class'].includes(unit);
}

/** Days of a period in a row that have the same version of the charges and the same seasons. */
interface Part {
  readonly day: string;
  days: number;
  readonly key: string;
  readonly charges: readonly Charge[];
}

/** The parts of a period, day by day; one where the document does not split it. */
function partsOf(document: TariffDocument, period: UnitsPeriod): readonly Part[] {
  const { rule } = document.versionChange;
  if (rule !== 'split-by-days') {
    const day = rule === 'in-force-on-first-day' ? period.from : lastDay(period);
    return [{ ...partOn(document, day), days: daysOf(period) }];
  }
  const parts: Part[] = [];
  for (let day = period.from; day < period.to; day = isoDay(addDays(parseISO(day), 1))) {
    const part = partOn(document, day);
    const last = parts.at(-1);
    if (last?.key === part.key) last.days += 1;
    else parts.push(part);
  }
  return parts;
}

function partOn(document: TariffDocument, day: string): Part {
  const version = document.versions.find(({ from, through }) => from <= day && day <= (through ?? '9999'));
  const at = day.slice(5);
  const seasons = Object.entries(document.seasons ?? {}).filter(([, { from, through }]) =>
    from <= through ? from <= at && at <= through : from <= at || at <= through,
  );
  const key = [version?.name, ...seasons.map(([name]) => name)].join(' ');
  return { day, days: 1, key, charges: version?.charges ?? [] };
}

/** A charge with the number of the period in place of every price. */
function pricedCharge(charge: Charge, document: TariffDocument, period: UnitsPeriod): Charge {
  const names = Object.keys(document.prices ?? {});
  return JSON.parse(JSON.stringify(charge), (key: string, value: unknown) =>
    ['rate', 'amount', 'percent'].includes(key) && typeof value === 'string' && names.includes(value)
      ? priceOf(document, value, period)
          .top.div(priceOf(document, value, period).bottom)
          .toFixed()
      : value,
  ) as Charge;
}

/** Every period of a year, each from what the one before left. */
export function twinYear(input: SchemeInput): readonly TwinMonth[] {
  const year = new TwinYear(input);
  return input.periods.map((period) => year.month(period));
}
