import type { TableLayout } from '@unitbook/meter-files';
import { contentsOf } from './contents.ts';
import {
  confirmedLayout,
  draftOf,
  draftOfKnown,
  rememberedLayout,
  type LayoutDraft,
} from './layout-draft.ts';
import type { MeterSource, Opened } from './open-source.ts';
import type { AskedTable, FilesDesk, KnownLayout, LayoutCheck, Stage } from './panel.ts';
import { previewOf } from './preview.ts';
import { ownSession, sessionOf } from './session.ts';

/** How a table is read: as it was confirmed just now, or on an earlier file. */
export interface Reading {
  readonly layout: TableLayout;
  readonly draft: LayoutDraft;
  /** null where it was confirmed just now. */
  readonly known: KnownLayout | null;
}

/** What comes next: a stage, or reading a table by a layout that is remembered. */
export type Next =
  { readonly kind: 'stage'; readonly stage: Stage } | { readonly kind: 'again'; readonly reading: Reading };

/** What would come of a layout as it is. */
function checkOf(draft: LayoutDraft, { writing }: FilesDesk): LayoutCheck {
  const { layout, findings } = confirmedLayout(draft);
  return { findings, preview: layout === null ? null : previewOf(layout, draft.head, writing) };
}

/** Ask a person about a table. */
export function askedStage(table: Omit<AskedTable, 'check'>, desk: FilesDesk): Stage {
  return { kind: 'table', table: { ...table, check: checkOf(table.draft, desk) } };
}

function tableNext(source: MeterSource, opened: Extract<Opened, { kind: 'table' }>, desk: FilesDesk): Next {
  const { told, head } = opened;
  const { layouts } = desk;
  const known = layouts === null ? null : rememberedLayout(head, (key) => layouts.load(key));
  if (known === null)
    return { kind: 'stage', stage: askedStage({ source, told, draft: draftOf(head) }, desk) };
  const { layout } = known;
  return { kind: 'again', reading: { layout, known, draft: draftOfKnown(head, layout) } };
}

function openedStage(
  source: MeterSource,
  opened: Exclude<Opened, { kind: 'table' }>,
  reading: Reading | null,
  desk: FilesDesk,
): Stage {
  switch (opened.kind) {
    case 'stopped':
      return { kind: 'nothing' };
    case 'book':
      return { kind: 'book', source };
    case 'refused':
      return { kind: 'refused', source, told: opened.told, findings: opened.findings };
    case 'own': {
      const read = { source, told: opened.told, session: ownSession(opened.csv), contents: [] };
      return { kind: 'read', read: { ...read, known: null, draft: null } };
    }
    case 'file': {
      const { told, file, findings } = opened;
      const session = sessionOf(file, findings);
      const { known = null, draft = null } = reading ?? {};
      const contents = contentsOf(file, desk.writing);
      return { kind: 'read', read: { source, told, session, contents, known, draft } };
    }
  }
}

/**
 * What comes next once a file was opened.
 *
 * @param reading  how a table was read; null for the first look at a file
 */
export function nextAfter(
  source: MeterSource,
  opened: Opened,
  reading: Reading | null,
  desk: FilesDesk,
): Next {
  if (opened.kind === 'table') return tableNext(source, opened, desk);
  return { kind: 'stage', stage: openedStage(source, opened, reading, desk) };
}
