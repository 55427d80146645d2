import type { TableColumn } from '@unitbook/meter-files';
import { html, nothing, type TemplateResult } from 'lit';
import { renderPlainSelect } from '../render/select.ts';
import { changeColumn, type LayoutDraft } from './layout-draft.ts';
import { COLUMN_WORDS, UNIT_WORDS, WORD_WORDS } from './layout-words.ts';
import type { Panel } from './panel.ts';
import { renderTextField } from './parts.ts';

type ValueColumn = Extract<TableColumn, { unit: string }>;
type QualityColumn = Extract<TableColumn, { is: 'quality' }>;

/** A column that is of another kind: of a column of values the unit and the rate stay. */
function ofKind(is: TableColumn['is'], before: TableColumn): TableColumn {
  switch (is) {
    case 'import':
    case 'export':
    case 'generation':
    case 'net':
    case 'other':
      return 'unit' in before ? { ...before, is } : { is, unit: 'kWh' };
    case 'quality':
      return before.is === 'quality' ? before : { is, words: {} };
    default:
      return { is };
  }
}

function renderValue(column: ValueColumn, at: number, change: (column: TableColumn) => void): TemplateResult {
  const id = `column-${String(at)}`;
  return html`
    ${renderPlainSelect({
      id: `${id}-unit`,
      label: 'Unit',
      value: column.unit,
      options: UNIT_WORDS,
      choose: (unit) => {
        change({ ...column, unit: unit as ValueColumn['unit'] });
      },
    })}
    ${renderTextField({
      id: `${id}-rate`,
      label: 'Rate; empty: the total',
      value: column.rate ?? '',
      input: (text) => {
        const { is, unit } = column;
        change(text.trim() === '' ? { is, unit } : { is, rate: text.trim(), unit });
      },
    })}
  `;
}

function renderWords(column: QualityColumn, at: number, change: (column: TableColumn) => void): unknown {
  const words = Object.entries(column.words);
  if (words.length === 0)
    return html`<p class="hint">No word of this column is known: its values count as measured.</p>`;
  return words.map(([word, is], index) =>
    renderPlainSelect({
      id: `column-${String(at)}-word-${String(index)}`,
      label: word === '' ? 'An empty cell' : `“${word}”`,
      value: is,
      options: WORD_WORDS,
      choose: (meaning) => {
        change({ ...column, words: { ...column.words, [word]: meaning as typeof is } });
      },
    }),
  );
}

/** What a column is: its kind, and for numbers the unit and the rate. */
export function renderColumn(draft: LayoutDraft, at: number, panel: Panel): TemplateResult | typeof nothing {
  const column = draft.layout.columns[at];
  if (column === undefined) return nothing;
  const change = (changed: TableColumn): void => {
    panel.setDraft(changeColumn(draft, at, changed));
  };
  return html`<div class="parts">
    ${renderPlainSelect({
      id: `column-${String(at)}-is`,
      label: 'It is',
      value: column.is,
      options: COLUMN_WORDS,
      choose: (is) => {
        change(ofKind(is as TableColumn['is'], column));
      },
    })}
    ${'unit' in column ? renderValue(column, at, change) : nothing}
    ${column.is === 'quality' ? renderWords(column, at, change) : nothing}
  </div>`;
}
