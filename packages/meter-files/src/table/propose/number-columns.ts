import type { TableColumn } from '../layout-document.ts';
import type { TableDecision } from './decision.ts';
import { blankColumn, type HeadColumns } from './head-columns.ts';
import { columnKind, type HeadSeries } from './head-series.ts';
import { headerRates, type HeaderRate } from './header-rates.ts';
import { headerMeaning, headerUnit, type HeaderMeaning } from './header-words.ts';
import type { MarksGuess } from './number-marks.ts';
import type { HeadRows } from './split-head.ts';
import type { SeriesKind } from './value-series.ts';

/** Columns of numbers as they are proposed, and what the table holds. */
export interface NumberColumns {
  readonly columns: ReadonlyMap<number, TableColumn>;
  readonly decisions: readonly TableDecision[];
  readonly holds: 'registers' | 'intervals';
  /** Whether any column says by its name what it counts. */
  readonly areNamed: boolean;
}

interface Candidate {
  readonly at: number;
  readonly meaning: HeaderMeaning;
  readonly kind: SeriesKind;
  readonly unit: string;
}

const VALUES = ['import', 'export', 'generation', 'net', 'other', 'nothing'] as const;

const NAMELESS: HeaderMeaning = {
  is: 'nothing',
  evidence: 'its name does not say what it counts',
  certain: false,
};

/** What the names of the columns of numbers say. A table of one such column counts import, mostly. */
function meaningOf(at: number, columns: HeadColumns, rows: HeadRows): HeaderMeaning {
  const named = headerMeaning(columns.names[at] ?? '');
  if (named !== null) return named;
  const blank = blankColumn(rows, at);
  if (blank !== null) return { is: 'nothing', evidence: blank.evidence, certain: false };
  if (columns.numbers.length > 1) return NAMELESS;
  return { is: 'import', evidence: 'it is the only column of numbers', certain: false };
}

function heldBy(candidates: readonly Candidate[]): {
  holds: NumberColumns['holds'];
  certain: boolean;
  evidence: string;
} {
  const read = candidates.filter(({ meaning }) => meaning.is !== 'nothing');
  const some = read.length > 0 ? read : candidates;
  const count = (holds: string): number => some.filter(({ kind }) => kind.holds === holds).length;
  const [registers, intervals] = [count('registers'), count('intervals')];
  const holds = registers > intervals ? 'registers' : 'intervals';
  const isMixed = registers > 0 && intervals > 0;
  const certain = !isMixed && some.some(({ kind }) => kind.holds === holds && kind.certain);
  const words = {
    registers: 'the numbers grow and do not fall',
    intervals: registers + intervals === 0 ? 'the numbers do not move' : 'the numbers rise and fall',
  };
  const evidence = isMixed ? `${registers} columns grow only, ${intervals} rise and fall` : words[holds];
  return { holds, certain, evidence };
}

const other = (holds: NumberColumns['holds']): string => (holds === 'registers' ? 'intervals' : 'registers');

function decide(candidate: Candidate, holds: NumberColumns['holds']): HeaderMeaning {
  const { kind, meaning } = candidate;
  if (meaning.is === 'nothing' || kind.holds === null || kind.holds === holds || !kind.certain)
    return meaning;
  const evidence = `it holds ${kind.holds}, and the other columns hold ${holds}`;
  return { is: 'nothing', evidence, certain: false };
}

/** What is said of one column of numbers. */
function decisionsOf(
  { at, unit }: Candidate,
  meaning: HeaderMeaning,
  rate: HeaderRate | null,
  position: TableDecision['position'],
): readonly TableDecision[] {
  const base = { column: at, position };
  const is: TableDecision = {
    ...base,
    about: 'column',
    detected: meaning.is,
    evidence: meaning.evidence,
    alternatives: meaning.certain ? [] : VALUES.filter((one) => one !== meaning.is),
    certain: meaning.certain,
  };
  if (meaning.is === 'nothing') return [is];
  const unitDecision: TableDecision = {
    ...base,
    about: 'unit',
    detected: unit === '' ? 'kWh' : unit,
    evidence: unit === '' ? 'no unit is given; most meters count kWh' : `"${unit}" is given`,
    alternatives: unit === '' ? ['Wh', 'MWh'] : [],
    certain: unit !== '',
  };
  if (rate === null) return [is, unitDecision];
  const evidence = `"${rate.word}" in its name; which hours it counts is not told`;
  const rated: TableDecision = {
    ...base,
    about: 'rate',
    detected: rate.id,
    evidence,
    alternatives: [''],
    certain: rate.isNumber,
  };
  return [is, unitDecision, rated];
}

/** Propose what the columns of numbers are. */
export function numberColumns(
  rows: HeadRows,
  columns: HeadColumns,
  { series, marks }: { readonly series: HeadSeries; readonly marks: MarksGuess },
  place: (at: number) => TableDecision['position'],
): NumberColumns {
  const candidates = columns.numbers.map((at): Candidate => {
    const unit = headerUnit(columns.names[at] ?? '') ?? headerUnit(rows.units[at] ?? '') ?? '';
    return { at, meaning: meaningOf(at, columns, rows), kind: columnKind(series, at, marks), unit };
  });
  const held = heldBy(candidates);
  const meanings = candidates.map((candidate) => decide(candidate, held.holds));
  const valued = candidates.filter((_, index) => meanings[index]?.is !== 'nothing');
  const rates = headerRates(valued.map(({ at }) => columns.names[at] ?? ''));
  const proposed = new Map<number, TableColumn>();
  const decisions: TableDecision[] = [
    {
      about: 'holds',
      column: null,
      detected: held.holds,
      evidence: held.evidence,
      position: null,
      alternatives: held.certain ? [] : [other(held.holds)],
      certain: held.certain,
    },
  ];
  for (const [index, candidate] of candidates.entries()) {
    const meaning = meanings[index] ?? NAMELESS;
    const rate = rates[valued.indexOf(candidate)] ?? null;
    const unit = candidate.unit === '' ? 'kWh' : (candidate.unit as 'kWh');
    proposed.set(
      candidate.at,
      meaning.is === 'nothing'
        ? { is: 'nothing' }
        : { is: meaning.is, ...(rate === null ? {} : { rate: rate.id }), unit },
    );
    decisions.push(...decisionsOf(candidate, meaning, rate, place(candidate.at)));
  }
  return { columns: proposed, decisions, holds: held.holds, areNamed: valued.length > 0 };
}
