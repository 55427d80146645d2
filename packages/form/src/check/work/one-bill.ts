import type { Cause, PrintedBill } from '@unitbook/engine';

/**
 * Causes that are tried on one bill only: the others of its account are set beside their right bills, which takes no
 * time, and searched another time.
 *
 * @param causes  stay as they are
 * @param bill    by identity, as it is handed to the check
 */
export function causesForBill(causes: readonly Cause[], { figures }: PrintedBill): readonly Cause[] {
  return causes.map((cause) => ({
    ...cause,
    variants: (facts, context) => (context.printed === figures ? cause.variants(facts, context) : []),
  }));
}
