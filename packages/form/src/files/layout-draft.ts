import type { Finding } from '@unitbook/engine';
import {
  layoutKey,
  layoutText,
  proposeTable,
  readTableLayout,
  type DecisionSubject,
  type TableColumn,
  type TableDecision,
  type TableLayout,
  type TableProposal,
} from '@unitbook/meter-files';
import { without } from '../household/without.ts';

/** A question about how a table is to be read: one of the table, or one of a column. */
export type QuestionKey =
  | 'delimiter'
  | 'header'
  | 'decimal-mark'
  | 'grouping'
  | 'date-order'
  | 'clock'
  | 'holds'
  | 'minutes'
  | 'label'
  | `column-${number}`;

/** How a table is to be read, as far as a person has said so. */
export interface LayoutDraft {
  readonly head: string;
  readonly proposal: TableProposal;
  readonly layout: TableLayout;
  /** Questions that a person has answered otherwise than was detected. */
  readonly changed: ReadonlySet<QuestionKey>;
  /** Questions that a person has confirmed. */
  readonly confirmed: ReadonlySet<QuestionKey>;
}

const TABLE_QUESTIONS: Readonly<Partial<Record<DecisionSubject, QuestionKey>>> = {
  delimiter: 'delimiter',
  header: 'header',
  'lines-above': 'header',
  'decimal-mark': 'decimal-mark',
  grouping: 'grouping',
  'date-order': 'date-order',
  clock: 'clock',
  holds: 'holds',
  minutes: 'minutes',
  label: 'label',
};

function questionOf({ about, column }: TableDecision): QuestionKey {
  return TABLE_QUESTIONS[about] ?? `column-${column ?? 0}`;
}

/** Begin with what is detected about a table. */
export function draftOf(head: string, delimiter?: TableLayout['delimiter']): LayoutDraft {
  const proposal = proposeTable(head, delimiter === undefined ? {} : { delimiter });
  return { head, proposal, layout: proposal.layout, changed: new Set(), confirmed: new Set() };
}

/** What was detected for a question, with its evidence. */
export function decisionsOf({ proposal }: LayoutDraft, key: QuestionKey): readonly TableDecision[] {
  return proposal.decisions.filter((decision) => questionOf(decision) === key);
}

const columnKeys = ({ layout }: LayoutDraft): readonly QuestionKey[] =>
  layout.header.map((_, at): QuestionKey => `column-${at}`);

/** The questions about a table, in the order in which they are asked. */
export function questionKeys(draft: LayoutDraft): readonly QuestionKey[] {
  const intervals: readonly QuestionKey[] = draft.layout.holds === 'intervals' ? ['minutes', 'label'] : [];
  const dates: readonly QuestionKey[] = decisionsOf(draft, 'date-order').length > 0 ? ['date-order'] : [];
  return [
    'delimiter',
    'header',
    'decimal-mark',
    'grouping',
    ...dates,
    'clock',
    'holds',
    ...intervals,
    ...columnKeys(draft),
  ];
}

/** Whether a person has to confirm a question. */
export function isUncertain(draft: LayoutDraft, key: QuestionKey): boolean {
  const decisions = decisionsOf(draft, key);
  return draft.changed.has(key) || decisions.length === 0 || decisions.some(({ certain }) => !certain);
}

/** The questions that a person has still to confirm. */
export function openQuestions(draft: LayoutDraft): readonly QuestionKey[] {
  return questionKeys(draft).filter((key) => isUncertain(draft, key) && !draft.confirmed.has(key));
}

function withKey(keys: ReadonlySet<QuestionKey>, key: QuestionKey, isIn: boolean): ReadonlySet<QuestionKey> {
  const all = new Set(keys);
  if (isIn) all.add(key);
  else all.delete(key);
  return all;
}

/** Confirm a question, or take that back. */
export function confirmQuestion(draft: LayoutDraft, key: QuestionKey, isRight: boolean): LayoutDraft {
  return { ...draft, confirmed: withKey(draft.confirmed, key, isRight) };
}

/** Answer a question of one choice otherwise: who chooses, confirms. */
export function answerQuestion(
  draft: LayoutDraft,
  key: QuestionKey,
  change: Partial<TableLayout>,
): LayoutDraft {
  const layout = fitted({ ...draft.layout, ...change });
  const changed = withKey(draft.changed, key, true);
  return { ...draft, layout, changed, confirmed: withKey(draft.confirmed, key, true) };
}

/** A mark cannot stand before the decimals and group digits, and a length belongs to intervals. */
function fitted(layout: TableLayout): TableLayout {
  const { zone } = layout;
  const rest = without(
    layout,
    'zone',
    ...(layout.holds === 'intervals' ? [] : (['label', 'minutes'] as const)),
  );
  const grouping = layout.grouping === layout.decimalMark ? '' : layout.grouping;
  const kept = layout.clock === 'local' && zone !== undefined ? { zone } : {};
  return { ...rest, grouping, ...kept };
}

/** Take the table apart by another delimiter: everything else is detected anew. */
export function changeDelimiter({ head }: LayoutDraft, delimiter: TableLayout['delimiter']): LayoutDraft {
  const draft = draftOf(head, delimiter);
  return { ...draft, changed: new Set(['delimiter']), confirmed: new Set(['delimiter']) };
}

/** Say otherwise what a column is: it has to be confirmed, since more than one thing is said of it. */
export function changeColumn(draft: LayoutDraft, at: number, column: TableColumn): LayoutDraft {
  const key: QuestionKey = `column-${at}`;
  const columns = draft.layout.columns.map((own, index) => (index === at ? column : own));
  return {
    ...draft,
    layout: { ...draft.layout, columns },
    changed: withKey(draft.changed, key, true),
    confirmed: withKey(draft.confirmed, key, false),
  };
}

/** The layout as a person confirms it; what keeps it from being one. */
export function confirmedLayout({ layout }: LayoutDraft): {
  readonly layout: TableLayout | null;
  readonly findings: readonly Finding[];
} {
  const read = readTableLayout(layoutText({ ...layout, confirmed: true }));
  return { layout: read.value, findings: read.findings };
}

/** Whether columns have names to remember a layout by. */
export function canRemember({ header }: TableLayout): boolean {
  return header.some((name) => name.trim() !== '');
}

const DELIMITERS: readonly TableLayout['delimiter'][] = [',', ';', '\t', '|'];

/**
 * A layout that was remembered for a table with these columns, taken apart by any delimiter: a person may
 * have named another than is detected.
 *
 * @param load  what was remembered by a key
 */
export function rememberedLayout(
  head: string,
  load: (key: string) => string | null,
): { readonly key: string; readonly layout: TableLayout } | null {
  const proposals = [undefined, ...DELIMITERS].map((delimiter) => draftOf(head, delimiter).layout);
  for (const { header, delimiter } of proposals) {
    const key = layoutKey(header);
    const text = canRemember({ header } as TableLayout) ? load(key) : null;
    const layout = text === null ? null : readTableLayout(text).value;
    if (layout?.delimiter === delimiter) return { key, layout };
  }
  return null;
}

/** A draft of a layout that was remembered: all of it was confirmed once. */
export function draftOfKnown(head: string, layout: TableLayout): LayoutDraft {
  const draft = draftOf(head, layout.delimiter);
  const known = { ...draft, layout: { ...layout, confirmed: false } };
  return { ...known, confirmed: new Set(questionKeys(known)) };
}
