import type { Arrangement } from '@unitbook/engine';
import type { AssumptionWords } from './assumption-words.ts';
import type { Counted } from './counted.ts';
import type { PaperHeads, PaperLabels } from './paper-labels.ts';

/** Heads of the printed tables. */
export interface PaperTables {
  readonly months: readonly string[];
  readonly years: readonly string[];
  readonly cases: readonly string[];
  readonly year: string;
  readonly asQuoted: string;
}

/** Sentences of the printed quote; what stands in them is written by the household's locale already. */
export interface PaperSentences {
  readonly notSaid: string;
  readonly noLoan: string;
  readonly noSubsidy: string;
  readonly noSurplus: string;
  readonly noPromise: string;
  readonly surplus: (units: string, money: string) => string;
  /** @param percent  of the use of the first year; more than 100 */
  readonly aboveUse: (percent: string) => string;
  /** @param order  its title, publisher and year */
  readonly inForce: (order: string, since: string) => string;
  readonly everyBill: string;
  /** With which bill surplus comes. */
  readonly inBill: { readonly same: string; readonly next: string };
  readonly noSurplusRate: string;
  readonly arrangements: Readonly<Record<Arrangement, string>>;
  readonly ofUpkeep: { readonly included: string; readonly 'not-included': string };
  /** @param payback  years with their word */
  readonly withoutSubsidy: (payback: string) => string;
  readonly ownUse: (share: string) => string;
  readonly ownUseUnknown: string;
  /** Where it is worked out from use and generation by intervals. */
  readonly ownUseByIntervals: (share: string) => string;
  readonly perKilowatt: (units: string) => string;
  /**
   * @param mean   units of the first year that are exceeded in nine cases of ten
   * @param year   the same of a single year, its weather in it; '' for not said
   * @param sigma  what both follow from, such as "7.8 %, 3.9 %"
   */
  readonly lowCase: (mean: string, year: string, sigma: string) => string;
  readonly wear: (first: string, later: string) => string;
  readonly stays: (least: string, most: string) => string;
  readonly subsidyLater: (months: Counted, to: string) => string;
  /** @param payback  years with their word, or that it does not come back */
  readonly batteryAlone: (saving: string, payback: string) => string;
  readonly interestTotal: (interest: string, paid: string) => string;
  readonly instalments: (months: Counted) => string;
  readonly drawn: (range: string, count: string) => string;
  readonly payback: string;
  readonly filled: string;
  readonly tried: (size: string, offered: string) => string;
  readonly warnings: readonly string[];
  readonly promise: readonly string[];
  readonly signature: string;
  /** With one decimal. */
  readonly years: (years: Counted) => string;
  readonly never: string;
  /** A payback after which the price is owed again. */
  readonly atFirst: (years: string) => string;
  readonly forGood: (years: string) => string;
  readonly owedAtEnd: string;
  /** As it stands in `subsidyLater`: in French with its "au". */
  readonly customer: string;
  readonly sellerWord: string;
}

/** What stands in and beneath the chart of money by year. */
export interface PaperChart {
  readonly title: string;
  /** For those who do not see it. */
  readonly says: (first: string, last: string, years: string) => string;
  readonly across: string;
  /** @param years  with their word, such as "4.6 years" */
  readonly payback: (years: string) => string;
  /** What its lines are, where a band is drawn. */
  readonly band: string;
}

/** The cases that are asked, and what their lines say besides figures. */
export interface PaperCases {
  /** By the id that the engine gives a case; `percent` is how much is changed in it. */
  readonly names: Readonly<Record<string, (percent: string) => string>>;
  /** A case from the first year on, of one that holds later. */
  readonly already: (name: string) => string;
  readonly notBilled: string;
  readonly noReturn: string;
  /** Several rates of return. */
  readonly several: (rates: string) => string;
  readonly ofSeveral: string;
}

/** Every word of the printed quote in one language. */
export interface QuoteWords {
  /** As documents name the language, such as "en". */
  readonly language: string;
  readonly title: string;
  readonly estimate: string;
  readonly heads: PaperHeads;
  readonly labels: PaperLabels;
  readonly tables: PaperTables;
  readonly assumptions: AssumptionWords;
  readonly sentences: PaperSentences;
  readonly chart: PaperChart;
  readonly cases: PaperCases;
  /** Powers of the account, by the names that tariffs give them. */
  readonly powers: Readonly<Record<string, string>>;
}
