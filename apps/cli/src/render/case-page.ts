import { workedOut, type CheckedCase, type Tariff, type WorkedCase } from '@unitbook/engine';
import { caseChecks } from './case-checks.ts';
import { asBookMonth, caseMonth } from './case-month.ts';
import type { ChargesStyle } from './charges.ts';
import { periodWords } from './day-words.ts';
import type { PageNotation } from './notation.ts';
import { PAGE_WIDTH, plainText, wrapIndented } from './text.ts';

/** Whether a case came out; one that expects nothing cannot. */
export type CaseOutcome = 'reproduced' | 'differs' | 'not-checked';

/** What became of a case. */
export function outcomeOf({ checks, isReproduced }: CheckedCase): CaseOutcome {
  if (checks.length === 0) return 'not-checked';
  return isReproduced ? 'reproduced' : 'differs';
}

const KIND_WORDS: Readonly<Record<WorkedCase['kind'], string>> = {
  published: 'Figures as published',
  constructed: 'Worked out by hand from a published rule',
  invented: 'Invented, worked out by hand',
  'from-memory': 'From memory, not read again',
};

function sourceText({ kind, source }: WorkedCase): string {
  const words = KIND_WORDS[kind];
  return source === undefined
    ? `${words}.`
    : `${words}: ${source.title}, ${source.publisher}, ${source.year}.`;
}

/** What keeps a period from being billed, in short; the messages have it with line and column. */
function unbilledLines({ case: one, months, findings }: CheckedCase): readonly string[] {
  const errors = findings.filter(({ severity }) => severity === 'error');
  if (errors.length === 0) return [];
  const left = one.periods.length - months.length;
  const count = left === 1 ? '1 period is' : `${String(left)} periods are`;
  const told = errors.map(({ found }) => found).join('; ');
  return wrapIndented(`NOT BILLED: ${count} left out: ${plainText(told)}.`, '  ', PAGE_WIDTH);
}

interface CaseStyle {
  readonly tariff: Tariff;
  readonly notation: PageNotation;
  readonly isExplained: boolean;
}

/** The months of a case in full: where nothing is expected, or where the derivation is asked for. */
function monthsLines({ case: one, months }: CheckedCase, style: CaseStyle): readonly string[] {
  const { tariff, notation, isExplained } = style;
  return months.flatMap((month, index) => {
    const explanation = isExplained
      ? { notation, month: asBookMonth(month), explained: new Set<string>() }
      : null;
    const charges: ChargesStyle = { notation, explanation };
    const shown = new Set(workedOut(tariff, month).map(({ id }) => id));
    const named = Object.keys(one.periods[index]?.expected?.quantities ?? {});
    const names = named.filter((name) => !shown.has(name));
    return ['', `  ${periodWords(month.period)}`, ...caseMonth(month, tariff, names, charges)];
  });
}

/** One case: where it comes from, each expected figure beside what came out, or its bills where none is. */
export function casePage(checked: CheckedCase, style: CaseStyle): readonly string[] {
  const { case: one } = checked;
  const isFull = style.isExplained || checked.checks.length === 0;
  return [
    ...wrapIndented(`CASE ${one.id}: ${plainText(one.title)}`, '', PAGE_WIDTH, '  '),
    '-'.repeat(PAGE_WIDTH),
    ...wrapIndented(plainText(sourceText(one)), '  ', PAGE_WIDTH),
    ...caseChecks(checked, style.notation),
    ...unbilledLines(checked),
    ...(isFull ? monthsLines(checked, style) : []),
  ];
}

/** How many cases came out, in one line. */
export function countLine(all: readonly CheckedCase[]): string {
  const outcomes = all.map(outcomeOf);
  const count = (outcome: CaseOutcome): number => outcomes.filter((one) => one === outcome).length;
  const unchecked = count('not-checked');
  const checked = all.length - unchecked;
  const rest = unchecked === 0 ? '' : `; ${String(unchecked)} without expected figures, not checked`;
  return `${String(count('reproduced'))} of ${String(checked)} cases reproduced${rest}`;
}
