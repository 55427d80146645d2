import {
  addQuotients,
  dayText,
  quotientText,
  SCANNED_UNITS,
  type Cliff,
  type Cliffs,
  type Quotient,
  type YearMonth,
} from '@unitbook/engine';
import type { PageNotation } from './notation.ts';
import { moneyFigure } from './sum-figures.ts';
import { renderTable, type Column } from './table.ts';
import { PAGE_WIDTH, plainText, wrap, wrapIndented } from './text.ts';

/** Beyond so many rows nobody reads on; the rest are counted. */
const MOST_CLIFFS = 60;
const NAME_WIDTH = 24;

/** A month as yyyy-mm. */
function monthText({ period }: Pick<YearMonth, 'period'>): string {
  return dayText(period.from).slice(0, 7);
}

/** Versions of a bill, each once. */
function versionNames(month: YearMonth['month']): string {
  return [...new Set((month?.bill.lines ?? []).map(({ version }) => version))].join(', ');
}

/** Money for each unit, to a hundredth of the coin: for people to read. */
function perUnit({ numerator, denominator }: Quotient, units: number, notation: PageNotation): string {
  if (units === 0) return '–';
  return notation.number(quotientText(numerator, denominator * units, notation.moneyPlaces + 2));
}

function cutName(name: string): string {
  const plain = plainText(name);
  return Array.from(plain).length > NAME_WIDTH
    ? `${Array.from(plain)
        .slice(0, NAME_WIDTH - 1)
        .join('')}…`
    : plain;
}

/**
 * Months under a tariff, one row each: its version, the units, what the lines sum to and what is payable.
 *
 * @param units  of every month
 */
export function yearMonths(
  months: readonly YearMonth[],
  units: number,
  notation: PageNotation,
): readonly string[] {
  const columns: readonly Column[] = [
    { heading: ['Month'], side: 'left' },
    { heading: ['Version'], side: 'left' },
    { heading: ['Units'], side: 'right' },
    { heading: ['Sum of', 'the lines'], side: 'right' },
    { heading: ['Payable'], side: 'right' },
    { heading: ['Per', 'unit'], side: 'right' },
  ];
  const unitsText = notation.number(String(units));
  const body = months.map((one) => {
    const { month } = one;
    if (month === null) return [monthText(one), 'NOT BILLED', '', '', '', ''];
    const { sum, payable } = month.bill;
    const amounts = [sum, payable].map((figure) => notation.amount(figure));
    return [
      monthText(one),
      cutName(versionNames(month)),
      unitsText,
      ...amounts,
      perUnit(payable, units, notation),
    ];
  });
  const billed = months.flatMap(({ month }) => (month === null ? [] : [month.bill]));
  const totals = [billed.map(({ sum }) => sum), billed.map(({ payable }) => payable)].map((figures) =>
    notation.amount(moneyFigure(addQuotients(figures))),
  );
  const all = notation.number(String(units * billed.length));
  const word = billed.length === 1 ? '1 bill' : `${String(billed.length)} bills`;
  return renderTable(columns, { body, foot: [[word, '', all, ...totals, '']] });
}

/** Months that could not be billed, those in a row for one and the same reason together. */
export function unbilledMonths(months: readonly YearMonth[]): readonly string[] {
  const runs: { first: YearMonth; last: YearMonth; count: number; why: string }[] = [];
  let before: YearMonth | null = null;
  for (const one of months) {
    const why = one.findings.map(({ found }) => found.replace(/\d{4}-\d{2}-\d{2}/g, '…')).join('; ');
    const run = runs.at(-1);
    if (one.month === null && run !== undefined && run.last === before && run.why === why) {
      run.last = one;
      run.count += 1;
    } else if (one.month === null) runs.push({ first: one, last: one, count: 1, why });
    before = one;
  }
  if (runs.length === 0) return ['Every month could be billed.'];
  return runs.flatMap(({ first, last, count }) => {
    const span =
      count === 1 ? monthText(first) : `${monthText(first)} to ${monthText(last)}, ${String(count)} months`;
    const told = first.findings.map(({ found, expected }) => `${found}; expected ${expected}`).join('. ');
    return wrapIndented(`${span}: ${plainText(told)}.`, '', PAGE_WIDTH, '  ');
  });
}

function cliffRow(cliff: Cliff, notation: PageNotation): readonly string[] {
  const { units, before, after, cost, rate, multiple } = cliff;
  const count = (value: number): string => notation.number(String(value));
  return [
    monthText(cliff),
    `${count(units)} → ${count(units + 1)}`,
    notation.amount(before),
    notation.amount(after),
    notation.amount(moneyFigure(cost)),
    notation.amount(moneyFigure(rate)),
    multiple === null ? 'no rate' : notation.number(multiple),
  ];
}

/**
 * Cliffs, one row each.
 *
 * @param times     how many times the rate makes one, as it was typed
 * @param versions  the names of all versions: one without a whole month is not looked at
 */
export function cliffLines(
  { months, cliffs }: Cliffs,
  { times, versions }: { readonly times: string; readonly versions: readonly string[] },
  notation: PageNotation,
): readonly string[] {
  const looked = months.map((one) => `${monthText(one)} (${plainText(one.version.name)})`).join(', ');
  const unseen = versions
    .filter((name) => !months.some(({ version }) => version.name === name))
    .map(plainText)
    .join(', ');
  const what =
    `One more unit that costs more than ${notation.number(times)} times the rate of its slab. Tried: every unit up to ` +
    `${notation.number(String(SCANNED_UNITS))}, and each limit beyond, in ${looked === '' ? 'no month' : looked}; ` +
    `each bill as the first of an account.${unseen === '' ? '' : ` Not tried, without a whole month: ${unseen}.`}`;
  const head = wrap(what, PAGE_WIDTH);
  if (cliffs.length === 0) return [...head, 'None.'];
  const columns: readonly Column[] = [
    { heading: ['Month'], side: 'left' },
    { heading: ['Units'], side: 'right' },
    { heading: ['Payable', 'before'], side: 'right' },
    { heading: ['Payable', 'after'], side: 'right' },
    { heading: ['The unit', 'adds'], side: 'right' },
    { heading: ['The next', 'add each'], side: 'right' },
    { heading: ['Times'], side: 'right' },
  ];
  const body = cliffs.slice(0, MOST_CLIFFS).map((one) => cliffRow(one, notation));
  const more = cliffs.length - body.length;
  const foot = wrap(
    '"Adds" is before the total is rounded. "The next" are the ten units behind it, or those up to the next limit.',
    PAGE_WIDTH,
  );
  return [
    ...head,
    ...renderTable(columns, { body }),
    ...(more > 0 ? [`… and ${String(more)} more.`] : []),
    ...foot,
  ];
}

/** The first and the last of some months. */
export function spanText(months: readonly YearMonth[]): string {
  const [first, last] = [months[0], months.at(-1)];
  if (first === undefined || last === undefined) return 'no month';
  return first === last ? monthText(first) : `${monthText(first)} to ${monthText(last)}`;
}
