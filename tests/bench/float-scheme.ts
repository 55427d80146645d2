import {
  addDays,
  calendarDay,
  dayNumber,
  dayText,
  daysInMonth,
  holdsDayOfYear,
  inForceDuring,
  paidRate,
  parseDay,
  periodDays,
  quickMove,
  seasonsOn,
  type DayNumber,
  type LedgerRule,
  type LedgersRule,
  type Period,
  type Tariff,
  type UnitNettingRule,
} from '@unitbook/engine';
import type { ExampleYear } from '../support/example-years.ts';
import { chargesSource, roundedSource, type ChargeNames } from './float-charges.ts';
import { definitionSource, type FloatTime } from './float-quantities.ts';

/** A year of bills in floats: units in kWh, a row for each period; writes payables. */
export type FloatYear = (units: Float64Array, payables: Float64Array) => number;

const variable = (name: string): string => `v_${name.replace(/[^a-z0-9]/g, '_')}`;
const ledgerVariable = (id: string): string => `bank_${variable(id)}`;

/** What a year is written from. */
interface Writing extends ExampleYear {
  /** Names of which the past is kept. */
  readonly remembered: readonly string[];
}

function rememberedNames({ document }: Tariff): readonly string[] {
  const all = document.settlements.flatMap((rule) =>
    rule.scheme === 'ledgers' ? (rule.quantities ?? []) : [],
  );
  const names = all.flatMap((one) => (one.is === 'running-total' || one.is === 'mean' ? [one.of] : []));
  return [...new Set(names)];
}

/** Quantities given: the columns, the facts of the account, and what follows from them. */
function givenSource({ tariff, input }: Writing, period: Period): { source: string; known: Set<string> } {
  const { account, names } = input;
  const known = new Set<string>();
  const lines: string[] = [];
  const put = (name: string, value: string): void => {
    if (known.has(name)) return;
    known.add(name);
    lines.push(`const ${variable(name)} = ${value};`);
  };
  names.forEach((name, column) => {
    put(account.registers?.[name] ?? name, `units[at + ${String(column)}]`);
  });
  for (const [name, text] of Object.entries(account.quantities ?? {})) {
    put(account.registers?.[name] ?? name, String(Number(text)));
  }
  const blocks = (tariff.document.timeBlocks?.blocks ?? []).map(({ id }) => `@${id}`);
  for (const channel of ['import', 'export', 'generation']) {
    const own = blocks.map((block) => `${channel}${block}`).filter((name) => known.has(name));
    if (own.length > 0) put(channel, own.map(variable).join(' + '));
  }
  for (const suffix of [...blocks, '']) {
    const has = (name: string): boolean => known.has(`${name}${suffix}`);
    const of = (name: string): string => variable(`${name}${suffix}`);
    if (has('generation') && has('export')) {
      put(`self-consumption${suffix}`, `${of('generation')} - ${of('export')}`);
    }
    if (has('import') && has('self-consumption')) {
      put(`total-use${suffix}`, `${of('import')} + ${of('self-consumption')}`);
    }
  }
  put('days', String(periodDays(period)));
  return { source: lines.join('\n    '), known };
}

function paymentSource(
  { tariff }: Writing,
  {
    paid,
    rate,
    period,
    isNext,
    rounding,
  }: {
    readonly paid: string;
    readonly rate: string | undefined;
    readonly period: Period;
    readonly isNext: boolean;
    readonly rounding: { readonly step: string; readonly mode: string } | 'none' | undefined;
  },
): string {
  const price = rate === undefined ? '1' : String(Number(paidRate(tariff.document, rate, period).text));
  const { line } = tariff.document.rounding;
  const how = rounding ?? line;
  return `${isNext ? 'next' : 'due'} -= ${roundedSource(`${paid} * ${price}`, how === 'none' ? null : how)};`;
}

/** A ledger through a period: its balance, and lots where units have a life. */
function ledgerSource(
  rule: LedgerRule,
  writing: Writing,
  period: Period,
  moved: { keeps: string; adds: string },
): string {
  const bank = ledgerVariable(rule.id);
  const { account, periods } = writing.input;
  const days = [periods[0]?.from ?? period.from, ...periods.map(({ to }) => to)];
  const told = {
    since: account.since === undefined ? null : parseDay(account.since),
    settlementDay: account.settlementDay ?? null,
  };
  const above = rule.payment?.above ?? rule.payment?.atLeast;
  const terms = quickMove(rule, { period, account: told, days }, above === undefined ? null : Number(above));
  if (terms === null) throw new Error(`${rule.id}: no day`);
  const lines: string[] = [];
  if (rule.life?.of === 'each-unit') {
    const lots = `lots_${bank}`;
    lines.push(`let take_${bank} = ${bank} - ${moved.keeps};
    while (take_${bank} > 0 && ${lots}.length > 0) {
      const lot = ${lots}[0];
      if (lot.units > take_${bank}) { lot.units -= take_${bank}; break; }
      take_${bank} -= lot.units;
      ${lots}.shift();
    }
    ${bank} = ${moved.keeps} + ${moved.adds};
    if (${moved.adds} > 0) ${lots}.push({ born: ${String(period.to)}, units: ${moved.adds} });
    while (${lots}.length > 0 && ${lots}[0].born <= ${String(terms.deadThrough)}) ${bank} -= ${lots}.shift().units;`);
  } else lines.push(`${bank} = ${moved.keeps} + ${moved.adds};`);
  if (rule.life?.of === 'time-in-credit') {
    lines.push(`if (${bank} <= 0) since_${bank} = Infinity; else if (since_${bank} === Infinity) since_${bank} = ${String(period.from)};
    if (since_${bank} <= ${String(terms.spentThrough)}) { ${bank} = 0; since_${bank} = Infinity; }`);
  }
  const { payment } = rule;
  if (terms.pays && payment !== undefined) {
    const paid = `paid_${bank}`;
    const excess = payment.pays === 'excess' ? `${bank} - ${String(Number(above))}` : bank;
    const most = payment.most === undefined ? excess : `Math.min(${excess}, ${variable(payment.most)})`;
    const reached =
      above === undefined
        ? most
        : `${bank} ${payment.above === undefined ? '>=' : '>'} ${String(Number(above))} ? ${most} : 0`;
    lines.push(`const ${paid} = ${reached};`);
    const { rate, rounding, inBill } = payment;
    lines.push(
      paymentSource(writing, {
        paid,
        rate: rule.unit === 'money' ? undefined : rate,
        period,
        isNext: inBill === 'next',
        rounding,
      }),
    );
    lines.push(`${bank} -= ${paid};`);
    if (rule.life?.of === 'each-unit') lines.push(`if (${bank} <= 0) lots_${bank}.length = 0;`);
  }
  if (terms.drops)
    lines.push(`${bank} = 0;${rule.life?.of === 'each-unit' ? ` lots_${bank}.length = 0;` : ''}`);
  return lines.join('\n    ');
}

/** The version and the seasons that bill a period; a period that is split has no float loop. */
function chargesOf(writing: Writing, period: Period, names: ChargeNames) {
  const { document, versions } = writing.tariff;
  const { rule } = document.versionChange;
  const first = period.from;
  const last = addDays(period.to, -1);
  const day = rule === 'in-force-on-last-day' ? last : first;
  const on = (at: DayNumber) => seasonsOn(document.seasons, dayText(at).slice(5)).join(' ');
  const [version] = inForceDuring(versions, { from: day, to: addDays(day, 1) });
  const cut = inForceDuring(versions, period).length > 1 || on(first) !== on(last);
  if (version === undefined || (rule === 'split-by-days' && cut)) throw new Error('a period is split');
  const seasons = new Set(on(day).split(' '));
  return chargesSource(document, version.item, { period, seasons, names });
}

function payableSource({ tariff }: Writing, sum: string): string {
  const { total } = tariff.document.rounding;
  return `payables[row] = ${roundedSource(`${sum} + due`, total === 'none' ? null : total)};`;
}

function ledgersSource(rule: LedgersRule, writing: Writing, period: Period, at: number): string {
  const given = givenSource(writing, period);
  const { since = '' } = writing.input.account;
  const yearBegin = (name: string): DayNumber => {
    const close = writing.input.account.settlementDay ?? '01-01';
    const monthDay = name === 'anniversary' ? since.slice(5) : name === 'chosen' ? close : name;
    const [month = 1, date = 1] = monthDay.split('-').map(Number);
    const until = name === 'chosen' ? addDays(period.from, -1) : period.from;
    const { year } = calendarDay(until);
    const of = (inYear: number): DayNumber =>
      dayNumber({ year: inYear, month, day: Math.min(date, daysInMonth(inYear, month)) });
    const latest = of(year) <= until ? of(year) : of(year - 1);
    return name === 'chosen' ? addDays(latest, 1) : latest;
  };
  const time: FloatTime = {
    period,
    before: at,
    since: (name) => writing.input.periods.slice(0, at).filter(({ from }) => from >= yearBegin(name)).length,
  };
  const ledgers = rule.ledgers ?? [];
  const banks = ledgers.filter(({ unit }) => unit !== 'money');
  const money = ledgers.filter(({ unit }) => unit === 'money');
  const zero = [...Object.keys(writing.tariff.document.measures ?? {}), 'shared'].filter(
    (name) => !given.known.has(name),
  );
  const charges = chargesOf(writing, period, {
    quantity: (name) => (name === 'one' ? '1' : variable(name)),
    ledger: (id) => ledgerVariable(id),
  });
  return [
    given.source,
    ...zero.map((name) => `const ${variable(name)} = 0;`),
    ...banks.map(({ id }) => `const ${variable(id)} = ${ledgerVariable(id)};`),
    ...(rule.quantities ?? []).map((one) => definitionSource(one, time, variable)),
    ...writing.remembered.map((name) => `past_${variable(name)}[row] = ${variable(name)};`),
    ...banks.map((ledger) =>
      ledgerSource(ledger, writing, period, {
        keeps: variable(ledger.keeps ?? ledger.id),
        adds: ledger.adds === undefined ? '0' : variable(ledger.adds),
      }),
    ),
    ...money.map(
      ({ id }) => `let keeps_${ledgerVariable(id)} = ${ledgerVariable(id)}, adds_${ledgerVariable(id)} = 0;`,
    ),
    charges.statements,
    ...money.map((ledger) => {
      const bank = ledgerVariable(ledger.id);
      return ledgerSource(ledger, writing, period, { keeps: `keeps_${bank}`, adds: `adds_${bank}` });
    }),
    payableSource(writing, charges.sum),
  ].join('\n    ');
}

function nettingSource(rule: UnitNettingRule, writing: Writing, period: Period): string {
  const given = givenSource(writing, period);
  const { cap, close } = rule;
  const charges = chargesOf(writing, period, {
    quantity: (name) => (name === 'one' ? '1' : variable(name)),
    ledger: () => '0',
  });
  const { units } = writing.tariff.document;
  const step = String(10 ** -Number(units.decimals));
  const most =
    cap === undefined
      ? []
      : [
          roundedSource(`${variable(cap.of)} * ${String(Number(cap.percent) / 100)}`, {
            step,
            mode: units.rounding,
          }),
        ];
  const isClosed = close.on === 'every-period' || holdsDayOfYear(period, close.on);
  const wanted = 'Math.min(available, v_import)';
  const lapsed = cap?.excess === 'lapses' ? `bank -= ${wanted} - setOff;` : '';
  const pays = isClosed && close.surplus === 'paid' && close.rate !== undefined;
  return [
    given.source,
    'const available = bank + v_export;',
    `const setOff = Math.min(available, v_import${most.length === 0 ? '' : `, ${most.join('')}`});`,
    `bank = available - setOff; ${lapsed}`,
    'const v_billed = v_import - setOff;',
    ...(pays
      ? [
          paymentSource(writing, {
            paid: 'bank',
            rate: close.rate,
            period,
            isNext: close.inBill === 'next',
            rounding: undefined,
          }),
        ]
      : []),
    ...(isClosed ? ['bank = 0;'] : []),
    charges.statements,
    payableSource(writing, charges.sum),
  ].join('\n    ');
}

function periodSource(writing: Writing, at: number): string {
  const period = writing.input.periods[at] as Period;
  const last = addDays(period.to, -1);
  const [rule] = inForceDuring(writing.tariff.settlements, { from: last, to: period.to });
  if (rule === undefined) throw new Error('no rule');
  return rule.item.scheme === 'ledgers'
    ? ledgersSource(rule.item, writing, period, at)
    : nettingSource(rule.item, writing, period);
}

/** What an account brings forward, anew for every year. */
function stateSource({ tariff, input, remembered }: Writing): { declared: string; begun: string } {
  const opening = input.account.opening ?? {};
  const first = String(input.periods[0]?.from ?? 0);
  const all = tariff.document.settlements.flatMap((rule) =>
    rule.scheme === 'ledgers' ? (rule.ledgers ?? []) : [],
  );
  const ids = [...new Set(all.map(({ id }) => id))];
  const begun = ids.map((id) => {
    const bank = ledgerVariable(id);
    const units = String(Number(opening[id] ?? '0'));
    return `${bank} = ${units}; lots_${bank}.length = 0; since_${bank} = Infinity;
    if (${bank} > 0) { lots_${bank}.push({ born: ${first}, units: ${units} }); since_${bank} = ${first}; }`;
  });
  return {
    declared: [
      'let due = 0, next = 0, bank = 0;',
      ...ids.map((id) => {
        const bank = ledgerVariable(id);
        return `let ${bank} = 0, since_${bank} = Infinity; const lots_${bank} = [];`;
      }),
      ...remembered.map((name) => `const past_${variable(name)} = new Float64Array(12);`),
    ].join('\n'),
    begun: [`due = 0; next = 0; bank = ${String(Number(opening['credit'] ?? '0'))};`, ...begun].join('\n  '),
  };
}

/**
 * The source of a year of bills in floats under a document, as a programmer would write it out for that
 * one tariff: constants in their places, one function for all months that are alike, `Math.round` where
 * the document rounds.
 *
 * @throws where a period is split among versions or seasons
 */
export function floatSource(year: ExampleYear): string {
  const writing: Writing = { ...year, remembered: rememberedNames(year.tariff) };
  const bodies = new Map<string, string>();
  const calls = year.input.periods.map((_, row) => {
    const body = periodSource(writing, row);
    const name = bodies.get(body) ?? `month${String(bodies.size)}`;
    bodies.set(body, name);
    return `${name}(units, payables, ${String(row)});`;
  });
  const { declared, begun } = stateSource(writing);
  const columns = String(year.input.names.length);
  const functions = [...bodies].map(
    ([body, name]) => `function ${name}(units, payables, row) {
    const at = row * ${columns};
    due = next; next = 0;
    ${body}
}`,
  );
  return `'use strict';
${declared}
${functions.join('\n')}
return function year(units, payables) {
  ${begun}
  ${calls.join('\n  ')}
  return payables[11];
};`;
}

/** The same, ready to run. */
export function floatYear(year: ExampleYear): FloatYear {
  // The bench alone makes code of a document: the engine reads tables.
  // eslint-disable-next-line @typescript-eslint/no-implied-eval -- generated by this file from a checked document
  const make = new Function(floatSource(year)) as () => FloatYear;
  return make();
}
