import type { Finding } from '@unitbook/engine';
import { tableFinding } from '../findings.ts';
import type { TableLayout } from '../layout-document.ts';
import { orderOf, type OrderGuess } from './date-order.ts';
import type { TableDecision } from './decision.ts';
import { numberCells } from './head-columns.ts';
import { markDecisions, orderDecision, otherColumns, shapeDecisions } from './head-decisions.ts';
import { pairFinding, shapeFindings } from './head-findings.ts';
import { seriesOf } from './head-series.ts';
import { numberColumns, type NumberColumns } from './number-columns.ts';
import { marksOf, type MarksGuess } from './number-marks.ts';
import { openHead, type Head } from './open-head.ts';
import { dateCells } from './time-columns.ts';
import { timeGuess, type TimeGuess } from './time-decisions.ts';

/** How a table could be read, for a person to look at and confirm. */
export interface TableProposal {
  /** Not confirmed: nothing is read by it before a person has looked at it. */
  readonly layout: TableLayout;
  readonly decisions: readonly TableDecision[];
  readonly findings: readonly Finding[];
}

/** What was detected about a table, part by part. */
interface Guesses {
  readonly order: OrderGuess | null;
  readonly marks: MarksGuess;
  readonly times: TimeGuess;
  readonly numbers: NumberColumns;
  readonly others: ReturnType<typeof otherColumns>;
}

function guess(head: Head): Guesses {
  const { rows, columns, anyRow, place } = head;
  const dates = dateCells(rows.data, columns.times);
  const order = dates.length === 0 ? null : orderOf(dates);
  const marks = marksOf(numberCells(rows, columns));
  const series = seriesOf(rows.data, columns, order?.order ?? 'year-month-day');
  const placeOf = (at: number): TableDecision['position'] =>
    anyRow === undefined ? null : place({ row: anyRow, at });
  return {
    order,
    marks,
    times: timeGuess(rows, columns, series, place),
    numbers: numberColumns(rows, columns, { series, marks }, placeOf),
    others: otherColumns(head),
  };
}

function layoutOf({ columns, split }: Head, { order, marks, times, numbers, others }: Guesses): TableLayout {
  const { label, minutes } = times;
  return {
    format: 'unitbook-columns-1',
    header: [...columns.names],
    holds: numbers.holds,
    delimiter: split.delimiter,
    decimalMark: marks.decimalMark,
    grouping: marks.grouping,
    dateOrder: order?.order ?? 'year-month-day',
    clock: times.clock,
    ...(numbers.holds === 'intervals' ? { label, minutes } : {}),
    columns: columns.names.map(
      (_, at) => others.columns.get(at) ?? numbers.columns.get(at) ?? { is: 'nothing' },
    ),
    confirmed: false,
  };
}

function valueFindings({ split, anyRow }: Head, { areNamed }: NumberColumns): readonly Finding[] {
  if (areNamed || split.rows.length === 0) return [];
  const position = { line: anyRow?.line ?? 1, column: 1 };
  return [{ ...tableFinding('table/no-value-column', { path: [] }), position }];
}

/**
 * Look at the head of a table and propose how to read it, with the evidence for each part and what else it
 * could be. Nothing is read by a proposal before a person has confirmed it.
 *
 * @param head  the first lines of the file; a few hundred are enough, of more than a million characters the
 *   rest is not looked at
 * @param options  `delimiter`: what separates the cells, where a person has said so; left out: it is detected
 * @example
 * proposeTable('time;Netzbezug kWh\n1.5.2025 0:15;0,250\n1.5.2025 0:30;1,125\n').layout.decimalMark //=> ","
 */
export function proposeTable(
  head: string,
  options: { readonly delimiter?: TableLayout['delimiter'] } = {},
): TableProposal {
  const opened = openHead(head, options.delimiter);
  const guesses = guess(opened);
  const { order, marks, times, numbers, others } = guesses;
  const isRead = ({ about }: TableDecision): boolean =>
    numbers.holds === 'intervals' || (about !== 'label' && about !== 'minutes');
  return {
    layout: layoutOf(opened, guesses),
    decisions: [
      ...shapeDecisions(opened),
      ...markDecisions(marks, opened),
      ...orderDecision(order, opened),
      ...times.decisions.filter(isRead),
      ...others.decisions,
      ...numbers.decisions,
    ],
    findings: [
      ...shapeFindings(opened),
      ...valueFindings(opened, numbers),
      ...pairFinding('table/mixed-marks', marks.mixed, opened),
      ...pairFinding('table/mixed-date-orders', order?.mixed ?? null, opened),
    ],
  };
}
