import { writeFileSync } from 'node:fs';
import type { Reporter, TestModule } from 'vitest/node';
import { type Counts, formatCounts } from './counts.mjs';

/**
 * Ends a run with one plain line: `N passed, N failed`, and `, N skipped` if any were.
 * When COUNTS_FILE names a file the counts go there instead, for the script that adds its own.
 */
export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    const counts: Counts = { passed: 0, failed: errors.length, skipped: 0 };
    for (const module of modules) countModule(module, counts);
    const file = process.env['COUNTS_FILE'];
    if (file) writeFileSync(file, JSON.stringify(counts));
    else console.log(formatCounts(counts));
  }
}

function countModule(module: TestModule, counts: Counts): void {
  let failed = 0;
  for (const test of module.children.allTests()) {
    const { state } = test.result();
    // A test still pending at the end never finished: an interrupted run must not look like a clean one.
    if (state === 'passed' || state === 'skipped') counts[state]++;
    else failed++;
  }
  // A file that breaks outside its tests (an import, a hook) is one failure.
  if (failed === 0 && module.state() === 'failed') failed = 1;
  counts.failed += failed;
}
