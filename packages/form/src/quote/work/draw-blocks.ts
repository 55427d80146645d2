import {
  BLOCK,
  checkQuote,
  joinDraws,
  prepareQuote,
  quoteDrawer,
  readTariff,
  summariseDraws,
  type DrawResults,
  type DrawSummary,
  type QuoteDocument,
  type QuoteProfile,
  type Tariff,
} from '@unitbook/engine';
import { sizedInput } from './sized-input.ts';

/** Random draws to be made: all of it can be sent to another thread. */
export interface DrawJob {
  readonly id: number;
  /** With plain numbers. */
  readonly document: QuoteDocument;
  readonly tariff: Tariff['document'];
  /** A size to be tried; null: as it is offered. */
  readonly watts: number | null;
  /** Use and generation by intervals; null: own use is by the share. */
  readonly profile: QuoteProfile | null;
  readonly draws: number;
}

/** What is told while draws are made. */
export type DrawNews =
  | { readonly id: number; readonly kind: 'drawn'; readonly draws: number }
  | { readonly id: number; readonly kind: 'done'; readonly summary: DrawSummary }
  | { readonly id: number; readonly kind: 'failed'; readonly why: string };

/**
 * Make draws block by block, stopping after each, so that whoever asks can do something else or give up.
 * The same job gives the same numbers on any thread: each block has its own source.
 */
export function* drawBlocks({
  id,
  document,
  tariff,
  watts,
  profile,
  draws,
}: DrawJob): Generator<DrawNews, void> {
  const read = readTariff(JSON.stringify(tariff)).value;
  const input = checkQuote(document).value;
  const prepared =
    read === null || input === null
      ? null
      : prepareQuote(sizedInput(input, watts), read, undefined, { profile }).value;
  if (read === null || prepared === null) {
    yield { id, kind: 'failed', why: 'The quote cannot be billed.' };
    return;
  }
  const { value: drawer, findings } = quoteDrawer(prepared, read);
  if (drawer === null) {
    const [first] = findings;
    yield { id, kind: 'failed', why: first === undefined ? '' : `Found ${first.found}. ${first.remedy}` };
    return;
  }
  const parts: DrawResults[] = [];
  while (parts.length * BLOCK < draws) {
    parts.push(drawer.draw(parts.length));
    yield { id, kind: 'drawn', draws: parts.length * BLOCK };
  }
  const all = joinDraws(parts);
  if (all.count === 0) yield { id, kind: 'failed', why: 'None of the draws can be billed.' };
  else yield { id, kind: 'done', summary: summariseDraws(all) };
}
