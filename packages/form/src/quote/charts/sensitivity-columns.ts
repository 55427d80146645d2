import { scaleLinear } from 'd3-scale';
import type { ChartView, SensitivityData } from './chart-data.ts';
import { GAP, place, SIZES } from './frame.ts';
import { widestOf } from './text-width.ts';

/** Room for the names of inputs beside their bars, in a wide drawing; in a narrow one they stand above them. */
const NAMES = 220;

/** The most of the drawing that the texts of the cases take. */
const MOST_OF_INPUT = 0.32;

/** What all the bars have in common. */
export interface Columns {
  /** Whether names stand beside their bars. */
  readonly isBeside: boolean;
  /** For the names of the inputs. */
  readonly name: number;
  /** Where the texts of the cases begin. */
  readonly input: number;
  /** Where the texts of the results end. */
  readonly result: number;
  /** For the texts of the cases. */
  readonly room: number;
  readonly x: (result: number) => number;
  readonly base: number;
}

/** Columns for the texts, and for the bars what is left. */
export function columnsOf({ base, inputs }: SensitivityData, size: ChartView['size']): Columns {
  const { width } = SIZES[size];
  const cases = inputs.flatMap(({ low, high }) => [low, high]);
  const results = cases.map(({ result }) => result);
  const isBeside = size === 'wide';
  const input = isBeside ? NAMES : 8;
  const room = Math.min(width * MOST_OF_INPUT, widestOf(cases.map((one) => one.input)));
  const result = input + room + 2 * GAP + widestOf(results.map(({ text }) => text));
  const values = [base, ...results].map(({ at }) => at);
  const scale = scaleLinear([Math.min(...values), Math.max(...values)], [result + 3 * GAP, width - 2]);
  return {
    isBeside,
    name: isBeside ? NAMES - 16 : width - 2,
    input,
    result: place(result),
    room,
    x: (at) => place(scale(at)),
    base: base.at,
  };
}
