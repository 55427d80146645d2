import type { AssumptionWords } from './assumption-words.ts';
import type { Counted } from './counted.ts';

/** Heads of the printed quote, one for each thing that a quote has to say. */
export interface PaperHeads {
  readonly who: string;
  readonly inputs: string;
  readonly system: string;
  readonly generation: string;
  readonly ownUse: string;
  readonly months: string;
  readonly stays: string;
  readonly surplus: string;
  readonly costs: string;
  readonly loan: string;
  readonly assumptions: string;
  readonly years: string;
  readonly sensitivity: string;
  readonly warnings: string;
  readonly promise: string;
  readonly signature: string;
}

/** Short words beside figures. */
export interface PaperLabels {
  readonly date: string;
  readonly validUntil: string;
  readonly customer: string;
  readonly site: string;
  readonly seller: string;
  readonly licence: string;
  readonly installer: string;
  readonly start: string;
  readonly tariff: string;
  readonly usedInAYear: string;
  readonly source: string;
  /** The unit of a plant's size, such as "kWp". */
  readonly peak: string;
  readonly modules: string;
  readonly inverter: string;
  readonly layout: string;
  readonly shading: string;
  readonly madeInAYear: string;
  readonly lowCase: string;
  readonly reason: string;
  readonly price: string;
  readonly tax: string;
  readonly subsidy: string;
  readonly battery: string;
  readonly cashOnDayOne: string;
  readonly upkeep: string;
  readonly borrowed: string;
  readonly rate: string;
  readonly instalment: string;
  readonly interest: string;
  readonly fees: string;
  readonly payback: string;
  readonly discounted: string;
  readonly saving: string;
  readonly smallestBill: string;
  readonly carbon: string;
  readonly place: string;
  readonly forCustomer: string;
  readonly forSeller: string;
}

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
  readonly ownUse: (share: string) => string;
  readonly ownUseUnknown: string;
  /** Where it is worked out from use and generation by intervals. */
  readonly ownUseByIntervals: (share: string) => string;
  readonly perKilowatt: (units: string) => string;
  readonly lowCase: (years: string, sigma: string) => string;
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
