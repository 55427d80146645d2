import type { Bill, BillLine, Figure } from '@unitbook/engine';
import { explanationLines, type ExplanationContext } from './explanation.ts';
import type { PageNotation } from './notation.ts';
import { atLeft, atRight, PAGE_WIDTH, plainText, textWidth, wrap } from './text.ts';

const INDENT = '  ';
const CLAUSE_WIDTH = 20;
const LEAST_AMOUNT = 12;

/** How the lines of a bill are set: where amounts end, and whether derivations stand between. */
export interface ChargesStyle {
  readonly notation: PageNotation;
  /** null leaves derivations out. */
  readonly explanation: ExplanationContext | null;
}

interface Row {
  readonly label: string;
  readonly clause: string;
  readonly amount: string;
}

function rowLines({ label, clause, amount }: Row, amountWidth: number): readonly string[] {
  const width = PAGE_WIDTH - INDENT.length - CLAUSE_WIDTH - amountWidth;
  const parts = wrap(plainText(label), width - 2);
  return parts.map((part, index) =>
    index < parts.length - 1
      ? `${INDENT}${part}`
      : (
          INDENT +
          atLeft(part, width) +
          atLeft(plainText(clause), CLAUSE_WIDTH) +
          atRight(amount, amountWidth)
        ).trimEnd(),
  );
}

/** A line that the total leaves out stands in brackets. */
function lineRow(line: BillLine, bill: Bill, notation: PageNotation): Row {
  const { label, clause } = line.figure;
  const several = new Set(bill.lines.map(({ version }) => version)).size > 1;
  const amount = notation.amount(line.figure);
  return {
    label: several ? `${label} (${line.version})` : label,
    clause,
    amount: line.counts ? amount : `(${amount})`,
  };
}

function rule(mark: string, amountWidth: number): string {
  return ' '.repeat(PAGE_WIDTH - amountWidth) + mark.repeat(amountWidth);
}

/** A bill can come out in favour of the household, which a minus sign alone says too softly. */
function payableLabel({ payable }: Bill): string {
  return payable.numerator < 0 ? 'PAYABLE (minus: to the household)' : 'PAYABLE';
}

/**
 * The lines of a bill down to the amount payable.
 *
 * @param bill   any
 * @param title  of the column of labels
 */
export function chargesLines(bill: Bill, title: string, style: ChargesStyle): readonly string[] {
  const { notation, explanation } = style;
  const total = (figure: Figure): Row => ({
    label: figure.label,
    clause: figure.clause,
    amount: notation.amount(figure),
  });
  const rows = bill.lines.map((line) => lineRow(line, bill, notation));
  const ends = [bill.sum, bill.roundingDifference, bill.payable]
    .filter((figure) => figure !== null)
    .map(total);
  const width = Math.max(LEAST_AMOUNT, ...[...rows, ...ends].map(({ amount }) => textWidth(amount) + 2));
  const set = (row: Row): readonly string[] => rowLines(row, width);
  const [sum, ...middle] = ends.slice(0, -1);
  const payable = ends.at(-1);
  return [
    ...set({ label: title, clause: 'Clause', amount: bill.currency }),
    ...rows.flatMap((row, index) => {
      const figure = bill.lines[index]?.figure;
      const derived =
        explanation === null || figure === undefined ? [] : explanationLines(figure, '      ', explanation);
      return [...set(row), ...derived];
    }),
    rule('-', width - 2).padStart(PAGE_WIDTH),
    ...(sum === undefined ? [] : set(sum)),
    ...middle.flatMap(set),
    ...(payable === undefined
      ? []
      : [rule('-', width - 2), ...set({ ...payable, label: payableLabel(bill) }), rule('=', width - 2)]),
  ];
}
