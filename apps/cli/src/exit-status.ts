import type { Finding } from '@unitbook/engine';

/**
 * The status a command ends with.
 *
 * @param outcome  whether it could run, and what it found
 * @returns        0 clean; 1 errors or open questions, of which notes are none; 2 could not run
 * @example
 * exitStatus({ ran: true, findings: [] }) //=> 0
 */
export function exitStatus(outcome: {
  readonly ran: boolean;
  readonly findings: readonly Pick<Finding, 'severity'>[];
}): 0 | 1 | 2 {
  if (!outcome.ran) return 2;
  return outcome.findings.some((finding) => finding.severity !== 'note') ? 1 : 0;
}
