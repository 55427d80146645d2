import { expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.ts';
import type { readSession } from './read-session.ts';
import { sessionIo } from './session-io.ts';

/** Run every command of a session and compare what it prints and how it ends with what the page shows. */
export function replay({ files, steps }: ReturnType<typeof readSession>): void {
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
}
