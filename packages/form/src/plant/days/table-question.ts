import { layoutKey, layoutText, type TableLayout } from '@unitbook/meter-files';
import { LitElement, nothing, unsafeCSS, type PropertyValues, type TemplateResult } from 'lit';
import { drawnProperties, styleSheet } from '../../element-parts.ts';
import { fileStyles } from '../../files/file-styles.ts';
import type { LayoutKeep } from '../../files/keep-layouts.ts';
import { canRemember, confirmedLayout, draftOf, type LayoutDraft } from '../../files/layout-draft.ts';
import type { FilesDesk, Panel } from '../../files/panel.ts';
import { renderLayout } from '../../files/render-layout.ts';
import { askedStage } from '../../files/stages.ts';
import type { Writing } from '../../writing/writing.ts';
import type { AskedFile } from './day-file.ts';

const NAME = 'unitbook-table-question';

declare global {
  interface HTMLElementTagNameMap {
    'unitbook-table-question': UnitbookTableQuestion;
  }
}

/**
 * What the columns of a table are, for a person to confirm before it is read.
 *
 * @summary Asks how a table of daily or interval generation is to be read.
 */
export class UnitbookTableQuestion extends LitElement {
  static override properties = drawnProperties(['asked', 'writing', 'layouts', 'answer', 'draft']);
  static override styles = [styleSheet, unsafeCSS(fileStyles)];

  declare asked: AskedFile | null;
  declare writing: Writing | null;
  /** Where layouts are remembered; null remembers none. */
  declare layouts: LayoutKeep | null;
  /** What is done with the layout once it is confirmed. */
  declare answer: (layout: TableLayout) => void;
  declare private draft: LayoutDraft | null;

  constructor() {
    super();
    this.asked = null;
    this.writing = null;
    this.layouts = null;
    this.answer = () => undefined;
    this.draft = null;
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('asked')) this.draft = this.asked === null ? null : draftOf(this.asked.head);
  }

  private readonly confirm = (): void => {
    const layout = this.draft === null ? null : confirmedLayout(this.draft).layout;
    if (layout === null) return;
    if (canRemember(layout)) this.layouts?.save(layoutKey(layout.header), layoutText(layout));
    this.answer(layout);
  };

  protected override render(): TemplateResult | typeof nothing {
    const { asked, draft, writing, layouts } = this;
    if (asked === null || draft === null || writing === null) return nothing;
    // The questions about a table use no more of the desk and of the panel than this.
    const desk = { writing, layouts } as FilesDesk;
    const panel = {
      desk,
      setDraft: (next: LayoutDraft) => {
        this.draft = next;
      },
      confirmLayout: this.confirm,
    } as Panel;
    const source = { name: asked.name, blob: asked.blob };
    const stage = askedStage({ source, told: { kind: 'table', why: '' }, draft }, desk);
    return stage.kind === 'table' ? renderLayout(stage.table, panel) : nothing;
  }
}

/** Make the element that asks about a table known to the page; another copy may have been first. */
export function defineQuestion(): void {
  if (customElements.get(NAME) === undefined) customElements.define(NAME, UnitbookTableQuestion);
}
