import type { Finding } from '../../quantity/index.ts';
import type { Account } from '../../readings/index.ts';
import type { PrintedBill } from '../printed.ts';
import { ARREARS_INSIDE } from './arrears-inside.ts';
import type { ConsistencyCheck } from './check.ts';
import { CREDIT_ADDS_UP } from './credit-adds-up.ts';
import { DAYS_FOLLOW_ON } from './days-follow-on.ts';
import { DAYS_OF_DATES } from './days-of-dates.ts';
import { EXPORT_WITHIN_GENERATION } from './export-within-generation.ts';
import { LINES_SUM_TO_TOTAL } from './lines-sum-to-total.ts';
import { OPENING_IS_LAST_CLOSING } from './opening-is-last-closing.ts';
import { RATE_TIMES_UNITS } from './rate-times-units.ts';
import { READINGS_GO_FORWARD } from './readings-go-forward.ts';
import { SAME_ACCOUNT } from './same-account.ts';
import { SAME_BILL_TWICE } from './same-bill-twice.ts';
import { SERIAL_UNCHANGED } from './serial-unchanged.ts';
import { SLABS_SUM_TO_BILLED } from './slabs-sum-to-billed.ts';
import { UNITS_FOLLOW_READINGS } from './units-follow-readings.ts';
import { USE_NOT_BELOW_ZERO } from './use-not-below-zero.ts';
import { YIELD_OF_PLANT } from './yield-of-plant.ts';

export type { ConsistencyCheck, ConsistencyTerms } from './check.ts';
export { ownSerials, serialOf } from './serials.ts';
export { otherCurrencyFindings, unknownLineFindings } from './tariff-lines.ts';

/** Every check that needs no tariff. A bill that does not come to its own total is told of that before all else. */
export const CONSISTENCY_CHECKS: readonly ConsistencyCheck[] = [
  LINES_SUM_TO_TOTAL,
  SAME_ACCOUNT,
  SAME_BILL_TWICE,
  SERIAL_UNCHANGED,
  DAYS_FOLLOW_ON,
  DAYS_OF_DATES,
  OPENING_IS_LAST_CLOSING,
  READINGS_GO_FORWARD,
  UNITS_FOLLOW_READINGS,
  EXPORT_WITHIN_GENERATION,
  USE_NOT_BELOW_ZERO,
  YIELD_OF_PLANT,
  CREDIT_ADDS_UP,
  SLABS_SUM_TO_BILLED,
  RATE_TIMES_UNITS,
  ARREARS_INSIDE,
];

/**
 * What a printed bill says that cannot all be true, found without a tariff.
 *
 * @param before   the bill printed before it; null where there is none
 * @param account  null where nothing is known of it
 * @returns        findings in the order of {@link CONSISTENCY_CHECKS}, each with the path to the printed figure
 */
export function consistencyFindings(
  bill: PrintedBill,
  before: PrintedBill | null = null,
  account: Account | null = null,
): readonly Finding[] {
  return CONSISTENCY_CHECKS.flatMap(({ find }) => find({ bill, before, account }));
}
