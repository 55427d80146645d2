export { UnitbookMonth, HOUSEHOLD_CHANGE } from './unitbook-month.ts';
export { UnitbookBook } from './unitbook-book.ts';
export { keepLayoutsIn, type LayoutKeep, type LayoutStorage } from './files/keep-layouts.ts';
export { keepIn, type Aside, type Keep, type Slot, type TextStorage } from './keep.ts';
export type { TariffChoice } from './tariff-choice.ts';
export { emptyHousehold, householdText, HOUSEHOLD_FORMAT, type Household } from './household/household.ts';
export { readHousehold, type HouseholdText } from './household/read-household.ts';
