import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.ts';
import { readSession } from './read-session.ts';
import { sessionIo } from './session-io.ts';

const folder = fileURLToPath(new URL('.', import.meta.url));
const names = readdirSync(folder).filter((name) => name.endsWith('.md'));

it('finds the sessions', () => {
  expect(names.length).toBeGreaterThan(3);
});

describe.each(names)('%s', (name) => {
  const { files, steps } = readSession(readFileSync(`${folder}${name}`, 'utf8'));

  it('shows at least one command', () => {
    expect(steps.length).toBeGreaterThan(0);
  });

  it.each(steps.map((step) => [`${String(step.line)}: unitbook ${step.words.join(' ')}`, step] as const))(
    'line %s',
    async (_, { words, input, output, isPart, messages, status }) => {
      const { io, printed } = sessionIo(files, input);
      const ended = await run(words, io);
      expect(printed.err).toBe(messages);
      if (isPart) expect(printed.out).toContain(output);
      else expect(printed.out).toBe(output);
      expect(ended).toBe(status);
    },
  );
});
