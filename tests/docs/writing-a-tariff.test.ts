import { describe, expect, it } from 'vitest';
import { pages } from './pages.ts';
import { followPages } from './worked.ts';

const NAMES = ['writing-a-tariff.md', 'writing-a-tariff-2.md', 'writing-a-tariff-3.md'];
const all = pages();
const { snippets, worked } = followPages(
  NAMES.flatMap((wanted) => all.filter(({ name }) => name === wanted)),
);

describe('writing a tariff', () => {
  it('has snippets on these pages, and on no other', () => {
    const withSnippets = all.filter(({ text }) => /^```json tariff/m.test(text)).map(({ name }) => name);
    expect(withSnippets.sort()).toEqual([...NAMES].sort());
  });

  it.each(snippets)('$at: the snippet is sound in its place', ({ problems }) => {
    expect(problems).toEqual([]);
  });

  it.each(worked)('$at: $what', ({ said, found }) => {
    expect(said).toEqual(found);
  });
});
