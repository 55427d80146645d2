import type { FlyerClaim, FlyerDocument } from '@unitbook/engine';

/** A line of a flyer that is typed in. */
export type FlyerKey = FlyerClaim | 'words';

/** A number of a flyer: its words, and what may be typed there. */
export interface FlyerField {
  readonly claim: FlyerClaim;
  readonly label: string;
  readonly hint: string;
  /** Decimals that a flyer prints at most: "5,520" with none of thousandths can only be grouped. */
  readonly places: number;
}

/** The numbers of a flyer, in the order in which most flyers say them. */
export const FLYER_FIELDS: readonly FlyerField[] = [
  { claim: 'claimedSize', label: 'Size of the plant, kWp', hint: 'such as 4', places: 3 },
  { claim: 'price', label: 'Price before the subsidy', hint: 'the whole plant, mounted', places: 2 },
  { claim: 'subsidy', label: 'Subsidy it counts on', hint: 'what it takes off the price', places: 2 },
  { claim: 'netPrice', label: 'Price after the subsidy', hint: 'what it says is left to pay', places: 2 },
  { claim: 'claimedGeneration', label: 'Units made in a year', hint: 'kWh', places: 1 },
  { claim: 'claimedSaving', label: 'Saved in a year', hint: 'money, not units', places: 2 },
  { claim: 'claimedRate', label: 'What a unit is worth', hint: 'money for a unit that is made', places: 6 },
  { claim: 'monthlyBillAfter', label: 'Bill of a month that stays', hint: 'such as 0', places: 2 },
  { claim: 'claimedPayback', label: 'Paid back after, years', hint: 'such as 3.7', places: 4 },
  { claim: 'escalation', label: 'Rates rise each year by, %', hint: 'such as 5', places: 3 },
];

/** What the words of a flyer are called. */
export const WORDS_LABEL = 'Its words';

/** The id of the input of a line. */
export const flyerFieldId = (key: string): string => `flyer-${key}`;

/** A flyer with one line typed anew; the flyer before stays as it was. */
export function typeLine(flyer: FlyerDocument, key: FlyerKey, text: string): FlyerDocument {
  return { ...flyer, [key]: text };
}
