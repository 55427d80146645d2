import type { QuoteDocument } from '@unitbook/engine';
import type { LayoutKeep } from '../files/keep-layouts.ts';
import type { Household } from '../household/household.ts';
import type { TariffChoice } from '../tariff-choice.ts';
import type { Taken } from './document/edit-quote.ts';
import { ownRules, rulesOf } from './document/settlement-rules.ts';
import type { BesideDesk, OthersDesk, ProfileDesk, QuoteDesk, ShelfDesk, TariffDesk } from './quote-desk.ts';
import type { QuoteModel } from './state/quote-model.ts';

/** What the element knows of its place, and does with it. */
export interface DeskPage extends Pick<QuoteDesk, 'isSpread' | 'isOnPaper' | 'showPaper'> {
  readonly tariffs: readonly TariffChoice[];
  readonly layouts: LayoutKeep | null;
  /** Whether the charts have room to be drawn wide. */
  readonly isWide: boolean;
  readonly hasDemo: boolean;
  readonly household: Household;
  readonly today: string;
  readonly print: () => void;
}

function tariffDesk({ store, tariff }: QuoteModel, { tariffs }: DeskPage): TariffDesk {
  return {
    view: tariff.view,
    chosen: store.tariff,
    choices: tariffs,
    refused: tariff.refused,
    choose: store.chooseTariff,
    openFile: async (file) => {
      const document = await tariff.readFile(file);
      if (document !== null) store.chooseTariff(document);
    },
  };
}

function othersDesk({ store, tariff, others }: QuoteModel, { tariffs }: DeskPage): OthersDesk {
  const list = others.list(tariffs, store.tariff);
  const views = [tariff.view, ...list.map(({ view }) => view)];
  const rules = views.flatMap((view) => (view.kind === 'open' ? rulesOf(view.tariff.tariff.document) : []));
  return {
    list,
    refused: others.refused,
    tick: others.tick,
    openFile: others.openFile,
    rules: [...ownRules(store.first), ...rules],
  };
}

function profileDesk({ profile }: QuoteModel, { layouts }: DeskPage): ProfileDesk {
  const { read, reading, asked, refused, zone, openFile, answerTable, setZone, takeOut } = profile;
  return { read, reading, asked, refused, zone, layouts, openFile, answerTable, setZone, takeOut };
}

function besideDesk({ beside, openTariff }: QuoteModel, { household, today }: DeskPage): BesideDesk {
  const { flyer, setFlyer, isFailed, want, print } = beside;
  return { flyer, setFlyer, isFailed, want, print, tariff: openTariff, household, today };
}

function shelfDesk({ store }: QuoteModel, { hasDemo, print }: DeskPage): ShelfDesk {
  return {
    ...store.deeds,
    slot: store.slot,
    hasDemo,
    isKept: store.isKept,
    refused: store.refused,
    before: store.before?.told ?? '',
    print,
  };
}

/** What every part of the page is drawn from, put together at each drawing. */
export function deskOf(model: QuoteModel, page: DeskPage): QuoteDesk {
  const { store, typing, view, later, isStale, bookUse, trial, tryOut } = model;
  const { isSpread, isOnPaper, showPaper } = page;
  const changeTo = (quote: QuoteDocument | null): void => {
    if (quote !== null) store.change(quote);
  };
  return {
    ...{ view, later, isStale, bookUse, trial, tryOut, isSpread, isOnPaper, showPaper },
    document: store.quote,
    stopDraws: () => {
      model.work.stopDraws();
    },
    drawAgain: () => {
      model.work.drawAgain();
    },
    tariff: tariffDesk(model, page),
    others: othersDesk(model, page),
    profile: profileDesk(model, page),
    shelf: shelfDesk(model, page),
    beside: besideDesk(model, page),
    language: model.languages,
    size: page.isWide ? 'wide' : 'narrow',
    change: store.change,
    take: (taken: Taken | null, told: string) => {
      changeTo(typing.take(taken, told));
    },
    removed: typing.removed,
    undo: () => {
      changeTo(typing.undo(store.quote));
    },
    shown: typing.shown,
    noteTyped: typing.noteTyped,
    focusField: typing.focusField,
    isOpen: typing.isOpen,
    setOpen: typing.setOpen,
  };
}
