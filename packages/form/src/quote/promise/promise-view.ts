import {
  checkPromise,
  prepareTariff,
  type Finding,
  type PreparedTariff,
  type PromiseReport,
  type Quote,
  type Tariff,
} from '@unitbook/engine';
import type { Household } from '../../household/household.ts';
import type { TariffView } from '../../view/tariff-view.ts';
import { viewBook, type BookView } from '../../view/view-book.ts';
import { writingFor } from '../../writing/writing.ts';
import { quoteWriting, type QuoteWriting } from '../view/quote-writing.ts';
import { offeredQuote, type OfferedInput } from './offered-quote.ts';
import { notesOf } from './promise-notes.ts';

/** By which tariff the bills are made that came. */
export type BillsBy = 'book' | 'quote';

/** Whether the tariffs of book and quote differ, and which of them makes the bills. */
interface TariffChoiceView {
  readonly by: BillsBy;
  readonly book: string;
  readonly quote: string;
}

/** Everything that the page shows of a promise. */
export interface PromiseView {
  readonly writing: QuoteWriting;
  readonly quote: Quote | null;
  readonly report: PromiseReport | null;
  /** Why there is no report, in a sentence; '' where there is one. */
  readonly wanted: string;
  /** What stands in its way, each with what to do. */
  readonly findings: readonly Finding[];
  /** What has to be known of a report. */
  readonly notes: readonly string[];
  /** null: there is nothing to choose. */
  readonly tariffs: TariffChoiceView | null;
}

/** What a view is made of. */
export interface PromiseViewInput extends OfferedInput {
  readonly household: Household;
  /** That of the household, as far as it is open. */
  readonly bookTariff: TariffView;
  readonly billsBy: BillsBy;
  readonly today: string;
  readonly locale: string;
}

const isSame = (one: Tariff, other: Tariff): boolean =>
  one === other || JSON.stringify(one.document) === JSON.stringify(other.document);

/** The tariff that makes the bills that came, and whether there is a choice. */
function billedBy(
  tariff: Tariff,
  { bookTariff, billsBy }: PromiseViewInput,
): { readonly prepared: PreparedTariff; readonly tariffs: TariffChoiceView | null } {
  if (bookTariff.kind !== 'open') return { prepared: prepareTariff(tariff), tariffs: null };
  const own = bookTariff.tariff;
  if (isSame(own.tariff, tariff)) return { prepared: own, tariffs: null };
  const names = { book: own.tariff.document.name, quote: tariff.document.name };
  return {
    prepared: billsBy === 'book' ? own : prepareTariff(tariff),
    tariffs: { by: billsBy, ...names },
  };
}

/** What is wrong with the readings or the account, or still to type. */
function bookErrors({ account, rows, findings }: BookView): readonly Finding[] {
  const all = [...account.findings, ...findings, ...rows.flatMap((row) => row.findings)];
  return all.filter(({ severity }) => severity === 'error');
}

/** Why there are no bills yet, and what to do. */
function noBills({ typed }: BookView, start: string): string {
  const count = typed.rows.length;
  if (count > 1) return 'These readings make no bill yet. Set right in the book what it asks for:';
  const found = count === 0 ? 'no reading' : '1 reading';
  return `There is ${found}. Expected: at least two, the first from ${start} on, when the plant begins. Type them in the book, or open another household’s file.`;
}

/** What is said where the money of both cannot be compared; '' where it can. */
function otherMoney(quoted: Tariff, billed: Tariff): string {
  const [own, other] = [quoted.document.currency, billed.document.currency];
  if (own === other) return '';
  return `The quote is in ${own}, and the bills of these readings are in ${other}. Expected: one currency. Let the tariff of the quote make the bills, or choose the book’s tariff anew.`;
}

/** Set what happened against the quote, as far as both can be used. */
export function viewPromise(input: PromiseViewInput): PromiseView {
  const { tariff, household, bookTariff, today, locale } = input;
  const currency = tariff?.document.currency ?? 'INR';
  const writingOn = (grid: number): QuoteWriting =>
    quoteWriting(writingFor(locale, currency), { locale, grid });
  const none = { quote: null, report: null, findings: [], notes: [], tariffs: null, writing: writingOn(100) };
  const offered = offeredQuote(input);
  if (tariff === null || offered === null)
    return { ...none, wanted: 'The quote has no answer yet: type what it still asks for.' };
  if (bookTariff.kind === 'opening') return { ...none, wanted: 'Opening the tariff of the readings …' };
  const { quote, prepared } = offered;
  const { prepared: own, tariffs } = billedBy(tariff, input);
  const money = otherMoney(tariff, own.tariff);
  if (money !== '') return { ...none, quote, tariffs, wanted: money };
  const view = viewBook({ household, tariff: own, today });
  const { book } = view;
  if (book === null || book.months.length === 0) {
    const wanted = noBills(view, writingOn(100).day(quote.input.start));
    return { ...none, quote, tariffs, wanted, findings: bookErrors(view) };
  }
  const energies = book.months.map(({ energy }) => energy);
  const { value: report, findings } = checkPromise(prepared, {
    energies,
    quantities: book.months.map((month) => month.quantities),
    tariff: own.tariff,
  });
  const notes = notesOf({ input, quote, view, energies }, writingOn(quote.grid));
  if (report === null)
    return { ...none, quote, tariffs, notes, findings, wanted: 'The quote cannot be set against them yet:' };
  return { quote, report, wanted: '', findings: [], notes, tariffs, writing: writingOn(report.grid) };
}
