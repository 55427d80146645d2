import {
  calendarDay,
  daysInMonth,
  isDecimalText,
  periodDays,
  restName,
  type DayNumber,
  type Definition,
  type Period,
} from '@unitbook/engine';
import { float, roundedSource } from './float-charges.ts';

type Netting = Definition & { is: 'netting' };

/** The time of a period that quantities are worked out for. */
export interface FloatTime {
  readonly period: Period;
  /** How many periods there were before, and how many of them began since a day of the year. */
  readonly before: number;
  readonly since: (monthDay: string) => number;
}

/** The variable of a quantity; a number of the document as it is. */
export type Variable = (name: string) => string;

const blockOf = (name: string): string => name.split('@')[1] ?? '';

function routesOf({
  supply,
  demand,
  routes,
}: Netting): readonly { from: string; to: string; worth: string }[] {
  if (typeof routes !== 'string') return routes.map(({ from, to, worth = '100' }) => ({ from, to, worth }));
  const all = demand.flatMap((to) => supply.map((from) => ({ from, to, worth: '100' })));
  const inside = all.filter(({ from, to }) => blockOf(from) === blockOf(to));
  if (routes === 'same-block') return inside;
  return routes === 'any' ? all : [...inside, ...all.filter((route) => !inside.includes(route))];
}

function nettingSource(netting: Netting, variable: Variable): string {
  const rest = (name: string): string => variable(restName(netting, name));
  const total = variable(netting.id);
  const names = [...netting.supply, ...netting.demand];
  const limit = `most_${total}`;
  const most = netting.most === undefined ? null : limit;
  const routes = routesOf(netting).map(({ from, to, worth }, at) => {
    const [set, had] = [`s${String(at)}_${total}`, rest(from)];
    const worthOf = Number(worth) / 100;
    const counts = worth === '100' ? had : roundedSource(`${had} * ${String(worthOf)}`, netting.rounding);
    const up = netting.rounding === undefined ? undefined : { step: netting.rounding.step, mode: 'up' };
    const back = roundedSource(`${set} / ${String(worthOf)}`, up);
    const used = worth === '100' ? set : `Math.min(${had}, ${back})`;
    return `const ${set} = Math.min(${counts}, ${rest(to)}${most === null ? '' : `, ${limit}`});
    ${had} -= ${used}; ${rest(to)} -= ${set}; ${total} += ${set};${most === null ? '' : ` ${limit} -= ${set};`}`;
  });
  return [
    ...names.map((name) => `let ${rest(name)} = ${variable(name)};`),
    `let ${total} = 0;`,
    ...(most === null ? [] : [`let ${limit} = Math.max(0, ${variable(netting.most ?? '')});`]),
    ...routes,
  ].join('\n    ');
}

/** The first of the earlier periods that count. */
function firstPeriod(definition: Definition & { is: 'running-total' | 'mean' }, time: FloatTime): number {
  const since = definition.is === 'running-total' ? definition.since : undefined;
  if (since !== undefined) return time.before - time.since(since);
  if (definition.periods === undefined) return 0;
  const own = definition.through === 'this-period' ? 1 : 0;
  return Math.max(0, time.before - (Number(definition.periods) - own));
}

function lookingBackSource(
  definition: Definition & { is: 'running-total' | 'mean' },
  time: FloatTime,
  variable: Variable,
): string {
  const [own, first] = [variable(definition.of), firstPeriod(definition, time)];
  const isThis = definition.through === 'this-period';
  const id = variable(definition.id);
  const count = Math.max(1, time.before - first + (isThis ? 1 : 0));
  const mean =
    definition.is === 'mean'
      ? `${id} = ${roundedSource(`${id} / ${String(count)}`, definition.rounding)};`
      : '';
  return `let ${id} = ${isThis ? own : '0'};
    for (let i = ${String(first)}; i < ${String(time.before)}; i++) ${id} += past_${own}[i];
    ${mean}`;
}

function daysOf({ days, when }: Definition & { is: 'days-share' }, period: Period): number {
  const own = periodDays(period);
  const day = (days === 'month-of-last-day' ? period.to - 1 : period.from) as DayNumber;
  const { year, month } = calendarDay(day);
  const wanted = days.startsWith('month') ? daysInMonth(year, month) : Number(days);
  return when === 'longer' && own <= wanted ? own : wanted;
}

/** What a definition other than a netting or one that looks back comes to. */
function valueSource(definition: Definition, time: FloatTime, variable: Variable): string {
  const operand = (text: string): string => (isDecimalText(text) ? float(text) : variable(text));
  const all = 'of' in definition && Array.isArray(definition.of) ? definition.of.map(operand) : [];
  switch (definition.is) {
    case 'sum':
      return all.join(' + ');
    case 'difference':
      return all.join(' - ');
    case 'excess':
      return `Math.max(0, ${all.join(' - ')})`;
    case 'least':
      return `Math.min(${all.join(', ')})`;
    case 'greatest':
      return `Math.max(${all.join(', ')})`;
    case 'product':
      return all.join(' * ');
    case 'percent':
      return `(${all.join(' + ')}) * ${String(Number(definition.percent) / 100)}`;
    case 'quotient':
      return `${operand(definition.of)} / ${operand(definition.by)}`;
    case 'part': {
      const of = operand(definition.of);
      const upTo = definition.upTo === undefined ? of : `Math.min(${of}, ${operand(definition.upTo)})`;
      const above = definition.above === undefined ? '' : ` - ${operand(definition.above)}`;
      return `Math.max(0, ${upTo}${above})`;
    }
    case 'choice':
      return definition.steps
        .map(({ upTo, take }) =>
          upTo === undefined
            ? operand(take)
            : `${operand(definition.by)} <= ${float(upTo)} ? ${operand(take)} : `,
        )
        .join('');
    case 'days-share':
      return `${operand(definition.of)} * ${String(daysOf(definition, time.period) / periodDays(time.period))}`;
    default:
      throw new Error(definition.is);
  }
}

/** The statements that work one quantity out. */
export function definitionSource(definition: Definition, time: FloatTime, variable: Variable): string {
  if (definition.is === 'netting') return nettingSource(definition, variable);
  if (definition.is === 'running-total' || definition.is === 'mean') {
    return lookingBackSource(definition, time, variable);
  }
  const rounding = 'rounding' in definition ? definition.rounding : undefined;
  return `const ${variable(definition.id)} = ${roundedSource(valueSource(definition, time, variable), rounding)};`;
}
