import { describe, expect, it } from 'vitest';
import { readSession } from '../command/read-session.ts';
import { replay } from '../command/replay.ts';
import { blocksOf, keepBlocks, pages } from './pages.ts';

/** Blocks of a session; a JSON file may be marked as JSON first, for its colours. */
const isOfSession = (words: string): boolean =>
  /^(?:(?:json )?file |input$|console$|output(?: part)?$|messages$)/.test(words);

const SESSIONS = pages()
  .map(({ name, text }) => ({
    name,
    session: readSession(keepBlocks(text, isOfSession).replace(/^```json file /gm, '```file ')),
  }))
  .filter(({ session }) => session.steps.length > 0);

it('finds the pages that show commands', () => {
  expect(SESSIONS.length).toBeGreaterThan(3);
});

it('shows what a command prints once: of two blocks, only the second would be compared', () => {
  const kinds = pages().flatMap(({ text }) => blocksOf(text).map(({ words }) => words.split(' ')[0] ?? ''));
  const printed = ['output', 'messages'].filter((kind) =>
    new RegExp(`,${kind},(?:(?!console).)*,${kind},`).test(`,${kinds.join(',,')},`),
  );
  expect(printed).toEqual([]);
});

describe.each(SESSIONS)('docs/$name', ({ session }) => {
  replay(session);
});
