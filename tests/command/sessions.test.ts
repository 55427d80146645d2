import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readSession } from './read-session.ts';
import { replay } from './replay.ts';

const folder = fileURLToPath(new URL('.', import.meta.url));
const names = readdirSync(folder).filter((name) => name.endsWith('.md'));

it('finds the sessions', () => {
  expect(names.length).toBeGreaterThan(3);
});

describe.each(names)('%s', (name) => {
  const session = readSession(readFileSync(`${folder}${name}`, 'utf8'));

  it('shows at least one command', () => {
    expect(session.steps.length).toBeGreaterThan(0);
  });

  replay(session);
});
