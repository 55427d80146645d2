import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { blocksOf, page } from './pages.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const built = join(root, 'apps/cli/dist/unitbook.js');
/** `npm test` builds it before the tests run; a run of these tests alone may find none. */
const canRun = existsSync(built) && process.platform !== 'win32';
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'unitbook-docs-'));
  if (canRun) symlinkSync(join(root, 'tariffs-examples'), join(folder, 'tariffs-examples'));
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

it('the script of the auditor runs, if the command is built', () => {
  if (!canRun) return;
  const [script] = blocksOf(page('tutorials/auditor.md')).filter(({ words }) => words === 'sh');
  expect(script?.text).toContain('case $? in');
  const text = `unitbook() { "${process.execPath}" "${built}" "$@"; }\n${script?.text ?? ''}`;
  const { stdout, stderr } = spawnSync('sh', ['-c', text], { cwd: folder, encoding: 'utf8' });
  expect([stdout, stderr]).toEqual(['clean\n', '']);
  expect(readFileSync(join(folder, 'book.json'), 'utf8')).toContain('"format": "unitbook-book-1"');
});
