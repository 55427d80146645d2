import { LARGEST_WHOLE } from './quantity/index.ts';
import { timesRatio } from './settlement/index.ts';
import type { AmountsPlan, AmountsResult } from './amounts-types.ts';

/**
 * Add what each bill pays out to its lines, and round it to what is payable.
 *
 * @returns false where a double has no room for one of them
 */
export function closeAll({ payables, dues }: AmountsResult, total: AmountsPlan['total']): boolean {
  let isSound = true;
  for (let at = 0; at < payables.length; at += 1) {
    const sum = (payables[at] as number) + (dues[at] as number);
    const payable = total === null ? sum : timesRatio(sum, total);
    payables[at] = payable;
    if (!(Math.abs(payable) <= LARGEST_WHOLE)) isSound = false;
  }
  return isSound;
}
