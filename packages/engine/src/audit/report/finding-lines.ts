import { givenFigure, parseDay, periodDays, type Figure, type Quotient } from '../../quantity/index.ts';
import { figureLabel } from '../figure-label.ts';
import { FIGURE, groupOf } from '../figure-names.ts';
import type { ComparedFigure } from '../figures.ts';
import type { PrintedBill } from '../printed.ts';
import type { BillReference, FindingDecider, FindingLine, HandedOn } from './bill-finding.ts';
import type { CheckedParts, FindingTerms } from './checked-parts.ts';
import { clausesOfFigure } from './clauses.ts';
import { figureUnit } from './figure-unit.ts';

type Facts = Pick<CheckedParts, 'facts'>;

/** A value of a bill as a figure that was given. */
function plainFigure(
  name: string,
  { numerator, denominator }: Quotient,
  { facts }: Facts,
  clause: string,
): Figure {
  const { tariff } = facts;
  const words = { id: name, label: figureLabel(name, tariff), unit: figureUnit(name, tariff) };
  return givenFigure({ ...words, numerator, denominator, clause });
}

/** Which bill a printed bill is. */
export function billReference({ document, period }: PrintedBill): BillReference {
  const { number = null, issued, due } = document;
  const day = (text: string | undefined) => (text === undefined ? null : parseDay(text));
  return { number, period, days: periodDays(period), issued: day(issued), due: day(due) };
}

/** The lines of a finding: printed figures that differ from the right ones, in the order of paper. */
export function findingLines(
  checked: Pick<CheckedParts, 'compared' | 'facts'>,
  { derived }: Pick<FindingTerms, 'derived'>,
): readonly FindingLine[] {
  const { compared, facts } = checked;
  return compared.filter(({ agrees }) => !agrees).map((one) => lineOf(one, { facts }, derived));
}

function lineOf(
  { name, printed, computed, difference }: ComparedFigure,
  facts: Facts,
  derived: FindingTerms['derived'],
): FindingLine {
  const { tariff, period } = facts.facts;
  return {
    name,
    label: figureLabel(name, tariff),
    printed: plainFigure(name, printed, facts, 'bill'),
    computed: computed === null ? null : (derived.get(name) ?? plainFigure(name, computed, facts, '')),
    difference,
    clauses: clausesOfFigure(name, tariff, period),
  };
}

/** The line that a finding is about: what is to be paid, or else the sum, or else the first that differs. */
export function claimLine(lines: readonly FindingLine[]): FindingLine | null {
  const find = (name: string): FindingLine | undefined => lines.find((line) => line.name === name);
  return find('payable') ?? find('sum') ?? lines[0] ?? null;
}

/** Figures that would decide between explanations, with the tariff's words. */
export function findingDeciders({ deciders, facts }: CheckedParts): readonly FindingDecider[] {
  const { tariff } = facts;
  return deciders.map(({ figure: name, values }) => ({
    name,
    label: figureLabel(name, tariff),
    values: values.map((value) => (value === null ? null : plainFigure(name, value, { facts }, ''))),
  }));
}

/** What a bill hands on by ledger: as it should be, beside what it prints. */
export function handedOn(
  { printed, facts }: Pick<CheckedParts, 'printed' | 'facts'>,
  { derived }: Pick<FindingTerms, 'derived'>,
): readonly HandedOn[] {
  return [...derived]
    .filter(([name]) => groupOf(name) === 'credit' && name.startsWith(FIGURE.closing('')))
    .map(([name, right]) => {
      const own = printed.figures.get(name);
      const shown = own === undefined ? null : plainFigure(name, own, { facts }, 'bill');
      const label = figureLabel(name, facts.tariff);
      return { ledger: name.slice(FIGURE.closing('').length), label, printed: shown, right };
    });
}
