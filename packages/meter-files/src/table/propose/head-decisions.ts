import type { TableColumn } from '../layout-document.ts';
import type { OrderGuess } from './date-order.ts';
import { shown, type TableDecision } from './decision.ts';
import type { MarksGuess } from './number-marks.ts';
import type { Head } from './open-head.ts';

const DELIMITER_WORDS = { ',': 'commas', ';': 'semicolons', '\t': 'tabs', '|': 'bars' } as const;

const decision = (
  about: TableDecision['about'],
  detected: string,
  rest: Partial<TableDecision> & Pick<TableDecision, 'evidence' | 'certain'>,
): TableDecision => ({ column: null, position: null, alternatives: [], about, detected, ...rest });

/** What was detected about the lines of a table. */
export function shapeDecisions({ split, others, rows }: Head): readonly TableDecision[] {
  const { above, header } = rows;
  const line = (row: { readonly line: number } | undefined): TableDecision['position'] =>
    row === undefined ? null : { line: row.line, column: 1 };
  const names = header === null ? 'none' : header.cells.join(split.delimiter);
  return [
    decision('delimiter', split.delimiter, {
      evidence: `${DELIMITER_WORDS[split.delimiter]} make ${split.width} cells of most lines`,
      position: line(header ?? rows.data[0]),
      alternatives: others,
      certain: others.length === 0 && split.dated > 0,
    }),
    ...(above.length === 0
      ? []
      : [
          decision('lines-above', String(above.length), {
            evidence: 'these lines hold neither names of columns nor values',
            position: line(above[0]),
            certain: false,
          }),
        ]),
    decision('header', names, {
      evidence:
        header === null
          ? 'the first line with values has none above it'
          : 'it is the line above the first values',
      position: line(header ?? rows.data[0]),
      certain: header !== null && split.dated > 0,
    }),
  ];
}

/** What was detected about its numbers. */
export function markDecisions(marks: MarksGuess, { place }: Head): readonly TableDecision[] {
  const { decimalMark, grouping, certain, evidence, witness, groupWitness } = marks;
  const position = witness === null ? null : place(witness);
  const text = witness === null ? evidence : `${evidence}: "${shown(witness)}"`;
  const alternatives = certain ? [] : [decimalMark === '.' ? ',' : '.'];
  return [
    decision('decimal-mark', decimalMark, { evidence: text, position, alternatives, certain }),
    decision('grouping', grouping, {
      evidence:
        groupWitness === null ? 'no digits are grouped' : `digits are grouped: "${shown(groupWitness)}"`,
      position: groupWitness === null ? null : place(groupWitness),
      alternatives,
      certain,
    }),
  ];
}

/** What was detected about its dates. */
export function orderDecision(guess: OrderGuess | null, { place }: Head): readonly TableDecision[] {
  if (guess === null) return [];
  const { order, evidence, witness, alternatives, certain } = guess;
  const text = witness === null ? evidence : `${evidence}: "${shown(witness)}"`;
  const position = witness === null ? null : place(witness);
  return [decision('date-order', order, { evidence: text, position, alternatives, certain })];
}

/** Decisions about columns that hold no numbers to read. */
export function otherColumns(head: Head): {
  columns: ReadonlyMap<number, TableColumn>;
  decisions: readonly TableDecision[];
} {
  const { columns } = head;
  const { dateTime, date, time, spare } = columns.times;
  const made = new Map<number, TableColumn>();
  const decisions: TableDecision[] = [];
  const add = (at: number, column: TableColumn, evidence: string, certain: boolean): void => {
    if (at < 0) return;
    made.set(at, column);
    const position = head.anyRow === undefined ? null : head.place({ row: head.anyRow, at });
    decisions.push(decision('column', column.is, { column: at, position, evidence, certain }));
    if (column.is !== 'quality') return;
    const words = Object.entries(column.words).map(([word, is]) => `${word} = ${is}`);
    decisions.push(decision('words', words.join(', '), { column: at, position, evidence, certain }));
  };
  add(dateTime, { is: 'date-time' }, 'its cells are dates with times', spare.length === 0);
  add(date, { is: 'date' }, 'its cells are dates', spare.length === 0);
  add(time, { is: 'time' }, 'its cells are times', spare.length === 0);
  for (const at of spare) add(at, { is: 'nothing' }, 'another column gives the time', false);
  for (const [at, { column, evidence, certain }] of columns.told) add(at, column, evidence, certain);
  return { columns: made, decisions };
}
