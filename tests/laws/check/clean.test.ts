import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EXAMPLE_FOLDERS } from '../../published/example-folders.ts';
import { expectClean } from './clean-comparison.ts';
import { EXAMPLES, UNBILLED } from './examples.ts';
import { LEFT_OUT } from './left-out.ts';
import { randomPapers } from './random-papers.ts';

describe('example tariffs that right bills are made by', () => {
  it('are all but those that are left out by name', () => {
    expect(UNBILLED.map(({ name }) => name)).toEqual(Object.keys(LEFT_OUT).sort());
    expect(EXAMPLES.length + UNBILLED.length).toBe(EXAMPLE_FOLDERS.length);
  });

  it.each(UNBILLED)('are left out for what they need: $name', ({ name, found }) => {
    const needs = found.map((text) => /^no "([^"]+)" for this period/.exec(text)?.[1] ?? text);
    expect(needs.length).toBeGreaterThan(0);
    for (const need of needs) expect(LEFT_OUT[name]).toContain(need);
  });
});

describe('a right bill, printed as a utility would and checked', () => {
  it.each(EXAMPLES)('is right: $name', (example) => {
    fc.assert(fc.property(randomPapers(example), expectClean), { numRuns: 2 });
  });
});
