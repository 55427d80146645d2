/** @typedef {{ passed: number, failed: number, skipped: number }} Counts */

/**
 * The last line of every run.
 * @param {Counts} counts
 */
export function formatCounts({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}
