import { describe, expect, it } from 'vitest';
import { page, proseOf } from './pages.ts';

const SOURCES = import.meta.glob<string>(
  [
    '../../packages/form/src/**/*.ts',
    '../../packages/engine/src/savings/*.ts',
    '!../../packages/**/*.test.ts',
  ],
  { query: '?raw', import: 'default', eager: true },
);

/** Everything the page can say, with spaces as a reader sees them. */
const SAID = Object.values(SOURCES).join('\n').replace(/\s+/g, ' ');

/** What a tutorial sets in bold type: what stands on the page. */
const labelsOf = (text: string): readonly string[] =>
  [...proseOf(text).matchAll(/\*\*([^*]+)\*\*/g)].map((match) => match[1] ?? '');

describe.each(['tutorials/homeowner.md', 'tutorials/installer.md'])('docs/%s', (name) => {
  const labels = labelsOf(page(name));

  it('names what stands on the page', () => {
    expect(labels.length).toBeGreaterThan(2);
    expect(labels.filter((label) => !SAID.includes(label))).toEqual([]);
  });
});
