import {
  decimalPlaces,
  decimalToWhole,
  isDecimalText,
  quotientText,
  wholeToDecimal,
  type Finding,
  type Path,
} from '../../quantity/index.ts';
import { plantFinding } from './findings.ts';
import type { PlantDocument } from './plant-document.ts';

type ExpectedDocument = NonNullable<PlantDocument['expected']>;

/** What a number of the document may be; bounds in units of its decimals. */
export interface NumberRange {
  readonly what: string;
  readonly most: string;
  readonly places: number;
  /** Whether 0 will do. */
  readonly mayBeZero: boolean;
}

/** No plant of a household comes near these; they keep every figure exact. */
const RANGES = {
  monthly: { what: 'the units of a month', most: '10000000', places: 3, mayBeZero: true },
  day: { what: 'the irradiation of a day in kWh per m²', most: '15', places: 3, mayBeZero: true },
  month: { what: 'the irradiation of a month in kWh per m²', most: '465', places: 3, mayBeZero: true },
} as const satisfies Record<string, NumberRange>;

const RATIO: NumberRange = { what: 'the performance ratio', most: '1', places: 3, mayBeZero: false };
const PERCENT: NumberRange = { what: 'a ratio in percent', most: '100', places: 1, mayBeZero: false };
/** From 10.0 on a ratio above 1 is taken for a percentage; 1.5 is neither. */
const LEAST_PERCENT = 100;

/** Whether a decimal text lies in a range. */
export function isInRange(text: string, { most, places, mayBeZero }: NumberRange): boolean {
  if (!isDecimalText(text) || decimalPlaces(text) > places || text.length > 12) return false;
  const value = decimalToWhole(text, places);
  return value >= (mayBeZero ? 0 : 1) && value <= decimalToWhole(most, places);
}

const decimalsWords = (places: number): string =>
  places === 0 ? 'a whole number' : `a number with up to ${String(places)} decimals`;

/**
 * What is wrong with a number of the document, if anything.
 *
 * @example
 * rangeFindings('0', { what: 'a share', most: '1', places: 2, mayBeZero: false }, ['x'])[0].expected //=> "a number with up to 2 decimals, above 0 and up to 1"
 */
export function rangeFindings(text: string, range: NumberRange, path: Path): Finding[] {
  if (isInRange(text, range)) return [];
  const { what, most, places, mayBeZero } = range;
  const bounds = `${decimalsWords(places)}, ${mayBeZero ? 'from 0' : 'above 0 and'} up to ${most}`;
  return [plantFinding('plant/number-out-of-range', { path }, { what, value: text, range: bounds })];
}

function ratioFindings(text: string, path: Path): Finding[] {
  const isPercent = isInRange(text, PERCENT) && decimalToWhole(text, 1) >= LEAST_PERCENT;
  if (isInRange(text, RATIO) || !isPercent) return rangeFindings(text, RATIO, path);
  const offer = wholeToDecimal(decimalToWhole(text, 1), 3).replace(/\.?0+$/, '');
  return [plantFinding('plant/ratio-as-percent', { path, offer }, { value: text, offer })];
}

function tableFindings(values: readonly string[], range: NumberRange, path: Path): Finding[] {
  const findings = values.flatMap((value, month) => rangeFindings(value, range, [...path, month]));
  if (values.length !== 12) {
    findings.push(plantFinding('plant/not-twelve-months', { path }, { count: String(values.length) }));
  } else if (findings.length === 0 && values.every((value) => decimalToWhole(value, range.places) === 0)) {
    findings.push(plantFinding('plant/nothing-expected', { path }));
  }
  return findings;
}

const IRRADIATION_PARTS = ['irradiation', 'unit', 'performanceRatio', 'source'] as const;

function partsFindings(expected: ExpectedDocument, path: Path): Finding[] {
  const [has] = IRRADIATION_PARTS.filter((part) => expected[part] !== undefined);
  const lacks = IRRADIATION_PARTS.filter((part) => expected[part] === undefined);
  if (has === undefined || lacks.length === 0) return [];
  const values = { has, lacks: lacks.map((part) => `"${part}"`).join(', ') };
  return [plantFinding('plant/irradiation-incomplete', { path }, values)];
}

function oneFindings(expected: ExpectedDocument, path: Path): Finding[] {
  const given = [
    expected.monthly === undefined ? '' : '"monthly"',
    IRRADIATION_PARTS.some((part) => expected[part] !== undefined) ? '"irradiation"' : '',
    expected.lastYears === undefined ? '' : '"lastYears"',
  ].filter((name) => name !== '');
  return given.length === 1
    ? []
    : [plantFinding('plant/one-expectation', { path }, { given: given.join(' and ') })];
}

/**
 * What is wrong with what a plant is expected to make.
 *
 * @param expected  of the right form
 * @param path      where it stands
 */
export function expectedFindings(expected: ExpectedDocument, path: Path): Finding[] {
  const { monthly, irradiation, unit, performanceRatio } = expected;
  const range = unit === 'kWh/m2/month' ? RANGES.month : RANGES.day;
  return [
    ...oneFindings(expected, path),
    ...partsFindings(expected, path),
    ...(monthly === undefined ? [] : tableFindings(monthly, RANGES.monthly, [...path, 'monthly'])),
    ...(irradiation === undefined ? [] : tableFindings(irradiation, range, [...path, 'irradiation'])),
    ...(performanceRatio === undefined ? [] : ratioFindings(performanceRatio, [...path, 'performanceRatio'])),
  ];
}

/** Units per kWp and day beyond which no plant goes, in tenths. Common practice: 7.5. */
const MOST_YIELD_TENTHS = 75;

/**
 * A question where the quote's table is more than a plant of the first capacity can make.
 *
 * @param wattHours  of the twelve months
 * @param watts      the capacity it was quoted for
 */
export function tableQuestions(wattHours: readonly number[], watts: number, path: Path): Finding[] {
  const year = wattHours.reduce((sum, value) => sum + value, 0);
  if (year * 10 <= MOST_YIELD_TENTHS * watts * 365) return [];
  const values = {
    year: quotientText(year, 1000, 0),
    capacity: quotientText(watts, 1000, 3).replace(/\.?0+$/, ''),
    yield: quotientText(year, watts * 365, 2),
  };
  return [plantFinding('plant/table-implausible', { path }, values)];
}
