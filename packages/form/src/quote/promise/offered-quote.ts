import {
  checkQuote,
  prepareQuote,
  workOutQuote,
  type PreparedQuote,
  type PrepareOptions,
  type Quote,
  type QuoteDocument,
  type Tariff,
} from '@unitbook/engine';

/** What a quote is worked out from. */
export interface OfferedInput {
  /** With plain numbers; null: not all of it is typed. */
  readonly quoteDocument: QuoteDocument | null;
  /** The tariff of the quote; null: none is open. */
  readonly tariff: Tariff | null;
  /** Use and generation by intervals; null: there are none. */
  readonly profile: NonNullable<PrepareOptions['profile']> | null;
}

/** A quote as it is offered, worked out. */
export interface OfferedQuote {
  readonly quote: Quote;
  readonly prepared: PreparedQuote;
}

function attempt({ quoteDocument, tariff, profile }: OfferedInput): OfferedQuote | null {
  if (quoteDocument === null || tariff === null) return null;
  const { value: input } = checkQuote(quoteDocument);
  if (input === null) return null;
  const { value: prepared } = prepareQuote(input, tariff, undefined, { profile });
  return prepared === null ? null : { quote: workOutQuote(prepared), prepared };
}

/**
 * Work a quote out as it is offered. Its bills are its own: what the page tries out meanwhile does not change them.
 *
 * @returns  null while it has no answer: the page of the quote says what it still wants
 */
export function offeredQuote(input: OfferedInput): OfferedQuote | null {
  try {
    return attempt(input);
  } catch {
    // A fault of ours and not of what was typed: the page of the quote tells it, this part waits.
    return null;
  }
}
