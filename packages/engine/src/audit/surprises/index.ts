import { appDays } from './app-days.ts';
import { bankUsedUp } from './bank-used-up.ts';
import { beforeConnection } from './before-connection.ts';
import { lessMade } from './less-made.ts';
import { moreUsed } from './more-used.ts';
import { ownUse } from './own-use.ts';
import { powerFactor } from './power-factor.ts';
import { settlementReset } from './settlement-reset.ts';
import { standingCharges } from './standing-charges.ts';
import { surplusUnits } from './surplus-units.ts';
import type { FindSurprise, Surprise, SurpriseTerms } from './surprise.ts';
import { twoDevices } from './two-devices.ts';

export type { AppUnits, FindSurprise, KnownBill, Surprise, SurprisePart, SurpriseTerms } from './surprise.ts';
export { surpriseWords } from './surprise-words.ts';

/** Everything that surprises on bills that are right, S1 to S11 of the project reference "causes", 2.6. */
export const SURPRISES: readonly FindSurprise[] = [
  ownUse,
  appDays,
  standingCharges,
  moreUsed,
  lessMade,
  bankUsedUp,
  settlementReset,
  twoDevices,
  beforeConnection,
  powerFactor,
  surplusUnits,
];

/**
 * What surprises on a bill and is right, each with its figures in words.
 *
 * @returns in the order of {@link SURPRISES}; none where nothing does, or too little is known
 */
export function surprisesOf(terms: SurpriseTerms): readonly Surprise[] {
  return SURPRISES.flatMap((find) => find(terms) ?? []);
}
