import { explainFigure, parseDay, type BookMonth, type Explanation, type Figure } from '@unitbook/engine';
import { dayWords } from './day-words.ts';
import type { PageNotation } from './notation.ts';
import { plainText, wrapIndented } from './text.ts';

const WIDTH = 98;
/** Lines of one step after the first stand further in than its inputs. */
const MORE = '    ';

/** What the derivations of one bill share. */
export interface ExplanationContext {
  readonly notation: PageNotation;
  readonly month: BookMonth;
  /** What was explained already, word by word: the same is not explained twice. */
  readonly explained: Set<string>;
}

/** Days inside a clause, "closing of the period to 2025-05-01", as the rest of the page has them. */
function withDayWords(clause: string): string {
  return clause.replace(/\b\d{4}-\d{2}-\d{2}$/, (text) => {
    const day = parseDay(text);
    return day === null ? text : dayWords(day);
  });
}

/** What a register showed says on which day. */
const READ_ON = /^reading of (\d{4}-\d{2}-\d{2})$/;

/** Where a number comes from: its clause, or the day the meter showed it. */
function source(figure: Figure, above: string): string {
  const day = parseDay(READ_ON.exec(figure.clause)?.[1] ?? '');
  if (day !== null) return ` [read on ${dayWords(day)}]`;
  return figure.clause === '' || figure.clause === above
    ? ''
    : ` [${withDayWords(plainText(figure.clause))}]`;
}

function derivation({ value, formula, rounding }: Explanation): string {
  return [value, formula, rounding].filter((part) => part !== '').join(' = ');
}

interface Step {
  readonly figure: Figure;
  readonly words: Explanation;
  readonly indent: string;
  /** The clause of the step above. */
  readonly above: string;
}

function inputLines({ figure, words, indent }: Step, context: ExplanationContext): readonly string[] {
  const above = figure.clause;
  return figure.inputs.flatMap((input, index) => {
    const its = words.inputs[index];
    return its === undefined ? [] : stepLines({ figure: input, words: its, indent, above }, context);
  });
}

function stepLines(step: Step, context: ExplanationContext): readonly string[] {
  const { figure, words, indent, above } = step;
  const label = plainText(words.label);
  const told = `${label}: ${derivation(words)}`;
  const key = `${figure.id} ${told}`;
  if (figure.inputs.length > 0 && context.explained.has(key))
    return wrapIndented(`${label}: ${words.value}, as above`, indent, WIDTH, MORE);
  context.explained.add(key);
  const text = `${told}${source(figure, above)}`;
  return [
    ...wrapIndented(text, indent, WIDTH, MORE),
    ...inputLines({ ...step, indent: `${indent}  ` }, context),
  ];
}

/**
 * How an amount comes about, step by step, down to readings, clauses and the account.
 *
 * @param figure   of a line of a bill, whose label and clause stand above
 * @param indent   of the first step
 * @returns        none where the amount was typed in
 */
export function explanationLines(
  figure: Figure,
  indent: string,
  context: ExplanationContext,
): readonly string[] {
  const words = explainFigure(figure, context.notation);
  const step: Step = { figure, words, indent, above: figure.clause };
  if (words.formula === '' && words.rounding === '') return inputLines(step, context);
  const own = wrapIndented(derivation(words), indent, WIDTH, MORE);
  return [...own, ...inputLines({ ...step, indent: `${indent}  ` }, context)];
}
