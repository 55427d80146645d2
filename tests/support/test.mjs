// Everything that must hold, in one run that ends with one line: `N passed, N failed`.
//   --checks-only   the static checks, without the tests
//   anything else   goes to vitest: `npm test -- slab` runs the tests whose file name has "slab"
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runChecks } from './checks.mjs';
import { formatCounts } from './counts.mjs';

/** @typedef {import('./counts.mjs').Counts} Counts */

/** @returns {Counts} */
function prepareChromium() {
  const script = fileURLToPath(new URL('chromium.mjs', import.meta.url));
  const { status } = spawnSync(process.execPath, [script], { stdio: ['ignore', 'ignore', 'inherit'] });
  // Found, it proves nothing of ours and is not counted; the tests in it fail by themselves without it.
  return { passed: 0, failed: status === 0 ? 0 : 1, skipped: 0 };
}

/**
 * @param {string[]} words
 * @returns {Counts}
 */
function runVitest(words) {
  const folder = mkdtempSync(join(tmpdir(), 'unitbook-'));
  const file = join(folder, 'counts.json');
  const vitest = fileURLToPath(new URL('../../node_modules/vitest/vitest.mjs', import.meta.url));
  const { status } = spawnSync(process.execPath, [vitest, 'run', ...words], {
    stdio: 'inherit',
    env: { ...process.env, COUNTS_FILE: file },
  });
  /** @type {Counts} */
  let counts = { passed: 0, failed: 0, skipped: 0 };
  try {
    counts = JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    console.error('vitest ended before it counted its tests.');
    counts.failed = 1;
  }
  rmSync(folder, { recursive: true });
  // vitest knows failures that are no test, such as finding no test at all.
  if (status !== 0 && counts.failed === 0) counts.failed = 1;
  return counts;
}

process.chdir(fileURLToPath(new URL('../..', import.meta.url)));
const words = process.argv.slice(2);
const parts = [await runChecks()];
if (!words.includes('--checks-only')) parts.push(prepareChromium(), runVitest(words));

const sum = (/** @type {keyof Counts} */ key) => parts.reduce((total, part) => total + part[key], 0);
const total = { passed: sum('passed'), failed: sum('failed'), skipped: sum('skipped') };
process.exitCode = total.failed === 0 ? 0 : 1;
console.log(formatCounts(total));
