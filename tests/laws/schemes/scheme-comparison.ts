import { twinYear, type TwinMonth } from '../../twins/scheme-twin.ts';
import { compare, fraction, fractionText, type Fraction } from '../../twins/fraction.ts';
import { exactText, type Figure, type UnitsMonth } from '@unitbook/engine';
import { documentOf, periodsOf } from '../random-scheme.ts';
import { accountOf, COLUMNS, keptYear, type SchemeYear } from './scheme-year.ts';

function differs(what: string, ours: Figure | undefined, theirs: Fraction | undefined): readonly string[] {
  if (ours === undefined || theirs === undefined) {
    return [`${what}: ${ours === undefined ? 'nothing here' : 'nothing by the twin'}`];
  }
  const value = fraction(ours.numerator, ours.denominator);
  if (compare(value, theirs) === 0) return [];
  return [
    `${what}: ${exactText(ours.numerator, ours.denominator)} here, ${fractionText(theirs)} by the twin`,
  ];
}

function monthDiffers(at: number, month: UnitsMonth, twin: TwinMonth): readonly string[] {
  const { bill, quantities, ledgers } = month;
  const where = `period ${String(at)}`;
  const payments = bill.lines.filter(({ figure }) => figure.id === 'surplus');
  const lines = bill.lines.filter(({ figure }) => figure.id !== 'surplus');
  return [
    ...[...twin.quantities].flatMap(([name, theirs]) =>
      differs(`${where}, ${name}`, quantities[name], theirs),
    ),
    ...[...twin.ledgers].flatMap(([id, line]) => {
      const entry = ledgers.find((one) => one.id === id);
      return COLUMNS.flatMap((column) => differs(`${where}, ${id} ${column}`, entry?.[column], line[column]));
    }),
    ...(lines.length === twin.lines.length ? [] : [`${where}: ${String(lines.length)} lines`]),
    ...twin.lines.flatMap(([id, theirs], place) => {
      const figure = lines[place]?.figure;
      return differs(`${where}, ${id}`, figure?.id === id ? figure : undefined, theirs);
    }),
    ...(payments.length === twin.payments.length ? [] : [`${where}: ${String(payments.length)} payments`]),
    ...payments.flatMap(({ figure }, place) => differs(`${where}, payment`, figure, twin.payments[place])),
    ...differs(`${where}, payable`, bill.payable, twin.payable),
  ];
}

/** Where the engine and the naive twin differ over a whole year; empty where nowhere. */
export function yearDifferences(one: SchemeYear): readonly string[] {
  const months = keptYear(one);
  const { since = '', settlementDay = '', opening = {} } = accountOf(one);
  const periods = periodsOf(one.spec, one.months);
  const twin = twinYear({ document: documentOf(one.spec), since, settlementDay, opening, periods });
  if (months.length !== twin.length) return [`${String(months.length)} of ${String(twin.length)} periods`];
  return months.flatMap((month, at) => monthDiffers(at, month, twin[at] as TwinMonth));
}
