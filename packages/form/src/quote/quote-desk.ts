import type { QuoteDocument } from '@unitbook/engine';
import type { Household } from '../household/household.ts';
import type { Folds } from '../render/fold.ts';
import type { TariffChoice } from '../tariff-choice.ts';
import type { RefusedTariff, TariffView } from '../view/tariff-view.ts';
import type { ChartSize } from './charts/chart-data.ts';
import type { Taken } from './document/edit-quote.ts';
import type { QuoteFile } from './document/read-quote-file.ts';
import type { QuoteView } from './view/view-quote.ts';
import type { LaterResults } from './work/later-work.ts';

/** Which quote lies open: the invented one or the reader's own. */
export type QuoteSlot = 'demo' | 'own';

/** The tariff of a quote, and how another is chosen. */
export interface TariffDesk {
  readonly view: TariffView;
  readonly chosen: Household['tariff'];
  readonly choices: readonly TariffChoice[];
  readonly refused: RefusedTariff | null;
  readonly choose: (tariff: Household['tariff']) => void;
  readonly openFile: (file: File) => Promise<void>;
}

/** Files, the demo and what is kept. */
export interface ShelfDesk {
  readonly slot: QuoteSlot;
  readonly hasDemo: boolean;
  readonly isKept: boolean;
  readonly refused: { readonly name: string; readonly file: QuoteFile } | null;
  /** What lay here before, in a sentence, and can be put back; '' for nothing. */
  readonly before: string;
  readonly putBack: () => void;
  readonly startOwn: () => void;
  readonly showDemo: () => void;
  readonly openFile: (file: File) => Promise<void>;
  readonly saveFile: () => void;
  readonly print: () => void;
}

/** What every part of the page is drawn from, and what it can ask for. */
export interface QuoteDesk extends Folds {
  readonly document: QuoteDocument;
  readonly view: QuoteView;
  readonly later: LaterResults;
  /** Whether cases and sizes are still those of the quote before the last change. */
  readonly isStale: boolean;
  readonly tariff: TariffDesk;
  readonly shelf: ShelfDesk;
  /** What the household uses by its own book; null where that is not known. */
  readonly bookUse: QuoteDocument['use'] | null;
  readonly change: (document: QuoteDocument) => void;
  /** Take something out, with a way back. */
  readonly take: (taken: Taken | null, told: string) => void;
  /** What was taken out last, in a sentence; '' for nothing. */
  readonly removed: string;
  readonly undo: () => void;
  /** What stands in an input: as typed, as long as the document keeps what was read of it. */
  readonly shown: (id: string, kept: string) => string;
  readonly noteTyped: (id: string, typed: string, kept: string) => void;
  readonly focusField: (id: string) => void;
  /** kWp of a size to be tried, as typed; '' for none. */
  readonly trial: string;
  readonly tryOut: (kWp: string) => void;
  readonly size: ChartSize;
  readonly isOnPaper: boolean;
  readonly showPaper: (isShown: boolean) => void;
}
