import { runInNewContext } from 'node:vm';
import * as engine from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { documentedFunctions, examplesOf, type Example } from './docstrings.ts';

const isTest = (path: string): boolean => path.endsWith('.test.ts');
const inEngine = <Value>(all: Readonly<Record<string, Value>>): readonly (readonly [string, Value])[] =>
  Object.entries(all)
    .filter(([path]) => !isTest(path))
    .map(([path, value]) => [path.replace(/^.*\/engine\/src\//, ''), value] as const);

const TEXTS = inEngine(
  import.meta.glob<string>('../../packages/engine/src/**/*.ts', {
    query: '?raw',
    import: 'default',
    eager: true,
  }),
);

/** What a file exports, also where the engine does not pass it on. */
const EXPORTS = new Map(
  inEngine(
    import.meta.glob<Readonly<Record<string, unknown>>>(
      ['../../packages/engine/src/**/*.ts', '!../../packages/engine/src/**/*.test.ts'],
      { eager: true },
    ),
  ),
);

const FUNCTIONS = TEXTS.flatMap(([path, text]) => documentedFunctions(text).map((one) => ({ path, ...one })));

const EXAMPLES = FUNCTIONS.flatMap(({ path, name, docstring }) =>
  examplesOf(docstring ?? '').map((example) => ({ path, name, example })),
);

/** A value as docstrings write it. */
function written(value: unknown): string {
  if (typeof value === 'bigint') return `${String(value)}n`;
  return value === undefined ? 'undefined' : JSON.stringify(value);
}

/** Run an example with what its file and the engine export. */
function run({ code }: Example, path: string): readonly string[] {
  const results: unknown[] = [];
  runInNewContext(code, { ...engine, ...EXPORTS.get(path), results });
  return results.map(written);
}

describe('the docstrings of the engine', () => {
  it('are there for every exported function', () => {
    expect(FUNCTIONS.length > 50).toBe(true);
    const bare = FUNCTIONS.filter(({ docstring }) => docstring === null);
    expect(bare.map(({ path, name }) => `${path}: ${name}`)).toEqual([]);
  });

  it.each(EXAMPLES)('have examples that run: $name in $path', ({ path, example }) => {
    expect(example.values.length > 0).toBe(true);
    expect(run(example, path)).toEqual(example.values);
  });
});
