import type { Period } from '../quantity/index.ts';
import type { InternalRates, LoanSchedule, Payback } from './finance/index.ts';
import type { Outlay } from './outlay.ts';
import type { QuoteInput } from './quote-input.ts';

/** A month of the first year: units in whole thousandths, money in whole 1/grid. */
export interface QuoteMonth {
  readonly period: Period;
  /** Whether its use was filled by a rule, for want of a bill. */
  readonly isFilled: boolean;
  readonly use: number;
  readonly generation: number;
  /** Used at home of what was made: as it was made, or out of a battery. */
  readonly selfUse: number;
  readonly imported: number;
  readonly exported: number;
  /** Units banked after it. */
  readonly bank: number;
  readonly before: number;
  readonly after: number;
  readonly surplus: number;
}

/** A year of the life: units in whole thousandths, money in whole 1/grid. */
export interface QuoteYear {
  /** From 1 on. */
  readonly year: number;
  readonly use: number;
  readonly generation: number;
  readonly selfUse: number;
  readonly imported: number;
  readonly exported: number;
  /** Bills of the year without the plant. */
  readonly before: number;
  /** Bills with it, before surplus they pay out. */
  readonly after: number;
  /** Surplus of the settlements of the year. */
  readonly surplus: number;
  /** before − after + surplus. */
  readonly saving: number;
  readonly maintenance: number;
  readonly replacement: number;
  /** maintenance + replacement */
  readonly cost: number;
  /** saving − cost */
  readonly net: number;
  /** Instalments of the loan in the year. */
  readonly instalments: number;
  /** What is left of the price after this year, above 0 once it has come back. */
  readonly cumulative: number;
}

/** What has to be paid on the first day. */
export interface DayOne {
  readonly price: number;
  readonly borrowed: number;
  readonly fees: number;
  /** price − borrowed + fees: the subsidy comes later. */
  readonly cash: number;
}

/** What a quote comes to besides its years. */
export interface QuoteMeasures {
  /** By the sum of the years, and by years discounted to the first day. */
  readonly simple: Payback;
  readonly discounted: Payback;
  /** In whole 1/grid, rounded half-up once. */
  readonly netPresentValue: number;
  readonly rates: InternalRates;
  /** Financed and reinvested at the discount rate; null where it is not defined. */
  readonly modifiedRate: number | null;
  /** Money for a kWh, with energy discounted too; null where nothing is made. */
  readonly levelisedCost: number | null;
  readonly benefitCost: number | null;
  /** The smallest and the largest bill of the first year. */
  readonly smallestBill: number;
  readonly largestBill: number;
  /** Sum of the net of all years less the net price. */
  readonly lifeNet: number;
}

/** What a battery comes to by itself: with it, less the same quote without it. Money in whole 1/grid. */
export interface BatteryResult {
  readonly cost: number;
  /** What it saves more in the first year. */
  readonly saving: number;
  /** Years until its own savings have first paid for it; null: not within the life. */
  readonly payback: number | null;
  /** Years from which that stays so: the next battery is owed again; null: at the end it is owed. */
  readonly paybackForGood: number | null;
}

/** What own use of a quote follows from. */
export type OwnUseBasis = 'share' | 'profile' | 'unknown';

/** A quote worked out. */
export interface Quote {
  /** A share, an interval profile, or nothing: then it is that with nothing used at home. */
  readonly ownUse: OwnUseBasis;
  readonly input: QuoteInput;
  readonly currency: string;
  /** Money is in whole 1/grid. */
  readonly grid: number;
  readonly outlay: Outlay;
  readonly months: readonly QuoteMonth[];
  readonly years: readonly QuoteYear[];
  readonly measures: QuoteMeasures;
  readonly dayOne: DayOne;
  readonly loan: LoanSchedule | null;
  /** null: the quote has none. Its price is in the outlay, its saving in the years. */
  readonly battery: BatteryResult | null;
  /** kg CO2 in the first year and over the life, as exact decimal texts; null: no factor was given. */
  readonly carbon: { readonly year: string; readonly life: string } | null;
}
