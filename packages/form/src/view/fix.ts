import type { Household } from '../household/household.ts';

/** A button beside a finding, and what it does to the household. */
export interface Fix {
  readonly label: string;
  readonly apply: (household: Household) => Household;
  /** The input to go on from, however the button was pressed; left out: the one that the finding is about. */
  readonly focus?: string;
  /** The reading whose month to show. */
  readonly show?: number;
  /** Folds to open. */
  readonly opens?: readonly string[];
}
