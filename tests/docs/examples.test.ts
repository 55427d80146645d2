import * as engine from '@unitbook/engine';
import * as meterFiles from '@unitbook/meter-files';
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

/** Pages of one package each, by their ends. */
const LIBRARIES = [
  { name: '@unitbook/engine', exports: engine, pages: ['', '-2', '-3', '-5', '-6', '-7', '-8'] },
  { name: '@unitbook/meter-files', exports: meterFiles, pages: ['-4'] },
];

it.each(LIBRARIES)('the library pages name every function that $name exports', ({ exports, pages: ends }) => {
  const text = ends.map((end) => page(`reference/library${end}.md`)).join('');
  const functions = Object.entries(exports)
    .filter(([, value]) => typeof value === 'function')
    .map(([name]) => name);
  expect(functions.length).toBeGreaterThan(20);
  expect(functions.filter((name) => !new RegExp(`\\b${name}\\b`).test(text))).toEqual([]);
});
