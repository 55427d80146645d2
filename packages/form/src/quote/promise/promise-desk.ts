import type { HouseholdText } from '../../household/read-household.ts';
import type { BillsBy, PromiseView } from './promise-view.ts';

/** A file that was opened and not taken. */
export interface RefusedHousehold {
  readonly name: string;
  readonly text: Exclude<HouseholdText, { readonly kind: 'household' }>;
}

/** What every part of the page about a promise is drawn from, and what it can ask for. */
export interface PromiseDesk {
  readonly view: PromiseView;
  /** The file that the readings are from; '' for the book that lies open. */
  readonly fileName: string;
  readonly refused: RefusedHousehold | null;
  readonly openFile: (file: File) => Promise<void>;
  readonly useBook: () => void;
  readonly chooseTariff: (by: BillsBy) => void;
  /** The place of the period that is explained; null: all together. */
  readonly chosen: number | null;
  readonly choosePeriod: (at: number | null) => void;
  readonly saveCsv: () => void;
}
