import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, defaultServerConditions } from 'vite';
import type { MainOptions } from './batch-main.ts';

/** The folder of the project: this file may run from where it was bundled to. */
function projectFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'tariffs-examples'))) {
    const above = dirname(folder);
    if (above === folder) throw new Error('the folder of the project is not above this file');
    folder = above;
  }
  return folder;
}

const root = projectFolder();

/** The tariff of the invented utility TARESCO. */
export const TARESCO: string = join(root, 'tariffs-examples/tarumira/taresco-domestic/tariff.json');

/** Make the check of a table a program of its own; returns its path. */
export async function makeProgram(outDir: string): Promise<string> {
  await build({
    root,
    configFile: false,
    logLevel: 'warn',
    build: {
      ssr: join(root, 'tests/batch/batch-main.ts'),
      outDir,
      emptyOutDir: false,
      target: 'node20',
      minify: false,
      rolldownOptions: { output: { entryFileNames: 'batch-main.mjs' } },
    },
    ssr: {
      noExternal: true,
      resolve: { conditions: ['@unitbook/source', ...defaultServerConditions] },
    },
  });
  return join(outDir, 'batch-main.mjs');
}

/** What a program wrote, and how it ended. */
export interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** Begin a check. */
export const begin = (program: string, options: Partial<MainOptions>): ChildProcess =>
  spawn(process.execPath, [program, JSON.stringify({ tariff: TARESCO, summary: true, ...options })]);

/** Wait for the end of a check, with what it writes. */
export async function ended(child: ChildProcess, input?: string | Uint8Array): Promise<Ended> {
  let [out, err] = ['', ''];
  child.stdout?.on('data', (more: Buffer) => (out += more.toString('utf8')));
  child.stderr?.on('data', (more: Buffer) => (err += more.toString('utf8')));
  child.stdin?.end(input);
  const [status] = (await once(child, 'close')) as [number | null];
  return { status, out, err };
}

/** Check a table in a process of its own. */
export const run = (
  program: string,
  options: Partial<MainOptions>,
  input?: string | Uint8Array,
): Promise<Ended> => ended(begin(program, options), input);
