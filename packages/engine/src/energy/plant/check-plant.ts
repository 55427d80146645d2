import {
  decimalToWhole,
  parseDay,
  type DayNumber,
  type Finding,
  type Outcome,
  type Path,
} from '../../quantity/index.ts';
import { inFileOrder, locate, readDocument } from '../../tariff/index.ts';
import { expectedFindings, rangeFindings, tableQuestions, type NumberRange } from './check-expected.ts';
import { plantFinding } from './findings.ts';
import { plantDocumentSchema, type PlantDocument } from './plant-document.ts';
import type { DatedCapacity, DiaryEntry, Expected, Plant } from './plant.ts';

const CAPACITY: NumberRange = { what: 'the capacity in kWp', most: '10000', places: 3, mayBeZero: false };
const INVERTERS: NumberRange = { what: 'the inverters', most: '1000', places: 0, mayBeZero: false };
const YEAR_TO_YEAR: NumberRange = {
  what: 'the difference from year to year in percent',
  most: '100',
  places: 2,
  mayBeZero: false,
};

function dayFindings(text: string | undefined, path: Path): Finding[] {
  if (text === undefined || parseDay(text) !== null) return [];
  return [plantFinding('plant/no-such-day', { path }, { value: text })];
}

/** Every change of capacity has a day, after the one before. */
function orderFindings({ capacity }: PlantDocument): Finding[] {
  return capacity.flatMap(({ from }, index) => {
    const path = ['capacity', index];
    const noDay = dayFindings(from, [...path, 'from']);
    const before = capacity[index - 1]?.from;
    if (index === 0 || noDay.length > 0) return noDay;
    if (from !== undefined && (before === undefined || from > before)) return [];
    return [plantFinding('plant/capacity-order', { path }, { from: from ?? '', before: before ?? '' })];
  });
}

function diaryFindings({ diary = [] }: PlantDocument): Finding[] {
  return diary.flatMap(({ date, through }, index) => {
    const path = ['diary', index];
    const noDay = [...dayFindings(date, [...path, 'date']), ...dayFindings(through, [...path, 'through'])];
    if (noDay.length > 0 || through === undefined || through >= date) return noDay;
    return [plantFinding('plant/through-before-date', { path: [...path, 'through'] }, { date, through })];
  });
}

function numberFindings({ capacity, inverters, uncertainty }: PlantDocument): Finding[] {
  const difference = uncertainty?.yearToYear;
  return [
    ...capacity.flatMap(({ kWp }, index) => rangeFindings(kWp, CAPACITY, ['capacity', index, 'kWp'])),
    ...(inverters === undefined ? [] : rangeFindings(inverters.n, INVERTERS, ['inverters', 'n'])),
    ...(difference === undefined
      ? []
      : rangeFindings(difference, YEAR_TO_YEAR, ['uncertainty', 'yearToYear'])),
  ];
}

/** A day that was checked. */
const dayOf = (text: string): DayNumber => parseDay(text) ?? (0 as DayNumber);

function capacitiesOf({ capacity }: PlantDocument): readonly DatedCapacity[] {
  return capacity.map(({ from, kWp }) => ({
    from: from === undefined ? null : dayOf(from),
    watts: decimalToWhole(kWp, 3),
  }));
}

function diaryOf({ diary = [] }: PlantDocument): readonly DiaryEntry[] {
  return diary
    .map(({ date, through = date, did, note = '' }) => ({
      date: dayOf(date),
      through: dayOf(through),
      did,
      note,
    }))
    .sort((one, other) => one.date - other.date);
}

function expectedOf({ expected }: PlantDocument): Expected | null {
  if (expected === undefined) return null;
  const { monthly, irradiation, unit, performanceRatio = '1', source = '' } = expected;
  const thousandths = (text: string): number => decimalToWhole(text, 3);
  if (monthly !== undefined) return { kind: 'monthly', wattHours: monthly.map(thousandths) };
  if (irradiation === undefined) return { kind: 'last-years' };
  return {
    kind: 'irradiation',
    wattHours: irradiation.map(thousandths),
    per: unit === 'kWh/m2/month' ? 'month' : 'day',
    performanceRatio: { numerator: thousandths(performanceRatio), denominator: 1000 },
    source,
  };
}

function assemble(document: PlantDocument): Plant {
  const { coast, inverters, uncertainty, meterClass } = document;
  const difference = uncertainty?.yearToYear;
  return {
    document,
    capacities: capacitiesOf(document),
    isOnCoast: coast === true,
    inverters:
      inverters === undefined ? null : { count: decimalToWhole(inverters.n, 0), kind: inverters.kind },
    expected: expectedOf(document),
    yearToYear: difference === undefined ? null : decimalToWhole(difference, 2),
    meterClass: meterClass ?? null,
    diary: diaryOf(document),
  };
}

function questions({ expected, capacities }: Plant): Finding[] {
  const [first] = capacities;
  if (expected?.kind !== 'monthly' || first === undefined) return [];
  return tableQuestions(expected.wattHours, first.watts, ['expected', 'monthly']);
}

/**
 * Check a plant document that has the right form.
 *
 * @returns the plant, or null when something cannot be used; questions leave it usable
 * @example
 * checkPlant({ format: 'unitbook-plant-1', capacity: [{ kWp: '5.5' }] }).value.capacities[0].watts //=> 5500
 */
export function checkPlant(document: PlantDocument): Outcome<Plant | null> {
  const errors = [
    ...numberFindings(document),
    ...orderFindings(document),
    ...(document.expected === undefined ? [] : expectedFindings(document.expected, ['expected'])),
    ...diaryFindings(document),
  ];
  if (errors.length > 0) return { value: null, findings: errors };
  const value = assemble(document);
  return { value, findings: questions(value) };
}

/**
 * Read a plant document and list everything that is wrong with it.
 *
 * @param text  the JSON file, whole
 * @returns     the plant, or null when it cannot be used; findings with line and column, in file order
 * @example
 * readPlant('{"format":"unitbook-plant-1","capacity":[{"kWp":"0"}]}').findings[0].code //=> "plant/number-out-of-range"
 */
export function readPlant(text: string): Outcome<Plant | null> {
  const read = readDocument<PlantDocument>(text, plantDocumentSchema);
  const checked = read.mended === null ? { value: null, findings: [] } : checkPlant(read.mended);
  const findings = inFileOrder([
    ...read.findings,
    ...checked.findings.map((finding) => locate(read.source, finding)),
  ]);
  return { value: read.value === null ? null : checked.value, findings };
}
