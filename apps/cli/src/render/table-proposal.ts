import type { DecisionSubject, TableDecision, TableProposal } from '@unitbook/meter-files';
import { PAGE_WIDTH, plainText, wrapIndented } from './text.ts';

const MARK_WORDS: Readonly<Record<string, string>> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  '|': 'bars',
  '.': 'points',
  ' ': 'spaces',
  "'": 'apostrophes',
};

const CLOCK_WORDS: Readonly<Record<string, string>> = {
  local: 'times are local',
  utc: 'times are UTC',
  'in-text': 'each time has its offset from UTC',
};

const mark = (text: string): string => MARK_WORDS[text] ?? `"${text}"`;

const WORDS: Readonly<Record<DecisionSubject, (detected: string) => string>> = {
  delimiter: (text) => `cells are separated by ${mark(text)}`,
  'lines-above': (text) => `${text} ${text === '1' ? 'line' : 'lines'} above the table`,
  header: (text) => (text === 'none' ? 'no line names the columns' : `a line names the columns: ${text}`),
  'decimal-mark': (text) => `decimals stand behind ${mark(text)}`,
  grouping: (text) => (text === '' ? 'digits are not grouped' : `digits are grouped by ${mark(text)}`),
  'date-order': (text) => `dates are written ${text}`,
  clock: (text) => CLOCK_WORDS[text] ?? `times are at ${text} from UTC`,
  label: (text) => `a time names the ${text} of its interval`,
  minutes: (text) => (text === '1440' ? 'intervals are days' : `intervals have ${text} minutes`),
  holds: (text) =>
    text === 'registers' ? 'values are readings of registers' : 'values are counted in each interval',
  column: (text) => `it is ${text}`,
  rate: (text) => (text === '' ? 'it counts all rates' : `it counts rate ${text}`),
  unit: (text) => `it is in ${text}`,
  words: (text) => `its words mean: ${text}`,
};

/** What was detected, in words. */
export function decisionWords({ about, detected }: TableDecision): string {
  return WORDS[about](detected);
}

/** What else it could be, as the document would have it. */
export function alternativeWords({ alternatives }: TableDecision): string {
  return alternatives.map((one) => (/^[\w+:-][\w +:-]*$/.test(one) ? one : `"${one}"`)).join(', or ');
}

function decisionLines(decision: TableDecision): readonly string[] {
  const { certain, evidence, position } = decision;
  const line = position === null ? '' : ` (line ${String(position.line)})`;
  const other = alternativeWords(decision);
  const rest = other === '' ? '' : `. Else: ${other}`;
  const told = `${decisionWords(decision)}; ${certain ? 'certain' : 'NOT CERTAIN'}: ${evidence}${line}${rest}.`;
  return wrapIndented(plainText(told), '  ', PAGE_WIDTH, '  ');
}

/** What may be said of the columns of a table: each decision, why, and what else it could be. */
export function proposalLines({ decisions, layout }: TableProposal): readonly string[] {
  const ofTable = decisions.filter(({ column }) => column === null);
  const columns = layout.header.flatMap((name, at) => {
    const own = decisions.filter(({ column }) => column === at);
    const title = name.trim() === '' ? '' : ` "${name.trim()}"`;
    return own.length === 0
      ? []
      : [
          '',
          ...wrapIndented(plainText(`COLUMN ${String(at + 1)}${title}`), '', PAGE_WIDTH),
          ...own.flatMap(decisionLines),
        ];
  });
  return ['', 'THE TABLE', ...ofTable.flatMap(decisionLines), ...columns];
}
