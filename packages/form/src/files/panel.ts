import type { Finding, TariffDocument } from '@unitbook/engine';
import type { TableLayout, ToldKind } from '@unitbook/meter-files';
import type { Household } from '../household/household.ts';
import type { Folds } from '../render/fold.ts';
import type { Writing } from '../writing/writing.ts';
import type { StreamContents } from './contents.ts';
import type { OfferFit } from './fit-book.ts';
import type { LayoutKeep } from './keep-layouts.ts';
import type { LayoutDraft } from './layout-draft.ts';
import type { MeterSource } from './open-source.ts';
import type { Preview } from './preview.ts';
import type { Choices, Session } from './session.ts';
import type { Setting, TakenOver } from './take-over.ts';

/** What the page gives to the panel, and what the panel can ask of the page. */
export interface FilesDesk {
  readonly household: Household;
  readonly writing: Writing;
  /** The tariff that is open; null for none. */
  readonly tariff: TariffDocument | null;
  /** The day it is, as an ISO date; '' where the page does not know it. */
  readonly today: string;
  /** Where layouts of tables are remembered; null remembers nothing. */
  readonly layouts: LayoutKeep | null;
  readonly change: (household: Household) => void;
  /** Show the month that a reading is in. */
  readonly select: (index: number) => void;
  /** Open "This account" at one of its fields. */
  readonly goToAccount: (field: string) => void;
}

/** What would come of a layout. */
export interface LayoutCheck {
  /** What keeps it from being one. */
  readonly findings: readonly Finding[];
  /** null while it is none. */
  readonly preview: Preview | null;
}

/** A layout that was remembered: its key, and itself. */
export interface KnownLayout {
  readonly key: string;
  readonly layout: TableLayout;
}

/** A table that a person is asked about. */
export interface AskedTable {
  readonly source: MeterSource;
  readonly told: ToldKind;
  readonly draft: LayoutDraft;
  readonly check: LayoutCheck;
}

/** A file that was read. */
export interface ReadFile {
  readonly source: MeterSource;
  readonly told: ToldKind;
  readonly session: Session;
  readonly contents: readonly StreamContents[];
  /** The layout that it was read by, where that was remembered from an earlier file. */
  readonly known: KnownLayout | null;
  /** How it was confirmed, where it is a table, to look at it again. */
  readonly draft: LayoutDraft | null;
}

/** How far it is. */
export type Stage =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'reading'; readonly source: MeterSource; readonly done: number }
  | { readonly kind: 'table'; readonly table: AskedTable }
  | { readonly kind: 'read'; readonly read: ReadFile }
  | {
      readonly kind: 'refused';
      readonly source: MeterSource;
      readonly told: ToldKind;
      readonly findings: readonly Finding[];
    }
  | { readonly kind: 'book'; readonly source: MeterSource }
  /** The browser did not give the file to the page. */
  | { readonly kind: 'not-given'; readonly source: MeterSource }
  /** A fault of ours; what to report of it. */
  | { readonly kind: 'fault'; readonly report: string };

/** What every part of the panel is drawn from, and what it can ask for. */
export interface Panel extends Folds {
  readonly desk: FilesDesk;
  readonly stage: Stage;
  /** What is typed or pasted, as typed. */
  readonly text: string;
  /** The day of what is typed, as typed. */
  readonly day: string;
  readonly isDropping: boolean;
  readonly taken: TakenOver | null;
  /** Whether the browser has refused to remember a layout. */
  readonly isForgetful: boolean;
  readonly setText: (text: string) => void;
  readonly setDay: (day: string) => void;
  readonly setDropping: (isDropping: boolean) => void;
  readonly openFile: (file: File) => void;
  readonly readText: () => void;
  /** Read the same again, with the day that is typed. */
  readonly readAgain: () => void;
  readonly stop: () => void;
  /** Go to a field of the panel. */
  readonly goTo: (id: string) => void;
  readonly setDraft: (draft: LayoutDraft) => void;
  readonly confirmLayout: () => void;
  /** Look at how a table is read. */
  readonly showLayout: () => void;
  readonly forgetLayout: () => void;
  readonly choose: (change: Partial<Choices>) => void;
  readonly take: (fits: readonly OfferFit[], settings: readonly Setting[]) => void;
  readonly putBack: () => void;
}
