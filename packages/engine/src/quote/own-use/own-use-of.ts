import { calendarDay } from '../../quantity/index.ts';
import { lifePeriods } from '../life-periods.ts';
import type { QuoteInput, Share } from '../quote-input.ts';
import { batteryOf } from './battery.ts';
import { BatteryUse } from './battery-use.ts';
import { DailyBatteryUse } from './daily-battery.ts';
import type { OwnUse } from './own-use.ts';
import type { ReadProfile } from './profile.ts';
import { ProfileUse } from './profile-use.ts';
import { ShareUse } from './share-use.ts';

/** What own use of a quote follows from. */
export interface OwnUseTerms {
  readonly input: Pick<QuoteInput, 'document' | 'start' | 'years' | 'unitStep' | 'use' | 'generation'>;
  readonly share: Share;
  /** Goes before the share. */
  readonly profile: ReadProfile | null;
  /** false: as if there were no battery. */
  readonly hasBattery: boolean;
}

/**
 * The rule of own use of a quote: by its profile, or else by its share, with the battery of its document. A battery
 * of no capacity or power is none.
 *
 * @example
 * ownUseOf({ input: { document: {}, start: 0, years: 1, unitStep: 1000 }, share: { numerator: 1, denominator: 2 }, profile: null, hasBattery: true }).kept({}, 5000, 9000) //=> 3000
 */
export function ownUseOf({ input, share, profile, hasBattery }: OwnUseTerms): OwnUse {
  const { document, start, unitStep: step, use, generation } = input;
  const battery = hasBattery ? batteryOf(document) : null;
  if (profile === null) {
    if (battery === null) return new ShareUse(share, step);
    return new DailyBatteryUse({ share, step }, battery, lifePeriods(input));
  }
  const terms = { profile, offset: calendarDay(start).month - 1, step };
  if (battery === null) return new ProfileUse(terms);
  return new BatteryUse({ ...terms, battery, periods: lifePeriods(input), use, generation });
}
