import type { PrintedBillDocument } from '@unitbook/engine';
import type { Folds } from '../render/fold.ts';
import type { RefusedTariff, TariffView } from '../view/tariff-view.ts';
import type { Printed, ReportSheets } from './report/report-sheets.ts';
import type { CheckModel } from './state/check-model.ts';
import type { RefusedRules } from './state/dispute-rules.ts';
import type { CheckStore } from './state/check-store.ts';
import type { CheckGround } from './document/typed-check.ts';
import type { BillView, CheckView } from './view/view-check.ts';
import type { BillResult, CheckResults } from './work/check-work.ts';

/** The rules by which bills are disputed, and how others are opened. */
interface RulesDesk {
  /** '' where none are known. */
  readonly name: string;
  readonly refused: RefusedRules | null;
  readonly openFile: (file: File) => Promise<void>;
}

/** What every part of the page is drawn from, and what it can ask for. */
export interface CheckDesk extends Folds {
  readonly store: CheckStore;
  readonly view: CheckView;
  readonly results: CheckResults;
  /** Whether the results are still those of what was typed before the last change. */
  readonly isStale: boolean;
  readonly ground: CheckGround;
  readonly tariff: TariffView;
  /** A tariff file that was opened and cannot be used. */
  readonly refusedTariff: RefusedTariff | null;
  readonly openTariffFile: (file: File) => Promise<void>;
  /** The bill that lies open, and what came of it; null: nothing yet. */
  readonly bill: BillView;
  readonly result: BillResult | null;
  /** The id of the input that is being typed in; '' once it is left. */
  readonly typing: string;
  readonly change: (bill: PrintedBillDocument) => void;
  readonly focusField: (id: string) => void;
  readonly hasDemo: boolean;
  /** Whether the book that lies open is that of the invented household. */
  readonly isDemoBook: boolean;
  readonly held: ReadonlySet<string>;
  readonly hold: (evidence: string, isHeld: boolean) => void;
  readonly saveFile: () => void;
  readonly print: () => void;
  /** The memo and the letter; null: there are none yet. */
  readonly sheets: ReportSheets | null;
  /** The rules for disputes that they go by. */
  readonly rules: RulesDesk;
  /** What is being printed. */
  readonly printed: Printed;
  readonly printSheet: (printed: Printed) => void;
}

/** What the element knows of its place, and does with it. */
export interface DeskPage extends Pick<
  CheckDesk,
  'hasDemo' | 'isDemoBook' | 'saveFile' | 'print' | 'printed' | 'printSheet'
> {
  readonly bill: BillView;
}

/** What the page is drawn from, put together at each drawing. */
export function deskOf(model: CheckModel, page: DeskPage): CheckDesk {
  const { store, view, results, isStale, ground, tariff, typing, held, hold } = model;
  const { bill } = page;
  return {
    ...page,
    ...{ store, view, results, isStale, ground, held, hold },
    tariff: tariff.view,
    sheets: model.sheets(),
    rules: { name: model.dispute?.name ?? '', refused: model.rules.refused, openFile: model.rules.openFile },
    refusedTariff: tariff.refused,
    openTariffFile: async (file) => {
      const document = await tariff.readFile(file);
      if (document !== null) store.changeTariff(document);
    },
    result: model.resultOf(bill),
    typing: typing.field,
    change: (document) => {
      store.changeBill(bill.key, document);
    },
    focusField: typing.focusField,
    isOpen: typing.isOpen,
    setOpen: typing.setOpen,
  };
}
