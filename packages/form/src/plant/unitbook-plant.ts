import type { TableLayout } from '@unitbook/meter-files';
import { html, LitElement, unsafeCSS, type PropertyValues, type TemplateResult } from 'lit';
import { calendarDay, type Period, type PlantDocument } from '@unitbook/engine';
import { drawnProperties, styleSheet } from '../element-parts.ts';
import type { LayoutKeep } from '../files/keep-layouts.ts';
import { HOUSEHOLD_CHANGE } from '../household-change.ts';
import { emptyHousehold, type Household } from '../household/household.ts';
import { overlap } from './chart/chart-model.ts';
import { stripsOf } from './chart/strips.ts';
import { mergedDays, type AskedFile, type DayFile, type RefusedFile } from './days/day-file.ts';
import type { OpenedDays } from './days/open-day-file.ts';
import { plantOf, type Taken } from './document/edit-plant.ts';
import type { PlantDesk } from './plant-desk.ts';
import { renderPlantAnswer } from './render/answer.ts';
import { renderChart, stripIdOf } from './render/chart.ts';
import { renderDays } from './render/days.ts';
import { renderExpected } from './render/expected.ts';
import { renderMonthTable } from './render/months.ts';
import { renderUpkeep } from './render/upkeep.ts';
import { plantStyles } from './styles.ts';
import { DayMemo } from './view/day-memo.ts';
import { dayViews } from './view/day-views.ts';
import { chartOf, viewPlant, type PlantView } from './view/view-plant.ts';

declare global {
  interface HTMLElementTagNameMap {
    'unitbook-plant': UnitbookPlant;
  }
}

interface TakenOut {
  readonly told: string;
  readonly putBack: Taken['putBack'];
}

interface Typed {
  readonly typed: string;
  readonly kept: string;
}

/** From so many pixels on the chart of months is drawn wide. */
const WIDE = 620;

/**
 * Is the plant healthy? What it made, what it should make, and its upkeep.
 *
 * @summary Judges a solar plant's months and days against what it should make, and keeps its diary.
 * @event unitbook-household-change - something about the plant was edited; `detail` is the new household
 */
export class UnitbookPlant extends LitElement {
  static override properties = drawnProperties([
    'household',
    'today',
    'selected',
    'takenOut',
    'files',
    'refused',
    'asked',
    'layouts',
    'opened',
    'typing',
    'pointed',
    'isWide',
  ]);
  static override styles = [styleSheet, unsafeCSS(plantStyles)];

  /** Everything typed. Replace it, never change it in place. */
  declare household: Household;
  /** The day it is, as an ISO date; '' leaves due days untold. */
  declare today: string;
  /** Where layouts of tables are remembered; null remembers none. */
  declare layouts: LayoutKeep | null;
  /** The month whose figures are shown; null: the latest. */
  declare private selected: number | null;
  declare private takenOut: readonly TakenOut[];
  declare private files: readonly DayFile[];
  declare private refused: readonly RefusedFile[];
  declare private asked: readonly AskedFile[];
  declare private opened: ReadonlyMap<string, boolean>;
  declare private typing: string;
  declare private pointed: Period | null;
  declare private isWide: boolean;
  private view: PlantView;
  private readonly memo = new DayMemo(dayViews);
  private readonly typed = new Map<string, Typed>();
  /** The plant as this element last sent it: any other comes from the page. */
  private own: PlantDocument | undefined = undefined;
  private readonly widthWatch: ResizeObserver;

  constructor() {
    super();
    this.household = emptyHousehold('en-IN');
    this.today = '';
    this.selected = null;
    this.takenOut = [];
    this.files = [];
    this.refused = [];
    this.asked = [];
    this.layouts = null;
    this.opened = new Map();
    this.typing = '';
    this.pointed = null;
    this.isWide = false;
    this.view = viewPlant({ household: this.household, today: '', days: [] });
    this.widthWatch = new ResizeObserver(([entry]) => {
      const isWide = (entry?.contentRect.width ?? 0) >= WIDE;
      // Drawn with the next frame: within this one another height would call the watch again.
      requestAnimationFrame(() => {
        this.isWide = isWide;
      });
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.widthWatch.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.widthWatch.disconnect();
  }

  protected override willUpdate(changed: PropertyValues): void {
    const isLeft = changed.has('typing') && this.typing === '' && this.memo.isStale;
    if (!isLeft && !['household', 'today', 'files'].some((name) => changed.has(name))) return;
    const before = changed.get('household') as Household | undefined;
    const { household, today, files, typing } = this;
    const { plant, account } = household;
    if (changed.has('household') && plant !== this.own && plant !== before?.plant) this.forgetTyped();
    if (changed.has('files')) this.memo.clear();
    const key = [plant ?? account.plantCapacity, files];
    const makeDayViews = this.memo.maker(key, typing !== '');
    this.view = viewPlant({ household, today, days: mergedDays(files), makeDayViews });
  }

  /** A plant from the page is another one: what was typed and taken out here is not about it. */
  private forgetTyped(): void {
    this.takenOut = [];
    this.typed.clear();
    this.selected = null;
    this.pointed = null;
  }

  private readonly change = (plant: PlantDocument): void => {
    this.own = plant;
    this.household = { ...this.household, plant };
    this.dispatchEvent(
      new CustomEvent<Household>(HOUSEHOLD_CHANGE, {
        detail: this.household,
        bubbles: true,
        composed: true,
      }),
    );
  };

  private readonly take = (taken: Taken | null, told: string): void => {
    if (taken === null) return;
    this.takenOut = [...this.takenOut, { told, putBack: taken.putBack }];
    this.change(taken.plant);
    this.focusField('plant-undo');
  };

  private readonly undo = (): void => {
    const last = this.takenOut.at(-1);
    if (last === undefined) return;
    this.takenOut = this.takenOut.slice(0, -1);
    this.change(last.putBack(plantOf(this.household)));
    this.focusField(this.takenOut.length > 0 ? 'plant-undo' : 'plant-new-entry');
  };

  private readonly setOpen = (key: string, isOpen: boolean): void => {
    if (this.opened.get(key) === isOpen) return;
    this.opened = new Map(this.opened).set(key, isOpen);
  };

  private readonly noteTyping = ({ type }: Event): void => {
    this.typing = type === 'input' ? (this.shadowRoot?.activeElement?.id ?? '') : '';
  };

  /** Go to a field, once it is drawn. */
  readonly focusField = (id: string): void => {
    void this.updateComplete.then(() => {
      const field = this.shadowRoot?.getElementById(id);
      field?.focus();
      if (field instanceof HTMLInputElement) field.select();
    });
  };

  /** Show days on the chart: the strips that they are on open, and the first comes into sight. */
  private readonly point = (days: Period): void => {
    this.pointed = days;
    const model = chartOf(this.view, days);
    const strip = model === null ? undefined : stripsOf(model).find((one) => overlap(one, days));
    if (strip === undefined) return;
    this.setOpen(`plant-year-${String(calendarDay(strip.from).year)}`, true);
    this.focusField(stripIdOf(strip));
  };

  private readonly openFiles = async (files: readonly File[]): Promise<void> => {
    const { openDayFile } = await import('./days/open-day-file.ts');
    const { layouts } = this;
    this.refused = [];
    await this.takeOpened(await Promise.all(files.map((file) => openDayFile(file.name, file, { layouts }))));
  };

  private async takeOpened(opened: readonly OpenedDays[]): Promise<void> {
    const taken = opened.flatMap((one) => (one.kind === 'days' ? [one.file] : []));
    const refused = opened.flatMap((one) => (one.kind === 'refused' ? [one.refused] : []));
    const asked = opened.flatMap((one) => (one.kind === 'asked' ? [one.asked] : []));
    this.refused = [...this.refused, ...refused];
    if (asked.length > 0) (await import('./days/table-question.ts')).defineQuestion();
    this.asked = [...this.asked, ...asked];
    if (taken.length > 0) this.files = [...this.files, ...taken];
    this.pointed = null;
  }

  /** Go on with the table that was asked about; others that are read the same way are no longer asked about. */
  private readonly answerTable = async (layout: TableLayout | null): Promise<void> => {
    const [first, ...rest] = this.asked;
    this.asked = rest;
    if (first === undefined || layout === null) return;
    const { openDayFile } = await import('./days/open-day-file.ts');
    await this.takeOpened([await openDayFile(first.name, first.blob, { layout })]);
    const isLike = ({ head }: AskedFile): boolean => head.split('\n')[0] === first.head.split('\n')[0];
    const alike = this.asked.filter(isLike);
    this.asked = this.asked.filter((one) => !isLike(one));
    await this.takeOpened(
      await Promise.all(alike.map(({ name, blob }) => openDayFile(name, blob, { layout }))),
    );
  };

  private desk(): PlantDesk {
    const { view, household, today, typing } = this;
    return {
      household,
      view,
      today,
      typing,
      change: this.change,
      take: this.take,
      removed: this.takenOut.at(-1)?.told ?? '',
      undo: this.undo,
      shown: (id, kept) => {
        const own = this.typed.get(id);
        return own?.kept === kept ? own.typed : kept;
      },
      noteTyped: (id, typed, kept) => {
        this.typed.set(id, { typed, kept });
      },
      selected: this.selected ?? view.months.length - 1,
      select: (at) => {
        this.selected = at;
      },
      focusField: this.focusField,
      isOpen: (key, otherwise) => this.opened.get(key) ?? otherwise,
      setOpen: this.setOpen,
      isWide: this.isWide,
      pointed: this.pointed,
      point: this.point,
      files: this.files,
      refused: this.refused,
      asked: this.asked,
      layouts: this.layouts,
      openFiles: this.openFiles,
      answerTable: this.answerTable,
      closeFiles: () => {
        this.files = [];
        this.refused = [];
        this.asked = [];
        this.pointed = null;
      },
    };
  }

  protected override render(): TemplateResult {
    const desk = this.desk();
    return html`<div class="plant" @input=${this.noteTyping} @focusout=${this.noteTyping}>
      ${renderPlantAnswer(desk)} ${renderExpected(desk)} ${renderMonthTable(desk)} ${renderChart(desk)}
      ${renderDays(desk)} ${renderUpkeep(desk)}
    </div>`;
  }
}
