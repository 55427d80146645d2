import type { Period, PlantDocument } from '@unitbook/engine';
import type { TableLayout } from '@unitbook/meter-files';
import type { LayoutKeep } from '../files/keep-layouts.ts';
import type { Household } from '../household/household.ts';
import type { Explaining } from '../render/derivation.ts';
import type { Taken } from './document/edit-plant.ts';
import type { AskedFile, DayFile, RefusedFile } from './days/day-file.ts';
import type { PlantView } from './view/view-plant.ts';

/** What every part of the page is drawn from, and what it can ask for. */
export interface PlantDesk extends Explaining {
  readonly household: Household;
  readonly view: PlantView;
  /** ISO date, or '' where the page does not know it. */
  readonly today: string;
  readonly change: (plant: PlantDocument) => void;
  /** Take something out, with a way back. */
  readonly take: (taken: Taken | null, told: string) => void;
  /** What was taken out last, in a sentence; '' for nothing. */
  readonly removed: string;
  readonly undo: () => void;
  /** What stands in an input: as typed, as long as the document keeps what was read of it. */
  readonly shown: (id: string, kept: string) => string;
  readonly noteTyped: (id: string, typed: string, kept: string) => void;
  /** The id of the input that is being typed in; '' once it is left. */
  readonly typing: string;
  /** The month whose figures are shown. */
  readonly selected: number;
  readonly select: (at: number) => void;
  readonly focusField: (id: string) => void;
  /** Whether there is room for a wide chart. */
  readonly isWide: boolean;
  readonly pointed: Period | null;
  /** Show some days on the chart. */
  readonly point: (days: Period) => void;
  readonly files: readonly DayFile[];
  readonly refused: readonly RefusedFile[];
  /** Tables to be asked about, one after the other. */
  readonly asked: readonly AskedFile[];
  /** Where layouts of tables are remembered; null remembers none. */
  readonly layouts: LayoutKeep | null;
  readonly openFiles: (files: readonly File[]) => Promise<void>;
  /** Read the table that is asked about; null leaves it out. */
  readonly answerTable: (layout: TableLayout | null) => Promise<void>;
  readonly closeFiles: () => void;
}
