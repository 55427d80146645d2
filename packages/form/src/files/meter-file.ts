import { readTypedDay } from '@unitbook/engine';
import { layoutKey, layoutText } from '@unitbook/meter-files';
import { html, LitElement, nothing, unsafeCSS, type PropertyValues, type TemplateResult } from 'lit';
import { drawnProperties, styleSheet } from '../element-parts.ts';
import { faultReport } from './fault.ts';
import { fileStyles } from './file-styles.ts';
import type { OfferFit } from './fit-book.ts';
import { canRemember, confirmedLayout, draftOf, type LayoutDraft } from './layout-draft.ts';
import { FileNotGiven, openSource, type MeterSource } from './open-source.ts';
import type { AskedTable, FilesDesk, Panel, Stage } from './panel.ts';
import { renderFault, renderPanel } from './render-panel.ts';
import { withChoices, type Choices } from './session.ts';
import { askedStage, nextAfter, type Reading } from './stages.ts';
import { putBackTaken, takeOver, type Setting, type TakenOver } from './take-over.ts';

declare global {
  interface HTMLElementTagNameMap {
    'unitbook-meter-file': UnitbookMeterFile;
  }
}

/**
 * The panel in which readings are taken over from a meter file or from what a display shows.
 *
 * @summary Reads meter files in the page, says what is in them, and offers their readings to the book.
 */
export class UnitbookMeterFile extends LitElement {
  static override properties = drawnProperties([
    'desk',
    'stage',
    'text',
    'day',
    'isDropping',
    'isForgetful',
    'taken',
    'opened',
  ]);
  static override styles = [styleSheet, unsafeCSS(fileStyles)];

  /** What the page gives. */
  declare desk: FilesDesk | null;
  declare private stage: Stage;
  declare private text: string;
  declare private day: string;
  declare private isDropping: boolean;
  declare private isForgetful: boolean;
  declare private taken: TakenOver | null;
  declare private opened: ReadonlyMap<string, boolean>;
  /** Counts what was begun: whatever was begun before has stopped. */
  private run = 0;
  /** What is to be done once the page has the book that it was given; null for nothing. */
  private onceGiven: ((desk: FilesDesk) => void) | null = null;

  constructor() {
    super();
    this.desk = null;
    this.stage = { kind: 'nothing' };
    this.text = '';
    this.day = '';
    this.isDropping = false;
    this.isForgetful = false;
    this.taken = null;
    this.opened = new Map();
  }

  /** Do something that may be at fault: whatever it throws is told as ours, and nothing is lost. */
  private attempt(what: string, act: (desk: FilesDesk) => void): void {
    try {
      if (this.desk !== null) act(this.desk);
    } catch (error) {
      this.stage = { kind: 'fault', report: faultReport(what, error) };
    }
  }

  private async open(source: MeterSource, reading: Reading | null = null): Promise<void> {
    if (reading === null) this.isForgetful = false;
    this.run += 1;
    const run = this.run;
    const isStopped = (): boolean => run !== this.run;
    this.stage = { kind: 'reading', source, done: 0 };
    const day = readTypedDay(this.day)?.day;
    try {
      const opened = await openSource(source, {
        ...(day === undefined ? {} : { day }),
        ...(reading === null ? {} : { layout: reading.layout }),
        progress: (done) => {
          if (!isStopped()) this.stage = { kind: 'reading', source, done };
        },
        isStopped,
      });
      if (isStopped() || this.desk === null) return;
      const next = nextAfter(source, opened, reading, this.desk);
      if (next.kind === 'again') void this.open(source, next.reading);
      else this.stage = next.stage;
    } catch (error) {
      if (!isStopped()) this.stage = this.faultStage(source, error);
    }
  }

  private faultStage(source: MeterSource, error: unknown): Stage {
    if (error instanceof FileNotGiven) return { kind: 'not-given', source };
    return { kind: 'fault', report: faultReport(`reading ${String(source.blob.size)} bytes`, error) };
  }

  private ask(table: Omit<AskedTable, 'check'>): void {
    this.attempt('asking how a table is read', (desk) => {
      this.stage = askedStage(table, desk);
    });
  }

  private readonly setDraft = (draft: LayoutDraft): void => {
    if (this.stage.kind === 'table') this.ask({ ...this.stage.table, draft });
  };

  private readonly confirmLayout = (): void => {
    if (this.stage.kind !== 'table') return;
    const { source, draft } = this.stage.table;
    const { layout } = confirmedLayout(draft);
    if (layout === null) return;
    const layouts = this.desk?.layouts ?? null;
    if (layouts !== null && canRemember(layout))
      this.isForgetful = !layouts.save(layoutKey(layout.header), layoutText(layout));
    void this.open(source, { layout, draft, known: null });
  };

  private readonly showLayout = (): void => {
    if (this.stage.kind !== 'read' || this.stage.read.draft === null) return;
    const { source, told, draft } = this.stage.read;
    this.ask({ source, told, draft });
  };

  private readonly forgetLayout = (): void => {
    if (this.stage.kind !== 'read' || this.stage.read.draft === null) return;
    const { source, told, draft } = this.stage.read;
    this.desk?.layouts?.forget(layoutKey(draft.layout.header));
    this.ask({ source, told, draft: draftOf(draft.head) });
  };

  private readonly choose = (change: Partial<Choices>): void => {
    if (this.stage.kind !== 'read') return;
    const { read } = this.stage;
    this.attempt(`choosing ${Object.keys(change).join(', ')}`, () => {
      this.stage = { kind: 'read', read: { ...read, session: withChoices(read.session, change) } };
    });
  };

  private readonly take = (fits: readonly OfferFit[], settings: readonly Setting[]): void => {
    this.attempt('taking readings over', (desk) => {
      const taken = takeOver(desk.household, fits, settings);
      this.taken = taken;
      // The next list may be of another day.
      this.day = '';
      this.onceGiven = ({ select }) => {
        select(Math.max(1, taken.last));
        this.focusOn('#put-back');
      };
      desk.change(taken.after);
    });
  };

  private readonly putBack = (): void => {
    const { desk, taken } = this;
    if (desk === null || taken === null) return;
    this.taken = null;
    this.onceGiven = () => {
      this.focusOn('#take-registers, #take-totals, #meter-file');
    };
    desk.change(putBackTaken(desk.household, taken));
  };

  private readonly stop = (): void => {
    this.run += 1;
    this.stage = { kind: 'nothing' };
  };

  /** The button that was pressed is gone: a keyboard goes on from what took its place. */
  private focusOn(selector: string): void {
    const places = [...(this.shadowRoot?.querySelectorAll<HTMLElement>(selector) ?? [])];
    places.at(-1)?.focus();
  }

  protected override updated(changed: PropertyValues): void {
    const { desk, onceGiven } = this;
    if (desk === null || onceGiven === null || !changed.has('desk')) return;
    this.onceGiven = null;
    onceGiven(desk);
  }

  private panel(desk: FilesDesk): Panel {
    const { stage, text, day, isDropping, isForgetful, taken } = this;
    const { confirmLayout, showLayout, forgetLayout, setDraft, choose, take, putBack, stop } = this;
    return {
      ...{ desk, stage, text, day, isDropping, isForgetful, taken },
      ...{ confirmLayout, showLayout, forgetLayout, setDraft, choose, take, putBack, stop },
      setText: (typed) => {
        this.text = typed;
      },
      setDay: (typed) => {
        this.day = typed;
      },
      setDropping: (isOver) => {
        this.isDropping = isOver;
      },
      openFile: (file) => void this.open({ name: file.name, blob: file }),
      readText: () => void this.open({ name: '', blob: new Blob([this.text]) }),
      readAgain: () => {
        if (this.stage.kind === 'read') void this.open(this.stage.read.source);
      },
      goTo: (id) => {
        this.focusOn(`#${id}`);
      },
      isOpen: (key, otherwise) => this.opened.get(key) ?? otherwise,
      setOpen: (key, isOpen) => {
        if (this.opened.get(key) !== isOpen) this.opened = new Map(this.opened).set(key, isOpen);
      },
    };
  }

  protected override render(): TemplateResult | typeof nothing {
    if (this.desk === null) return nothing;
    try {
      return html`${renderPanel(this.panel(this.desk))}`;
    } catch (error) {
      return renderFault(faultReport('showing what was read', error));
    }
  }
}
