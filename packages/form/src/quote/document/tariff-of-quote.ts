import type { QuoteDocument, TariffDocument } from '@unitbook/engine';
import type { TariffChoice } from '../../tariff-choice.ts';
import { putAt, textAt } from './edit-quote.ts';

/** The tariff of a quote: the name of an example, a document, or '' before one is chosen. */
export type ChosenTariff = string | TariffDocument;

const idOf = (tariff: ChosenTariff): string => (typeof tariff === 'string' ? tariff : tariff.id);

/** The name of a chosen tariff; '' where it is not known. */
export function nameOf(tariff: ChosenTariff, choices: readonly TariffChoice[]): string {
  if (typeof tariff !== 'string') return tariff.name;
  return choices.find(({ id }) => id === tariff)?.name ?? '';
}

/** A quote that names the tariff it is worked out by; nothing is named before one is chosen. */
export function withTariff(
  quote: QuoteDocument,
  tariff: ChosenTariff,
  choices: readonly TariffChoice[],
): QuoteDocument {
  const id = idOf(tariff);
  if (id === '') return quote;
  const name = nameOf(tariff, choices);
  return putAt(quote, ['tariff'], name === '' ? { id } : { id, name });
}

/**
 * The tariff that a quote opens with: the one it names, where that is among the choices.
 *
 * @param otherwise  the tariff that lies open
 */
export function tariffOfQuote(
  quote: QuoteDocument,
  choices: readonly TariffChoice[],
  otherwise: ChosenTariff,
): ChosenTariff {
  const named = textAt(quote, ['tariff', 'id']);
  const isOpen = named === '' || idOf(otherwise) === named;
  if (isOpen || !choices.some(({ id }) => id === named)) return otherwise;
  return named;
}

/** The tariff that a quote names, where another lies open: by its name or its id; '' where it is the same. */
export function otherTariffNamed(quote: QuoteDocument, open: ChosenTariff): string {
  const id = textAt(quote, ['tariff', 'id']);
  if (id === '' || id === idOf(open)) return '';
  const name = textAt(quote, ['tariff', 'name']);
  return name === '' ? id : name;
}
