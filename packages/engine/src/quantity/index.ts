export {
  commonDivisor,
  commonMultiple,
  decimalPlaces,
  decimalToWhole,
  exactText,
  isDecimalText,
  largeDivisor,
  LARGEST_WHOLE,
  quotientText,
  wholeProduct,
  wholeToDecimal,
} from './decimal.ts';
export { minorUnitDigits } from './currency.ts';
export {
  addDays,
  calendarDay,
  dayNumber,
  dayText,
  daysInMonth,
  isLeapYear,
  parseDay,
  type CalendarDay,
  type DayNumber,
} from './day.ts';
export { explainFigure, figureValue, type Explanation, type Notation } from './explain.ts';
export {
  givenFigure,
  renamedFigure,
  unfoldingFigure,
  type AppliedRounding,
  type Choice,
  type Figure,
  type FigureKind,
  type FigureUnit,
  type Operation,
  type Parameter,
} from './figure.ts';
export {
  findingMaker,
  groupedText,
  type Finding,
  type FindingKind,
  type FindingPlace,
  type FindingText,
  type Outcome,
  type Path,
  type Severity,
} from './finding.ts';
export {
  addQuotients,
  isSameQuotient,
  NumberTooLarge,
  signOf,
  subtractQuotients,
  wholeSteps,
  ZERO,
  type Quotient,
} from './quotient.ts';
export { MONTH_NAMES } from './month-names.ts';
export { monthParts, periodDays, type MonthPart, type Period } from './period.ts';
export {
  ROUNDING_MODES,
  roundLargeQuotient,
  roundQuotient,
  type Rounding,
  type RoundingMode,
} from './rounding.ts';
export { shareOut } from './share-out.ts';
