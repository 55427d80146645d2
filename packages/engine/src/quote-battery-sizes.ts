import type { PreparedQuote } from './quote-prepare.ts';
import { quoteSizes, type SizeRange, type Sizes } from './quote-sizes.ts';
import { withBatteryOf } from './quote/index.ts';

/** What plants of some sizes come to beside a battery. */
export interface BatterySizes {
  /** Wh of the battery; 0: none. */
  readonly wattHours: number;
  readonly sizes: Sizes;
}

/**
 * What plants of other sizes come to beside other batteries: power and prices of a battery go by its capacity.
 *
 * The bills of the quote itself are worked out anew afterwards.
 *
 * @param prepared    its bills are made
 * @param capacities  in Wh; see `usualBatteries`
 */
export function quoteBatterySizes(
  prepared: PreparedQuote,
  range: SizeRange,
  capacities: readonly number[],
): readonly BatterySizes[] {
  const { input } = prepared;
  return capacities.map((wattHours) => {
    const document = withBatteryOf(input.document, wattHours);
    return { wattHours, sizes: quoteSizes({ ...prepared, input: { ...input, document } }, range) };
  });
}
