import { readFileSync } from 'node:fs';
import { createContext, runInContext } from 'node:vm';
import { expect, it } from 'vitest';
import * as engine from '@unitbook/engine';

const ROOT = new URL('../../', import.meta.url);
const README = readFileSync(new URL('README.md', ROOT), 'utf8');
const EXAMPLE = (/```js\n([\s\S]*?)```/.exec(README)?.[1] ?? '').trimEnd();

/** Run the example as it stands, with what it imports and the console handed in. */
function printed(example: string): readonly string[] {
  const lines: string[] = [];
  const read = (path: string, encoding: 'utf8'): string => readFileSync(new URL(path, ROOT), encoding);
  const console = { log: (line: string) => lines.push(line) };
  const body = example.replace(/^import .*$/gm, '');
  runInContext(body, createContext({ ...engine, readFileSync: read, console }));
  return lines;
}

it('the example of the README runs, in twelve lines, and prints what it says', () => {
  expect(EXAMPLE.split('\n')).toHaveLength(12);
  const lines = printed(EXAMPLE);
  // April and May are worked out by hand in the acceptance scenario: 180 and 58, 230 and 0.
  expect(lines.slice(0, 2)).toEqual(['payable 180, units banked 58', 'payable 230, units banked 0']);
  expect(lines).toHaveLength(12);
  for (const line of lines.slice(0, 2)) expect(README).toContain(line);
});
