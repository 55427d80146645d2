import type { Household } from '../household/household.ts';
import type { Fixed } from '../household/put-back.ts';
import type { MonthRows } from '../view/month-rows.ts';
import type { BookView } from '../view/view-book.ts';
import type { RefusedTariff, TariffView } from '../view/tariff-view.ts';
import type { TariffChoice } from '../tariff-choice.ts';

/** What every part of the page is drawn from, and what it can ask for. */
export interface Desk {
  readonly household: Household;
  readonly view: BookView;
  readonly tariff: TariffView;
  readonly tariffs: readonly TariffChoice[];
  /** The reading that closes the month shown. */
  readonly selected: number;
  /** The rows of that month. */
  readonly month: MonthRows | null;
  /** What is wrong with a tariff file that was opened and not taken. */
  readonly refusedTariff: RefusedTariff | null;
  /** What was taken out last and can be put back, in a sentence; '' for nothing. */
  readonly removed: string;
  /** What stood where a fix was made. */
  readonly fixed: Fixed;
  readonly change: (household: Household) => void;
  /** Change what was typed by a press of a button, so that it can be put back. */
  readonly fix: (household: Household) => void;
  /** Show the month that a reading is in. */
  readonly select: (index: number) => void;
  /** Take readings out, and the meters that they began. */
  readonly remove: (places: readonly number[], told: string) => void;
  readonly undo: () => void;
  readonly addMonth: () => void;
  readonly focusField: (id: string) => void;
  readonly openTariffFile: (file: File) => Promise<void>;
  /** Whether a disclosure is open: as the reader left it, else as given. */
  readonly isOpen: (key: string, otherwise: boolean) => boolean;
  readonly setOpen: (key: string, isOpen: boolean) => void;
  /** What was typed in an input that cannot be taken over as it is. */
  readonly draft: (id: string) => string | undefined;
  readonly setDraft: (id: string, text: string | null) => void;
}

/** What was typed or chosen, from an input or change event. */
export function typed(event: Event): string {
  return (event.currentTarget as HTMLInputElement | HTMLSelectElement).value;
}
