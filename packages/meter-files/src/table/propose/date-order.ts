import { dateParts, dayOfParts, readDateText, type DateOrder } from '../date-text.ts';
import { DATE_ORDERS } from '../layout-document.ts';
import { splitMoment } from '../moment-cell.ts';
import { shown, type Witness } from './decision.ts';
import { commonest } from './split-head.ts';

/** The order of dates as far as the text shows it. */
export interface OrderGuess {
  readonly order: DateOrder;
  readonly evidence: string;
  readonly witness: Witness | null;
  readonly alternatives: readonly DateOrder[];
  readonly certain: boolean;
  /** Two dates that no one order explains. */
  readonly mixed: readonly [Witness, Witness] | null;
}

const dateOf = (witness: Witness): string => splitMoment(shown(witness))[0];

/** Of two orders that fit as well, the first: a year of two digits seldom stands first. */
const LIKELIEST: readonly DateOrder[] = ['day-month-year', 'month-day-year', 'year-month-day'];

/** Orders by which every date can be read, and by which the dates lie closest together first. */
function possibleOrders(cells: readonly Witness[]): readonly DateOrder[] {
  const dates = cells.map(dateOf);
  const all = LIKELIEST.map((order) => ({ order, days: dates.map((date) => readDateText(date, order)) }));
  const step = (days: readonly (number | null)[]): number => {
    const steps = days.slice(1).map((day, at) => Math.abs((day ?? 0) - (days[at] ?? 0)));
    return (
      commonest(
        steps.filter((apart) => apart > 0),
        'least',
      ) ?? 0
    );
  };
  return all
    .filter(({ days }) => !days.includes(null))
    .map(({ order, days }) => ({ order, step: step(days) }))
    .sort((one, other) => one.step - other.step)
    .map(({ order }) => order);
}

/** A date that cannot be read in an order. */
const against = (cells: readonly Witness[], order: DateOrder): Witness | null =>
  cells.find((cell) => readDateText(dateOf(cell), order) === null) ?? null;

function allNamed(cells: readonly Witness[]): boolean {
  return cells.every((cell) => (dateParts(dateOf(cell), 'year-month-day')?.named ?? null) !== null);
}

/** The order of a date with the month by name, which says it itself. */
function namedOrder(cell: Witness): DateOrder {
  const parts = dateParts(dateOf(cell), 'year-month-day');
  if (parts?.named === 0) return 'month-day-year';
  return parts?.numbers[0].length === 4 ? 'year-month-day' : 'day-month-year';
}

function mixedGuess(cells: readonly Witness[]): OrderGuess {
  const readable = (order: DateOrder): number =>
    cells.filter((cell) => readDateText(dateOf(cell), order) !== null).length;
  const [order = 'day-month-year'] = [...DATE_ORDERS].sort((one, other) => readable(other) - readable(one));
  const odd = against(cells, order);
  const fitting = cells.find((cell) => readDateText(dateOf(cell), order) !== null);
  return {
    order,
    evidence: 'most dates can be read in this order, not all',
    witness: odd,
    alternatives: DATE_ORDERS.filter((one) => one !== order),
    certain: false,
    mixed: odd === null || fitting === undefined ? null : [fitting, odd],
  };
}

function openGuess(cells: readonly Witness[], orders: readonly DateOrder[]): OrderGuess {
  const [witness = null] = cells;
  const hasPoints = witness !== null && /^\d+\. ?\d+\./.test(dateOf(witness));
  const isDayFirst = hasPoints && orders.includes('day-month-year');
  const order = isDayFirst ? 'day-month-year' : (orders[0] ?? 'day-month-year');
  const isOneDay = new Set(cells.map(dateOf)).size === 1;
  const closest = isOneDay ? 'all rows are of one day' : 'so read, the days lie closest together';
  const why = isDayFirst ? 'dates with points mostly have the day first' : closest;
  return {
    order,
    evidence: `no part above 12 tells day and month apart; ${why}`,
    witness,
    alternatives: orders.filter((one) => one !== order),
    certain: false,
    mixed: null,
  };
}

/**
 * The order of day, month and year of some dates.
 *
 * @param cells  that hold dates, in the order of the rows; at least one
 */
export function orderOf(cells: readonly Witness[]): OrderGuess {
  const orders = possibleOrders(cells);
  const [first] = cells;
  if (first !== undefined && allNamed(cells)) {
    const evidence = 'the month stands as a name';
    return {
      order: namedOrder(first),
      evidence,
      witness: first,
      alternatives: [],
      certain: true,
      mixed: null,
    };
  }
  const [order] = orders;
  if (order === undefined) return mixedGuess(cells);
  if (orders.length > 1) return openGuess(cells, orders);
  const others = DATE_ORDERS.filter((one) => one !== order);
  const parts = first === undefined ? null : dateParts(dateOf(first), order);
  const isLong = parts !== null && parts.numbers[0].length === 4 && dayOfParts(parts, order) !== null;
  const witness = isLong
    ? (first ?? null)
    : others.map((one) => against(cells, one)).findLast((one) => one !== null);
  const evidence = isLong ? 'the year stands first' : 'this date can be read in no other order';
  return { order, evidence, witness: witness ?? null, alternatives: [], certain: true, mixed: null };
}
