import type { Writing } from '../../writing/writing.ts';

/** A value of a chart: where it is drawn, how the page writes it, and how a sheet does. */
export interface Amount {
  /** For the drawing alone: nothing is reckoned with it. */
  readonly at: number;
  /** With its sign and its grouping, as a `Writing` makes it. */
  readonly text: string;
  /** The exact decimal, such as "-1250.5". */
  readonly decimal: string;
}

/**
 * A value of a chart from its exact decimal.
 *
 * @param decimal  as the engine writes it
 * @param write    how the page writes it, such as `writing.money`
 * @example
 * amountOf('-12.50', (text) => `Rs ${text}`) //=> {"at":-12.5,"text":"Rs -12.50","decimal":"-12.50"}
 */
export function amountOf(decimal: string, write: (decimal: string) => string): Amount {
  return { at: Number(decimal), text: write(decimal), decimal };
}

/** In how much room a chart is drawn: its text keeps the size of the page's small print. */
export type ChartSize = 'narrow' | 'wide';

/** Where and how a chart stands on the page. */
export interface ChartView {
  /** Names the chart on the page; the ids within it begin with it. */
  readonly id: string;
  readonly size: ChartSize;
  /** Writes the numbers along the axes. */
  readonly writing: Pick<Writing, 'number'>;
}

/** What every chart says about itself. */
export interface ChartWords {
  readonly title: string;
  /** What it shows, in a sentence or two, for those who do not see it. */
  readonly says: string;
}

/** What a chart with an upright axis says. */
interface AxisWords extends ChartWords {
  /** What the numbers along the axis count, such as "₹". */
  readonly unit: string;
}

/** What eight cases of ten lie between. */
export interface Band {
  readonly low: Amount;
  readonly middle: Amount;
  readonly high: Amount;
}

/** A year and what has been spent and saved by its end. */
export interface CashFlowYear {
  /** 0 is the day of the purchase. */
  readonly year: number;
  readonly label: string;
  readonly value: Amount;
  readonly band: Band | null;
}

/** Money by year since the purchase, summed up. */
export interface CashFlowData extends AxisWords {
  readonly years: readonly CashFlowYear[];
  /** What the line is, such as "as quoted". */
  readonly lineName: string;
  /** When the line crosses zero, in years since the purchase, and that in words; null if it does not. */
  readonly payback: { readonly year: number; readonly label: string } | null;
}

/** A month and its bills. */
export interface BillsMonth {
  /** "April 2026" */
  readonly label: string;
  /** "Apr" */
  readonly short: string;
  readonly before: Amount;
  readonly after: Amount;
}

/** The bill of each month without and with the plant. */
export interface BillsData extends AxisWords {
  readonly months: readonly BillsMonth[];
  readonly beforeName: string;
  readonly afterName: string;
}

/** A size of plant and what it brings. */
export interface SizePoint {
  readonly size: Amount;
  readonly value: Amount;
}

/** A size that the curve marks, and why. */
export interface SizeMark {
  readonly size: Amount;
  readonly label: string;
}

/** What a plant brings by its size. */
export interface SizeCurveData extends AxisWords {
  /** What sizes are counted in, such as "kWp". */
  readonly sizeUnit: string;
  readonly sizeName: string;
  readonly valueName: string;
  readonly points: readonly SizePoint[];
  readonly chosen: SizeMark | null;
  /** From which size on another unit earns only what surplus is paid. */
  readonly surplusFrom: SizeMark | null;
}

/** An input at one of its ends, and what comes of it. */
export interface Case {
  /** The input, such as "2 % a year". */
  readonly input: string;
  readonly result: Amount;
}

/** An input of the quote, low and high. */
export interface SensitivityInput {
  readonly label: string;
  readonly low: Case;
  readonly high: Case;
}

/** What the result is when one input at a time is lower or higher. */
export interface SensitivityData extends ChartWords {
  readonly base: Amount;
  /** Names the base, such as "As quoted". */
  readonly baseName: string;
  readonly inputs: readonly SensitivityInput[];
}
