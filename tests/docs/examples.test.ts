import * as engine from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { blocksOf, page, pages } from './pages.ts';
import { runExamples } from './run-example.ts';

const WITH_EXAMPLES = pages()
  .map(({ name, text }) => ({ name, blocks: blocksOf(text).filter(({ words }) => words === 'ts') }))
  .filter(({ blocks }) => blocks.length > 0);

describe.each(WITH_EXAMPLES)('the examples of docs/$name', ({ blocks }) => {
  const shown = runExamples(blocks);

  it('show values', () => {
    expect(shown.length).toBeGreaterThan(0);
  });

  it.each(shown)('line $line: $code', ({ value, expected }) => {
    expect(value).toBe(expected);
  });
});

it('the library pages name every function that the engine exports', () => {
  const text = ['library', 'library-2', 'library-3'].map((name) => page(`reference/${name}.md`)).join('');
  const functions = Object.entries(engine)
    .filter(([, value]) => typeof value === 'function')
    .map(([name]) => name);
  expect(functions.filter((name) => !new RegExp(`\\b${name}\\b`).test(text))).toEqual([]);
});
