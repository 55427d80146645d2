import { decimalPlaces, isDecimalText, type Finding, type Path } from '../quantity/index.ts';
import { quoteFinding } from './findings.ts';

/** What a number of a quote may be; bounds belong to it. */
export interface Range {
  readonly what: string;
  readonly least: string;
  readonly most: string;
  readonly places: number;
  /** Whether the least itself is left out. */
  readonly above?: boolean;
}

/** What each number of a quote may be. */
export const RANGES = {
  units: { what: 'the units of a month', least: '0', most: '1000000', places: 3 },
  yearUnits: { what: 'the units of a year', least: '0', most: '10000000', places: 3 },
  kWp: { what: 'the plant in kWp', least: '0', most: '10000', places: 3, above: true },
  inverters: { what: 'the power of the inverters in kW', least: '0', most: '10000', places: 3, above: true },
  share: { what: 'the share of own use in percent', least: '0', most: '100', places: 3 },
  growth: { what: 'a yearly growth in percent', least: '-20', most: '20', places: 3 },
  rise: { what: 'a yearly rise of a rate in percent', least: '-20', most: '40', places: 3 },
  rateStep: {
    what: 'the step that a risen rate is rounded to',
    least: '0',
    most: '1',
    places: 6,
    above: true,
  },
  wear: { what: 'a yearly degradation in percent', least: '0', most: '20', places: 3 },
  discount: { what: 'the discount rate in percent', least: '-50', most: '100', places: 3 },
  loanRate: { what: 'the rate of the loan in percent', least: '0', most: '100', places: 4 },
  tax: { what: 'a tax in percent', least: '0', most: '100', places: 3 },
  money: { what: 'an amount of money', least: '0', most: '1000000000000', places: 2 },
  years: { what: 'the life in years', least: '1', most: '40', places: 0 },
  months: { what: 'a number of months', least: '1', most: '480', places: 0 },
  waiting: { what: 'months until the subsidy is paid', least: '0', most: '120', places: 0 },
  ratio: { what: 'the performance ratio', least: '0', most: '1', places: 3, above: true },
  irradiation: { what: 'irradiation', least: '0', most: '465', places: 3 },
  sigma: { what: 'one sigma in percent', least: '0', most: '50', places: 3 },
  correlation: { what: 'a correlation', least: '-1', most: '1', places: 3 },
  percent: { what: 'a percentage', least: '0', most: '100', places: 3 },
  efficiency: {
    what: 'the efficiency of the battery in percent',
    least: '0',
    most: '100',
    places: 3,
    above: true,
  },
  power: { what: 'a power in kW', least: '0', most: '1000000', places: 3 },
  seed: { what: 'the seed of the random numbers', least: '0', most: '2147483647', places: 0 },
  carbon: { what: 'kg CO2 per kWh', least: '0', most: '3', places: 4 },
} as const satisfies Readonly<Record<string, Range>>;

/** A decimal text as a whole number of its last place, on so many places. */
function scaled(text: string, places: number): bigint {
  const [whole = '0', decimals = ''] = text.replace('-', '').split('.');
  const value = BigInt(whole + decimals.padEnd(places, '0'));
  return text.startsWith('-') ? -value : value;
}

function isIn(text: string, { least, most, places, above }: Range): boolean {
  if (!isDecimalText(text) || decimalPlaces(text) > places || text.length > 20) return false;
  const value = scaled(text, places);
  const low = scaled(least, places);
  return (above === true ? value > low : value >= low) && value <= scaled(most, places);
}

function rangeWords({ least, most, places, above }: Range): string {
  const kind = places === 0 ? 'a whole number' : `a number with up to ${String(places)} decimals`;
  return `${kind}, ${above === true ? `above ${least} and` : `from ${least}`} up to ${most}`;
}

/**
 * What is wrong with a number of a quote, if anything.
 *
 * @param text  left out in the document: nothing is wrong
 * @example
 * rangeFindings('-4', RANGES.kWp, ['plant', 'kWp'])[0].expected //=> "a number with up to 3 decimals, above 0 and up to 10000"
 */
export function rangeFindings(text: string | undefined, range: Range, path: Path): readonly Finding[] {
  if (text === undefined || isIn(text, range)) return [];
  const values = { value: text, what: range.what, range: rangeWords(range) };
  return [quoteFinding('quote/number-out-of-range', { path }, values)];
}
