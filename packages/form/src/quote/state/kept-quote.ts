import type { FlyerDocument, QuoteDocument, TariffDocument } from '@unitbook/engine';
import { isFields } from '../../household/shape.ts';
import type { Keep } from '../../keep.ts';
import { readFlyerFile } from '../flyer/flyer-file.ts';
import { readQuoteFile } from '../document/read-quote-file.ts';

/** A quote with the tariff that it is worked out by: its file only names that. */
export interface KeptQuote {
  readonly quote: QuoteDocument;
  /** The name of an example, a tariff document, or '' before one is chosen. */
  readonly tariff: string | TariffDocument;
  /** A rival's flyer, as it was typed beside it; left out: none. */
  readonly flyer?: FlyerDocument;
}

/** The quote that is kept in the browser; null: none that can be opened. */
export function loadQuote(keep: Keep | null): KeptQuote | null {
  const text = keep?.load('quote') ?? null;
  if (text === null) return null;
  try {
    const kept: unknown = JSON.parse(text);
    if (!isFields(kept)) return null;
    const { tariff, flyer } = kept;
    const file = readQuoteFile(JSON.stringify(kept['quote']));
    if (file.kind !== 'quote' || (typeof tariff !== 'string' && !isFields(tariff))) return null;
    const typed = readFlyerFile(JSON.stringify(flyer ?? null));
    return {
      quote: file.quote,
      tariff: tariff as KeptQuote['tariff'],
      ...(typed.kind === 'flyer' ? { flyer: typed.flyer } : {}),
    };
  } catch {
    return null;
  }
}

/** Keep a quote in the browser. @returns whether it was kept */
export function saveQuote(keep: Keep | null, kept: KeptQuote): boolean {
  return keep?.save('quote', JSON.stringify(kept)) ?? false;
}
