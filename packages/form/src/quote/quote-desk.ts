import type { FlyerDocument, QuoteDocument, Tariff } from '@unitbook/engine';
import type { TableLayout } from '@unitbook/meter-files';
import type { LayoutKeep } from '../files/keep-layouts.ts';
import type { Household } from '../household/household.ts';
import type { AskedFile, RefusedFile } from '../plant/days/day-file.ts';
import type { Folds } from '../render/fold.ts';
import type { TariffChoice } from '../tariff-choice.ts';
import type { RefusedTariff, TariffView } from '../view/tariff-view.ts';
import type { ChartSize } from './charts/chart-data.ts';
import type { Taken } from './document/edit-quote.ts';
import type { QuoteFile } from './document/read-quote-file.ts';
import type { KnownRule } from './document/settlement-rules.ts';
import type { ChosenTariff } from './document/tariff-of-quote.ts';
import type { TariffAtHand } from './state/tariffs-at-hand.ts';
import type { QuoteView } from './view/view-quote.ts';
import type { PaperLanguage } from './words/quote-languages.ts';
import type { LaterResults } from './work/later-work.ts';
import type { ReadIntervals } from './work/open-profile.ts';

/** Which quote lies open: the invented one or the reader's own. */
export type QuoteSlot = 'demo' | 'own';

/** The tariff of a quote, and how another is chosen. */
export interface TariffDesk {
  readonly view: TariffView;
  readonly chosen: ChosenTariff;
  readonly choices: readonly TariffChoice[];
  readonly refused: RefusedTariff | null;
  readonly choose: (tariff: ChosenTariff) => void;
  readonly openFile: (file: File) => Promise<void>;
}

/** Other tariffs: those that are compared, and the rules that cases can have. */
export interface OthersDesk {
  readonly list: readonly TariffAtHand[];
  readonly refused: RefusedTariff | null;
  readonly tick: (key: string, isOn: boolean) => void;
  readonly openFile: (file: File) => Promise<void>;
  /** Of the tariffs at hand, and those that came with the quote. */
  readonly rules: readonly KnownRule[];
}

/** Use and generation by intervals, for this visit. */
export interface ProfileDesk {
  readonly read: ReadIntervals | null;
  /** The file that is being read just now; '' for none. */
  readonly reading: string;
  readonly asked: AskedFile | null;
  readonly refused: RefusedFile | null;
  /** As typed; null where the times of the file stand as they are. */
  readonly zone: string | null;
  readonly layouts: LayoutKeep | null;
  readonly openFile: (file: File) => Promise<void>;
  readonly answerTable: (layout: TableLayout | null) => Promise<void>;
  readonly setZone: (zone: string) => Promise<void>;
  /** @returns the way back */
  readonly takeOut: () => () => void;
}

/** What can be laid beside a quote: a rival's flyer, and what came after the sale. */
export type BesidePart = 'flyer' | 'promise';

/** What lies beside the quote, and what it is set against. */
export interface BesideDesk {
  /** As typed. */
  readonly flyer: FlyerDocument;
  readonly setFlyer: (flyer: FlyerDocument) => void;
  /** The tariff of the quote; null: none is open. */
  readonly tariff: Tariff | null;
  readonly household: Household;
  /** The day it is, as an ISO date. */
  readonly today: string;
  /** Whether a part could not be fetched. */
  readonly isFailed: boolean;
  /** Fetch a part, once. */
  readonly want: (part: BesidePart) => void;
  readonly print: (part: BesidePart) => void;
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
  readonly stopDraws: () => void;
  readonly drawAgain: () => void;
  /** Whether cases and sizes are still those of the quote before the last change. */
  readonly isStale: boolean;
  readonly tariff: TariffDesk;
  readonly others: OthersDesk;
  readonly profile: ProfileDesk;
  readonly shelf: ShelfDesk;
  readonly beside: BesideDesk;
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
  /** Whether the two pages lie beside each other: else the answer goes before the inputs. */
  readonly isSpread: boolean;
  readonly isOnPaper: boolean;
  /** In which words it is printed. */
  readonly language: PaperLanguage;
  readonly showPaper: (isShown: boolean) => void;
}
