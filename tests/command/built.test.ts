import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';

/** `npm test` builds it before the tests run; a run of these tests alone may find none. */
const built = fileURLToPath(new URL('../../apps/cli/dist/unitbook.js', import.meta.url));
const isBuilt = existsSync(built);
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'unitbook-'));
  // Away from its packages and examples: one file that needs no other. `.mjs`: no package.json is beside it.
  if (isBuilt) copyFileSync(built, join(folder, 'unitbook.mjs'));
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

const start = (words: readonly string[], input = '') =>
  spawnSync(process.execPath, [join(folder, 'unitbook.mjs'), ...words], { encoding: 'utf8', input });

it('runs from its one file, if it is built', () => {
  if (!isBuilt) return;
  const { status, stdout, stderr } = start(['demo']);
  expect([status, stderr]).toEqual([0, '']);
  expect(stdout).toContain('PASSBOOK OF UNITS');
  expect(stdout).not.toContain('\u001b');
});

it('reads standard input and ends with a status, if it is built', () => {
  if (!isBuilt) return;
  const { status, stdout, stderr } = start(['tariff', '-'], '{}');
  expect(status).toBe(1);
  expect(stdout).toMatch(/^standard input {2}\d+ problems\n$/);
  expect(stderr).toMatch(/^standard input:1:1 {2}No "format"\./);
});

it('ends quietly when nobody reads on, if it is built', () => {
  if (!isBuilt || process.platform === 'win32') return;
  const script = `"$0" "$1" demo | head -n 1; "$0" "$1" demo >&- 2>/dev/null; exit 0`;
  const { stdout, stderr } = spawnSync('sh', ['-c', script, process.execPath, join(folder, 'unitbook.mjs')], {
    encoding: 'utf8',
  });
  expect(stdout).toBe('UNITBOOK   Demo household, Tarumira (invented)\n');
  expect(stderr).toBe('');
});
