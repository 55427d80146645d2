import type { EnergyPeriod, Quote } from '@unitbook/engine';
import type { Household } from '../../household/household.ts';
import { keptNumber } from '../../plant/document/typed-texts.ts';
import type { TariffView } from '../../view/tariff-view.ts';
import type { BookView } from '../../view/view-book.ts';
import type { QuoteWriting } from '../view/quote-writing.ts';

/** What notes are made of. */
export interface NoteSource {
  readonly input: { readonly household: Household; readonly bookTariff: TariffView };
  readonly quote: Quote;
  readonly view: BookView;
  readonly energies: readonly EnergyPeriod[];
}

/** "1 period is", "3 periods are" */
const counted = (count: number): string => (count === 1 ? '1 period is' : `${String(count)} periods are`);

function beforeStart({ quote, energies }: NoteSource, { day }: QuoteWriting): readonly string[] {
  const { start } = quote.input;
  const early = energies.filter(({ period }) => period.from < start).length;
  if (early === 0) return [];
  return [
    `The plant of the quote runs from ${day(start)}: ${counted(early)} left out that began earlier. If it began on another day, correct the first day in the quote.`,
  ];
}

function otherPlant({ input, quote }: NoteSource, { number }: QuoteWriting): readonly string[] {
  const own = keptNumber(input.household.account.plantCapacity);
  const { kWp } = quote.input.document.plant;
  if (own === '' || number(own) === number(kWp)) return [];
  return [
    `The book has a plant of ${number(own)} kWp, the quote one of ${number(kWp)} kWp. If it is another plant, open the readings of the one that was quoted.`,
  ];
}

function ofBook({ view, input }: NoteSource): readonly string[] {
  const questions = view.rows.flatMap(({ findings }) =>
    findings.filter(({ severity }) => severity === 'question'),
  ).length;
  const { blocked } = view;
  const { kind } = input.bookTariff;
  return [
    ...(blocked === null
      ? []
      : [
          `From the reading ${blocked.row.date.trim() === '' ? 'without a day' : `of ${blocked.row.date}`} on nothing can be billed yet: set it right in the book.`,
        ]),
    ...(questions === 0
      ? []
      : [
          `The book has ${questions === 1 ? 'an open question' : `${String(questions)} open questions`} about these readings: answer them first, the figures hang on it.`,
        ]),
    ...(kind === 'open'
      ? []
      : ['The tariff of these readings is not open: their bills are made by that of the quote.']),
  ];
}

/** What has to be known before the figures are believed: periods left out, another plant, open questions. */
export function notesOf(source: NoteSource, writing: QuoteWriting): readonly string[] {
  return [...beforeStart(source, writing), ...otherPlant(source, writing), ...ofBook(source)];
}
